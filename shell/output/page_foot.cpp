// SPDX-License-Identifier: Apache-2.0
//
// Under the stages: what is particular to this day, what to mind, what is not known yet, in two
// columns short enough to be read in one sweep; then lines to write on.
#include "shell/output/page_block.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <string_view>
#include <utility>

namespace loafwright::output {

namespace {

struct Group {
    std::string_view label;
    std::vector<std::string> sentences;
};

void append(std::vector<std::string>& all, const std::vector<std::string>& more) {
    all.insert(all.end(), more.begin(), more.end());
}

std::string counted(std::size_t count, std::string_view thing) {
    return fmt::format("{} {}{}", count, thing, count == 1 ? "" : "s");
}

std::vector<Group> groups_of(const Sheet& sheet, const FootShown& foot) {
    Group day{"This bake", sheet.warnings};
    const std::size_t to = std::min(foot.notes, sheet.notes.size());
    append(day.sentences,
           {sheet.notes.begin(), sheet.notes.begin() + static_cast<std::ptrdiff_t>(to)});
    std::vector<std::string> left_out;
    if (foot.reminders_left_out > 0) {
        left_out.push_back(counted(foot.reminders_left_out, "reminder"));
    }
    if (to < sheet.notes.size()) {
        left_out.push_back(counted(sheet.notes.size() - to, "note"));
    }
    if (foot.normal_left_out) {
        left_out.emplace_back("what is normal at each stage");
    }
    if (!left_out.empty()) {
        day.sentences.push_back(
            fmt::format("Left out, for want of room: {}.", fmt::join(left_out, " and ")));
    }
    if (foot.repeats == Repeats::on_own_pages) {
        day.sentences.emplace_back(
            "What to have ready and what to take care of stands on the page of each bread.");
        return {std::move(day)};
    }
    Group unknown{"Not known yet", {}};
    const std::size_t shown = std::min(foot.questions, sheet.questions.size());
    unknown.sentences.assign(sheet.questions.begin(),
                             sheet.questions.begin() + static_cast<std::ptrdiff_t>(shown));
    if (shown < sheet.questions.size()) {
        // No count: the last of them may itself stand for several.
        unknown.sentences.emplace_back(shown > 0 ? "More is open; loafwright read lists it."
                                                 : "Some of the recipe is open; there was no room "
                                                   "for it here, loafwright read lists it.");
    }
    std::vector<Group> groups;
    for (Group& group :
         std::vector<Group>{std::move(day), {"Take care", sheet.cautions}, unknown}) {
        if (!group.sentences.empty()) {
            groups.push_back(std::move(group));
        }
    }
    return groups;
}

Block column_of(const std::vector<Group>& groups, double width, const Galley& galley) {
    const Measures& measures = galley.measures;
    Block block;
    double y = 0.0;
    for (const Group& group : groups) {
        if (!block.parts.empty()) {
            y += 0.5 * measures.block_gap;
        }
        add(block,
            PartKind::heading,
            {galley.words(Role::label, std::string(group.label), 0.0, y, -1.0)});
        y = bottom_of(block.parts.back());
        for (const std::string& sentence : group.sentences) {
            y += measures.line_gap;
            add(block,
                PartKind::paragraph,
                {galley.words(Role::body, for_paper(sentence), 0.0, y, width)});
            y = bottom_of(block.parts.back());
        }
    }
    return block;
}

} // namespace

Block foot_block(const Sheet& sheet, const FootShown& shown, const Galley& galley) {
    const Measures& measures = galley.measures;
    const std::vector<Group> groups = groups_of(sheet, shown);
    if (measures.print == Print::large || groups.size() < 2) {
        return column_of(groups, measures.room(), galley);
    }
    const double right_at = measures.second_column();
    const double width = right_at - 2.0 * measures.column_gap;
    // Balanced: cut in two at any place, or the first and the last group against the middle.
    std::vector<Block> ways;
    const auto beside = [&](const std::vector<Group>& left, const std::vector<Group>& right) {
        Block block = column_of(left, width, galley);
        Block other = column_of(right, measures.room() - right_at, galley);
        for (Part& part : other.parts) {
            shift(part, right_at, 0.0);
            block.parts.push_back(std::move(part));
        }
        block.height = std::max(block.height, other.height);
        ways.push_back(std::move(block));
    };
    for (auto cut = groups.begin() + 1; cut != groups.end(); ++cut) {
        beside({groups.begin(), cut}, {cut, groups.end()});
    }
    if (groups.size() == 3) {
        beside({groups[0], groups[2]}, {groups[1]});
    }
    return *std::min_element(ways.begin(), ways.end(), [](const Block& a, const Block& b) {
        return a.height < b.height;
    });
}

Block normal_block(const Sheet& sheet, const Galley& galley) {
    const Measures& measures = galley.measures;
    Block block;
    add(block,
        PartKind::heading,
        {galley.words(Role::label, "Normal, though it may worry you", 0.0, 0.0, -1.0)});
    std::vector<const SheetStage*> stages;
    for (const SheetStage& stage : sheet.stages) {
        if (!for_paper(stage.normal).empty()) {
            stages.push_back(&stage);
        }
    }
    // In two columns, one after the other, each line behind the number of its stage.
    const bool is_wide = measures.print != Print::large;
    const std::size_t rows = is_wide ? (stages.size() + 1) / 2 : stages.size();
    const double text_in =
        galley.width_of(Role::body, sheet.stages.size() > 9 ? "00" : "0") + measures.column_gap;
    const double top = block.height + measures.line_gap;
    double y = top;
    for (std::size_t i = 0; i < stages.size(); ++i) {
        const bool is_right = is_wide && i >= rows;
        y = i == rows ? top : y;
        const double x = is_right ? measures.second_column() : 0.0;
        const double right = is_wide && !is_right
                                 ? measures.second_column() - 2.0 * measures.column_gap
                                 : measures.room();
        add(block,
            PartKind::item,
            {galley.words(Role::body, std::to_string(stages[i]->number), x, y, -1.0),
             galley.words(
                 Role::body, for_paper(stages[i]->normal), x + text_in, y, right - x - text_in)});
        y = bottom_of(block.parts.back()) + measures.line_gap;
    }
    return block;
}

Block note_lines(const Galley& galley, double depth) {
    const Measures& measures = galley.measures;
    Block block;
    add(block, PartKind::heading, {galley.words(Role::label, "Your notes", 0.0, 0.0, -1.0)});
    std::vector<Mark> lines;
    const auto count = static_cast<int>(std::max(0.0, depth - block.height) / measures.note_line);
    for (int i = 1; i <= count; ++i) {
        const double y = block.height + measures.note_line * i;
        lines.emplace_back(Stroke{0.0, y, measures.room(), y, measures.rule});
    }
    add(block, PartKind::drawing, std::move(lines));
    return block;
}

} // namespace loafwright::output

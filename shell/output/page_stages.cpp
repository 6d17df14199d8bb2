// SPDX-License-Identifier: Apache-2.0
//
// One stage: on the left all that is about time (the box, the number, the clock, a blank for the
// time it really was, how long), on the right the words. Baselines of a row agree.
#include "shell/output/page_block.hpp"

#include <algorithm>

namespace loafwright::output {

namespace {

constexpr std::size_t fewest_repeats = 3;

// "Sun 07:30" in its day and its time; a time by itself has no day.
struct DayAndTime {
    std::string day;
    std::string time;
};

DayAndTime parted(const std::string& text) {
    const std::size_t blank = text.find(' ');
    const bool has_day = blank != std::string::npos && !text.empty() &&
                         ((text[0] >= 'A' && text[0] <= 'Z') || (text[0] >= 'a' && text[0] <= 'z'));
    return has_day ? DayAndTime{text.substr(0, blank), text.substr(blank + 1)}
                   : DayAndTime{"", text};
}

// A box whose foot stands on the baseline.
Square box_on(double x, double baseline, double side) {
    return {x, baseline - side, side};
}

class StageSetter {
public:
    StageSetter(const SheetStage& stage, const StageColumns& columns, const Galley& galley)
        : stage_(stage), columns_(columns), galley_(galley) {}

    Block set(std::size_t reminders) {
        add_first_row();
        add_length();
        add_cue();
        if (!stage_.acts.empty()) { // acts have a time of their own on the left
            y_ = std::max(left_, y_);
        }
        for (std::size_t i = 0; i < stage_.acts.size();) {
            i += add_acts(i);
        }
        for (std::size_t i = 0; i < std::min(reminders, stage_.reminders.size()); ++i) {
            y_ += galley_.measures.line_gap;
            add_words(PartKind::item, Role::body, stage_.reminders[i]);
        }
        return std::move(block_);
    }

private:
    [[nodiscard]] double words_width() const { return columns_.right - columns_.words; }

    void add_words(PartKind kind, Role role, const std::string& text) {
        const std::string set = for_paper(text);
        if (!set.empty()) {
            add(block_, kind, {galley_.words(role, set, columns_.words, y_, words_width())});
            y_ = bottom_of(block_.parts.back());
        }
    }

    void add_first_row() {
        const Measures& measures = galley_.measures;
        const DayAndTime when = parted(stage_.time);
        std::vector<Mark> marks;
        if (!when.day.empty()) {
            const Words day =
                galley_.words(Role::day, for_paper(when.day), columns_.time, 0.0, -1.0);
            y_ = day.extent.height;
            marks.emplace_back(day);
        }
        Words number = galley_.words(
            Role::stage_number, std::to_string(stage_.number), columns_.number, y_, -1.0);
        const double baseline = y_ + number.extent.baseline;
        left_ = y_ + number.extent.height;
        const Words time =
            galley_.words(Role::stage_time, for_paper(when.time), columns_.time, y_, -1.0);
        const Words title = galley_.words(
            Role::stage_title, for_paper(stage_.title), columns_.words, y_, words_width());
        if (stage_.box) {
            marks.emplace_back(box_on(0.0, baseline, measures.box));
            marks.emplace_back(Stroke{columns_.blank,
                                      baseline + 1.5,
                                      columns_.blank + measures.blank,
                                      baseline + 1.5,
                                      measures.rule});
        }
        const std::string bookmark = number.text + "  " + time.text + "  " + title.text;
        y_ += title.extent.height;
        marks.emplace_back(std::move(number));
        marks.emplace_back(time);
        marks.emplace_back(title);
        add(block_, PartKind::heading, std::move(marks));
        block_.parts.back().bookmark = bookmark;
    }

    void add_length() {
        const std::string text = for_paper(stage_.length);
        if (!text.empty()) {
            const double width = columns_.words - columns_.time - galley_.measures.column_gap;
            add(block_,
                PartKind::paragraph,
                {galley_.words(Role::length, text, columns_.time, left_, width)});
            left_ = bottom_of(block_.parts.back());
        }
    }

    void add_cue() { add_words(PartKind::paragraph, Role::cue, stage_.cue); }

    // An act that comes again and again is named once: one line with its first time, then boxes and
    // times. Gives back how many acts it has set.
    std::size_t add_acts(std::size_t first) {
        const SheetAct& act = stage_.acts[first];
        std::size_t same = 1;
        while (first + same < stage_.acts.size() && stage_.acts[first + same].text == act.text) {
            ++same;
        }
        y_ += galley_.measures.line_gap;
        add_act(act);
        if (same < fewest_repeats) {
            return 1;
        }
        add_repeats(first + 1, same - 1);
        return same;
    }

    void add_act(const SheetAct& act) {
        const Measures& measures = galley_.measures;
        const Words time =
            galley_.words(Role::act_time, for_paper(act.time), columns_.time, y_, -1.0);
        const double baseline = y_ + time.extent.baseline;
        // A time with its day may be wider than its column.
        const double words_at =
            std::max(columns_.words, columns_.time + time.extent.width + measures.column_gap);
        Words text =
            galley_.words(Role::act, for_paper(act.text), words_at, 0.0, columns_.right - words_at);
        text.y = baseline - text.extent.baseline;
        const double bottom = std::max(y_ + time.extent.height, text.y + text.extent.height);
        add(block_,
            PartKind::item,
            {box_on(columns_.number, baseline, measures.act_box), time, text});
        y_ = bottom;
    }

    void add_repeats(std::size_t first, std::size_t count) {
        const Measures& measures = galley_.measures;
        double cell = 0.0;
        for (std::size_t i = first; i < first + count; ++i) {
            cell = std::max(cell, galley_.width_of(Role::act_time, for_paper(stage_.acts[i].time)));
        }
        const double time_in = measures.act_box + 0.6 * measures.column_gap;
        const double step = time_in + cell + 1.4 * measures.column_gap;
        double x = columns_.words;
        double bottom = y_;
        for (std::size_t i = first; i < first + count; ++i) {
            if (x > columns_.words && x + time_in + cell > columns_.right) {
                x = columns_.words;
                y_ = bottom;
            }
            const Words time = galley_.words(
                Role::act_time, for_paper(stage_.acts[i].time), x + time_in, y_, -1.0);
            add(block_,
                PartKind::item,
                {box_on(x, y_ + time.extent.baseline, measures.act_box), time});
            bottom = y_ + time.extent.height;
            x += step;
        }
        y_ = bottom;
    }

    const SheetStage& stage_;
    const StageColumns& columns_;
    const Galley& galley_;
    Block block_;
    double y_ = 0.0;    // of the words
    double left_ = 0.0; // of what is about time
};

} // namespace

StageColumns stage_columns(const Sheet& sheet, const Galley& galley, double right) {
    const Measures& measures = galley.measures;
    StageColumns columns;
    double number = 0.0;
    double time = 0.0;
    for (const SheetStage& stage : sheet.stages) {
        number =
            std::max(number, galley.width_of(Role::stage_number, std::to_string(stage.number)));
        time =
            std::max(time, galley.width_of(Role::stage_time, for_paper(parted(stage.time).time)));
    }
    columns.number = measures.box + 0.8 * measures.column_gap;
    columns.time = columns.number + std::max(number, measures.act_box) + 0.8 * measures.column_gap;
    columns.blank = columns.time + time + 0.8 * measures.column_gap;
    columns.words = columns.blank + measures.blank + 1.2 * measures.column_gap;
    columns.right = right;
    return columns;
}

Block column_heads(const StageColumns& columns, const Galley& galley) {
    Block block;
    add(block,
        PartKind::paragraph,
        {galley.words(Role::column_head, "planned", columns.time, 0.0, -1.0),
         galley.words(Role::column_head, "really", columns.blank, 0.0, -1.0)});
    return block;
}

Block stage_block(const SheetStage& stage,
                  std::size_t reminders,
                  const StageColumns& columns,
                  const Galley& galley) {
    return StageSetter(stage, columns, galley).set(reminders);
}

} // namespace loafwright::output

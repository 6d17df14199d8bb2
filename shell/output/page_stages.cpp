// SPDX-License-Identifier: Apache-2.0
//
// One stage: on the left all that is about time (the box, the number, the clock, a blank for the
// time it really was, how long), on the right the words. Baselines of a row agree.
#include "engine/recipe/words.hpp"
#include "shell/output/page_block.hpp"

#include <algorithm>

namespace loafwright::output {

namespace {

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

    Block set(std::size_t reminders, Manner manner) {
        const std::string title =
            manner == Manner::lines ? full_title(stage_) : capitalised(stage_.title);
        add_first_row(title);
        add_small_words(manner, reminders);
        add_words(PartKind::paragraph, Role::cue, stage_.cue);
        add_reminders(reminders, manner);
        if (!stage_.acts.empty()) { // acts have a time of their own on the left
            y_ = std::max(left_, y_);
        }
        for (std::size_t i = 0; i < stage_.acts.size();) {
            i += add_acts(i, manner);
        }
        return std::move(block_);
    }

private:
    // How long it takes, and whose line it is on a shared page: behind the title where lines are
    // dear and there is room, else under the time and under the title.
    void add_small_words(Manner manner, std::size_t reminders) {
        const bool is_shared = !stage_.bread.empty() || !stage_.also.empty();
        if (!is_shared) {
            const bool alone = stage_.cue.empty() && stage_.acts.empty() &&
                               (reminders == 0 || stage_.reminders.empty());
            if (manner == Manner::lines || !alone || !add_beside(Role::length, stage_.length)) {
                add_length();
            }
            return;
        }
        if (manner == Manner::lines) {
            add_length();
            add_words(PartKind::paragraph, Role::cue, stage_.also);
            return;
        }
        const Role role = manner == Manner::packed ? Role::body : Role::cue;
        if (add_beside(role, shared_words(stage_.length))) {
            return;
        }
        if (columns_.has_blank) {
            add_length();
        }
        add_words(PartKind::paragraph, role, shared_words(columns_.has_blank ? "" : stage_.length));
    }

    // "Soft rolls; 40 min, then first rise, look from 14:50".
    [[nodiscard]] std::string shared_words(const std::string& length) const {
        const bool comes_after = stage_.also.rfind("then ", 0) == 0;
        const std::string& first = comes_after ? length : stage_.also;
        const std::string& second = comes_after ? stage_.also : length;
        const std::string said = first + (first.empty() || second.empty() ? "" : ", ") + second;
        return stage_.bread + (stage_.bread.empty() || said.empty() ? "" : "; ") + said;
    }

    [[nodiscard]] double words_width() const { return columns_.right - columns_.words; }

    void add_words(PartKind kind, Role role, const std::string& text) {
        const std::string set = for_paper(text);
        if (!set.empty()) {
            add(block_, kind, {galley_.words(role, set, columns_.words, y_, words_width())});
            y_ = bottom_of(block_.parts.back());
        }
    }

    void add_first_row(const std::string& called) {
        const Measures& measures = galley_.measures;
        const DayAndTime when = parted(stage_.time);
        std::vector<Mark> marks;
        Words number = galley_.words(
            Role::stage_number, std::to_string(stage_.number), columns_.number, y_, -1.0);
        const double baseline = y_ + number.extent.baseline;
        left_ = y_ + number.extent.height;
        const Words time =
            galley_.words(Role::stage_time, for_paper(when.time), columns_.time, y_, -1.0);
        const Words title =
            galley_.words(Role::stage_title, for_paper(called), columns_.words, y_, words_width());
        if (stage_.box) {
            marks.emplace_back(box_on(0.0, baseline, measures.box));
        }
        if (stage_.box && columns_.has_blank) {
            marks.emplace_back(Stroke{columns_.blank,
                                      baseline + 1.5,
                                      columns_.blank + measures.blank,
                                      baseline + 1.5,
                                      measures.rule});
        }
        const std::string bookmark = number.text + "  " + time.text + "  " + title.text;
        title_end_ = title.x + title.extent.width;
        baseline_ = baseline;
        y_ += title.extent.height;
        marks.emplace_back(std::move(number));
        if (!when.day.empty()) {
            marks.emplace_back(day_before(when.day, baseline));
        }
        marks.emplace_back(time);
        marks.emplace_back(title);
        add(block_, PartKind::heading, std::move(marks));
        block_.parts.back().bookmark = bookmark;
    }

    // The day, small, in front of its time.
    [[nodiscard]] Words day_before(const std::string& day, double baseline) const {
        Words words = galley_.words(Role::day, for_paper(day), columns_.day, 0.0, -1.0);
        words.y = baseline - words.extent.baseline;
        return words;
    }

    void add_length() {
        const std::string text = for_paper(stage_.length);
        if (!text.empty()) {
            const double width = columns_.words - columns_.day - galley_.measures.column_gap;
            add(block_,
                PartKind::paragraph,
                {galley_.words(Role::length, text, columns_.day, left_, width)});
            left_ = bottom_of(block_.parts.back());
        }
    }

    // Behind a title that fills neither its line nor the stage; false where it has no room there.
    bool add_beside(Role role, const std::string& small) {
        const std::string text = for_paper(small);
        const double x = title_end_ + 1.5 * galley_.measures.column_gap;
        if (text.empty() || x + galley_.width_of(role, text) > columns_.right) {
            return false;
        }
        Words words = galley_.words(role, text, x, 0.0, -1.0);
        words.y = baseline_ - words.extent.baseline;
        add(block_, PartKind::paragraph, {std::move(words)});
        return true;
    }

    void add_reminders(std::size_t count, Manner manner) {
        std::string run_on;
        for (std::size_t i = 0; i < std::min(count, stage_.reminders.size()); ++i) {
            if (manner != Manner::lines) {
                run_on += (run_on.empty() ? "" : "; ") + stage_.reminders[i];
                continue;
            }
            y_ += galley_.measures.line_gap;
            add_words(PartKind::item, Role::body, stage_.reminders[i]);
        }
        add_words(PartKind::paragraph, Role::body, run_on);
    }

    // An act that comes again is named once, behind all its times: "13:30 14:00 14:30 fold". Gives
    // back how many acts it has set.
    std::size_t add_acts(std::size_t first, Manner manner) {
        const std::vector<SheetAct>& acts = stage_.acts;
        std::size_t end = first + 1;
        while (end < acts.size() && acts[end].text == acts[first].text &&
               parted(acts[end].time).day.empty()) {
            ++end;
        }
        const Measures& measures = galley_.measures;
        const double time_in = measures.act_box + 0.6 * measures.column_gap;
        y_ += measures.line_gap;
        double x = 0.0; // where the line has got to
        for (std::size_t i = first; i < end; ++i) {
            const DayAndTime when = parted(acts[i].time);
            const std::string figures = for_paper(when.time);
            const double wide = galley_.width_of(Role::act_time, figures);
            const bool begins = i == first || x + time_in + wide > columns_.right;
            if (begins && i > first) {
                y_ += act_row(manner);
            }
            const double box = begins ? columns_.number : x;
            Words time = galley_.words(
                Role::act_time, figures, begins ? columns_.time : x + time_in, y_, -1.0);
            const double baseline = y_ + time.extent.baseline;
            x = time.x + wide + 1.4 * measures.column_gap;
            std::vector<Mark> marks{box_on(box, baseline, measures.act_box)};
            if (!when.day.empty()) {
                marks.emplace_back(day_before(when.day, baseline));
            }
            marks.emplace_back(std::move(time));
            add(block_, PartKind::item, std::move(marks));
        }
        add_act_words(for_paper(acts[first].text), std::max(columns_.words, x), manner);
        return end - first;
    }

    // From top to top of two rows of acts. Figures have no descenders: where lines are dear, they
    // need less than a line's height.
    [[nodiscard]] double act_row(Manner manner) const {
        const double line = galley_.words(Role::act_time, "0", 0.0, 0.0, -1.0).extent.height;
        return manner != Manner::lines ? 0.9 * line : line;
    }

    // What is done, behind its last time, on the same baseline; under it where that is too far
    // right.
    void add_act_words(const std::string& text, double x, Manner manner) {
        const bool behind =
            x <= columns_.words || x + galley_.width_of(Role::act, text) <= columns_.right;
        if (!behind) {
            y_ += act_row(manner);
        }
        const Words figure = galley_.words(Role::act_time, "0", 0.0, y_, -1.0);
        const double at = behind ? x : columns_.words;
        Words words = galley_.words(Role::act, text, at, 0.0, columns_.right - at);
        words.y = y_ + (behind ? figure.extent.baseline - words.extent.baseline : 0.0);
        const double bottom = words.y + words.extent.height;
        y_ = behind ? std::max(y_ + act_row(manner), bottom) : bottom;
        block_.parts.back().marks.emplace_back(std::move(words));
        block_.height = std::max(block_.height, y_);
    }

    const SheetStage& stage_;
    const StageColumns& columns_;
    const Galley& galley_;
    Block block_;
    double y_ = 0.0;    // of the words
    double left_ = 0.0; // of what is about time
    double title_end_ = 0.0;
    double baseline_ = 0.0; // of the first row
};

} // namespace

StageColumns stage_columns(const Sheet& sheet, Manner manner, const Galley& galley, double right) {
    const Measures& measures = galley.measures;
    StageColumns columns;
    double number = 0.0;
    double time = 0.0;
    double day = 0.0;
    const auto see_day = [&](const std::string& when) {
        const std::string words = for_paper(parted(when).day);
        day = words.empty() ? day : std::max(day, galley.width_of(Role::day, words) + 4.0);
    };
    for (const SheetStage& stage : sheet.stages) {
        see_day(stage.time);
        for (const SheetAct& act : stage.acts) {
            see_day(act.time);
        }
        number =
            std::max(number, galley.width_of(Role::stage_number, std::to_string(stage.number)));
        time =
            std::max(time, galley.width_of(Role::stage_time, for_paper(parted(stage.time).time)));
    }
    columns.number = measures.box + 0.8 * measures.column_gap;
    columns.day = columns.number + std::max(number, measures.act_box) + 0.8 * measures.column_gap;
    columns.time = columns.day + day;
    columns.blank = columns.time + time + 0.8 * measures.column_gap;
    columns.right = right;
    if (manner == Manner::packed) {
        columns.has_blank = false;
        columns.words = columns.blank + 0.4 * measures.column_gap;
        return columns;
    }
    // Wide enough for most lengths on one line.
    double length = 0.0;
    for (const SheetStage& stage : sheet.stages) {
        length = std::max(length, galley.width_of(Role::length, for_paper(stage.length)));
    }
    const double blank_end = columns.blank + measures.blank;
    const double length_end = std::min(columns.day + length, blank_end + measures.box);
    columns.words = std::max(blank_end, length_end) + 1.2 * measures.column_gap;
    return columns;
}

Block ahead_block(const Sheet& sheet, const Galley& galley) {
    Block block;
    const double x = galley.measures.box + 0.8 * galley.measures.column_gap;
    for (std::size_t i = 0; i < sheet.ahead.size(); ++i) {
        const std::string text = for_paper(sheet.ahead[i]);
        if (text.empty()) {
            continue;
        }
        const double y = block.height + (i > 0 ? 2.0 * galley.measures.line_gap : 0.0);
        const Words words = galley.words(Role::act, text, x, y, galley.measures.room() - x);
        add(block,
            PartKind::item,
            {box_on(0.0, y + words.extent.baseline, galley.measures.act_box), words});
    }
    return block;
}

Block column_heads(const StageColumns& columns, const Galley& galley) {
    Block block;
    if (!columns.has_blank) {
        return block;
    }
    add(block,
        PartKind::paragraph,
        {galley.words(Role::column_head, "planned", columns.time, 0.0, -1.0),
         galley.words(Role::column_head, "really", columns.blank, 0.0, -1.0)});
    return block;
}

Block stage_block(const SheetStage& stage,
                  std::size_t reminders,
                  Manner manner,
                  const StageColumns& columns,
                  const Galley& galley) {
    return StageSetter(stage, columns, galley).set(reminders, manner);
}

} // namespace loafwright::output

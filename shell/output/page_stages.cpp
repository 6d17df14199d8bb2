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

    Block set(std::size_t reminders, Manner manner) {
        add_first_row();
        const bool alone = stage_.cue.empty() && stage_.acts.empty() &&
                           (reminders == 0 || stage_.reminders.empty());
        if (manner == Manner::lines || !alone || !add_length_beside()) {
            add_length();
        }
        add_cue();
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
    bool add_length_beside() {
        const std::string text = for_paper(stage_.length);
        const double x = title_end_ + 1.5 * galley_.measures.column_gap;
        if (text.empty() || x + galley_.width_of(Role::length, text) > columns_.right) {
            return false;
        }
        Words words = galley_.words(Role::length, text, x, 0.0, -1.0);
        words.y = baseline_ - words.extent.baseline;
        add(block_, PartKind::paragraph, {std::move(words)});
        return true;
    }

    void add_cue() { add_words(PartKind::paragraph, Role::cue, stage_.cue); }

    void add_reminders(std::size_t count, Manner manner) {
        std::string run_on;
        for (std::size_t i = 0; i < std::min(count, stage_.reminders.size()); ++i) {
            if (manner == Manner::run_on) {
                run_on += (run_on.empty() ? "" : "; ") + stage_.reminders[i];
                continue;
            }
            y_ += galley_.measures.line_gap;
            add_words(PartKind::item, Role::body, stage_.reminders[i]);
        }
        add_words(PartKind::paragraph, Role::body, run_on);
    }

    // An act that comes again and again is named once: one line with its first time, then boxes and
    // times. Gives back how many acts it has set.
    std::size_t add_acts(std::size_t first, Manner manner) {
        std::size_t same = 1;
        while (first + same < stage_.acts.size() &&
               stage_.acts[first + same].text == stage_.acts[first].text) {
            ++same;
        }
        y_ += galley_.measures.line_gap;
        if (same < fewest_repeats) {
            add_act(stage_.acts[first]);
            return 1;
        }
        const double row = y_;
        add_act(stage_.acts[first]);
        add_repeats(first + 1, same - 1, row, manner);
        return same;
    }

    void add_act(const SheetAct& act) {
        const Measures& measures = galley_.measures;
        const DayAndTime when = parted(act.time);
        const Words time =
            galley_.words(Role::act_time, for_paper(when.time), columns_.time, y_, -1.0);
        const double baseline = y_ + time.extent.baseline;
        Words text =
            galley_.words(Role::act, for_paper(act.text), columns_.words, 0.0, words_width());
        text.y = baseline - text.extent.baseline;
        text_end_ = text.x + text.extent.width;
        text_baseline_ = baseline;
        const double bottom = std::max(y_ + time.extent.height, text.y + text.extent.height);
        std::vector<Mark> marks{box_on(columns_.number, baseline, measures.act_box)};
        if (!when.day.empty()) {
            marks.emplace_back(day_before(when.day, baseline));
        }
        marks.emplace_back(time);
        marks.emplace_back(std::move(text));
        add(block_, PartKind::item, std::move(marks));
        y_ = bottom;
    }

    // Behind the words of the first one, whose row begins at `row`, and on in the same columns.
    void add_repeats(std::size_t first, std::size_t count, double row, Manner manner) {
        const Measures& measures = galley_.measures;
        // Where lines are dear, as large as the words of an act: the stage and the first of them
        // are seen from afar.
        const Role role = manner == Manner::run_on ? Role::act : Role::act_time;
        double cell = 0.0;
        for (std::size_t i = first; i < first + count; ++i) {
            cell = std::max(cell, galley_.width_of(role, for_paper(stage_.acts[i].time)));
        }
        const double time_in = measures.act_box + 0.6 * measures.column_gap;
        const double step = time_in + cell + 1.4 * measures.column_gap;
        double x = columns_.words;
        while (x < text_end_ + measures.column_gap) {
            x += step;
        }
        double y = row;
        for (std::size_t i = first; i < first + count; ++i) {
            if (x > columns_.words && x + time_in + cell > columns_.right) {
                x = columns_.words;
                y = y_;
            }
            Words time = galley_.words(role, for_paper(stage_.acts[i].time), x + time_in, y, -1.0);
            if (y == row) {
                time.y = text_baseline_ - time.extent.baseline;
            }
            add(block_,
                PartKind::item,
                {box_on(x, time.y + time.extent.baseline, measures.act_box), time});
            y_ = std::max(y_, time.y + time.extent.height);
            x += step;
        }
    }
    const SheetStage& stage_;
    const StageColumns& columns_;
    const Galley& galley_;
    Block block_;
    double y_ = 0.0;        // of the words
    double left_ = 0.0;     // of what is about time
    double text_end_ = 0.0; // of the act before
    double text_baseline_ = 0.0;
    double title_end_ = 0.0;
    double baseline_ = 0.0; // of the first row
};

} // namespace

StageColumns stage_columns(const Sheet& sheet, const Galley& galley, double right) {
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
    // Wide enough for most lengths on one line.
    double length = 0.0;
    for (const SheetStage& stage : sheet.stages) {
        length = std::max(length, galley.width_of(Role::length, for_paper(stage.length)));
    }
    const double blank_end = columns.blank + measures.blank;
    const double length_end = std::min(columns.day + length, blank_end + measures.box);
    columns.words = std::max(blank_end, length_end) + 1.2 * measures.column_gap;
    columns.right = right;
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

// SPDX-License-Identifier: Apache-2.0
//
// The page on a grid of letters, for a terminal, a text file or a plain printer. Weight, space and
// alignment do the work: one column of boxes, one of numbers, one of times, one of blanks for the
// time it really was, one of words. On a narrow page the words move under their line. Nothing is
// wider than the page and nothing is torn from its unit.
#include "shell/output/text_page.hpp"

#include "engine/recipe/words.hpp"
#include "shell/output/text_lines.hpp"

#include <algorithm>
#include <string>
#include <string_view>
#include <vector>

namespace loafwright::output {

namespace {

constexpr std::size_t narrowest = 40;
constexpr std::size_t wide_from = 64;
constexpr std::size_t label_columns = 13; // "Have ready" and a gap
constexpr std::size_t gap_between_items = 4;
constexpr std::size_t most_item_columns = 2;
constexpr std::size_t longest_single_column = 7;
constexpr std::string_view box = "[ ]";
constexpr std::string_view no_box = "   ";
constexpr std::string_view blank = "____";

std::string spaces(std::size_t count) {
    return std::string(count, ' ');
}

/// The page as it grows. Lines are added whole; blanks at their ends are dropped.
class Page {
public:
    Page(std::size_t columns, Weight weight)
        : columns_(std::max(columns, narrowest)), weight_(weight) {}

    [[nodiscard]] std::size_t columns() const { return columns_; }
    [[nodiscard]] bool is_wide() const { return columns_ >= wide_from; }
    [[nodiscard]] std::string text() const { return text_; }

    [[nodiscard]] std::string strong(std::string_view words) const {
        // ECMA-48 "select graphic rendition": 1 for bold, 0 for back to plain.
        return weight_ == Weight::bold && !words.empty()
                   ? "\033[1m" + std::string(words) + "\033[0m"
                   : std::string(words);
    }

    void line(std::string words) {
        while (!words.empty() && words.back() == ' ') {
            words.pop_back();
        }
        text_ += words + "\n";
    }
    /// One empty line, never two, none at the top.
    void gap() {
        const bool has_gap = text_.size() >= 2 && text_.compare(text_.size() - 2, 2, "\n\n") == 0;
        if (!text_.empty() && !has_gap) {
            text_ += "\n";
        }
    }
    void paragraph(std::string_view words, std::size_t first_indent, std::size_t indent) {
        const std::string clean = printable(words);
        std::size_t before = first_indent;
        for (const std::string& part : wrapped(clean, columns_ - std::max(first_indent, indent))) {
            line(spaces(before) + part);
            before = indent;
        }
    }

private:
    std::size_t columns_;
    Weight weight_;
    std::string text_;
};

std::vector<std::string> all_printable(const std::vector<std::string>& texts) {
    std::vector<std::string> clean;
    for (const std::string& text : texts) {
        std::string words = printable(text);
        if (!words.empty()) {
            clean.push_back(std::move(words));
        }
    }
    return clean;
}

void add_head(Page& page, const Sheet& sheet) {
    const std::string title = printable(sheet.title);
    const std::string eat = printable(said(sheet.eat));
    const std::size_t used = columns_of(title) + columns_of(eat);
    if (used + 2 <= page.columns()) {
        page.line(page.strong(title) + spaces(page.columns() - used) + page.strong(eat));
    } else {
        for (const std::string& part : wrapped(title, page.columns())) {
            page.line(page.strong(part));
        }
        page.line(page.strong(capitalised(eat)));
    }
    page.paragraph(opening(sheet), 0, 0);
}

// How many bytes at `at` are a number with its unit, "500 g" or "1¾ oz"; 0 where there is none.
std::size_t measure_bytes(std::string_view item, std::size_t at) {
    const std::size_t begin = at;
    while (at < item.size() && ((item[at] >= '0' && item[at] <= '9') || item[at] == '.')) {
        ++at;
    }
    for (const std::string_view quarters : {"¼", "½", "¾"}) {
        if (item.substr(at, quarters.size()) == quarters) {
            at += quarters.size();
        }
    }
    if (at == begin) {
        return 0;
    }
    for (const std::string_view unit : {" g ", " oz ", " lb "}) {
        if (item.substr(at, unit.size()) == unit) {
            return at + unit.size() - 1 - begin;
        }
    }
    return 0;
}

// The amount at the front of a line, so that a column of them can be set with the units under each
// other: "500 g" in "500 g flour", "1 lb 1¾ oz" in ounces.
std::size_t amount_bytes(std::string_view item) {
    const std::size_t begin = item.rfind("about ", 0) == 0 ? 6 : 0;
    const std::size_t first = measure_bytes(item, begin);
    if (first == 0) {
        return 0;
    }
    const std::size_t end = begin + first;
    const bool pounds = item.substr(end - 2, 2) == "lb";
    const std::size_t ounces = pounds ? measure_bytes(item, end + 1) : 0;
    return ounces == 0 ? end : end + 1 + ounces;
}

// Items in columns of one width, in reading order; one column when that is all that fits.
void add_items(Page& page, std::string_view label, const std::vector<std::string>& texts) {
    const std::vector<std::string> clean = all_printable(texts);
    if (clean.empty()) {
        return;
    }
    std::size_t amount_width = 0;
    for (const std::string& item : clean) {
        amount_width = std::max(amount_width, columns_of(item.substr(0, amount_bytes(item))));
    }
    std::vector<std::string> items;
    std::size_t widest = 0;
    for (const std::string& item : clean) {
        const std::size_t bytes = amount_bytes(item);
        items.push_back(bytes > 0
                            ? padded_left(item.substr(0, bytes), amount_width) + item.substr(bytes)
                            : item);
        widest = std::max(widest, columns_of(items.back()));
    }
    const std::size_t room = page.columns() - label_columns;
    const std::size_t fit = (room + gap_between_items) / (widest + gap_between_items);
    // A short list is read and ticked off most easily from top to bottom.
    const std::size_t across = items.size() <= longest_single_column
                                   ? 1
                                   : std::clamp<std::size_t>(fit, 1, most_item_columns);
    std::string before = padded(label, label_columns);
    if (widest > room) {
        for (const std::string& item : clean) {
            bool first = true;
            for (const std::string& part : wrapped(item, room - 2)) {
                page.line(before + (first ? "" : "  ") + part);
                before = spaces(label_columns);
                first = false;
            }
        }
        return;
    }
    for (std::size_t i = 0; i < items.size(); i += across) {
        std::string row = before;
        for (std::size_t j = i; j < std::min(items.size(), i + across); ++j) {
            row += padded(items[j], widest + gap_between_items);
        }
        page.line(row);
        before = spaces(label_columns);
    }
}

void add_ready(Page& page, const std::vector<std::string>& texts) {
    const std::vector<std::string> items = all_printable(texts);
    // "Lid, cloth or film" is one thing: then a semicolon parts the things.
    const bool has_comma = std::any_of(items.begin(), items.end(), [](const std::string& item) {
        return item.find(',') != std::string::npos;
    });
    std::string list;
    for (const std::string& item : items) {
        list += (list.empty() ? "" : has_comma ? "; " : ", ") + item;
    }
    if (list.empty()) {
        return;
    }
    std::string before = padded("Have ready", label_columns);
    for (const std::string& part : wrapped(list, page.columns() - label_columns)) {
        page.line(before + part);
        before = spaces(label_columns);
    }
}

/// Where the columns of the stages stand.
struct Columns {
    std::size_t number = 2;
    std::size_t time = 5;
    [[nodiscard]] std::size_t time_at() const { return box.size() + 1 + number + 2; }
    [[nodiscard]] std::size_t words_at() const { return time_at() + time + 2 + blank.size() + 2; }
};

Columns columns_for(const std::vector<SheetStage>& stages) {
    Columns columns;
    for (const SheetStage& stage : stages) {
        columns.number = std::max(columns.number, std::to_string(stage.number).size());
        columns.time = std::max(columns.time, columns_of(stage.time));
        for (const SheetAct& act : stage.acts) {
            columns.time = std::max(columns.time, columns_of(act.time));
        }
    }
    return columns;
}

std::string front_of(const SheetStage& stage, const Columns& columns, bool with_blank) {
    return std::string(stage.box ? box : no_box) + " " +
           padded_left(std::to_string(stage.number), columns.number) + "  " +
           padded_left(printable(stage.time), columns.time) + "  " +
           std::string(with_blank && stage.box ? blank : std::string_view("    "));
}

// A title in lines of at most `room` columns where the second and later ones stand two in.
std::vector<std::string> title_lines(const std::string& title, std::size_t room) {
    return wrapped(title, columns_of(title) <= room ? room : room - 2);
}

// Words left, length at the right edge; a long title takes more lines, and the length stands on its
// first.
void add_title(Page& page,
               const std::string& front,
               std::size_t words_at,
               const SheetStage& stage) {
    const std::string length = printable(stage.length);
    const std::size_t room = page.columns() - words_at;
    const std::size_t taken = length.empty() ? 0 : columns_of(length) + 2;
    const std::size_t words_room = room > taken + 10 ? room - taken : room;
    std::string before = padded(front, words_at);
    bool first = true;
    for (const std::string& part : title_lines(printable(full_title(stage)), words_room)) {
        std::string row = before + page.strong(part);
        if (first && !length.empty() && words_room < room) {
            row += spaces(room - columns_of(part) - columns_of(length)) + length;
        }
        page.line(row);
        before = spaces(words_at + 2);
        first = false;
    }
    if (!length.empty() && words_room == room) {
        page.paragraph(length, words_at, words_at);
    }
}

void add_wide_stage(Page& page, const SheetStage& stage, const Columns& columns) {
    const std::size_t words_at = columns.words_at();
    add_title(page, front_of(stage, columns, true), words_at, stage);
    if (!stage.also.empty()) {
        page.paragraph(stage.also, words_at, words_at + 2);
    }
    for (const std::string& reminder : stage.reminders) {
        page.paragraph(reminder, words_at, words_at + 2);
    }
    for (const SheetAct& act : stage.acts) {
        // The box of an act stands a little in, beside the stage it belongs to.
        std::string before = padded("  " + std::string(box), columns.time_at()) +
                             padded_left(printable(act.time), columns.time);
        before = padded(before, words_at);
        for (const std::string& part : wrapped(printable(act.text), page.columns() - words_at)) {
            page.line(before + part);
            before = spaces(words_at);
        }
    }
    if (!stage.cue.empty()) {
        page.paragraph(stage.cue, words_at, words_at + 2);
    }
}

void add_narrow_stage(Page& page, const SheetStage& stage, const Columns& columns) {
    const std::size_t words_at = columns.time_at();
    const std::string front = front_of(stage, columns, true);
    const std::string length = printable(stage.length);
    const std::size_t used = columns_of(front) + columns_of(length);
    const bool beside = !length.empty() && used + 2 <= page.columns();
    page.line(beside ? front + spaces(page.columns() - used) + length : front);
    if (!length.empty() && !beside) {
        page.paragraph(length, words_at, words_at);
    }
    // What belongs to the title stands a little in, since there may be no weight to set it apart.
    std::size_t title_at = words_at;
    for (const std::string& part :
         title_lines(printable(full_title(stage)), page.columns() - words_at)) {
        page.line(spaces(title_at) + page.strong(part));
        title_at = words_at + 2;
    }
    if (!stage.also.empty()) {
        page.paragraph(stage.also, words_at + 2, words_at + 4);
    }
    for (const std::string& reminder : stage.reminders) {
        page.paragraph(reminder, words_at + 2, words_at + 4);
    }
    for (const SheetAct& act : stage.acts) {
        std::string before = padded("  " + std::string(box), words_at);
        const std::string words = printable(act.time) + "  " + printable(act.text);
        for (const std::string& part : wrapped(words, page.columns() - words_at - 2)) {
            page.line(before + part);
            before = spaces(words_at + 2);
        }
    }
    if (!stage.cue.empty()) {
        page.paragraph(stage.cue, words_at + 2, words_at + 4);
    }
}

void add_stages(Page& page, const std::vector<SheetStage>& stages) {
    const Columns columns = columns_for(stages);
    for (const SheetStage& stage : stages) {
        if (page.is_wide()) {
            add_wide_stage(page, stage, columns);
        } else {
            add_narrow_stage(page, stage, columns);
        }
    }
}

void add_sentences(Page& page, const std::vector<std::string>& sentences) {
    if (sentences.empty()) {
        return;
    }
    page.gap();
    for (const std::string& sentence : sentences) {
        page.paragraph(sentence, 0, 2);
    }
}

void add_normal(Page& page, const std::vector<SheetStage>& stages) {
    bool is_first = true;
    for (const SheetStage& stage : stages) {
        if (stage.normal.empty()) {
            continue;
        }
        if (is_first) {
            page.gap();
            page.line("Normal, though it may worry you:");
            is_first = false;
        }
        page.paragraph(std::to_string(stage.number) + " " + stage.normal, 2, 4);
    }
}

} // namespace

std::string text_page(const Sheet& sheet, std::size_t columns, Weight weight) {
    Page page(columns, weight);
    add_head(page, sheet);
    page.gap();
    add_items(page, "Weigh", sheet.weigh);
    add_ready(page, sheet.ready);
    add_sentences(page, sheet.ahead);
    page.gap();
    add_stages(page, sheet.stages);
    add_sentences(page, sheet.warnings);
    add_sentences(page, sheet.notes);
    add_sentences(page, sheet.cautions);
    add_normal(page, sheet.stages);
    if (!sheet.questions.empty()) {
        page.gap();
        page.line("Not known yet:");
        for (const std::string& question : sheet.questions) {
            page.paragraph(question, 2, 4);
        }
    }
    return page.text();
}

std::string text_page(const Refusal& refusal, std::size_t columns) {
    Page page(columns, Weight::plain);
    page.paragraph(refusal.why, 0, 0);
    for (const std::string& reason : refusal.reasons) {
        page.paragraph(reason, 2, 4);
    }
    if (!refusal.ways_out.empty()) {
        page.line("What would work:");
        for (const std::string& way : refusal.ways_out) {
            page.paragraph(way, 2, 4);
        }
    }
    return page.text();
}

} // namespace loafwright::output

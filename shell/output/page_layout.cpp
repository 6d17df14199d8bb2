// SPDX-License-Identifier: Apache-2.0
//
// Which type size, and what has to give way. A bread is laid out at the comfortable sizes; where it
// does not fit, between these and the least ones by halving. At the least sizes it gives up the day
// line, then reminders from the least important on, then questions. What is still too long goes on
// overleaf, with everything back in place, because then there is room.
#include "shell/output/page_layout.hpp"

#include "shell/output/page_block.hpp"
#include "shell/output/page_measures.hpp"
#include "shell/output/text_lines.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <optional>
#include <utility>

namespace loafwright::output {

namespace {

constexpr int halvings = 4;
constexpr double least_ease_with_day_line = 0.25;
constexpr std::size_t most_large_pages = 2;
constexpr std::size_t fewest_note_lines = 3;
constexpr std::size_t fewest_notes = 1; // what happens if it is slow
constexpr double most_stretch = 8.0;    // of a gap on a page that is not quite full

/// What one attempt shows.
struct Shown {
    bool day_line = false;
    Manner manner = Manner::lines;
    std::vector<std::size_t> reminders; // of each stage
    std::size_t reminders_left_out = 0;
    std::size_t questions = 0;
    std::size_t notes = 0;
};

Shown all_of(const Sheet& sheet) {
    Shown shown;
    for (const SheetStage& stage : sheet.stages) {
        shown.reminders.push_back(stage.reminders.size());
    }
    shown.questions = sheet.questions.size();
    shown.notes = sheet.notes.size() - std::min(sheet.ahead, sheet.notes.size());
    return shown;
}

// Without one more reminder: the last of the stage that has most, the latest such stage first, down
// to `least` a stage.
bool drop_reminder(Shown& shown, std::size_t least) {
    std::size_t fullest = 0;
    for (std::size_t i = 0; i < shown.reminders.size(); ++i) {
        if (shown.reminders[i] >= shown.reminders[fullest]) {
            fullest = i;
        }
    }
    if (shown.reminders.empty() || shown.reminders[fullest] <= least) {
        return false;
    }
    --shown.reminders[fullest];
    ++shown.reminders_left_out;
    return true;
}

// Gives up the thing that is missed least: the third reminder of a stage, then what is not known
// yet, which the program tells as well, the second reminder, the notes about the kitchen (the first
// one says what happens if the dough is slow), the last reminders. False when nothing
// is left.
bool give_way(Shown& shown) {
    if (shown.manner == Manner::lines) {
        shown.manner = Manner::run_on;
        return true;
    }
    if (drop_reminder(shown, 2)) {
        return true;
    }
    if (shown.questions > 0) {
        --shown.questions;
        return true;
    }
    if (drop_reminder(shown, 1)) {
        return true;
    }
    if (shown.notes > fewest_notes) {
        --shown.notes;
        return true;
    }
    return drop_reminder(shown, 0);
}
/// A bread in blocks, and where its day line would stand.
struct Column {
    Measures measures;
    std::vector<Block> blocks;
    std::size_t first_stage = 0; // the block of the column heads
    std::size_t after_stages = 0;
    double day_line_at = 0.0;
    bool day_line = false;

    [[nodiscard]] double height() const {
        double sum = 0.0;
        for (std::size_t i = 0; i < blocks.size(); ++i) {
            sum += blocks[i].height + (i > 0 ? blocks[i].gap_before : 0.0);
        }
        return sum;
    }
};

/// One bread with its options: makes attempts.
class Bread {
public:
    Bread(const Sheet& sheet, const PageOptions& options, const TypeSetter& setter)
        : sheet_(sheet), options_(options), setter_(setter) {}

    [[nodiscard]] Column attempt(const Shown& shown, double ease) const {
        Column column;
        column.measures = measures_for(options_.paper, options_.print, ease);
        const Measures& measures = column.measures;
        const Galley galley{measures, setter_};
        push(column, head_block(sheet_, options_, galley), 0.0);
        push(column, provisions_block(sheet_, galley), measures.block_gap);

        double right = measures.room();
        if (shown.day_line) {
            column.day_line = true;
            column.day_line_at = right - day_line_width(sheet_.day_line, galley);
            right = column.day_line_at - 1.6 * measures.column_gap;
        }
        const StageColumns columns = stage_columns(sheet_, galley, right);
        push(column, ahead_block(sheet_, galley), measures.block_gap);
        column.first_stage = column.blocks.size();
        if (!sheet_.stages.empty()) {
            push(column, column_heads(columns, galley), measures.block_gap);
        }
        for (std::size_t i = 0; i < sheet_.stages.size(); ++i) {
            push(column,
                 stage_block(sheet_.stages[i], shown.reminders[i], shown.manner, columns, galley),
                 i == 0 ? 0.0 : measures.stage_gap);
        }
        column.after_stages = column.blocks.size();
        push(column,
             foot_block(sheet_, shown.notes, shown.questions, shown.reminders_left_out, galley),
             measures.block_gap);
        return column;
    }

    [[nodiscard]] bool has_day_line() const {
        return sheet_.day_line.minutes > 0 && !sheet_.day_line.spans.empty();
    }

    // The roomiest attempt that fits, from `least` on; none when that does not fit.
    template <typename Fits>
    [[nodiscard]] std::optional<Column>
    roomiest(const Shown& shown, double least, Fits fits) const {
        Column best = attempt(shown, 1.0);
        if (fits(best)) {
            return best;
        }
        best = attempt(shown, least);
        if (!fits(best)) {
            return std::nullopt;
        }
        double low = least;
        double high = 1.0;
        for (int i = 0; i < halvings; ++i) {
            const double middle = 0.5 * (low + high);
            Column next = attempt(shown, middle);
            if (fits(next)) {
                low = middle;
                best = std::move(next);
            } else {
                high = middle;
            }
        }
        return best;
    }

    [[nodiscard]] const Sheet& sheet() const { return sheet_; }
    [[nodiscard]] const TypeSetter& setter() const { return setter_; }

private:
    static void push(Column& column, Block block, double gap) {
        if (!block.parts.empty()) {
            block.gap_before = gap;
            column.blocks.push_back(std::move(block));
        }
    }

    const Sheet& sheet_;
    const PageOptions& options_;
    const TypeSetter& setter_;
};

/// The pages of one bread.
class Pages {
public:
    /// `foot` stays free at the foot of each page.
    Pages(const Measures& measures, double foot) : measures_(measures), foot_(foot), pages_(1) {}

    void place(Block block) {
        const double gap = is_empty_ ? 0.0 : block.gap_before;
        if (y_ + gap + block.height <= limit()) {
            put(std::move(block), y_ + gap);
            return;
        }
        if (block.height <= limit() && !is_empty_) {
            turn();
            put(std::move(block), y_);
            return;
        }
        // Longer than a page: part by part.
        double moved = y_ + gap;
        double cut = 0.0;
        for (Part& part : block.parts) {
            if (moved + bottom_of(part) - cut > limit() && !is_empty_) {
                turn();
                moved = y_;
                cut = top_of(part);
            }
            Block single;
            single.height = bottom_of(part) - cut;
            shift(part, 0.0, -cut);
            single.parts.push_back(std::move(part));
            const double next = std::max(y_, moved + single.height);
            put(std::move(single), moved);
            y_ = next;
        }
    }

    [[nodiscard]] double y() const { return y_; }
    [[nodiscard]] double left_over() const { return limit() - y_; }
    [[nodiscard]] std::size_t count() const { return pages_.size(); }
    [[nodiscard]] std::vector<LaidPage>& pages() { return pages_; }

    void put(Block block, double y) {
        for (Part& part : block.parts) {
            shift(part, measures_.margin, measures_.margin + y);
            pages_.back().parts.push_back(std::move(part));
        }
        y_ = y + block.height;
        is_empty_ = false;
    }

private:
    [[nodiscard]] double limit() const { return measures_.depth() - foot_; }
    void turn() {
        pages_.emplace_back();
        y_ = 0.0;
        is_empty_ = true;
    }

    const Measures& measures_;
    double foot_ = 0.0;
    std::vector<LaidPage> pages_;
    double y_ = 0.0;
    bool is_empty_ = true;
};

// "Page 1 of 2: Plain tin loaf, eat at 18:30" at the foot, so that sheets are not mixed up.
void number_pages(std::vector<LaidPage>& pages, const Sheet& sheet, const Galley& galley) {
    const Measures& measures = galley.measures;
    for (std::size_t i = 0; pages.size() > 1 && i < pages.size(); ++i) {
        Words words =
            galley.words(Role::column_head,
                         for_paper(fmt::format(
                             "Page {} of {}: {}, {}", i + 1, pages.size(), sheet.title, sheet.eat)),
                         measures.margin,
                         0.0,
                         measures.room());
        words.y = measures.height - measures.margin - words.extent.height;
        Part part;
        part.marks.emplace_back(std::move(words));
        pages[i].parts.push_back(std::move(part));
    }
}

double notes_depth(const Measures& measures) {
    return measures.note_line * static_cast<double>(fewest_note_lines + 1);
}

// A single page with room to spare, but not for lines to write on, spreads out a little.
void stretch(Column& column, double depth) {
    const double spare = depth - column.height();
    if (spare <= 0.0 || column.blocks.size() < 2 ||
        spare - column.measures.block_gap >= notes_depth(column.measures)) {
        return;
    }
    const double each =
        std::min(most_stretch, spare / static_cast<double>(column.blocks.size() - 1));
    for (std::size_t i = 1; i < column.blocks.size(); ++i) {
        // The heads of the columns stay close to the first stage.
        if (i != column.first_stage + 1) {
            column.blocks[i].gap_before += each;
        }
    }
}

/// Whether a bread may go on overleaf.
enum class Overleaf { no, yes };

/// Puts the blocks of a column on pages.
std::vector<LaidPage> paged(Column column, const Bread& bread, Overleaf overleaf) {
    const Galley galley{column.measures, bread.setter()};
    const double foot =
        overleaf == Overleaf::yes ? 1.8 * column.measures.face(Role::column_head).points : 0.0;
    stretch(column, column.measures.depth() - foot);
    Pages pages(column.measures, foot);
    std::optional<Part> line;
    double stages_from = 0.0;
    for (std::size_t i = 0; i < column.blocks.size(); ++i) {
        const double gap = column.blocks[i].gap_before;
        if (i == column.first_stage) {
            stages_from = pages.y() + gap;
        }
        pages.place(std::move(column.blocks[i]));
        if (column.day_line && i + 1 == column.after_stages) {
            line = day_line_part(
                bread.sheet().day_line, galley, column.day_line_at, pages.y() - stages_from);
        }
    }
    const double room = pages.left_over() - column.measures.block_gap;
    if (room >= notes_depth(column.measures)) {
        pages.put(note_lines(galley, room), pages.y() + column.measures.block_gap);
    }
    if (line && !line->marks.empty()) {
        Block block;
        block.parts.push_back(std::move(*line));
        pages.put(std::move(block), stages_from);
    }
    number_pages(pages.pages(), bread.sheet(), galley);
    return std::move(pages.pages());
}

struct Fitted {
    Column column;
    Shown shown;
    Overleaf overleaf = Overleaf::no;
};

Fitted usual_print(const Bread& bread) {
    const auto fits = [](const Column& column) {
        return column.height() <= column.measures.depth();
    };
    Shown shown = all_of(bread.sheet());
    if (bread.has_day_line()) {
        shown.day_line = true;
        if (auto column = bread.roomiest(shown, least_ease_with_day_line, fits)) {
            return {std::move(*column), std::move(shown)};
        }
        shown.day_line = false;
    }
    const Shown everything = shown;
    do {
        if (auto column = bread.roomiest(shown, 0.0, fits)) {
            return {std::move(*column), std::move(shown)};
        }
    } while (give_way(shown));
    return {bread.attempt(everything, 0.5), everything, Overleaf::yes};
}

Fitted large_print(const Bread& bread) {
    Shown shown = all_of(bread.sheet());
    const auto fits = [&bread](const Column& column) {
        return paged(column, bread, Overleaf::yes).size() <= most_large_pages;
    };
    const Shown everything = shown;
    do {
        if (auto column = bread.roomiest(shown, 0.0, fits)) {
            return {std::move(*column), std::move(shown), Overleaf::yes};
        }
    } while (give_way(shown));
    return {bread.attempt(everything, 0.0), everything, Overleaf::yes};
}
void count_faults(const LaidPage& page, PageLayout& layout) {
    for (const Part& part : page.parts) {
        for (const Mark& mark : part.marks) {
            if (const auto* words = std::get_if<Words>(&mark)) {
                layout.unknown_letters += words->extent.unknown_letters;
                layout.cut_texts += words->extent.is_cut ? 1 : 0;
            }
        }
    }
}
} // namespace

PageLayout
lay_out(const std::vector<Sheet>& sheets, const PageOptions& options, const TypeSetter& setter) {
    PageLayout layout;
    const Measures paper = measures_for(options.paper, options.print, 0.0);
    layout.width = paper.width;
    layout.height = paper.height;
    for (const Sheet& sheet : sheets) {
        const Bread bread(sheet, options, setter);
        Fitted fitted = options.print == Print::large ? large_print(bread) : usual_print(bread);
        layout.reminders_left_out += fitted.shown.reminders_left_out;
        layout.notes_left_out += all_of(sheet).notes - fitted.shown.notes;
        layout.questions_left_out += sheet.questions.size() - fitted.shown.questions;
        for (LaidPage& page : paged(std::move(fitted.column), bread, fitted.overleaf)) {
            count_faults(page, layout);
            layout.pages.push_back(std::move(page));
        }
        if (layout.title.empty()) {
            layout.title = printable(sheet.title);
        }
    }
    if (layout.title.empty()) {
        layout.title = "Bread";
    }
    return layout;
}

} // namespace loafwright::output

// SPDX-License-Identifier: Apache-2.0
//
// Which type size, and what has to give way. A bread is laid out at the comfortable sizes; where it
// does not fit, between these and the least ones by halving. At the least sizes it gives up the day
// line, then reminders from the least important on, then questions. What is still too long goes on
// overleaf, with everything back in place, because then there is room.
#include "shell/output/page_layout.hpp"

#include "shell/output/page_block.hpp"
#include "shell/output/page_measures.hpp"
#include "shell/output/page_paging.hpp"
#include "shell/output/text_lines.hpp"

#include <algorithm>
#include <optional>
#include <utility>

namespace loafwright::output {

namespace {

constexpr int halvings = 4;
constexpr double least_ease_with_day_line = 0.25;
constexpr std::size_t most_large_pages = 2;
constexpr std::size_t fewest_notes = 1; // what happens if it is slow

/// What one attempt shows.
struct Shown {
    bool day_line = false;
    Manner manner = Manner::lines;
    std::vector<std::size_t> reminders; // of each stage
    std::size_t reminders_left_out = 0;
    std::size_t questions = 0;
    std::size_t notes = 0;
    Repeats repeats = Repeats::shown;
    Lines lines = Lines::usual;
    bool normal = false; // what is normal at each stage
};

Shown all_of(const Sheet& sheet) {
    Shown shown;
    for (const SheetStage& stage : sheet.stages) {
        shown.reminders.push_back(stage.reminders.size());
    }
    shown.questions = sheet.questions.size();
    shown.notes = sheet.notes.size();
    shown.normal = std::any_of(sheet.stages.begin(),
                               sheet.stages.end(),
                               [](const SheetStage& stage) { return !stage.normal.empty(); });
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
// is left. The clock that breads share first gives up what their own pages have too.
bool give_way(Shown& shown, SheetKind kind) {
    if (shown.manner == Manner::lines) {
        shown.manner = Manner::run_on;
        return true;
    }
    if (kind == SheetKind::shared_clock && shown.repeats == Repeats::shown) {
        shown.repeats = Repeats::on_own_pages;
        return true;
    }
    if (shown.lines == Lines::usual) {
        shown.lines = Lines::close;
        return true;
    }
    if (kind == SheetKind::shared_clock && shown.manner == Manner::run_on) {
        shown.manner = Manner::packed;
        return true;
    }
    if (shown.normal) {
        shown.normal = false; // help for a beginner, but no instruction
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

// What was given up for want of room comes back where there is some after all: at the end of a line
// that has to be there anyway. The most important first, as long as `fits` holds.
template <typename Fits>
void take_back(Shown& shown, const Shown& everything, Fits fits) {
    const auto try_with = [&shown, &fits](const auto& change) {
        Shown more = shown;
        change(more);
        const bool took = fits(more);
        if (took) {
            shown = std::move(more);
        }
        return took;
    };
    std::size_t most = 0;
    for (const std::size_t count : everything.reminders) {
        most = std::max(most, count);
    }
    for (std::size_t level = 1; level <= most; ++level) {
        for (std::size_t i = 0; i < everything.reminders.size(); ++i) {
            if (everything.reminders[i] >= level && shown.reminders[i] + 1 == level) {
                try_with([i](Shown& more) {
                    ++more.reminders[i];
                    --more.reminders_left_out;
                });
            }
        }
        while (level == 1 && shown.notes < everything.notes &&
               try_with([](Shown& more) { ++more.notes; })) {
        }
        while (level == 2 && shown.questions < everything.questions &&
               try_with([](Shown& more) { ++more.questions; })) {
        }
    }
}

/// One bread with its options: makes attempts.
class Bread {
public:
    Bread(const Sheet& sheet, const PageOptions& options, const TypeSetter& setter)
        : sheet_(sheet), options_(options), setter_(setter), says_normal_(all_of(sheet).normal) {}

    [[nodiscard]] Column attempt(const Shown& shown, double ease) const {
        Column column;
        column.measures = measures_for(options_.paper, options_.print, ease, shown.lines);
        const Measures& measures = column.measures;
        const Galley galley{measures, setter_};
        push(column, head_block(sheet_, options_, galley), 0.0);
        if (shown.repeats == Repeats::shown) {
            push(column, provisions_block(sheet_, galley), measures.block_gap);
        }

        double right = measures.room();
        if (shown.day_line) {
            column.day_line = true;
            column.day_line_at = right - day_line_width(sheet_.day_line, galley);
            right = column.day_line_at - 1.6 * measures.column_gap;
        }
        const StageColumns columns = stage_columns(sheet_, shown.manner, galley, right);
        push(column, ahead_block(sheet_, galley), measures.block_gap);
        column.first_stage = column.blocks.size();
        if (!sheet_.stages.empty()) {
            push(column, column_heads(columns, galley), measures.block_gap);
        }
        const double under_heads = shown.lines == Lines::close ? 2.5 : 0.0;
        const double above_first = columns.has_blank ? under_heads : measures.block_gap;
        for (std::size_t i = 0; i < sheet_.stages.size(); ++i) {
            push(column,
                 stage_block(sheet_.stages[i], shown.reminders[i], shown.manner, columns, galley),
                 i == 0 ? above_first : measures.stage_gap);
        }
        column.after_stages = column.blocks.size();
        push(column,
             foot_block(sheet_,
                        {shown.notes,
                         shown.questions,
                         shown.reminders_left_out,
                         shown.repeats,
                         says_normal_ && !shown.normal},
                        galley),
             measures.block_gap);
        if (shown.normal) {
            push(column, normal_block(sheet_, galley), measures.block_gap);
        }
        return column;
    }

    [[nodiscard]] bool has_day_line() const {
        return sheet_.day_line.minutes > 0 && !sheet_.day_line.spans.empty();
    }

    // The roomiest attempt that fits, from `least` on; none when that does not fit.
    template <typename Fits>
    [[nodiscard]] std::optional<Column>
    roomiest(const Shown& shown, double least, Fits fits) const {
        Column best = attempt(shown, least);
        if (!fits(best)) {
            return std::nullopt;
        }
        Column widest = attempt(shown, 1.0);
        if (fits(widest)) {
            return widest;
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

    /// Another sheet in the same way; it must outlive what is made of it.
    [[nodiscard]] Bread with(const Sheet& other) const { return {other, options_, setter_}; }
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
    bool says_normal_ = false; // was asked for
};

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
    Shown everything = shown;
    do {
        if (auto column = bread.roomiest(shown, 0.0, fits)) {
            const double ease = column->measures.ease;
            take_back(shown, everything, [&](const Shown& more) {
                return fits(bread.attempt(more, ease));
            });
            return {bread.attempt(shown, ease), std::move(shown)};
        }
    } while (give_way(shown, bread.sheet().kind));
    if (everything.normal) {
        // Not even room to say that it was left out: as if nobody had asked.
        Sheet unasked = bread.sheet();
        for (SheetStage& stage : unasked.stages) {
            stage.normal.clear();
        }
        return usual_print(bread.with(unasked));
    }
    if (bread.sheet().kind == SheetKind::shared_clock) {
        everything.manner = Manner::run_on; // on the fewest pages: it is looked at all day
        return {bread.attempt(everything, 0.0), everything, Overleaf::yes};
    }
    return {bread.attempt(everything, 0.5), everything, Overleaf::yes};
}

Fitted large_print(const Bread& bread) {
    Shown shown = all_of(bread.sheet());
    const auto fits = [&bread](const Column& column) {
        return paged(column, bread.sheet(), bread.setter(), Overleaf::yes).size() <=
               most_large_pages;
    };
    const Shown everything = shown;
    do {
        if (auto column = bread.roomiest(shown, 0.0, fits)) {
            return {std::move(*column), std::move(shown), Overleaf::yes};
        }
    } while (give_way(shown, bread.sheet().kind));
    return {bread.attempt(everything, 0.0), everything, Overleaf::yes};
}
void count_faults(const LaidPage& page, PageLayout& layout) {
    for (const Part& part : page.parts) {
        for (const Mark& mark : part.marks) {
            if (const auto* words = std::get_if<Words>(&mark)) {
                layout.unknown_letters += words->extent.unknown_letters;
                // At the foot of a page a title may be cut: it stands whole at the head of the
                // first.
                layout.cut_texts +=
                    words->extent.is_cut && words->role != Role::column_head ? 1 : 0;
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
        layout.normal_left_out += all_of(sheet).normal && !fitted.shown.normal ? 1U : 0U;
        layout.questions_left_out += sheet.questions.size() - fitted.shown.questions;
        for (LaidPage& page : paged(std::move(fitted.column), sheet, setter, fitted.overleaf)) {
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

// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "shell/output/page_layout.hpp"
#include "shell/output/page_measures.hpp"

#include <string>
#include <vector>

namespace loafwright::output {

/// A piece of a page that stays together where it can. Its parts count from its own top.
struct Block {
    std::vector<Part> parts;
    double height = 0.0;
    double gap_before = 0.0;
};

/// Puts words together with the measures of one attempt.
struct Galley {
    const Measures& measures;
    const TypeSetter& setter;

    /// The words set at x, y; ready for a part.
    [[nodiscard]] Words
    words(Role role, const std::string& text, double x, double y, double width) const;
    [[nodiscard]] Words
    words(Face face, Role role, const std::string& text, double x, double y, double width) const;
    /// How wide the text is on one line.
    [[nodiscard]] double width_of(Role role, const std::string& text) const;
};

/// Adds a part that holds these marks.
void add(Block& block, PartKind kind, std::vector<Mark> marks);

/// Moves every mark of the part.
void shift(Part& part, double right, double down);

/// The lowest point of the part.
double bottom_of(const Part& part);
double top_of(const Part& part);

/// Where the columns of the stages stand, the same on every page of a bread.
struct StageColumns {
    double number = 0.0;
    double day = 0.0; // in front of a time that has one
    double time = 0.0;
    double blank = 0.0;
    double words = 0.0;
    double right = 0.0; // where words end
    bool has_blank = true;
};

/// Reminders on a line each and lengths under their times; or, where lines are dear, reminders one
/// after the other and lengths wherever they cost no line. `packed` is for a shared clock: no
/// blanks, which the page of each bread has, and small words in the size of other small words.
enum class Manner { lines, run_on, packed };
StageColumns stage_columns(const Sheet& sheet, Manner manner, const Galley& galley, double right);

/// The parts of the page, from top to bottom.
Block head_block(const Sheet& sheet, const PageOptions& options, const Galley& galley);
Block provisions_block(const Sheet& sheet, const Galley& galley);
/// What is to be done before the start, each with a box.
Block ahead_block(const Sheet& sheet, const Galley& galley);
Block column_heads(const StageColumns& columns, const Galley& galley);
Block stage_block(const SheetStage& stage,
                  std::size_t reminders,
                  Manner manner,
                  const StageColumns& columns,
                  const Galley& galley);
/// What to have ready, cautions and questions of a shared clock stand on the pages of its breads as
/// well.
enum class Repeats { shown, on_own_pages };
/// How much of what stands under the stages is shown.
struct FootShown {
    std::size_t notes = 0;
    std::size_t questions = 0;
    std::size_t reminders_left_out = 0;
    Repeats repeats = Repeats::shown;
    bool normal_left_out = false;
};
/// Warnings and notes, cautions, questions, and what was left out.
Block foot_block(const Sheet& sheet, const FootShown& shown, const Galley& galley);
/// What is normal at each stage although it may worry a beginner.
Block normal_block(const Sheet& sheet, const Galley& galley);
/// Lines to write on, as many as `depth` holds.
Block note_lines(const Galley& galley, double depth);

/// How wide a day line is, and the line itself, from the top of the block down to `height`.
double day_line_width(const DayLine& line, const Galley& galley);
Part day_line_part(const DayLine& line, const Galley& galley, double x, double height);

} // namespace loafwright::output

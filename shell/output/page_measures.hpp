// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "shell/output/page_layout.hpp"
#include "shell/output/page_options.hpp"

namespace loafwright::output {

/// The measures of one page, in points.
struct Measures {
    double width = 0.0; // of the paper
    double height = 0.0;
    double margin = 0.0; // a centimetre and more: desktop printers reach that far
    double block_gap = 0.0;
    double stage_gap = 0.0;
    double line_gap = 0.0;   // between paragraphs of one block
    double column_gap = 0.0; // between things side by side
    double box = 0.0;
    double act_box = 0.0;
    double blank = 0.0;         // for the time it really was
    double note_line = 22.0;    // a line to write on
    double rule = 0.6;          // the weight of lines
    double module_points = 1.9; // of a short code: two thirds of a millimetre
    double ease = 0.0;
    double leading = 1.0; // of a line's usual height, but for the time to eat
    Print print = Print::usual;

    [[nodiscard]] double left() const { return margin; }
    [[nodiscard]] double right() const { return width - margin; }
    [[nodiscard]] double room() const { return width - 2.0 * margin; }
    [[nodiscard]] double depth() const { return height - 2.0 * margin; }
    /// Where the right one of two columns begins, from the left margin.
    [[nodiscard]] double second_column() const { return 0.56 * room(); }
    [[nodiscard]] Face face(Role role) const;
};

/// How near lines stand to each other.
enum class Lines { usual, close };

/// Needs: ease from 0, everything as small as it may be, to 1, as large as is comfortable.
Measures measures_for(Paper paper, Print print, double ease, Lines lines = Lines::usual);

/// More lines than this are cut with "…": only a title or a sign of some hundred letters has them.
std::size_t most_lines(Role role);

} // namespace loafwright::output

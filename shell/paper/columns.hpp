// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "shell/paper/seen.hpp"

#include <vector>

namespace loafwright::paper {

/// Lines of one column, from top to bottom.
struct Column {
    std::vector<SeenLine> lines;
    Box box;
};

/// The lines of a page in the order in which a person reads them: what runs across the whole width
/// stands between; below it the left column to its end, then the right one, and so on inside each.
/// Amounts set in a column of their own beside their ingredients are rows of a table, not a column.
///
/// Promises: every word of `lines` once; pieces of one line that stand side by side in a column are
///           one line.
std::vector<Column> columns_of(std::vector<SeenLine> lines);

} // namespace loafwright::paper

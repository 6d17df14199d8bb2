// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <algorithm>
#include <iterator>

namespace loafwright::dough {

/// One row of a table of figures: the value at a place.
struct Row {
    double at = 0.0;
    double value = 0.0;
};

/// The value between two rows, on the straight line that joins them.
///
/// Needs:    at least one row, `at` growing from row to row.
/// Promises: the row's own value at each row; the end rows' values outside the table; no jumps.
template <typename Rows>
constexpr double between_rows(const Rows& rows, double at) {
    const auto next = std::find_if(
        std::begin(rows), std::end(rows), [at](const Row& row) { return row.at >= at; });
    if (next == std::begin(rows)) {
        return next->value;
    }
    const Row& before = *std::prev(next);
    if (next == std::end(rows)) {
        return before.value;
    }
    return before.value +
           (next->value - before.value) * ((at - before.at) / (next->at - before.at));
}

/// The same with the first and last line carried on beyond the table.
///
/// Needs:    at least two rows.
template <typename Rows>
constexpr double along_rows(const Rows& rows, double at) {
    const Row& first = *std::begin(rows);
    const Row& last = *std::prev(std::end(rows));
    const auto on_line = [at](const Row& a, const Row& b) {
        return a.value + (b.value - a.value) * ((at - a.at) / (b.at - a.at));
    };
    if (at < first.at) {
        return on_line(first, *std::next(std::begin(rows)));
    }
    if (at > last.at) {
        return on_line(*std::prev(std::end(rows), 2), last);
    }
    return between_rows(rows, at);
}

} // namespace loafwright::dough

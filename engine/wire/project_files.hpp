// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/diagnostic/diagnostic.hpp"
#include "engine/schedule/project.hpp"

#include <tl/expected.hpp>

#include <string_view>

namespace loafwright::wire {

/// A project of the single-mode sets of PSPLIB (Kolisch, Sprecher, "PSPLIB - a project scheduling
/// problem library", European Journal of Operational Research 96, 1997), a file ".sm": headings in
/// words, below them a line for each activity with its successors, one with its duration and
/// demands, and the units of each resource. Renewable resources and one mode only. What follows
/// starts when what is before is over.
///
/// Needs:    nothing of `bytes`; `file` is what it is called in messages.
/// Promises: `schedule::faults_in` is empty for what is returned; activities stand in the order of
///           the file, the two ends included, and the last one starts when all others are over.
/// Errors:   text_too_long, project_unreadable, value_out_of_range, with the line; the first one.
/// Never:    throws on input.
tl::expected<schedule::Project, Diagnostics> project_from_psplib(std::string_view bytes,
                                                                 std::string_view file);

/// A project of ProGen/max (Schwindt, "ProGen/max: a new problem generator for different
/// resource-constrained project scheduling problems with minimal and maximal time lags", 1995), a
/// file ".sch" of numbers only: "activities resources 0 0", for each activity its number, 1, how
/// many follow, which, and [lag] for each, from start to start; then for each its number, 1,
/// duration and demands; then the units of each resource. Activities are numbered from 0, and the
/// two ends come on top of the count. Promises and errors as above.
tl::expected<schedule::Project, Diagnostics> project_from_rcpspmax(std::string_view bytes,
                                                                   std::string_view file);

} // namespace loafwright::wire

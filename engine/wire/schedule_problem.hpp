// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/diagnostic/diagnostic.hpp"
#include "engine/schedule/problem.hpp"

#include <tl/expected.hpp>

#include <cstddef>
#include <string_view>

namespace loafwright::wire {

/// How much of each thing one problem may hold.
inline constexpr std::size_t most_breads = 64;
inline constexpr std::size_t most_steps_of_a_bread = 500;
inline constexpr std::size_t most_lags_of_a_bread = 2000;
inline constexpr std::size_t most_alternatives_of_a_bread = 100;
inline constexpr std::size_t most_people = 50;
inline constexpr std::size_t most_windows = 1000; // of one person; rather_not and claims likewise
inline constexpr std::size_t most_temperatures = 200;
inline constexpr std::size_t most_changeovers = 40000;

struct ReadProblem {
    schedule::Problem problem;
    Diagnostics warnings;
};

/// A bare scheduling problem from its interchange form, version 1 (README.md).
///
/// Needs:    nothing of `bytes`; `file` is what it is called in messages.
/// Promises: `schedule::faults_in` is empty for what is returned. What the form may leave null may
///           also be absent.
/// Errors:   text_too_long, json_unreadable, key_missing, value_wrong_kind, value_unknown,
///           value_out_of_range, as many as can be found in one go, each with its path in the
///           file; warnings key_unknown.
/// Never:    throws on input.
tl::expected<ReadProblem, Diagnostics> schedule_problem_from_json(std::string_view bytes,
                                                                  std::string_view file);

} // namespace loafwright::wire

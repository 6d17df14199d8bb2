// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/schedule/problem.hpp"
#include "engine/schedule/solve.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace loafwright::schedule {

/// A rule by its name in README.md: of one job, or (people, oven, fridge) of all of them.
struct Reason {
    std::string rule;
    std::optional<std::size_t> job;

    friend bool operator==(const Reason& a, const Reason& b) {
        return a.rule == b.rule && a.job == b.job;
    }
};

/// Why there is no schedule and what would help.
struct Why {
    /// Rules that cannot be kept together, though they could with any one of them left out.
    /// `duration`, `lag_min`, `start_window` and `horizon` always count and are never named;
    /// `oven_temperature` includes `changeover`. Empty where those alone make it impossible, or
    /// when the limit came first.
    std::vector<Reason> reasons;
    /// As `Relief`, with "without:NAME" for each job besides. Only what was proven within the
    /// limit.
    std::optional<std::int64_t> delay;
    std::vector<std::string> enough;
    Proof proof = Proof::best; // best_found: some question hit the limit
};

/// Needs:    `solve(problem)` is NoSchedule. `conflicts` is a limit for each question of its own.
/// Promises: each entry was solved again and found to hold; the same problem gives the same answer.
/// Never:    reads a clock, throws on input.
Why why_not(const Problem& problem, std::int64_t conflicts = usual_conflicts);

/// The reasons of `why_not` alone, for somebody with ways out of their own: `delay` and `enough`
/// stay empty, and take most of the time.
Why reasons_why_not(const Problem& problem, std::int64_t conflicts = usual_conflicts);

} // namespace loafwright::schedule

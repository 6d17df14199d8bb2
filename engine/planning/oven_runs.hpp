// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/kitchen/kitchen.hpp"
#include "engine/planning/attempt.hpp"

#include <cstddef>
#include <cstdint>
#include <utility>
#include <vector>

/// One oven for several breads.
namespace loafwright::planning {

/// Bakes of one bread in an oven that stays hot between them.
struct OvenRun {
    std::size_t bread = 0;
    std::size_t first =
        0; // atoms [first, last]; those that are not bakes are done at the open door
    std::size_t last = 0;
    /// What the oven is set to, bake after bake, and for how long.
    std::vector<std::pair<Celsius, std::int64_t>> settings;
    std::int64_t hot_before = 0; // from switching a cold oven on to the start of the first bake

    [[nodiscard]] bool keeps_one_setting() const;
    [[nodiscard]] Celsius hottest() const;
};

std::vector<OvenRun> oven_runs(const std::vector<Bread>& breads);

/// Whether bakes that change the oven in the same way may stand in it together. They must then go
/// in at the same time, which `hold_together` checks.
enum class Sharing { alike, none };

/// Whether a cooler run may come before a hotter one. A falling oven costs no heat (common
/// practice).
enum class Heats { as_it_comes, hottest_first };

/// How the oven may be used.
struct OvenUseRules {
    Sharing sharing = Sharing::alike;
    Heats heats = Heats::as_it_comes;
};

/// The oven of the schedule room, and the temperature that stands for each run in it.
///
/// A run of one setting shares the oven with others of that setting; a run that changes it only
/// with its like. Between two runs the oven needs the longest change from any setting of the one to
/// any of the other: never too short, and the triangle inequality holds.
struct OvenTable {
    schedule::Oven oven;
    std::vector<int> temperature_of_run;
};
OvenTable
oven_table(const std::vector<OvenRun>& runs, const Kitchen& kitchen, const OvenUseRules& rules);

/// True when runs that change the oven alike go in together or well after each other.
bool hold_together(const std::vector<OvenRun>& runs,
                   const std::vector<Placed>& placed,
                   const Kitchen& kitchen);

/// True when no cooler run comes before a hotter one.
bool hottest_first(const std::vector<OvenRun>& runs, const std::vector<Placed>& placed);

/// When the oven is switched on, up or down for each bread, in place of what its chain says alone.
std::vector<std::vector<OvenOn>> oven_moments(const std::vector<OvenRun>& runs,
                                              const std::vector<Placed>& placed,
                                              const Kitchen& kitchen);

} // namespace loafwright::planning

// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/schedule/problem.hpp"

#include <cstddef>

/// Made-up days of 1 to 12 breads for the benches, from fixed seeds.
namespace loafwright::bench {

enum class DayKind {
    roomy,         // two days, an oven of three shelves, soakers and fridge proves
    tight,         // one oven of two shelves, every meal within an hour
    by_the_minute, // as tight, in lengths that no five divides
    alike,         // the same loaf again and again, an oven of two shelves
    cold           // one day and a night, two shelves in the fridge wanted by all
};

inline constexpr DayKind all_day_kinds[] = {
    DayKind::roomy, DayKind::tight, DayKind::by_the_minute, DayKind::alike, DayKind::cold};

const char* name_of(DayKind kind);

/// One person up to four breads and two above.
///
/// Promises: `faults_in` is empty. Whether there is a schedule depends on the seed.
schedule::Problem day_of(DayKind kind, std::size_t breads, unsigned seed);

} // namespace loafwright::bench

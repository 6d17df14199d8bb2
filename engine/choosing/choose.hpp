// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/fitting/fit.hpp"
#include "engine/kitchen/kitchen.hpp"
#include "engine/knowledge/knowledge.hpp"
#include "engine/quantity/time.hpp"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace loafwright {

/// For whose hands a bread is: someone's first bake, the next ones, or later.
enum class Suits { first, second, later };
std::string_view name_of(Suits suits);

/// A bread that could be baked.
///
/// Invariants: `because` is never empty; `eat` and `begin` are set where fits_today.
struct Choice {
    std::size_t bread = 0; // in the order given
    std::string title;
    Suits suits = Suits::later;
    bool fits_today = false;
    std::optional<Instant> begin;
    std::optional<Instant> eat;
    std::int64_t total_minutes = 0; // to when it can be cut
    std::int64_t hands_on_minutes = 0;
    std::size_t doughs = 1;
    std::size_t stages = 0; // "Eat" is none
    std::vector<std::string> because;
};

/// Which of these breads suit today and this baker, the best first.
///
/// Needs:    each of `recipes` with steps; `day` as plan() needs it.
/// Promises: one choice a bread; those that fit the day before those that do not, then those for a
///           first bake before those for later, then by fewer demands, less hands-on work, and the
///           order given; lengths are those of today's plan, or of the bread on a day that forbids
///           nothing where it does not fit; no number is given without its reasons.
/// Never:    reads a clock, throws on input.
std::vector<Choice> choose(const std::vector<FittedRecipe>& recipes,
                           const Kitchen& kitchen,
                           const Day& day,
                           const Knowledge& knowledge);

} // namespace loafwright

// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/dough/baker_units.hpp"
#include "engine/quantity/tagged.hpp"

#include <optional>

namespace loafwright::dough {

/// The two kinds of life in a leaven, and how they grow: with x = hottest - T,
///
///   mu(T) = a x^b exp(-c x) for x > 0, else 0,
///
/// the form of Gänzle, Ehmann & Hammes 1998, Appl. Environ. Microbiol. 64:2616-2623 (from memory).
/// It never quite reaches zero in the cold, so below 4 °C it says too much.
struct LeavenOrganism {
    Celsius hottest;
    PerHour a;
    double b = 0.0;
    double c = 0.0; // per °C
};

/// Parameters fitted again to the paper's table of rates as remembered; they give it back within
/// 2 %. The optimum of 27 °C and the absence of growth at 36 were read in its abstract.
inline constexpr LeavenOrganism yeast_of_leaven{Celsius(36.0), PerHour(0.0122), 2.996, 0.3373};
inline constexpr LeavenOrganism bacteria_of_leaven{Celsius(41.0), PerHour(0.1294), 1.532, 0.1929};

/// Growth in a broth; in dough the figures differ, and their ratios are what carries over.
PerHour growth_rate(const LeavenOrganism& organism, Celsius temperature);

/// hottest - b / c.
constexpr Celsius best_temperature(const LeavenOrganism& organism) {
    return organism.hottest - CelsiusDifference(organism.b / organism.c);
}

/// What the leaven comes from; it needs a while before it grows. Common practice.
enum class LeavenState {
    ripe,        // used at its peak: 0.5 / 1 / 2 hours
    from_fridge, // 1 / 2.5 / 5 hours
};
Band<Minutes> waiting_time(LeavenState state);

/// The time in which growth at a steady rate makes up for the dilution: ln(1 / inoculum) / mu.
///
/// Needs:    0 < inoculum <= 1; mu > 0.
Minutes growth_time(double inoculum, PerHour mu);

/// How long fresh flour takes to become ripe leaven: the wait, then `growth_time` at the
/// yeast's rate.
///
/// Needs:    0 < inoculum <= 1, the leaven's flour as a share of all flour.
/// Promises: less inoculum is never quicker; warmer is never slower below the yeast's best
///           temperature; the wait and the growth, uncertain by `uncertainty_of`, are joined as
///           independent.
/// Errors:   nothing where the yeast does not grow, or for an inoculum outside its range.
std::optional<Band<Minutes>> ripening_time(double inoculum, Celsius leaven, LeavenState state);

/// The time of a rise when the dough gets another share of leaven than the recipe says, at the same
/// temperature. Gas is what N0 exp(mu t) makes, so t' = ln(1 + (share / share') (exp(mu t) - 1)) /
/// mu: half the leaven costs at most ln 2 / mu, not twice the time.
///
/// Needs:    both shares > 0; stated >= 0.
/// Promises: the stated time for the stated share; more leaven is never slower.
/// Errors:   nothing where the yeast does not grow, or for a share that is not positive.
std::optional<Minutes>
rise_with_leaven(Minutes stated, double stated_share, double share, Celsius dough);

/// How much salt slows the souring, as a factor on the bacteria's rate: half at 2 % of the flour
/// (from memory, wide), none left at 4 % (Brandt, Hammes & Gänzle 2004, Eur. Food Res. Technol.
/// 218:333-338, abstract read). The yeast stands 8 %: a salted dough sours later than it rises.
Band<double> salt_on_souring(BakersPercent salt);

} // namespace loafwright::dough

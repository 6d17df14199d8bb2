// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/dough/baker_units.hpp"
#include "engine/quantity/tagged.hpp"

namespace loafwright::dough {

/// What else is in the dough, all on flour. `milk` is liquid milk, `egg` whole egg out of its
/// shell, `wholegrain` the share of the flour that is wholemeal or rye.
struct Composition {
    BakersPercent salt{};
    BakersPercent sugar{};
    BakersPercent fat{};
    BakersPercent milk{};
    BakersPercent egg{};
    BakersPercent wholegrain{};
};

/// Ordinary baker's yeast, or the kind bred for sweet dough.
enum class YeastStrain { ordinary, osmotolerant };

/// Factors on the rate of gas, 1 being a dough without that ingredient.
///
/// Few of these were ever measured where we could read it; most are from memory or practice, and
/// each band is at least 30 % of its distance from 1 wide to both sides. They serve to compare
/// doughs whose recipes do not state a time; a stated time already holds them.
///
/// Needs:    no negative share.
/// Promises: low <= likely <= high, low > 0; 1 without width for none of it; no jumps; beyond the
///           last figure the factor stays as it is.

/// 10 % slower for each 1 % of salt, 5 to 15 % (general range of baking science, from memory); kept
/// up to 5 %.
Band<double> salt_factor(BakersPercent salt);

/// Sugar slows by drawing water: ordinary yeast is hardly touched to 5 %, then 0.7 at 10, 0.4 at 20
/// and 0.2 at 30 % (threshold read in Kulp & Lorenz 2003, factors from memory). At 5 % the low end
/// is 0.8, as one test found (2.5 % yeast, glucose: Appl. Environ. Microbiol., table 3, read).
/// Osmotolerant yeast is about twice as quick at 20 %. Salt above 2 % counts five times as
/// sugar, at most as much again as the sugar there is (the trade's shorthand of 4 to 6 times, from
/// memory).
Band<double> sugar_factor(BakersPercent sugar, BakersPercent salt, YeastStrain strain);

/// 1 to 5 %, 0.95 at 10, 0.8 from 20 % (from memory).
Band<double> fat_factor(BakersPercent fat);

/// 0.95 where milk is all the liquid (60 %), 0.9 at 25 % egg, in a straight line from none (figures
/// from memory, the amounts they belong to assumed).
Band<double> milk_factor(BakersPercent milk);
Band<double> egg_factor(BakersPercent egg);

/// 1.1 to 1.3 times as quick for all wholemeal or rye (from memory); it also collapses sooner,
/// which `usable_window` says.
Band<double> wholegrain_factor(BakersPercent wholegrain);

/// All of them, joined as independent.
Band<double> rate_factor(const Composition& composition, YeastStrain strain);

} // namespace loafwright::dough

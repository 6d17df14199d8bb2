// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/dough/baker_units.hpp"
#include "engine/dough/yeast.hpp"
#include "engine/quantity/tagged.hpp"

#include <string>

namespace loafwright::fitting {

/// The baker's yeast of a dough, as the recipe has it.
///
/// Invariants: grams > 0, flour > 0 (all flour of the dough). Otherwise there is no dose to change.
struct YeastInDough {
    dough::YeastForm form = dough::YeastForm::fresh;
    Grams grams;
    Grams flour;
};

/// Less than this cannot be weighed at home (common practice).
inline constexpr Grams least_weighed{0.1};

/// The steps in which people weigh yeast: a gram from 10 g up, half a gram from 2 g, a tenth below
/// (common practice). Halves go up; never less than `least_weighed`.
Grams as_weighed(Grams grams);

/// So many grams of this yeast as fresh yeast on the flour, and back.
///
/// Needs:    the invariants of YeastInDough.
dough::BakersPercent fresh_dose(const YeastInDough& yeast, Grams grams);
Grams grams_of(const YeastInDough& yeast, dough::BakersPercent fresh);

/// True from dough::least_dose to dough::most_dose.
bool within_limits(dough::BakersPercent dose);

/// "a third of the yeast". The nearest share that has a plain name; beyond a tenth and three times,
/// "far less yeast" and "far more yeast".
///
/// Needs:    weighed > 0.
std::string dose_share(const YeastInDough& yeast, Grams weighed);

/// "a third of the yeast: 2.5 g instead of 7 g".
///
/// Needs:    weighed > 0.
std::string dose_text(const YeastInDough& yeast, Grams weighed);

} // namespace loafwright::fitting

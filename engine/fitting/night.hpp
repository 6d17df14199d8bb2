// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/fitting/options.hpp"
#include "engine/kitchen/kitchen.hpp"

#include <optional>

namespace loafwright::fitting {

/// A night, from going to bed to the next morning's work (common practice).
inline constexpr Minutes shortest_night{8.0 * 60.0};
inline constexpr Minutes usual_night{12.0 * 60.0};
inline constexpr Minutes longest_night{16.0 * 60.0};
/// The same for a dough that nothing holds back: as long as people sleep and dress.
inline constexpr Minutes night_at_the_place{10.0 * 60.0};

/// A cold dough with this share of its rise has risen: the rest comes while it loses its chill. The
/// finger test's "nearly" (common practice: 0.85 to 1).
inline constexpr double nearly_risen = 0.85;

/// With more than this share of its rise a final prove collapses, whatever the cold (common
/// practice). A first rise is then over-ripe, which the knock-back still sets right.
inline constexpr double over_proved = 1.25;

/// The rise as a night in the fridge: `options_for` says when and how.
std::optional<WaitOption> night_in_fridge(const Rising& rising, const Kitchen& kitchen);

/// The first rise as a night where the dough stands, with the little yeast that this needs.
///
/// Promises: kind less_yeast; the rise as told is made in about `night_at_the_place`; the ends are
///           a choice, from `nearly_risen` to `over_proved`, at least an hour apart.
/// Errors:   nothing for any other wait, for leaven, and outside dough::least_dose to most_dose.
std::optional<WaitOption> night_where_it_stands(const Rising& rising);

/// The dough's own temperature where it goes into the fridge for the wait.
dough::TemperatureHistory fridge_history(const Rising& rising, const Kitchen& kitchen);

} // namespace loafwright::fitting

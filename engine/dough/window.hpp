// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/quantity/tagged.hpp"

#include <optional>

namespace loafwright::dough {

/// Doughs that forgive differently.
enum class DoughFamily { lean, enriched, wholemeal_or_rye, sourdough_wheat };

/// The first rise forgives more: it is knocked back afterwards. A final prove goes to the oven.
enum class Rise { first_rise, final_prove };

/// How long a dough stays usable after it is ready, at its own temperature.
///
/// Common practice at 24 °C, and in the fridge at 4 to 5 °C once cold: 12 / 24 / 48 hours for a
/// first rise (48 h: IREKS compendium 6.3.1, read), 8 / 14 / 24 hours for a shaped dough (household
/// yeast guide, read). From 12 °C up it shortens as the yeast quickens (`relative_rate`); between
/// 12 and 5 °C its logarithm runs straight to the fridge's figure; below 5 it stays. Above 37.5 °C,
/// where yeast slows again but dough does not keep better, it stays as at 37.5.
///
/// Promises: low <= likely <= high; colder is never shorter; no jumps.
/// Errors:   nothing at and above 48 °C.
std::optional<Band<Minutes>> usable_window(DoughFamily family, Rise rise, Celsius dough);

} // namespace loafwright::dough

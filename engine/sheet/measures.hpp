// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/planning/plan.hpp"
#include "engine/quantity/phrase.hpp"
#include "engine/quantity/time.hpp"
#include "engine/sheet/options.hpp"

#include <string>
#include <string_view>

/// Measures in the units that the page is to have.
namespace loafwright::sheet {

/// "18:30" or "6:30 pm"; the two twelves are "12 noon" and "12 midnight", because few know which is
/// pm.
std::string clock(const Zone& zone, Instant moment, ClockForm form);

/// "28 °C" or "82 °F": a room, water, a core; whole degrees, half ones in °C where they were told.
std::string degrees(Celsius temperature, TemperatureScale scale);

/// "230 °C (fan 210, gas 8)" or "445 °F (fan 410, gas 8)"; °F to the nearest five, as ovens are
/// marked.
std::string oven_setting(Celsius temperature, TemperatureScale scale);

/// "500 g" or "1 lb 1¾ oz". Ounces to the quarter, as scales and spoons of that measure go; below
/// one ounce in hundredths, since a quarter of an ounce of salt or yeast is not a fourth of it.
/// What is known roughly (`about`) is not written finely.
std::string weight(Grams grams, bool about, WeightUnit unit);

/// What is done, with its oven setting in the page's scale.
std::string act_text(const Act& act, const SheetOptions& options);

std::string words_of(const Phrase& phrase, const SheetOptions& options);

/// Whose words stand between quotation marks.
enum class Quoted { recipes, ours };

/// A sentence of ours that comes as text (warnings, refusals, cautions, questions; their JSON
/// promises text): its clock times and its temperatures in °C, ranges too, in the page's units.
///
/// Needs: every temperature in it a point on the scale and not a difference.
std::string our_sentence(std::string_view text, const SheetOptions& options, Quoted quoted);

} // namespace loafwright::sheet

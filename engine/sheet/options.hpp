// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>

namespace loafwright {

enum class ClockForm { hours_24, hours_12 };
enum class TemperatureScale { celsius, fahrenheit };
enum class WeightUnit { grams, ounces };
/// How much is said. `few` is for a page that is read with one hand in the dough: time, title, when
/// to look, cue, what has a time of its own, and one reminder.
enum class Wording { full, few };

/// Whether the page also says what is normal at each stage, for somebody who has not baked before.
enum class Practice { some, first_bake };

/// How the page speaks, whatever the recipe's own units are. The recipe's own words stay as they
/// are.
struct SheetOptions {
    std::size_t reminders_a_stage = 3;
    std::size_t cautions = 3;
    std::size_t questions = 3; // in sight; the rest are counted
    ClockForm clock = ClockForm::hours_24;
    TemperatureScale temperature = TemperatureScale::celsius;
    WeightUnit weight = WeightUnit::grams;
    Wording wording = Wording::full;
    Practice practice = Practice::some;
};

} // namespace loafwright

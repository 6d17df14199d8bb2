// SPDX-License-Identifier: Apache-2.0
//
// The oven: how hot for each step, and how long it takes to get there. Heating up follows the oven
// of engine/dough, put right by the one figure a kitchen states (minutes to 220 °C); a stone or a
// heavy pot trails behind it.
#include "engine/fitting/heat.hpp"

#include "engine/dough/oven.hpp"
#include "engine/fitting/room.hpp"
#include "engine/fitting/words.hpp"
#include "engine/recipe/words.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>

namespace loafwright::fitting {

namespace {

constexpr Celsius stated_heat_up_reaches{220.0};
constexpr double coolest_oven = 40.0;
constexpr double hottest_oven = 500.0;

Celsius middle_of(const TemperatureRange& range) {
    return range.low + (range.high - range.low) / 2.0;
}

Celsius to_five_degrees(Celsius temperature) {
    return Celsius(5.0 * std::floor(temperature.degrees() / 5.0 + 0.5));
}

bool uses_the_oven(StepKind kind) {
    return kind == StepKind::bake || kind == StepKind::preheat;
}

// A temperature from the step alone, and whether it is a guess.
std::optional<OvenHeat> own_heat(const Step& step, const std::vector<Question>& questions) {
    OvenHeat heat;
    if (step.temperature) {
        heat.wanted = middle_of(*step.temperature);
        return heat;
    }
    heat.is_guess = true;
    if (step.temperature_question) {
        const Question* question = question_named(questions, *step.temperature_question);
        const auto answer =
            question != nullptr ? first_number(question->default_answer) : std::nullopt;
        if (answer && *answer >= coolest_oven && *answer <= hottest_oven) {
            heat.wanted = Celsius(*answer);
            return heat;
        }
    }
    if (step.oven_words) {
        heat.wanted = middle_of(*step.oven_words);
        return heat;
    }
    return std::nullopt;
}

} // namespace

Celsius usual_oven(DoughFamily family) {
    switch (family) {
    case DoughFamily::enriched:
        return Celsius(190.0);
    case DoughFamily::quick:
        return Celsius(180.0);
    case DoughFamily::flatbread:
        return Celsius(230.0);
    case DoughFamily::lean:
    case DoughFamily::wholegrain:
    case DoughFamily::sourdough:
        return Celsius(220.0);
    }
    return Celsius(220.0);
}

std::vector<std::optional<OvenHeat>>
oven_heats(const Reading& reading, const Kitchen& kitchen, DoughFamily family) {
    const std::vector<Step>& steps = reading.recipe.steps;
    std::vector<std::optional<OvenHeat>> heats(steps.size());
    for (std::size_t i = 0; i < steps.size(); ++i) {
        if (uses_the_oven(steps[i].kind)) {
            heats[i] = own_heat(steps[i], reading.questions);
        }
    }
    // A guess gives way to a figure the oven has already.
    std::optional<OvenHeat> before;
    for (std::size_t i = 0; i < steps.size(); ++i) {
        if (!uses_the_oven(steps[i].kind)) {
            continue;
        }
        if (steps[i].kind == StepKind::bake && before &&
            (!heats[i] || (heats[i]->is_guess && !before->is_guess))) {
            heats[i] = before;
        }
        if (heats[i]) {
            before = heats[i];
        }
    }
    std::optional<OvenHeat> next;
    for (std::size_t i = steps.size(); i > 0; --i) {
        std::optional<OvenHeat>& heat = heats[i - 1];
        if (!uses_the_oven(steps[i - 1].kind)) {
            continue;
        }
        if (!heat) {
            heat = next ? *next : OvenHeat{usual_oven(family), Celsius(0.0), true, false};
        }
        next = heat;
    }
    const Celsius reaches = kitchen.oven.max;
    for (std::optional<OvenHeat>& heat : heats) {
        if (heat) {
            heat->is_limited = heat->wanted > reaches;
            const Celsius inside = std::min(heat->wanted, reaches);
            heat->setting = std::min(reaches, to_five_degrees(inside - kitchen.oven.offset));
        }
    }
    return heats;
}

bool heats_a_stone(std::string_view text, StepKind kind) {
    const std::string words = lower_case(text);
    if (has_any_word(words,
                     {"baking stone",
                      "pizza stone",
                      "bread stone",
                      "stone",
                      "baking steel",
                      "dutch oven",
                      "cast iron pot",
                      "cast-iron pot",
                      "iron pot",
                      "cloche",
                      "lidded pot",
                      "casserole"})) {
        return kind == StepKind::preheat || kind == StepKind::bake;
    }
    // A pot beside the bake may only hold water; one in the sentence about heating the oven gets
    // hot with it.
    return kind == StepKind::preheat &&
           has_any_word(words, {"pot", "cast iron", "cast-iron", "steel"});
}

std::int64_t heat_up_minutes(const Kitchen& kitchen, Celsius setting, bool with_stone) {
    const auto room = room_here(kitchen);
    const Celsius from = room ? room->likely : usual_room;
    if (setting <= from) {
        return 0;
    }
    const double share = (setting - from) / (stated_heat_up_reaches - from);
    Minutes minutes = kitchen.oven.heat_up * share;
    const auto oven = dough::measured_oven(
        dough::OvenModel{}, from, stated_heat_up_reaches, kitchen.oven.heat_up, from);
    if (oven) {
        minutes = dough::heating_up(*oven, from, setting, from).value_or(minutes);
    }
    if (with_stone) {
        const dough::OvenAir air = kitchen.oven.fan ? dough::OvenAir::fan : dough::OvenAir::still;
        minutes = dough::hot_through(minutes, dough::usual_lag(dough::Heavy::stone, air));
    }
    return next_five(minutes);
}

std::int64_t oven_change_minutes(const Kitchen& kitchen, Celsius from, Celsius to) {
    const auto felt = room_here(kitchen);
    const Celsius room = felt ? felt->likely : usual_room;
    const dough::OvenModel oven =
        dough::measured_oven(
            dough::OvenModel{}, room, stated_heat_up_reaches, kitchen.oven.heat_up, room)
            .value_or(dough::OvenModel{});
    // Colder than the room is not reached by waiting; nobody bakes there.
    const Celsius least = room + CelsiusDifference(1.0);
    const Celsius a = std::max(from, least);
    const Celsius b = std::max(to, least);
    const auto minutes =
        a < b ? dough::heating_up(oven, a, b, room) : dough::cooling_down(oven, a, b, room);
    constexpr Minutes longest{24.0 * 60.0};
    return next_five(std::min(minutes.value_or(longest), longest));
}

std::optional<double> first_number(std::string_view answer) {
    std::size_t at = 0;
    while (at < answer.size() && !(answer[at] >= '0' && answer[at] <= '9')) {
        ++at;
    }
    if (at == answer.size()) {
        return std::nullopt;
    }
    double number = 0.0;
    double place = 0.0; // 0 before the decimal point
    for (; at < answer.size(); ++at) {
        const char c = answer[at];
        if (c == '.' && place == 0.0) {
            place = 0.1;
        } else if (c >= '0' && c <= '9') {
            const double digit = c - '0';
            if (place == 0.0) {
                number = 10.0 * number + digit;
            } else {
                number += place * digit;
                place /= 10.0;
            }
        } else {
            break;
        }
    }
    return number;
}

const Question* question_named(const std::vector<Question>& questions, std::string_view key) {
    const auto found = std::find_if(
        questions.begin(), questions.end(), [key](const Question& q) { return q.key == key; });
    return found != questions.end() ? &*found : nullptr;
}

} // namespace loafwright::fitting

// SPDX-License-Identifier: Apache-2.0
//
// Read, then sized, then raised otherwise: the one place for the command line, the server and the
// pages.
#include "engine/breads/wanted.hpp"

#include "engine/formula/amount_words.hpp"
#include "engine/recipe/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>

namespace loafwright::breads {

namespace {

std::string short_number(double value) {
    return fmt::format("{:g}", std::floor(value * 100.0 + 0.5) / 100.0);
}

// "For 24: 2 times the recipe."
Phrase size_words(const Recipe& recipe) {
    std::string words;
    if (recipe.tin) {
        words = fmt::format("For a tin of {:g} x {:g} x {:g} mm: ",
                            recipe.tin->length.count(),
                            recipe.tin->width.count(),
                            recipe.tin->height.count());
    } else if (recipe.pieces && *recipe.pieces != recipe.written_for->pieces.value_or(1.0)) {
        words = "For " + short_number(*recipe.pieces) + ": ";
    }
    return phrase("{}{} times the recipe.", {words, short_number(recipe.written_for->factor)});
}

bool counts(const Reminder& reminder) {
    const std::string words = lower_case(reminder.text);
    return words.find_first_of("0123456789") != std::string::npos || has_any_word(words,
                                                                                  {"two",
                                                                                   "three",
                                                                                   "four",
                                                                                   "five",
                                                                                   "six",
                                                                                   "seven",
                                                                                   "eight",
                                                                                   "nine",
                                                                                   "ten",
                                                                                   "twelve",
                                                                                   "fifteen",
                                                                                   "sixteen",
                                                                                   "twenty",
                                                                                   "half",
                                                                                   "halves",
                                                                                   "thirds",
                                                                                   "quarters"});
}

// "Divide into twelve" no longer holds.
void forget_pieces(Recipe& recipe) {
    for (Step& step : recipe.steps) {
        if (step.kind == StepKind::divide || step.kind == StepKind::shape) {
            step.reminders.erase(
                std::remove_if(step.reminders.begin(), step.reminders.end(), counts),
                step.reminders.end());
        }
    }
}

// A length that was asked about and is ours by now needs no answer.
void drop_answered(Reading& reading) {
    static constexpr std::string_view about_minutes = "minutes-";
    const auto idle = [&reading](const Question& question) {
        return question.key.rfind(about_minutes, 0) == 0 &&
               std::none_of(
                   reading.recipe.steps.begin(),
                   reading.recipe.steps.end(),
                   [&question](const Step& step) { return step.minutes_question == question.key; });
    };
    reading.questions.erase(
        std::remove_if(reading.questions.begin(), reading.questions.end(), idle),
        reading.questions.end());
}

} // namespace

tl::expected<Reading, Diagnostics>
as_wanted(Reading reading, const Wanted& wanted, const Knowledge& knowledge) {
    if (wanted.size) {
        auto sized = scale(reading.recipe, *wanted.size, knowledge);
        if (!sized) {
            return tl::make_unexpected(std::move(sized.error()));
        }
        const bool other_pieces = sized->pieces != reading.recipe.pieces;
        reading.recipe = std::move(*sized);
        if (reading.recipe.written_for) {
            formula::forget_amounts(reading.recipe);
            reading.recipe.changes.push_back(size_words(reading.recipe));
        }
        if (other_pieces) {
            forget_pieces(reading.recipe);
        }
    }
    if (wanted.yeast) {
        auto raised = raised_by(reading.recipe, *wanted.yeast, knowledge);
        if (!raised) {
            return tl::make_unexpected(std::move(raised.error()));
        }
        reading.recipe = std::move(*raised);
        drop_answered(reading);
    }
    return reading;
}

} // namespace loafwright::breads

// SPDX-License-Identifier: Apache-2.0
#include "engine/formula/leaven_steps.hpp"

#include "engine/formula/amount_words.hpp"
#include "engine/formula/step_edits.hpp"
#include "engine/recipe/words.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>

namespace loafwright::formula {

namespace {

constexpr Celsius usual_room{21.0};
constexpr Minutes ripens_from{120.0}; // a shorter "ferment" is a rest of the mixed dough
constexpr int heaviest = 100;         // these words are what tells the amounts

Minutes in_fives(Minutes minutes) {
    return Minutes(5.0 * std::floor(minutes.count() / 5.0 + 0.5));
}

// Building a leaven: where it ripens, and the mixing just before.
std::vector<bool> steps_of_the_leaven(const std::vector<Step>& steps) {
    std::vector<bool> out(steps.size(), false);
    for (std::size_t i = 0; i < steps.size(); ++i) {
        const Step& step = steps[i];
        const bool ripens = step.kind == StepKind::ferment &&
                            (!step.minutes || step.minutes->minutes.likely >= ripens_from ||
                             (step.part && *step.part == leaven_part));
        if (step.part && *step.part == leaven_part) {
            out[i] = true;
        }
        if (!ripens) {
            continue;
        }
        out[i] = true;
        for (std::size_t before = i; before > 0 && steps[before - 1].kind == StepKind::mix;
             --before) {
            out[before - 1] = true;
        }
    }
    for (std::size_t i = 0; i < steps.size(); ++i) {
        const auto host = steps[i].during;
        out[i] = out[i] || (host && *host < steps.size() && out[*host]);
    }
    return out;
}

// The dough is mixed in one go and left: then its "ferment" is its first rise.
bool mixes_something(const std::vector<Step>& steps, const std::vector<bool>& out) {
    for (std::size_t i = 0; i < steps.size(); ++i) {
        if (!out[i] && (steps[i].kind == StepKind::mix || steps[i].kind == StepKind::knead)) {
            return true;
        }
    }
    return false;
}

} // namespace

std::string weight_words(Grams grams) {
    return measured(grams, nullptr).weight;
}

std::vector<Step>
building(const Knowledge& knowledge, Grams seed, Grams each, const Band<Minutes>& ripens) {
    Step mix;
    mix.kind = StepKind::mix;
    mix.text = "Mix the leaven.";
    mix.part = std::string(leaven_part);
    mix.uses = {{"ripe starter", std::nullopt}};
    mix.reminders.push_back({weight_words(seed) + " starter, " + weight_words(each) + " flour, " +
                                 weight_words(each) + " water",
                             std::nullopt,
                             heaviest});
    Step ferment;
    ferment.kind = StepKind::ferment;
    ferment.text = "Leave the leaven to ripen.";
    ferment.part = std::string(leaven_part);
    ferment.minutes = TimedBand{
        {in_fives(ripens.low), in_fives(ripens.likely), in_fives(ripens.high)}, Basis::computed};
    ferment.temperature = TemperatureRange{usual_room, usual_room};
    ferment.because_made = "with leaven instead of yeast";
    if (const CueRow* row = cue_for(knowledge, StepKind::ferment, DoughFamily::sourdough)) {
        ferment.cue = Cue{std::string(row->text), std::nullopt};
    }
    return {std::move(mix), std::move(ferment)};
}

void say_what_is_left(Recipe& recipe, Grams flour, Grams water) {
    for (Step& step : recipe.steps) {
        if (step.kind == StepKind::mix && !step.part) {
            step.reminders.insert(
                step.reminders.begin(),
                {weight_words(flour) + " flour, " + weight_words(water) + " water, all the leaven",
                 std::nullopt,
                 heaviest});
            return;
        }
    }
}

void take_leaven_steps_out(Recipe& recipe) {
    std::vector<bool> out = steps_of_the_leaven(recipe.steps);
    if (mixes_something(recipe.steps, out)) {
        take_out(recipe.steps, out);
    }
    for (Step& step : recipe.steps) {
        if (step.kind == StepKind::ferment) {
            const bool short_one = step.minutes && step.minutes->minutes.likely < ripens_from;
            step.kind = short_one ? StepKind::rest : StepKind::rise;
            step.cue = step.cue && step.cue->span ? step.cue : std::nullopt;
        }
    }
    for (Step& step : recipe.steps) {
        if (step.place == Place::fridge) {
            break; // a night in the fridge stays one
        }
        step.after_night = false;
        step.clock.reset();
    }
}

void rename_use(std::vector<Step>& steps,
                const std::vector<std::string>& old,
                const std::string& item) {
    for (Step& step : steps) {
        std::vector<Use> uses;
        for (const Use& use : step.uses) {
            const bool renamed = std::find(old.begin(), old.end(), use.item) != old.end();
            const Use now = renamed ? Use{item, std::nullopt} : use;
            const bool twice = std::any_of(uses.begin(), uses.end(), [&now](const Use& other) {
                return other.item == now.item;
            });
            if (!twice) {
                uses.push_back(now);
            }
        }
        step.uses = std::move(uses);
    }
}

void forget_words(std::vector<Step>& steps, std::initializer_list<std::string_view> words) {
    for (Step& step : steps) {
        step.reminders.erase(std::remove_if(step.reminders.begin(),
                                            step.reminders.end(),
                                            [words](const Reminder& reminder) {
                                                return has_any_word(lower_case(reminder.text),
                                                                    words);
                                            }),
                             step.reminders.end());
    }
}

} // namespace loafwright::formula

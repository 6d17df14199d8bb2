// SPDX-License-Identifier: Apache-2.0
//
// What another raising agent does to the waits. The text's own times are for the old one and cannot
// be carried over: a leaven multiplies for hours before it lifts anything. So they are made anew,
// from growth where growth decides, from common practice where it does not.
#include "engine/formula/leaven_waits.hpp"

#include "engine/dough/composition.hpp"
#include "engine/dough/sourdough.hpp"
#include "engine/knowledge/family.hpp"
#include "engine/recipe/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <vector>

namespace loafwright::formula {

namespace {

constexpr Celsius usual_room{21.0};   // 20 to 22 °C, common practice
constexpr Celsius of_the_table{24.0}; // of data/stage_defaults.toml
constexpr double last_share = 0.3;    // Lowe, Experimental Cookery, read second-hand
constexpr double rich_high = 1.5;     // assumed: sugar and fat slow a leaven, nobody knows how much
constexpr Minutes long_in_the_cold{240.0};
constexpr Minutes cold_counts_as{120.0}; // of a night at 5 °C, the cooling down included
constexpr Minutes shortest_gap{15.0};

bool is_rise(const Step& step) {
    return step.kind == StepKind::rise || step.kind == StepKind::prove;
}

bool is_cold_night(const Step& step) {
    return step.place == Place::fridge && (is_rise(step) || step.kind == StepKind::chill) &&
           (!step.minutes || step.minutes->minutes.likely >= long_in_the_cold);
}

Minutes in_fives(Minutes minutes) {
    return Minutes(5.0 * std::floor(minutes.count() / 5.0 + 0.5));
}

Minutes own_minutes(const Step& step, DoughFamily family, const Knowledge& knowledge) {
    if (step.minutes) {
        return step.minutes->minutes.likely;
    }
    const StageDefaultRow* row = stage_default(knowledge, step.kind, family, step.place);
    return row != nullptr ? row->minutes.likely : Minutes(0.0);
}

bool tells_the_old(const Reminder& reminder) {
    const std::string words = lower_case(reminder.text);
    return words.find_first_of("0123456789") != std::string::npos ||
           has_any_word(words, {"hour", "hours", "minutes", "doubled", "double", "doubles"});
}

void forget_old_times(Step& step) {
    step.reminders.erase(
        std::remove_if(step.reminders.begin(), step.reminders.end(), tells_the_old),
        step.reminders.end());
}

/// Gives step `index` its new length, and what runs inside it the same share of it as before.
void give(Recipe& recipe,
          std::size_t index,
          const TimedBand& minutes,
          Minutes before,
          Celsius place,
          std::string_view because) {
    Step& step = recipe.steps[index];
    step.minutes = {{in_fives(minutes.minutes.low),
                     in_fives(minutes.minutes.likely),
                     in_fives(minutes.minutes.high)},
                    minutes.basis};
    step.temperature = TemperatureRange{place, place};
    step.because_made = std::string(because);
    step.minutes_question.reset();
    step.clock.reset();
    step.after_night = false;
    forget_old_times(step);
    step.alternatives.erase(
        std::remove_if(step.alternatives.begin(),
                       step.alternatives.end(),
                       [](const Alternative& other) { return other.place != Place::fridge; }),
        step.alternatives.end());
    if (!(before > Minutes(0.0))) {
        return;
    }
    const double ratio = step.minutes->minutes.likely / before;
    for (Step& inside : recipe.steps) {
        if (inside.during != index) {
            continue;
        }
        if (inside.repeat) {
            inside.repeat = std::max(shortest_gap, in_fives(*inside.repeat * ratio));
            forget_old_times(inside);
        }
        if (inside.after_start) {
            inside.after_start = in_fives(*inside.after_start * ratio);
            forget_old_times(inside);
        }
    }
}

// A dough that is looked at for having doubled, or not yet, is looked at otherwise.
void give_sign(Step& step, DoughFamily family, const Knowledge& knowledge) {
    const bool old = !step.cue || !step.cue->span ||
                     has_any_word(lower_case(step.cue->text),
                                  {"double", "doubled", "doubles", "half as big again"});
    const CueRow* row = cue_for(knowledge, step.kind, family);
    if (old && row != nullptr) {
        step.cue = Cue{std::string(row->text), std::nullopt};
    }
}

} // namespace

WaitsChanged
give_leaven_waits(Recipe& recipe, double inoculum, DoughFamily told, const Knowledge& knowledge) {
    WaitsChanged changed;
    const auto all = dough::ripening_time(inoculum, usual_room, dough::LeavenState::ripe);
    constexpr double rich_from = 0.1; // as family_of draws the line
    const Makeup makeup = makeup_of(recipe, knowledge);
    const double stretched = makeup.enrichment_share > rich_from ? rich_high : 1.0;
    // Bran and rye feed it.
    const Band<double> quicker =
        dough::wholegrain_factor(dough::BakersPercent(100.0 * makeup.wholegrain_share));
    std::vector<std::size_t> waits;
    for (std::size_t i = 0; i < recipe.steps.size(); ++i) {
        const Step& step = recipe.steps[i];
        if (is_cold_night(step) || (is_rise(step) && step.place != Place::fridge)) {
            waits.push_back(i);
        }
    }
    if (!all || waits.empty()) {
        return changed;
    }
    const auto weight = [&](std::size_t i) {
        return is_cold_night(recipe.steps[i]) ? cold_counts_as
                                              : own_minutes(recipe.steps[i], told, knowledge);
    };
    Minutes before_last(0.0);
    for (std::size_t w = 0; w + 1 < waits.size(); ++w) {
        before_last += weight(waits[w]);
    }
    std::vector<double> shares;
    for (std::size_t w = 0; w < waits.size(); ++w) {
        shares.push_back(waits.size() == 1       ? 1.0
                         : w + 1 == waits.size() ? last_share
                         : before_last > Minutes(0.0)
                             ? (1.0 - last_share) * (weight(waits[w]) / before_last)
                             : (1.0 - last_share) / static_cast<double>(waits.size() - 1));
    }
    for (std::size_t w = 0; w < waits.size(); ++w) {
        Step& step = recipe.steps[waits[w]];
        if (step.place == Place::fridge) {
            continue;
        }
        const Minutes before = own_minutes(step, told, knowledge);
        const Band<Minutes> minutes{all->low * (shares[w] / quicker.high),
                                    all->likely * (shares[w] / quicker.likely),
                                    all->high * (shares[w] * stretched / quicker.low)};
        give(recipe,
             waits[w],
             {minutes, Basis::computed},
             before,
             usual_room,
             "with leaven instead of yeast");
        give_sign(step, DoughFamily::sourdough, knowledge);
        changed.before += before;
        changed.after += step.minutes->minutes.likely;
    }
    return changed;
}

WaitsChanged give_yeast_waits(Recipe& recipe, const Knowledge& knowledge) {
    WaitsChanged changed;
    const DoughFamily family = family_of(recipe, knowledge);
    for (std::size_t i = 0; i < recipe.steps.size(); ++i) {
        Step& step = recipe.steps[i];
        const StageDefaultRow* row = stage_default(knowledge, step.kind, family, Place::counter);
        if (!is_rise(step) || step.place == Place::fridge || row == nullptr) {
            continue;
        }
        const Minutes before = own_minutes(step, DoughFamily::sourdough, knowledge);
        give(recipe,
             i,
             {row->minutes, Basis::assumed},
             before,
             of_the_table,
             "with yeast instead of leaven");
        give_sign(step, family, knowledge);
        changed.before += before;
        changed.after += step.minutes->minutes.likely;
    }
    return changed;
}

std::string rough_time(Minutes minutes) {
    constexpr double by_hours_from = 115.0;
    if (minutes.count() >= by_hours_from) {
        return fmt::format("{:.0f} h", std::floor(minutes.count() / 60.0 + 0.5));
    }
    const double quarters = 15.0 * std::floor(minutes.count() / 15.0 + 0.5);
    return fmt::format("{:.0f} min", std::max(15.0, quarters));
}

} // namespace loafwright::formula

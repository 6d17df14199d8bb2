// SPDX-License-Identifier: Apache-2.0
//
// A dose of yeast belongs to a dough and not to a wait, and a dough comes to its next wait as warm
// as the last one left it. So one change of one wait is a change of the bread, worked out from the
// first rise to the last.
#include "engine/fitting/otherwise.hpp"

#include "engine/dough/yeast.hpp"
#include "engine/fitting/heat.hpp"
#include "engine/fitting/night.hpp"
#include "engine/fitting/rolls.hpp"
#include "engine/fitting/words.hpp"
#include "engine/recipe/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>
#include <vector>

namespace loafwright::fitting {

namespace {

bool rises(const FittedStep& step) {
    return step.kind == StepKind::rise || step.kind == StepKind::prove;
}

/// Which waits are other, and how.
struct Wanted {
    std::vector<std::size_t> warm; // indices in FittedRecipe::steps
    std::optional<std::size_t> night;
    bool in_fridge = false;
    std::optional<Grams> yeast;
};

struct Refitted {
    FittedRecipe recipe;
    std::optional<Grams> night_needs; // the dose
};

Minutes minutes_of(std::int64_t minutes) {
    return Minutes(static_cast<double>(minutes));
}

Band<std::int64_t> in_fives(const Band<Minutes>& minutes) {
    const std::int64_t likely = nearest_five(minutes.likely);
    return {std::min(likely, nearest_five(minutes.low)),
            likely,
            std::max(likely, nearest_five(minutes.high))};
}

/// A quicker dough forgives for a shorter time.
void shorten_patience(FittedStep& step, std::int64_t told) {
    if (step.holds_minutes && step.minutes.likely < told) {
        step.holds_minutes = *step.holds_minutes * step.minutes.likely / told / 5 * 5;
    }
}

class Refit {
public:
    Refit(const FittedRecipe& told, const Kitchen& kitchen) : told_(told), kitchen_(kitchen) {
        for (std::size_t f = 0; f < told.steps.size(); ++f) {
            if (told.steps[f].kind == StepKind::bake || told.steps[f].kind == StepKind::cook) {
                break;
            }
            if (rises(told.steps[f])) {
                rises_.push_back(f);
            }
        }
    }

    [[nodiscard]] const std::vector<std::size_t>& rises_before_the_oven() const { return rises_; }

    /// A dose can be followed through the bread: baker's yeast alone, in waits that depend on it.
    [[nodiscard]] bool dose_can_change() const {
        return told_.yeast && !rises_.empty() &&
               std::all_of(told_.steps.begin(), told_.steps.end(), [](const FittedStep& step) {
                   const bool plain = step.rising && doseable(*step.rising) && !step.stretch &&
                                      step.place != Place::fridge;
                   return step.kind != StepKind::ferment && (!rises(step) || plain);
               });
    }

    [[nodiscard]] bool worked_inside(std::size_t fitted) const {
        const auto& text = told_.steps[fitted].step;
        return std::any_of(told_.steps.begin(), told_.steps.end(), [&](const FittedStep& other) {
            return other.attention == Attention::hands && other.step && text &&
                   told_.recipe.steps[*other.step].during == text;
        });
    }

    /// The waits in order, each beginning as warm as the one before left the dough.
    [[nodiscard]] std::optional<Refitted> run(const Wanted& wanted) const {
        Refitted out{told_, std::nullopt};
        std::optional<Celsius> comes; // none: as told
        Grown grown;
        for (std::size_t f = 0; f < told_.steps.size(); ++f) {
            FittedStep& step = out.recipe.steps[f];
            if (!rises(step)) {
                continue;
            }
            const bool warm =
                std::find(wanted.warm.begin(), wanted.warm.end(), f) != wanted.warm.end();
            const bool night = wanted.night == f;
            if (!warm && !night && !comes && !wanted.yeast) {
                continue;
            }
            if (!step.rising) {
                return std::nullopt;
            }
            comes = night ? take_night(out, step, comes, wanted.in_fridge)
                          : take_other(step, comes, warm, dose_at(wanted, grown));
            if (wanted.yeast) {
                // A dough that rises for longer has grown more yeast by its next wait.
                const Rising& rising = *told_.steps[f].rising;
                grown.told += grown_in(history_of(rising), rising.minutes.likely);
                grown.now += grown_in(night && wanted.in_fridge ? fridge_history(rising, kitchen_)
                                                                : history_of(rising),
                                      minutes_of(step.minutes.likely));
            }
            if (!comes) {
                return std::nullopt;
            }
        }
        return out;
    }

private:
    /// In the waits so far.
    struct Grown {
        dough::BakersPercent told{0.0};
        dough::BakersPercent now{0.0};
    };

    [[nodiscard]] std::optional<OtherDose> dose_at(const Wanted& wanted, const Grown& grown) const {
        if (!wanted.yeast) {
            return std::nullopt;
        }
        return OtherDose{fresh_dose(*told_.yeast, told_.yeast->grams) + grown.told,
                         fresh_dose(*told_.yeast, *wanted.yeast) + grown.now};
    }

    // Both give the dough's temperature at the end, or nothing where it cannot be.
    [[nodiscard]] std::optional<Celsius> take_night(Refitted& out,
                                                    FittedStep& step,
                                                    std::optional<Celsius> comes,
                                                    bool in_fridge) const {
        Rising rising = *step.rising;
        if (comes) {
            const auto minutes = rise_again(rising, {*comes, rising.stands, std::nullopt});
            if (!minutes) {
                return std::nullopt;
            }
            rising.dough = *comes;
            rising.minutes = *minutes;
        }
        const auto option =
            in_fridge ? night_in_fridge(rising, kitchen_) : night_where_it_stands(rising);
        if (!option) {
            return std::nullopt;
        }
        step.place = option->place;
        step.minutes = option->minutes;
        step.basis = Basis::computed;
        step.reason = option->effect;
        step.stretch = true;
        if (option->yeast) {
            out.night_needs = option->yeast->likely;
        }
        const Minutes lasts = minutes_of(step.minutes.likely);
        return dough::dough_at(in_fridge ? fridge_history(rising, kitchen_) : history_of(rising),
                               lasts);
    }

    [[nodiscard]] std::optional<Celsius> take_other(FittedStep& step,
                                                    std::optional<Celsius> comes,
                                                    bool warm,
                                                    std::optional<OtherDose> dose) const {
        const Rising& rising = *step.rising;
        const OtherRise other{
            comes.value_or(rising.dough), warm ? *kitchen_.warm_spot : rising.stands, dose};
        const auto minutes = rise_again(rising, other);
        if (!minutes) {
            return std::nullopt;
        }
        const std::int64_t told = step.minutes.likely;
        step.minutes = in_fives(*minutes);
        step.basis = Basis::computed;
        step.place = warm ? Place::warm : step.place;
        const std::int64_t longer = step.minutes.likely - told;
        step.reason = longer > 0   ? duration_text(longer) + " longer"
                      : longer < 0 ? duration_text(-longer) + " shorter"
                                   : "as long as before";
        step.reason += warm && dose ? " in your warm spot with another dose of yeast"
                       : warm       ? " in your warm spot"
                       : dose       ? " with another dose of yeast"
                                    : ", since the dough comes at another temperature";
        shorten_patience(step, told);
        return dough::dough_at(dough::in_one_place(other.dough, other.stands, rising.time_constant),
                               minutes_of(step.minutes.likely));
    }

    const FittedRecipe& told_;
    const Kitchen& kitchen_;
    std::vector<std::size_t> rises_;
};

/// The night asks for the dose that the other waits were worked out with, or for the next one that
/// can be weighed: between the two nobody could tell.
bool settled(std::optional<Grams> needed, std::optional<Grams> taken) {
    constexpr Grams one_step{0.5};
    if (!needed || !taken) {
        return !needed && !taken;
    }
    return *needed - *taken <= one_step && *taken - *needed <= one_step;
}

/// "a third of the yeast, 2.5 g instead of 7 g".
Phrase dose_words(const YeastInDough& yeast, Grams weighed) {
    return phrase("{}, {} instead of {}", {dose_share(yeast, weighed), weighed, yeast.grams});
}

std::string wait_words(const FittedRecipe& recipe, std::size_t fitted) {
    const auto count = std::count_if(recipe.steps.begin(),
                                     recipe.steps.end(),
                                     [](const FittedStep& step) { return rises(step); });
    return recipe.steps[fitted].kind == StepKind::prove ? "the prove"
           : count > 1                                  ? "the first rise"
                                                        : "the rise";
}

/// The page weighs the new dose, and no sentence of the text tells the old one.
void weigh_out(FittedRecipe& made, Grams weighed) {
    const double share = weighed / made.yeast->grams;
    for (Ingredient& ingredient : made.recipe.ingredients) {
        if (is_yeast_of_the_dough(ingredient)) {
            const Band<Grams> told = *ingredient.grams;
            ingredient.grams =
                exactly(Grams(std::floor(told.likely.count() * share * 10.0 + 0.5) / 10.0));
            ingredient.about = false;
        }
    }
    for (Step& step : made.recipe.steps) {
        step.reminders.erase(std::remove_if(step.reminders.begin(),
                                            step.reminders.end(),
                                            [](const Reminder& reminder) {
                                                return has_any_word(lower_case(reminder.text),
                                                                    {"yeast"}) &&
                                                       first_number(reminder.text);
                                            }),
                             step.reminders.end());
    }
    made.yeast->grams = weighed;
}

/// How the waits that are not named in the change have moved, for the note.
Phrase other_waits(const FittedRecipe& told, const FittedRecipe& made, const Wanted& wanted) {
    Phrase words;
    for (std::size_t f = 0; f < told.steps.size(); ++f) {
        const bool named =
            wanted.night == f ||
            std::find(wanted.warm.begin(), wanted.warm.end(), f) != wanted.warm.end();
        const std::int64_t longer = made.steps[f].minutes.likely - told.steps[f].minutes.likely;
        if (!rises(told.steps[f]) || named || longer == 0) {
            continue;
        }
        words += phrase("; {} takes {} {}",
                        {wait_words(told, f),
                         duration_text(longer > 0 ? longer : -longer),
                         std::string(longer > 0 ? "longer" : "less")});
    }
    return words;
}

/// What every bread made otherwise has: its note first, and no further change.
MadeOtherwise finished(FittedRecipe made, const Phrase& change, const Phrase& more) {
    MadeOtherwise out;
    Phrase note = with_capital(change);
    note += more;
    note += phrase(".");
    made.notes.insert(made.notes.begin(), std::move(note));
    made.dough = Grams(0.0);
    for (FittedStep& step : made.steps) {
        step.rising.reset();
        step.options.clear();
    }
    out.recipe = std::move(made);
    out.change = plain_text(change);
    return out;
}

MadeOtherwise with_waits(const FittedRecipe& told,
                         const Kitchen& kitchen,
                         FittedRecipe made,
                         const Wanted& wanted,
                         const Phrase& change) {
    if (made.notes_about_waits > 0) {
        made.notes.erase(made.notes.begin(),
                         made.notes.begin() + static_cast<std::ptrdiff_t>(made.notes_about_waits));
        made.notes_about_waits = 0;
    }
    const Phrase more = other_waits(told, made, wanted);
    if (wanted.yeast) {
        const auto old_swap = yeast_swap_words(*told.yeast, kitchen);
        weigh_out(made, *wanted.yeast);
        const auto swap = yeast_swap_words(*made.yeast, kitchen);
        if (old_swap && swap) {
            std::replace(made.notes.begin(), made.notes.end(), *old_swap, *swap);
        }
    }
    return finished(std::move(made), change, more);
}

std::optional<MadeOtherwise>
in_the_warm_spot(const FittedRecipe& told, const Kitchen& kitchen, Otherwise how) {
    const Refit refit(told, kitchen);
    const std::vector<std::size_t>& all = refit.rises_before_the_oven();
    if (all.empty() || (all.size() < 2 && how != Otherwise::warm_rises)) {
        return std::nullopt;
    }
    Wanted wanted;
    for (const std::size_t f : all) {
        const bool last = f == all.back();
        const bool meant = how == Otherwise::warm_rises || (how == Otherwise::warm_prove) == last;
        if (!meant) {
            continue;
        }
        const FittedStep& step = told.steps[f];
        // A spot that is the oven is wanted for the bake.
        const bool taken = last && kitchen.warm_spot_is_oven;
        if (taken || !step.rising || step.stretch || step.place == Place::fridge ||
            !suits_warm_spot(*step.rising, kitchen)) {
            return std::nullopt;
        }
        wanted.warm.push_back(f);
    }
    auto made = refit.run(wanted);
    if (!made) {
        return std::nullopt;
    }
    std::string which = wait_words(told, wanted.warm.front());
    if (wanted.warm.size() > 1) {
        which = how == Otherwise::warm_rise ? "the rises"
                : wanted.warm.size() == 2   ? "both rises"
                                            : "all rises";
    }
    const Phrase change = phrase("your warm spot, {}, for {}", {*kitchen.warm_spot, which});
    return with_waits(told, kitchen, std::move(made->recipe), wanted, change);
}

std::optional<MadeOtherwise>
with_dose(const FittedRecipe& told, const Kitchen& kitchen, double factor) {
    const Refit refit(told, kitchen);
    if (!refit.dose_can_change()) {
        return std::nullopt;
    }
    const YeastInDough& yeast = *told.yeast;
    Wanted wanted;
    wanted.yeast = as_weighed(yeast.grams * factor);
    const bool moves = factor < 1.0 ? *wanted.yeast < yeast.grams : *wanted.yeast > yeast.grams;
    if (!moves || !within_limits(fresh_dose(yeast, *wanted.yeast))) {
        return std::nullopt;
    }
    auto made = refit.run(wanted);
    return made ? std::optional(with_waits(told,
                                           kitchen,
                                           std::move(made->recipe),
                                           wanted,
                                           dose_words(yeast, *wanted.yeast)))
                : std::nullopt;
}

std::optional<MadeOtherwise>
over_night(const FittedRecipe& told, const Kitchen& kitchen, Otherwise how) {
    const Refit refit(told, kitchen);
    const std::vector<std::size_t>& all = refit.rises_before_the_oven();
    const bool last = how == Otherwise::fridge_prove;
    if (all.empty() || (!last && all.size() < 2)) {
        return std::nullopt;
    }
    Wanted wanted;
    wanted.night = last ? all.back() : all.front();
    wanted.in_fridge = how != Otherwise::slow_rise;
    const FittedStep& step = told.steps[*wanted.night];
    if (!step.rising || step.stretch || step.place == Place::fridge ||
        (!last && step.kind != StepKind::rise) || refit.worked_inside(*wanted.night) ||
        (last && told.dough_leaves_oven)) {
        return std::nullopt;
    }
    // The dose moves the waits before the night, and with them how warm the dough comes to it.
    constexpr int rounds = 5;
    for (int round = 0; round < rounds; ++round) {
        auto made = refit.run(wanted);
        if (!made) {
            return std::nullopt;
        }
        if (made->night_needs && !refit.dose_can_change()) {
            return std::nullopt;
        }
        if (settled(made->night_needs, wanted.yeast)) {
            const std::string which = wait_words(told, *wanted.night);
            Phrase change = wanted.in_fridge ? phrase("a night in the fridge for {}", {which})
                                             : phrase("{} overnight where it stands", {which});
            if (wanted.yeast) {
                change += phrase(" with ");
                change += dose_words(*told.yeast, *wanted.yeast);
            }
            return with_waits(told, kitchen, std::move(made->recipe), wanted, change);
        }
        wanted.yeast = made->night_needs;
    }
    return std::nullopt;
}

} // namespace

std::string_view name_of(Otherwise how) {
    switch (how) {
    case Otherwise::warm_prove:
        return "warm-prove";
    case Otherwise::warm_rise:
        return "warm-rise";
    case Otherwise::warm_rises:
        return "warm-rises";
    case Otherwise::rolls:
        return "rolls";
    case Otherwise::more_yeast:
        return "more-yeast";
    case Otherwise::less_yeast:
        return "less-yeast";
    case Otherwise::fridge_prove:
        return "fridge-prove";
    case Otherwise::fridge_rise:
        return "fridge-rise";
    case Otherwise::slow_rise:
        return "slow-rise";
    }
    return {};
}

std::optional<Otherwise> otherwise_named(std::string_view name) {
    const auto* const found = std::find_if(all_otherwise.begin(),
                                           all_otherwise.end(),
                                           [name](Otherwise how) { return name_of(how) == name; });
    return found == all_otherwise.end() ? std::nullopt : std::optional(*found);
}

bool takes_a_night(Otherwise how) {
    return how == Otherwise::fridge_prove || how == Otherwise::fridge_rise ||
           how == Otherwise::slow_rise;
}

std::optional<MadeOtherwise>
made_otherwise(const FittedRecipe& told, const Kitchen& kitchen, Otherwise how) {
    switch (how) {
    case Otherwise::warm_prove:
    case Otherwise::warm_rise:
    case Otherwise::warm_rises:
        return in_the_warm_spot(told, kitchen, how);
    case Otherwise::rolls: {
        auto rolls = as_rolls(told, kitchen);
        return rolls ? std::optional(finished(std::move(*rolls),
                                              phrase("the same dough as rolls"),
                                              phrase("; shaping, bake and cooling are our guess")))
                     : std::nullopt;
    }
    case Otherwise::more_yeast:
        return with_dose(told, kitchen, 1.5);
    case Otherwise::less_yeast:
        return with_dose(told, kitchen, 0.5);
    case Otherwise::fridge_prove:
    case Otherwise::fridge_rise:
    case Otherwise::slow_rise:
        return over_night(told, kitchen, how);
    }
    return std::nullopt;
}

} // namespace loafwright::fitting

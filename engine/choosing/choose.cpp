// SPDX-License-Identifier: Apache-2.0
#include "engine/choosing/choose.hpp"

#include "engine/choosing/demands.hpp"
#include "engine/fitting/words.hpp"
#include "engine/planning/plan.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <numeric>
#include <tuple>
#include <utility>
#include <variant>

namespace loafwright {

namespace {

using choosing::Demand;

// Three small things can be learned at one bake (assumed).
constexpr int most_for_a_second_bake = 3;

int sum_of(const std::vector<Demand>& demands) {
    return std::accumulate(demands.begin(), demands.end(), 0, [](int sum, const Demand& demand) {
        return sum + demand.weight;
    });
}

Suits suits_of(const std::vector<Demand>& demands) {
    const int sum = sum_of(demands);
    if (sum == 0) {
        return Suits::first;
    }
    const bool wants_practice = demands.front().weight > 1;
    return wants_practice || sum > most_for_a_second_bake ? Suits::later : Suits::second;
}

// The same bread on a day that forbids nothing.
Plan at_leisure(const FittedRecipe& recipe, const Kitchen& kitchen, const Day& day) {
    Day free;
    free.zone = day.zone;
    free.now = day.now;
    const PlanOutcome outcome = plan(recipe, kitchen, free);
    const auto* made = std::get_if<Plan>(&outcome);
    return made != nullptr ? *made : Plan{};
}

// As people tell it: in fives.
std::string about(std::int64_t minutes) {
    return fitting::duration_text((minutes + 2) / 5 * 5);
}

std::string when_text(const Day& day, Instant moment) {
    const std::string clock = clock_text(day.zone, moment);
    const bool today = civil_of(day.zone, moment).date == civil_of(day.zone, day.now).date;
    return today ? clock : day_text(day.zone, moment) + ", " + clock;
}

struct Weighed {
    Choice choice;
    int demand = 0;
};

Weighed weigh(const FittedRecipe& recipe,
              std::size_t bread,
              const Kitchen& kitchen,
              const Day& day,
              const Knowledge& knowledge) {
    Weighed out;
    Choice& choice = out.choice;
    choice.bread = bread;
    choice.title = recipe.recipe.title;
    const PlanOutcome outcome = plan(recipe, kitchen, day);
    const auto* today = std::get_if<Plan>(&outcome);
    const Plan made = today != nullptr ? *today : at_leisure(recipe, kitchen, day);
    choice.fits_today = today != nullptr;
    choice.total_minutes = made.total_minutes;
    choice.hands_on_minutes = made.hands_on_minutes;
    choice.doughs = choosing::doughs_in(recipe);
    choice.stages = static_cast<std::size_t>(
        std::count_if(made.stages.begin(), made.stages.end(), [](const Stage& stage) {
            return stage.attention != Attention::none;
        }));
    choice.because.push_back(fmt::format("{} of your hands in {}{}.",
                                         about(choice.hands_on_minutes),
                                         about(choice.total_minutes),
                                         choice.doughs == 1 ? ", one dough" : ""));
    if (today != nullptr) {
        choice.begin = made.start;
        choice.eat = made.eat.likely;
        choice.because.push_back(fmt::format("Begin at {} and eat at {}.",
                                             when_text(day, made.start),
                                             when_text(day, made.eat.likely)));
    } else {
        const Impossible& no = std::get<Impossible>(outcome);
        choice.because.push_back(no.why);
        if (!no.ways_out.empty()) {
            choice.because.push_back("What would work: " + no.ways_out.front().change + ".");
        }
    }
    const std::vector<Demand> demands = choosing::demands_of(recipe, made, knowledge);
    for (const Demand& demand : demands) {
        choice.because.push_back(demand.says);
    }
    choice.suits = suits_of(demands);
    if (choice.suits == Suits::first) {
        choice.because.emplace_back("Nothing in it asks for practice: a bread to begin with.");
    }
    out.demand = sum_of(demands);
    return out;
}

} // namespace

std::string_view name_of(Suits suits) {
    switch (suits) {
    case Suits::first:
        return "first";
    case Suits::second:
        return "second";
    case Suits::later:
        break;
    }
    return "later";
}

std::vector<Choice> choose(const std::vector<FittedRecipe>& recipes,
                           const Kitchen& kitchen,
                           const Day& day,
                           const Knowledge& knowledge) {
    std::vector<Weighed> all;
    all.reserve(recipes.size());
    for (std::size_t i = 0; i < recipes.size(); ++i) {
        all.push_back(weigh(recipes[i], i, kitchen, day, knowledge));
    }
    const auto place = [](const Weighed& one) {
        return std::make_tuple(!one.choice.fits_today,
                               one.choice.suits,
                               one.demand,
                               one.choice.hands_on_minutes,
                               one.choice.bread);
    };
    std::sort(all.begin(), all.end(), [&](const Weighed& a, const Weighed& b) {
        return place(a) < place(b);
    });
    std::vector<Choice> out;
    out.reserve(all.size());
    for (Weighed& one : all) {
        out.push_back(std::move(one.choice));
    }
    return out;
}

} // namespace loafwright

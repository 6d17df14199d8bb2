// SPDX-License-Identifier: Apache-2.0
//
// The log of a bake is a fold over the same events as the bake itself (progress.cpp), laid beside
// the plan. What was inferred there, because a later line was told of, keeps its time here but is
// not `timed`: whoever learns from logs counts only what somebody saw.
#include "engine/following/bake_log.hpp"

#include "engine/following/growth.hpp"
#include "engine/following/progress.hpp"
#include "engine/knowledge/family.hpp"
#include "engine/planning/chain.hpp"

#include <algorithm>
#include <cstddef>
#include <set>

namespace loafwright {

namespace {

using following::BreadProgress;
using planning::Atom;
using planning::BreadChain;

// The step that gives a line its kind: the longest of those that ask what the line asks.
const Atom* longest_atom(const BreadChain& chain, const Stage& stage) {
    const Atom* longest = nullptr;
    for (std::size_t k = stage.first_part; k < std::min(stage.last_part, chain.atoms.size()); ++k) {
        const Atom& atom = chain.atoms[k];
        if (!atom.fitted || (atom.attention != stage.attention && longest != nullptr)) {
            continue;
        }
        const bool better = longest == nullptr || longest->attention != stage.attention ||
                            atom.minutes.likely > longest->minutes.likely;
        longest = better ? &atom : longest;
    }
    return longest;
}

// What one atom would take in a kitchen of which nothing is known.
double usual_minutes(const FittedRecipe& recipe, const Atom& atom) {
    const auto likely = static_cast<double>(atom.minutes.likely);
    if (!atom.fitted) {
        return likely;
    }
    const FittedStep& step = recipe.steps[*atom.fitted];
    if (!step.usual_minutes || step.minutes.likely <= 0) {
        return likely;
    }
    return likely * static_cast<double>(step.usual_minutes->likely) /
           static_cast<double>(step.minutes.likely);
}

LoggedLine planned_line(const FittedRecipe& recipe, const BreadChain& chain, const Stage& stage) {
    LoggedLine line;
    line.stage = stage.own_number;
    line.title = stage.title;
    line.attention = stage.attention;
    for (std::size_t k = stage.first_part; k < std::min(stage.last_part, chain.atoms.size()); ++k) {
        const Atom& atom = chain.atoms[k];
        line.minutes.low += atom.minutes.low;
        line.minutes.likely += atom.minutes.likely;
        line.minutes.high += atom.minutes.high;
        line.usual_minutes += usual_minutes(recipe, atom);
        line.chosen = line.chosen || atom.stretch;
    }
    const Atom* atom = longest_atom(chain, stage);
    if (atom == nullptr) {
        // The last minutes until it can be cut.
        line.kind = StepKind::cool;
        return line;
    }
    const FittedStep& step = recipe.steps[*atom->fitted];
    line.kind = step.kind;
    line.place = step.place;
    line.basis = step.basis;
    line.setting = step.kind == StepKind::bake ? step.oven : std::nullopt;
    if (step.rising) {
        line.stands = step.rising->stands;
    }
    if (line.kind == StepKind::rise || line.kind == StepKind::prove ||
        line.kind == StepKind::ferment) {
        line.wanted_growth =
            following::growth_wanted(stage.cue ? stage.cue->text : std::string(), line.kind);
    }
    return line;
}

// Percentages on the flour, by the rows of the ingredient table.
DoughPercents percents_of(const FittedRecipe& fitted, const Knowledge& knowledge) {
    double flour = 0.0;
    double water = 0.0;
    double salt = 0.0;
    double sugar = 0.0;
    double fat = 0.0;
    for (const Ingredient& ingredient : fitted.recipe.ingredients) {
        const IngredientRow* row = ingredient.known_as.empty()
                                       ? nullptr
                                       : ingredient_named(knowledge, ingredient.known_as);
        if (row == nullptr || !ingredient.grams) {
            continue;
        }
        const double grams = ingredient.grams->likely.count();
        if (row->role == "flour") {
            flour += grams;
            continue; // the flour's own water is not counted
        }
        const auto part = [grams](const std::optional<double>& percent) {
            return grams * percent.value_or(0.0) / 100.0;
        };
        water += part(row->water_percent);
        sugar += part(row->sugar_percent);
        fat += part(row->fat_percent);
        salt += row->role == "salt" ? grams : part(row->salt_percent);
    }
    DoughPercents percents;
    if (!(flour > 0.0)) {
        return percents;
    }
    const auto on_flour = [flour](double grams) { return 100.0 * grams / flour; };
    percents.water = water > 0.0 ? std::optional(on_flour(water)) : std::nullopt;
    percents.salt = salt > 0.0 ? std::optional(on_flour(salt)) : std::nullopt;
    percents.sugar = on_flour(sugar);
    percents.fat = on_flour(fat);
    if (fitted.yeast) {
        percents.yeast = fitting::fresh_dose(*fitted.yeast, fitted.yeast->grams).count();
    }
    return percents;
}

template <typename Value>
void add_once(std::vector<Value>& all, const Value& value) {
    if (std::find(all.begin(), all.end(), value) == all.end()) {
        all.push_back(value);
    }
}

void add_told(Told& told, const Told& more) {
    told.crust = more.crust ? more.crust : told.crust;
    told.crumb = more.crumb ? more.crumb : told.crumb;
    told.again = more.again ? more.again : told.again;
    for (const std::string& symptom : more.symptoms) {
        add_once(told.symptoms, symptom);
    }
    for (const std::string& change : more.changed) {
        add_once(told.changed, change);
    }
}

/// Which begins and ends of one bread's lines somebody told.
struct ToldTimes {
    std::set<int> begun;
    std::set<int> done;
};

void add_event(BakeLog& log, ToldTimes& times, const Event& event) {
    if (event.kind == EventKind::told) {
        add_told(log.told, event.told);
        return;
    }
    if (event.kind == EventKind::note) {
        log.notes.push_back(event.text);
    }
    if (event.kind == EventKind::begun) {
        times.begun.insert(event.stage);
        times.done.insert(event.stage - 1);
    } else if (event.kind == EventKind::done) {
        times.done.insert(event.stage);
        times.begun.insert(event.stage + 1);
    }
    const auto line =
        std::find_if(log.lines.begin(), log.lines.end(), [&event](const LoggedLine& logged) {
            return logged.stage == event.stage;
        });
    if (line == log.lines.end()) {
        return;
    }
    if (event.kind == EventKind::temperature) {
        line->temperatures.push_back({event.at, event.measured, event.celsius});
    } else if (event.kind == EventKind::trouble) {
        line->troubles.push_back(event.trouble);
    }
}

void add_progress(LoggedLine& line, const BreadProgress& progress, const ToldTimes& times) {
    const auto index = static_cast<std::size_t>(line.stage) - 1;
    if (line.stage < 1 || index >= progress.size()) {
        return;
    }
    const following::LineProgress& went = progress[index];
    line.begun = went.begun;
    line.done = went.done;
    line.timed = went.begun && went.done && times.begun.count(line.stage) > 0 &&
                 times.done.count(line.stage) > 0;
    if (went.grown) {
        line.grown = LoggedGrowth{went.grown->at, went.grown->growth};
    }
}

} // namespace

std::optional<std::int64_t> real_minutes(const LoggedLine& line) {
    if (!line.begun || !line.done) {
        return std::nullopt;
    }
    return minutes_between(*line.begun, *line.done);
}

const LoggedLine* line_of(const BakeLog& log, StepKind kind) {
    const LoggedLine* longest = nullptr;
    for (const LoggedLine& line : log.lines) {
        if (line.kind == kind &&
            (longest == nullptr || line.minutes.likely > longest->minutes.likely)) {
            longest = &line;
        }
    }
    return longest;
}

std::vector<BakeLog> bake_logs(const Plan& plan,
                               const std::vector<FittedRecipe>& recipes,
                               const std::vector<Event>& events,
                               const Knowledge& knowledge) {
    const std::vector<const Plan*> plans = following::breads_of(plan);
    const auto progress = following::progress_of(plan, events, knowledge);
    std::vector<BakeLog> logs;
    std::vector<ToldTimes> times(plans.size());
    for (std::size_t b = 0; b < plans.size() && b < recipes.size(); ++b) {
        const FittedRecipe& recipe = recipes[b];
        BakeLog log;
        log.bread = recipe.recipe.title;
        log.family = recipe.family;
        log.leaven = leaven_of(recipe.recipe, knowledge);
        log.dough = percents_of(recipe, knowledge);
        const BreadChain chain = planning::chain_of(recipe);
        for (const Stage& stage : plans[b]->stages) {
            if (stage.first_part < stage.last_part) {
                log.lines.push_back(planned_line(recipe, chain, stage));
            }
        }
        logs.push_back(std::move(log));
    }
    for (const Event* event : following::in_order(events)) {
        if (event->bread < logs.size()) {
            add_event(logs[event->bread], times[event->bread], *event);
        }
    }
    for (std::size_t b = 0; b < logs.size(); ++b) {
        for (LoggedLine& line : logs[b].lines) {
            add_progress(line, progress[b], times[b]);
        }
    }
    return logs;
}

} // namespace loafwright

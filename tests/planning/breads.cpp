// SPDX-License-Identifier: Apache-2.0
#include "tests/planning/breads.hpp"

#include <algorithm>
#include <stdexcept>

namespace loafwright::planning {

BreadMaker::BreadMaker(std::string title) {
    made_.recipe.title = std::move(title);
}

std::size_t BreadMaker::step(StepKind kind,
                             Band<std::int64_t> minutes,
                             const std::string& text,
                             const More& more) {
    Step step;
    step.kind = kind;
    step.place = more.place;
    step.text = text;
    step.part = more.part;
    step.during = more.during;
    step.after = more.after;
    step.reminders = more.reminders;
    if (more.repeat) {
        step.repeat = Minutes(*more.repeat);
    }
    FittedStep fitted;
    fitted.step = made_.recipe.steps.size();
    fitted.kind = kind;
    fitted.place = more.place;
    fitted.attention = attention_of(kind);
    fitted.minutes = minutes;
    fitted.reason = "made up";
    fitted.stretch = more.stretch;
    fitted.holds_minutes = more.holds;
    fitted.heat_up_minutes = more.heat_up;
    if (more.oven) {
        fitted.oven = Celsius(*more.oven);
    }
    if (more.cue) {
        fitted.cue = Cue{*more.cue, std::nullopt};
    }
    made_.recipe.steps.push_back(step);
    made_.steps.push_back(fitted);
    return *fitted.step;
}

std::size_t BreadMaker::step(StepKind kind, Band<std::int64_t> minutes, const std::string& text) {
    return step(kind, minutes, text, More{});
}

FittedRecipe BreadMaker::bread(Band<std::int64_t> cut, Band<std::int64_t> best) const {
    FittedRecipe bread = made_;
    bread.cut_after_minutes = cut;
    bread.best_after_minutes = best;
    return bread;
}

namespace {

BreadMaker::More holding(std::int64_t minutes) {
    BreadMaker::More more;
    more.holds = minutes;
    return more;
}

BreadMaker::More baked_at(double oven) {
    BreadMaker::More more;
    more.oven = oven;
    return more;
}

FittedRecipe loaf(bool fridge) {
    BreadMaker maker(fridge ? "Overnight loaf" : "Plain tin loaf");
    maker.step(StepKind::weigh, {8, 10, 15}, "Weigh everything");
    maker.step(StepKind::mix, {5, 8, 12}, "Bring it together with your fingers");
    maker.step(StepKind::knead, {8, 10, 15}, "Knead for ten minutes");
    BreadMaker::More rise = holding(30);
    rise.cue = "doubled";
    maker.step(StepKind::rise, {65, 80, 105}, "Cover it and forget about it", rise);
    maker.step(StepKind::knock_back, {1, 2, 3}, "Knock it back gently");
    maker.step(StepKind::shape, {5, 8, 10}, "Roll it up tightly and lay it in a greased 2lb tin");
    BreadMaker::More prove = holding(20);
    if (fridge) {
        prove.place = Place::fridge;
        prove.stretch = true;
        prove.holds = 60;
    }
    prove.cue = "domes above the rim";
    prove.reminders = {{"not too warm", std::nullopt, 20}, {"cover again", std::nullopt, 70}};
    const Band<std::int64_t> length =
        fridge ? Band<std::int64_t>{480, 600, 840} : Band<std::int64_t>{40, 50, 70};
    maker.step(StepKind::prove, length, "Cover again and leave it", prove);
    maker.step(StepKind::preheat, exactly<std::int64_t>(20), "Set the oven to 230", baked_at(230));
    BreadMaker::More first = baked_at(230);
    first.heat_up = 20;
    maker.step(StepKind::bake, exactly<std::int64_t>(10), "Bake for 10 minutes", first);
    maker.step(
        StepKind::bake, {20, 25, 32}, "Turn the oven down to 200 for another 25", baked_at(200));
    maker.step(
        StepKind::cool, exactly<std::int64_t>(60), "Out of the tin at once and on to a rack");
    maker.step(StepKind::serve, exactly<std::int64_t>(0), "Eat");
    return maker.bread({60, 60, 60}, {100, 110, 125});
}

} // namespace

FittedRecipe tin_loaf() {
    return loaf(false);
}

FittedRecipe tin_loaf_that_can_change() {
    FittedRecipe recipe = tin_loaf();
    recipe.yeast = fitting::YeastInDough{dough::YeastForm::instant, Grams(7.0), Grams(500.0)};
    recipe.dough = Grams(847.0);
    for (const auto& [item, grams] : {std::pair("strong white flour", 500.0),
                                      std::pair("water", 330.0),
                                      std::pair("salt", 10.0),
                                      std::pair("instant yeast", 7.0)}) {
        Ingredient ingredient;
        ingredient.text = ingredient.item = item;
        ingredient.grams = exactly(Grams(grams));
        recipe.recipe.ingredients.push_back(ingredient);
    }
    for (FittedStep& step : recipe.steps) {
        step.reason = "from the recipe";
        if (step.kind == StepKind::rise || step.kind == StepKind::prove) {
            fitting::Rising rising;
            rising.kind = step.kind;
            rising.minutes = {Minutes(static_cast<double>(step.minutes.low)),
                              Minutes(static_cast<double>(step.minutes.likely)),
                              Minutes(static_cast<double>(step.minutes.high))};
            rising.dough = Celsius(step.kind == StepKind::rise ? 24.0 : 22.5);
            rising.stands = Celsius(21.0);
            rising.time_constant = Minutes(110.0);
            rising.yeast = recipe.yeast;
            rising.mass = recipe.dough;
            step.rising = rising;
        }
    }
    return recipe;
}

FittedRecipe overnight_loaf() {
    return loaf(true);
}

FittedRecipe long_sourdough() {
    BreadMaker maker("Long sourdough");
    BreadMaker::More leaven;
    leaven.part = "leaven";
    const auto ferment = [&](const std::string& text) {
        BreadMaker::More more = leaven;
        more.holds = 120;
        maker.step(StepKind::ferment, {360, 480, 600}, text, more);
    };
    maker.step(StepKind::mix, {3, 5, 8}, "Mix the starter with flour and water", leaven);
    ferment("Leave the leaven until bubbly");
    maker.step(StepKind::mix, {3, 5, 8}, "Feed the leaven again", leaven);
    ferment("Leave the leaven until it floats");
    maker.step(StepKind::mix, {5, 10, 15}, "Mix flour and water");
    maker.step(StepKind::soak, {30, 40, 60}, "Leave to soak", holding(60));
    maker.step(StepKind::mix, {5, 8, 10}, "Work in leaven and salt");
    const std::size_t rise = maker.step(
        StepKind::rise, {210, 240, 300}, "Cover and leave at room temperature", holding(45));
    BreadMaker::More folds;
    folds.during = rise;
    folds.repeat = 45.0;
    maker.step(StepKind::fold, {2, 3, 5}, "Fold three times, every 45 minutes", folds);
    maker.step(StepKind::shape, {3, 5, 8}, "Shape loosely into a round");
    maker.step(StepKind::rest, {10, 15, 20}, "Rest on the bench", holding(10));
    maker.step(StepKind::shape, {5, 8, 10}, "Shape tightly and lay in a basket");
    maker.step(StepKind::rest, {15, 20, 25}, "Rest again, covered", holding(20));
    maker.step(StepKind::prepare, {1, 2, 3}, "Dust the top with rice flour");
    BreadMaker::More night;
    night.place = Place::fridge;
    night.stretch = true;
    night.holds = 60;
    maker.step(StepKind::prove, {480, 720, 960}, "Prove in the fridge overnight", night);
    maker.step(StepKind::finish, {1, 2, 3}, "Slash the top");
    BreadMaker::More hot = baked_at(250);
    hot.heat_up = 45;
    maker.step(StepKind::bake, exactly<std::int64_t>(20), "Bake with the lid on", hot);
    maker.step(
        StepKind::bake, {18, 22, 28}, "Take the lid off and turn down to 220", baked_at(220));
    maker.step(StepKind::cool, exactly<std::int64_t>(60), "Cool on a rack");
    maker.step(StepKind::serve, exactly<std::int64_t>(0), "Eat");
    return maker.bread({60, 60, 60}, {150, 180, 240});
}

FittedRecipe soda_bread() {
    BreadMaker maker("Soda bread");
    maker.step(StepKind::mix, {3, 5, 8}, "Mix quickly");
    maker.step(StepKind::shape, {2, 3, 5}, "Shape into a round on a tray");
    BreadMaker::More hot = baked_at(220);
    hot.heat_up = 20;
    maker.step(StepKind::bake, {30, 33, 40}, "Bake until hollow", hot);
    return maker.bread({20, 20, 20}, {30, 40, 50});
}

Instant at(const std::string& text) {
    const auto instant = parse_rfc3339(text);
    if (!instant) {
        throw std::invalid_argument(text);
    }
    return *instant;
}

Day day_at(const std::string& now) {
    Day day;
    day.now = at(now);
    return day;
}

Day day_with_sleep(const std::string& now, ClockTime from, ClockTime to, int days) {
    Day day = day_at(now);
    day.sleep_known = true;
    const std::int64_t today = days_from_civil(civil_of(day.zone, day.now).date);
    for (std::int64_t d = today - 1; d < today + days; ++d) {
        const bool next_morning = to.hour < from.hour;
        day.windows.push_back(
            {0,
             Presence::asleep,
             instant_of(day.zone, {civil_from_days(d), from, 0}).value(),
             instant_of(day.zone, {civil_from_days(d + (next_morning ? 1 : 0)), to, 0}).value()});
    }
    return day;
}

const Plan& plan_in(const PlanOutcome& outcome) {
    if (!std::holds_alternative<Plan>(outcome)) {
        throw std::runtime_error("impossible: " + std::get<Impossible>(outcome).why);
    }
    return std::get<Plan>(outcome);
}

std::string clock(const Day& day, Instant instant) {
    return clock_text(day.zone, instant);
}

std::vector<std::string>
broken_promises(const FittedRecipe& recipe, const Day& day, const Plan& plan) {
    std::vector<std::string> broken;
    const auto expect = [&broken](bool kept, const std::string& what) {
        if (!kept) {
            broken.push_back(what);
        }
    };
    expect(!plan.stages.empty() && plan.stages.size() <= 9, "one to nine stages");
    expect(plan.start.seconds + 60 > day.now.seconds, "nothing begins before now");
    expect(plan.eat.low <= plan.eat.likely && plan.eat.likely <= plan.eat.high, "eat in order");
    expect(plan.out_of_oven <= plan.cut_from && plan.cut_from <= plan.best_from, "oven, cut, best");
    expect(plan.total_minutes == minutes_between(plan.start, plan.cut_from), "total");
    std::vector<bool> shown(recipe.recipe.steps.size(), false);
    for (std::size_t s = 0; s < plan.stages.size(); ++s) {
        const Stage& stage = plan.stages[s];
        expect(stage.number == static_cast<int>(s) + 1, "numbers");
        expect(!stage.title.empty(), "titles");
        expect(s == 0 || plan.stages[s - 1].start <= stage.start, "stages in order of start");
        expect(stage.start <= stage.end.low && stage.end.low <= stage.end.likely &&
                   stage.end.likely <= stage.end.high,
               "end in order: " + stage.title);
        expect(s + 1 == plan.stages.size() || stage.end.likely <= plan.stages[s + 1].start,
               "stages do not overlap: " + stage.title);
        for (const std::size_t step : stage.steps) {
            shown[step] = true;
        }
        for (const Act& act : stage.acts) {
            expect(!act.text.empty(), "acts have words");
            expect(stage.start <= act.at && act.at <= stage.end.high,
                   "acts inside: " + act.text + " at " +
                       std::to_string(act.at.seconds / 60 - stage.start.seconds / 60) + " of " +
                       stage.title + ", which lasts " +
                       std::to_string((stage.end.high.seconds - stage.start.seconds) / 60));
            expect(act.at == later_by_minutes(stage.start, act.after_start_minutes), "act offsets");
        }
        const auto blocked = [&](Instant from, Instant to, bool busy) {
            const std::size_t people = std::max<std::size_t>(1, day.people.size());
            for (std::size_t p = 0; p < people; ++p) {
                const bool met = std::any_of(
                    day.windows.begin(), day.windows.end(), [&](const PresenceWindow& w) {
                        return w.person == p && w.from < to && from < w.to &&
                               (busy || w.state != Presence::busy);
                    });
                if (!met) {
                    return false;
                }
            }
            return true;
        };
        if (stage.attention == Attention::hands) {
            expect(!blocked(stage.start, stage.end.likely, true),
                   "work in a window: " + stage.title);
        }
        for (const Act& act : stage.acts) {
            expect(
                !blocked(act.at,
                         later_by_minutes(act.at, 1),
                         act.text.rfind("oven on", 0) != 0 && stage.attention != Attention::near),
                "act in a window: " + act.text);
        }
        if (stage.attention == Attention::near) {
            for (Instant m = stage.start; m < stage.end.likely; m = later_by_minutes(m, 1)) {
                expect(!blocked(m, later_by_minutes(m, 1), false), "nobody watches the oven");
            }
        }
    }
    for (std::size_t step = 0; step < shown.size(); ++step) {
        expect(shown[step] || recipe.recipe.steps[step].kind == StepKind::store,
               "step shown: " + recipe.recipe.steps[step].text);
    }
    for (const FreeSpan& span : plan.free) {
        expect(minutes_between(span.from, span.to) >= 20, "free spans of twenty minutes");
    }
    if (day.eat_by) {
        expect(plan.eat.likely == *day.eat_by && plan.cut_from <= *day.eat_by, "ready by the wish");
    }
    if (day.start) {
        expect(plan.start == *day.start, "begins when asked");
    }
    return broken;
}

} // namespace loafwright::planning

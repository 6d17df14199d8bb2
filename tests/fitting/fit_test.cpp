// SPDX-License-Identifier: Apache-2.0
//
// fit as a whole, on recipes built by hand: what stays, what is carried over, what is put in.
#include "engine/fitting/fit.hpp"
#include "engine/fitting/words.hpp"
#include "tests/fitting/recipes.hpp"

#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <iterator>
#include <stdexcept>
#include <string>
#include <vector>

namespace loafwright {
namespace {

const Knowledge& knowledge() {
    static const Knowledge built = built_in_knowledge();
    return built;
}

const FittedStep& first(const FittedRecipe& recipe, StepKind kind) {
    const auto found = std::find_if(recipe.steps.begin(),
                                    recipe.steps.end(),
                                    [kind](const auto& step) { return step.kind == kind; });
    if (found == recipe.steps.end()) {
        throw std::runtime_error("no step of kind " + std::string(name_of(kind)));
    }
    return *found;
}

std::vector<StepKind> kinds(const FittedRecipe& recipe) {
    std::vector<StepKind> out;
    for (const FittedStep& step : recipe.steps) {
        out.push_back(step.kind);
    }
    return out;
}

bool has_question(const FittedRecipe& recipe, const std::string& key) {
    return std::any_of(recipe.questions.begin(), recipe.questions.end(), [&key](const Question& q) {
        return q.key == key;
    });
}

/// The likely minutes one after the other, up to and without `until`; heating runs beside the last
/// wait.
std::int64_t likely_sum(const FittedRecipe& recipe, StepKind until) {
    std::int64_t sum = 0;
    for (const FittedStep& step : recipe.steps) {
        if (step.kind == until) {
            break;
        }
        if (step.kind != StepKind::preheat) {
            sum += step.minutes.likely;
        }
    }
    return sum;
}

TEST(fit, a_plain_tin_loaf_in_one_day_takes_as_long_as_bakers_say) {
    // Common practice: 3 to 4 hours from the flour to out of the oven, 4 to 5.5 hours to the first
    // slice.
    for (const double room : {20.0, 21.0, 22.0, 23.0}) {
        const FittedRecipe loaf = fit(tin_loaf(), kitchen_at(room), knowledge());
        const std::int64_t out_of_oven = likely_sum(loaf, StepKind::cool);
        EXPECT_GE(out_of_oven, 165) << room;
        EXPECT_LE(out_of_oven, 240) << room;
        EXPECT_LE(out_of_oven + loaf.cut_after_minutes.likely, 330) << room;
    }
    const FittedRecipe loaf = fit(tin_loaf(), Kitchen{}, knowledge());
    EXPECT_GE(likely_sum(loaf, StepKind::cool), 180);
    EXPECT_LE(likely_sum(loaf, StepKind::cool), 240);
    EXPECT_GE(likely_sum(loaf, StepKind::cool) + loaf.cut_after_minutes.likely, 240);
    EXPECT_LE(likely_sum(loaf, StepKind::cool) + loaf.best_after_minutes.likely, 330);
}

TEST(fit, puts_in_weighing_heating_and_cooling_where_the_text_has_none) {
    const FittedRecipe loaf = fit(tin_loaf(), Kitchen{}, knowledge());
    using K = StepKind;
    const std::vector<StepKind> expected = {K::weigh,
                                            K::mix,
                                            K::knead,
                                            K::rise,
                                            K::knock_back,
                                            K::shape,
                                            K::prove,
                                            K::preheat,
                                            K::bake,
                                            K::cool};
    EXPECT_EQ(kinds(loaf), expected);
    EXPECT_FALSE(first(loaf, K::weigh).step);
    EXPECT_EQ(first(loaf, K::bake).heat_up_minutes, 20);
    EXPECT_EQ(first(loaf, K::preheat).oven, Celsius(220.0));
    EXPECT_EQ(first(loaf, K::cool).minutes.likely, 60);
}

TEST(fit, what_the_text_has_is_not_put_in_again) {
    Reading reading = tin_loaf();
    auto& steps = reading.recipe.steps;
    steps.insert(steps.begin(), heated(step_of(StepKind::preheat, "Heat the oven to 220."), 220));
    steps.insert(steps.begin() + 1, step_of(StepKind::weigh, "Weigh everything."));
    steps.push_back(step_of(StepKind::cool, "Cool on a rack."));
    const FittedRecipe loaf = fit(reading, Kitchen{}, knowledge());
    EXPECT_EQ(loaf.steps.size(), steps.size());
    EXPECT_EQ(first(loaf, StepKind::cool).minutes.likely, 60);
    EXPECT_EQ(first(loaf, StepKind::bake).heat_up_minutes, 20);
}

TEST(fit, every_step_of_the_recipe_stands_in_it_once) {
    Reading reading = tin_loaf();
    Step fold = step_of(StepKind::fold, "Fold it twice.");
    fold.during = 2;
    reading.recipe.steps.push_back(fold); // named last in the text
    const FittedRecipe loaf = fit(reading, Kitchen{}, knowledge());
    std::vector<std::size_t> seen;
    for (const FittedStep& step : loaf.steps) {
        if (step.step) {
            seen.push_back(*step.step);
        }
    }
    const std::vector<std::size_t> expected = {0, 1, 2, 7, 3, 4, 5, 6};
    EXPECT_EQ(seen, expected) << "the fold stands behind its rise";
}

TEST(fit, a_circle_of_steps_inside_each_other_loses_none) {
    Reading reading = tin_loaf();
    reading.recipe.steps[2].during = 5;
    reading.recipe.steps[5].during = 2;
    const FittedRecipe loaf = fit(reading, Kitchen{}, knowledge());
    EXPECT_EQ(std::count_if(loaf.steps.begin(),
                            loaf.steps.end(),
                            [](const FittedStep& step) { return step.step.has_value(); }),
              7);
}

TEST(fit, stated_minutes_stand_while_nobody_has_said_how_warm_it_is) {
    const FittedRecipe loaf = fit(tin_loaf(), Kitchen{}, knowledge());
    const FittedStep& rise = first(loaf, StepKind::rise);
    EXPECT_EQ(rise.minutes, (Band<std::int64_t>{60, 75, 90}));
    EXPECT_EQ(rise.basis, Basis::stated);
    EXPECT_EQ(rise.reason, "from the recipe");
    EXPECT_TRUE(has_question(loaf, "room-c"));
    EXPECT_TRUE(loaf.notes.empty());
}

TEST(fit, the_kitchen_it_was_written_for_gives_the_stated_minutes_back) {
    const FittedRecipe plain = fit(tin_loaf(), kitchen_at(21), knowledge());
    EXPECT_EQ(first(plain, StepKind::rise).minutes, (Band<std::int64_t>{60, 75, 90}));
    EXPECT_EQ(first(plain, StepKind::prove).minutes, (Band<std::int64_t>{45, 45, 45}));
    EXPECT_FALSE(has_question(plain, "room-c"));

    Reading warm = tin_loaf();
    warm.recipe.steps[2] = heated(warm.recipe.steps[2], 26);
    const FittedRecipe there = fit(warm, kitchen_at(26), knowledge());
    EXPECT_EQ(first(there, StepKind::rise).minutes, (Band<std::int64_t>{60, 75, 90}));
    EXPECT_EQ(first(there, StepKind::rise).basis, Basis::stated);
}

TEST(fit, a_colder_kitchen_stretches_the_waits_and_says_why) {
    Reading reading = tin_loaf();
    reading.recipe.steps[2] = timed(step_of(StepKind::rise, "Leave it for an hour."), 60, 60);
    reading.recipe.steps[2] = heated(reading.recipe.steps[2], 27);
    reading.recipe.ingredients.clear(); // of no known weight: as warm as its place at once
    const FittedRecipe loaf = fit(reading, kitchen_at(18), knowledge());
    const FittedStep& rise = first(loaf, StepKind::rise);
    // 60 x r(27)/r(18) = 60 x 0.7273/0.3773 = 115.7 minutes by the published curve, in fives; 15 %
    // to each side.
    EXPECT_EQ(rise.minutes, (Band<std::int64_t>{100, 115, 135}));
    EXPECT_EQ(rise.basis, Basis::computed);
    EXPECT_EQ(rise.reason, "55 min longer: your kitchen is 18 °C, the recipe asks for 27 °C");
    EXPECT_EQ(first(loaf, StepKind::knead).minutes.likely, 10) << "hands are as quick as ever";
    ASSERT_FALSE(loaf.notes.empty());
    EXPECT_EQ(fitting::plain_text(loaf.notes.front()),
              "Your kitchen is 18 °C; the recipe asks for 27 °C: the wait takes 55 min longer.");
}

TEST(fit, a_heavy_dough_is_slower_to_notice_the_room) {
    Reading reading = tin_loaf();
    reading.recipe.steps[2] = timed(step_of(StepKind::rise, "Leave it for an hour."), 60, 60);
    reading.recipe.steps[2] = heated(reading.recipe.steps[2], 27);
    const FittedRecipe loaf = fit(reading, kitchen_at(18), knowledge());
    const FittedStep& rise = first(loaf, StepKind::rise);
    // By hand, with the published curve: 850 g need about 2 h for 63 % of the way, so the dough
    // goes from 25 to 25.8 °C there (mean rate 0.67) and from 25 to 21 °C here (mean rate 0.57).
    EXPECT_NEAR(static_cast<double>(rise.minutes.likely), 60.0 * 0.67 / 0.57, 5.0);
    EXPECT_NE(rise.reason.find("the dough cools as it stands"), std::string::npos) << rise.reason;
    // Water makes up for the cold kitchen: the dough starts as warm as the recipe's.
    ASSERT_TRUE(loaf.water);
    EXPECT_GT(loaf.water->temperature, Celsius(25.0));
    EXPECT_EQ(loaf.water->boiled + loaf.water->tap, Grams(330.0));
}

TEST(fit, what_the_recipe_says_of_its_water_stands_and_a_cold_kitchen_makes_a_colder_dough) {
    Reading reading = tin_loaf();
    reading.recipe.ingredients[1].temperature = TemperatureRange{Celsius(35.0), Celsius(40.0)};
    reading.recipe.steps[2] = timed(step_of(StepKind::rise, "Leave it for an hour."), 60, 60);
    const FittedRecipe same = fit(reading, kitchen_at(21), knowledge());
    EXPECT_FALSE(same.water);
    EXPECT_EQ(first(same, StepKind::rise).minutes.likely, 60);
    const FittedRecipe cold = fit(reading, kitchen_at(16), knowledge());
    EXPECT_FALSE(cold.water);
    EXPECT_GT(first(cold, StepKind::rise).minutes.likely, 60);
}

TEST(fit, a_warmer_kitchen_is_never_slower_and_never_jumps) {
    std::int64_t before = 0;
    for (double room = 10.0; room <= 32.0; room += 0.5) {
        const FittedRecipe loaf = fit(tin_loaf(), kitchen_at(room), knowledge());
        const Band<std::int64_t> rise = first(loaf, StepKind::rise).minutes;
        EXPECT_LE(rise.low, rise.likely);
        EXPECT_LE(rise.likely, rise.high);
        if (before > 0) {
            EXPECT_LE(rise.likely, before) << room;
            EXPECT_GE(rise.likely, before - 5) << room << ": half a degree is one five at most";
        }
        before = rise.likely;
    }
}

TEST(fit, a_prove_in_the_oven_itself_ends_in_the_room) {
    Reading reading = tin_loaf();
    reading.recipe.steps[5].place = Place::warm;
    Kitchen spot = kitchen_at(16);
    spot.warm_spot = Celsius(28.0);
    const FittedRecipe beside = fit(reading, spot, knowledge());
    spot.warm_spot_is_oven = true;
    const FittedRecipe inside = fit(reading, spot, knowledge());
    EXPECT_FALSE(beside.dough_leaves_oven);
    EXPECT_TRUE(inside.dough_leaves_oven);
    // Twenty minutes of it at 16 °C instead of 28.
    EXPECT_GE(first(inside, StepKind::prove).minutes.likely,
              first(beside, StepKind::prove).minutes.likely);
    EXPECT_LE(first(inside, StepKind::prove).minutes.likely,
              first(beside, StepKind::prove).minutes.likely + 20);
    EXPECT_TRUE(std::any_of(inside.notes.begin(), inside.notes.end(), [](const Phrase& note) {
        return fitting::plain_text(note).find("the dough comes out before it heats") !=
               std::string::npos;
    }));
}

TEST(fit, another_yeast_in_the_cupboard_is_weighed_otherwise) {
    Kitchen kitchen = kitchen_at(21);
    kitchen.yeast = "fresh";
    const FittedRecipe loaf = fit(tin_loaf(), kitchen, knowledge());
    // 0.33 g instant for 1 g fresh (Hamelman 2004, read): 7 g instant are 21 g fresh.
    EXPECT_TRUE(std::any_of(loaf.notes.begin(), loaf.notes.end(), [](const Phrase& note) {
        return fitting::plain_text(note) ==
               "You have fresh yeast: 21 g does the work of 7 g instant.";
    }));
    kitchen.yeast = "instant";
    for (const Phrase& note : fit(tin_loaf(), kitchen, knowledge()).notes) {
        EXPECT_EQ(fitting::plain_text(note).find("You have"), std::string::npos);
    }
}

TEST(fit, water_beside_much_milk_is_left_to_the_recipe) {
    Reading reading = tin_loaf();
    reading.recipe.ingredients[1] = ingredient_of("water", 110);
    reading.recipe.ingredients.push_back(ingredient_of("whole milk", 210));
    EXPECT_FALSE(fit(reading, kitchen_at(18), knowledge()).water);
}

TEST(fit, thin_air_lifts_the_dough_sooner_and_bakes_it_longer) {
    Kitchen high = kitchen_at(21);
    high.altitude = Metres(1600.0);
    const FittedRecipe here = fit(tin_loaf(), high, knowledge());
    const FittedRecipe at_the_sea = fit(tin_loaf(), kitchen_at(21), knowledge());
    // The same gas fills more room by the ratio of pressures, 0.82 at 1600 m (ICAO standard
    // atmosphere).
    EXPECT_NEAR(static_cast<double>(first(here, StepKind::rise).minutes.likely),
                0.82 * static_cast<double>(first(at_the_sea, StepKind::rise).minutes.likely),
                5.0);
    EXPECT_GT(first(here, StepKind::bake).minutes.likely,
              first(at_the_sea, StepKind::bake).minutes.likely);
    EXPECT_NE(first(here, StepKind::bake).reason.find("water boils at 95 °C"), std::string::npos)
        << first(here, StepKind::bake).reason;
}

TEST(fit, a_narrow_tin_bakes_deeper_and_longer) {
    Kitchen narrow = kitchen_at(21);
    narrow.tins = {Tin{"long tin", Millimetres(300.0), Millimetres(75.0), Millimetres(75.0)}};
    Kitchen wide = kitchen_at(21);
    wide.tins = {Tin{"wide tin", Millimetres(280.0), Millimetres(130.0), Millimetres(80.0)}};
    const auto bake = [](const Kitchen& kitchen) {
        return first(fit(tin_loaf(), kitchen, knowledge()), StepKind::bake);
    };
    EXPECT_LT(bake(wide).minutes.likely, bake(kitchen_at(21)).minutes.likely)
        << "flatter is quicker";
    EXPECT_NE(bake(narrow).reason.find("long tin"), std::string::npos) << bake(narrow).reason;
    EXPECT_LE(bake(narrow).minutes.low, bake(narrow).minutes.likely);
}

TEST(fit, words_for_warmth_tell_what_the_time_was_written_for) {
    Reading reading = tin_loaf();
    reading.recipe.steps[2] =
        timed(step_of(StepKind::rise, "Leave it in a warm place for an hour."), 60, 60);
    reading.recipe.steps[2].place = Place::warm;
    const FittedRecipe cold = fit(reading, kitchen_at(18), knowledge());
    EXPECT_GE(first(cold, StepKind::rise).minutes.likely, 70);
    EXPECT_NE(first(cold, StepKind::rise).reason.find("warm place"), std::string::npos)
        << first(cold, StepKind::rise).reason;

    Kitchen with_spot = kitchen_at(18);
    with_spot.warm_spot = Celsius(27.0);
    const FittedRecipe warm = fit(reading, with_spot, knowledge());
    EXPECT_LE(first(warm, StepKind::rise).minutes.likely, 70);
    EXPECT_GE(first(warm, StepKind::prove).minutes.likely, 45) << "only the warm place is warm";
}

TEST(fit, no_question_about_the_room_when_nothing_waits_in_it) {
    Reading reading = tin_loaf();
    reading.recipe.steps[2].place = Place::fridge;
    reading.recipe.steps[5].place = Place::fridge;
    EXPECT_FALSE(has_question(fit(reading, Kitchen{}, knowledge()), "room-c"));
}

TEST(fit, a_night_in_the_fridge_may_be_stretched_and_a_short_wait_may_not) {
    Reading reading = tin_loaf();
    reading.recipe.steps[5] = timed(
        step_of(StepKind::prove, "Leave it in the fridge overnight."), 480, 720, Basis::assumed);
    reading.recipe.steps[5].place = Place::fridge;
    const FittedRecipe loaf = fit(reading, kitchen_at(18), knowledge());
    EXPECT_TRUE(first(loaf, StepKind::prove).stretch);
    EXPECT_EQ(first(loaf, StepKind::prove).minutes, (Band<std::int64_t>{480, 600, 720}));
    EXPECT_EQ(first(loaf, StepKind::prove).basis, Basis::assumed);
    EXPECT_FALSE(first(loaf, StepKind::rise).stretch);
}

TEST(fit, a_long_range_on_the_worktop_is_a_choice) {
    Reading reading = tin_loaf();
    reading.recipe.steps[2] =
        timed(step_of(StepKind::rise, "Leave it for 12 to 18 hours."), 720, 1080);
    EXPECT_TRUE(first(fit(reading, Kitchen{}, knowledge()), StepKind::rise).stretch);
}

TEST(fit, an_open_question_marks_the_length_and_its_default_is_used) {
    Reading reading = tin_loaf();
    Step& rise = reading.recipe.steps[2];
    rise.minutes.reset();
    rise.minutes_question = "minutes-rise";
    reading.questions = {{"minutes-rise", "first rise", "How long does it rise?", "2 hours"}};
    const FittedRecipe loaf = fit(reading, Kitchen{}, knowledge());
    EXPECT_EQ(first(loaf, StepKind::rise).basis, Basis::open);
    EXPECT_EQ(first(loaf, StepKind::rise).minutes.likely, 120);
    EXPECT_TRUE(has_question(loaf, "minutes-rise"));
}

TEST(fit, a_length_nobody_states_is_a_guess_and_says_so) {
    Reading reading = tin_loaf();
    reading.recipe.steps[2].minutes.reset();
    const FittedRecipe loaf = fit(reading, Kitchen{}, knowledge());
    const FittedStep& rise = first(loaf, StepKind::rise);
    EXPECT_EQ(rise.basis, Basis::assumed);
    EXPECT_EQ(rise.reason, "our guess: the recipe gives no time");
    EXPECT_GE(rise.minutes.likely, 60);
    EXPECT_LE(rise.minutes.likely, 120);
}

TEST(fit, the_cue_of_the_reading_is_kept) {
    Reading reading = tin_loaf();
    reading.recipe.steps[2].cue = Cue{"until twice the size", Span{3, 20}};
    const FittedRecipe loaf = fit(reading, Kitchen{}, knowledge());
    EXPECT_EQ(first(loaf, StepKind::rise).cue->text, "until twice the size");
    EXPECT_FALSE(first(loaf, StepKind::prove).cue);
}

TEST(fit, a_bake_in_two_heats_is_heated_up_for_once) {
    Reading reading = tin_loaf();
    auto& steps = reading.recipe.steps;
    steps.back() =
        heated(timed(step_of(StepKind::bake, "Bake for 10 minutes at 230."), 10, 10), 230);
    steps.push_back(heated(step_of(StepKind::bake, "Turn down to 200 until golden."), 200));
    const FittedRecipe loaf = fit(reading, Kitchen{}, knowledge());
    std::vector<FittedStep> bakes;
    std::copy_if(loaf.steps.begin(),
                 loaf.steps.end(),
                 std::back_inserter(bakes),
                 [](const auto& step) { return step.kind == StepKind::bake; });
    ASSERT_EQ(bakes.size(), 2U);
    EXPECT_EQ(bakes[0].oven, Celsius(230.0));
    EXPECT_EQ(bakes[1].oven, Celsius(200.0));
    EXPECT_TRUE(bakes[0].heat_up_minutes);
    EXPECT_FALSE(bakes[1].heat_up_minutes);
    // The text's forgotten first heat is what is left of the usual time.
    Reading untimed = tin_loaf();
    untimed.recipe.steps.insert(untimed.recipe.steps.end() - 1,
                                step_of(StepKind::bake, "Put it in the oven."));
    EXPECT_LE(first(fit(untimed, Kitchen{}, knowledge()), StepKind::bake).minutes.likely, 10);
    // A tin loaf bakes about 35 minutes in all (common practice): the first ten are part of it.
    EXPECT_LE(bakes[0].minutes.likely + bakes[1].minutes.likely, 45);
}

TEST(fit, cooling_in_several_steps_adds_up_to_the_time_until_it_can_be_cut) {
    Reading reading = tin_loaf();
    auto& steps = reading.recipe.steps;
    steps.push_back(step_of(StepKind::cool, "Take it out of the oven."));
    steps.push_back(timed(step_of(StepKind::rest, "Leave it in the tin for 5 minutes."), 5, 5));
    steps.push_back(step_of(StepKind::cool, "Turn it out on a rack."));
    const FittedRecipe loaf = fit(reading, Kitchen{}, knowledge());
    ASSERT_EQ(loaf.steps.back().kind, StepKind::cool);
    EXPECT_EQ(loaf.steps.back().minutes.likely, 55);
    EXPECT_EQ(first(loaf, StepKind::cool).minutes.likely, 0);

    Reading short_one = tin_loaf();
    short_one.recipe.steps.push_back(
        timed(step_of(StepKind::cool, "Cool for 15 minutes."), 15, 15));
    const FittedRecipe practice = fit(short_one, Kitchen{}, knowledge());
    EXPECT_EQ(first(practice, StepKind::cool).minutes.likely, 15) << "what is stated stays";
    EXPECT_FALSE(practice.steps.back().step);
    EXPECT_EQ(practice.steps.back().minutes.likely, 45) << "and the hour is made full";
}

TEST(fit, an_oven_that_stops_short_is_set_to_its_most_and_named) {
    Reading reading = tin_loaf();
    reading.recipe.steps.back() = heated(reading.recipe.steps.back(), 250);
    Kitchen kitchen = kitchen_at(21);
    kitchen.oven.max = Celsius(220.0);
    const FittedRecipe loaf = fit(reading, kitchen, knowledge());
    EXPECT_EQ(first(loaf, StepKind::bake).oven, Celsius(220.0));
    EXPECT_GT(first(loaf, StepKind::bake).minutes.high, 35);
    EXPECT_TRUE(std::any_of(loaf.notes.begin(), loaf.notes.end(), [](const Phrase& note) {
        return fitting::plain_text(note).find("stops at 220 °C") != std::string::npos;
    }));
}

TEST(fit, an_oven_without_any_figure_is_guessed_and_named) {
    Reading reading = tin_loaf();
    reading.recipe.steps.back().temperature.reset();
    const FittedRecipe loaf = fit(reading, Kitchen{}, knowledge());
    EXPECT_EQ(first(loaf, StepKind::bake).oven, Celsius(220.0));
    ASSERT_FALSE(loaf.notes.empty());
    EXPECT_NE(fitting::plain_text(loaf.notes.back()).find("our guess"), std::string::npos);
}

TEST(fit, a_dough_waits_longer_in_the_cold) {
    const auto held = [](const Kitchen& kitchen) {
        return first(fit(tin_loaf(), kitchen, knowledge()), StepKind::prove)
            .holds_minutes.value_or(-1);
    };
    EXPECT_GT(held(kitchen_at(18)), held(kitchen_at(28)));
    EXPECT_GT(held(kitchen_at(28)), 0);
}

TEST(fit, an_empty_recipe_stays_empty) {
    EXPECT_TRUE(fit(Reading{}, Kitchen{}, knowledge()).steps.empty());
}

RC_GTEST_PROP(fit, keeps_its_promises_for_any_steps, ()) {
    Reading reading;
    const int count = *rc::gen::inRange(0, 14);
    for (int i = 0; i < count; ++i) {
        Step step =
            step_of(static_cast<StepKind>(*rc::gen::inRange(0, static_cast<int>(step_kind_count))));
        step.place = static_cast<Place>(*rc::gen::inRange(0, 5));
        if (*rc::gen::arbitrary<bool>()) {
            const int low = *rc::gen::inRange(0, 900);
            step = timed(step, low, low + *rc::gen::inRange(0, 300));
        }
        if (*rc::gen::arbitrary<bool>()) {
            step = heated(step, *rc::gen::inRange(-10, 300));
        }
        if (*rc::gen::arbitrary<bool>()) {
            step.during = static_cast<std::size_t>(*rc::gen::inRange(0, 14));
        }
        reading.recipe.steps.push_back(step);
    }
    const Kitchen kitchen =
        *rc::gen::arbitrary<bool>() ? kitchen_at(*rc::gen::inRange(0, 45)) : Kitchen{};
    const FittedRecipe fitted = fit(reading, kitchen, knowledge());
    std::vector<int> seen(reading.recipe.steps.size(), 0);
    for (const FittedStep& step : fitted.steps) {
        RC_ASSERT(!step.reason.empty());
        RC_ASSERT(0 <= step.minutes.low);
        RC_ASSERT(step.minutes.low <= step.minutes.likely);
        RC_ASSERT(step.minutes.likely <= step.minutes.high);
        if (step.step) {
            ++seen.at(*step.step);
            if (reading.recipe.steps[*step.step].minutes && kitchen.room.empty() &&
                step.kind != StepKind::serve && step.kind != StepKind::store) {
                RC_ASSERT(
                    step.minutes.low ==
                    fitting::whole_minutes(reading.recipe.steps[*step.step].minutes->minutes.low));
            }
        }
    }
    RC_ASSERT(std::all_of(seen.begin(), seen.end(), [](int times) { return times == 1; }));
    RC_ASSERT(fitted.cut_after_minutes.likely <= fitted.best_after_minutes.likely);
}

RC_GTEST_PROP(fit, a_colder_kitchen_is_never_quicker, ()) {
    const int warm = *rc::gen::inRange(10, 36);
    const int cold = *rc::gen::inRange(5, warm + 1);
    const auto rise = [](int room) {
        return first(fit(tin_loaf(), kitchen_at(room), knowledge()), StepKind::rise).minutes.likely;
    };
    RC_ASSERT(rise(cold) >= rise(warm));
}

} // namespace
} // namespace loafwright

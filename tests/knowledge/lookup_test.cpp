// SPDX-License-Identifier: Apache-2.0
//
// Looking things up in tables that are small enough to stand beside the question.

#include "engine/knowledge/knowledge.hpp"

#include <gtest/gtest.h>

#include <optional>
#include <string_view>

namespace loafwright {
namespace {

StageDefaultRow length(StepKind kind,
                       std::optional<DoughFamily> family,
                       std::optional<Place> place,
                       double likely) {
    StageDefaultRow row;
    row.kind = kind;
    row.family = family;
    row.place = place;
    row.minutes = exactly(Minutes{likely});
    return row;
}

double likely_minutes(const Knowledge& knowledge, StepKind kind, DoughFamily family, Place place) {
    const StageDefaultRow* row = stage_default(knowledge, kind, family, place);
    return row == nullptr ? -1.0 : row->minutes.likely.count();
}

TEST(knowledge, a_default_that_names_family_and_place_goes_before_one_that_names_either) {
    Knowledge knowledge;
    knowledge.stage_defaults = {
        length(StepKind::rise, std::nullopt, std::nullopt, 1),
        length(StepKind::rise, DoughFamily::sourdough, std::nullopt, 2),
        length(StepKind::rise, std::nullopt, Place::fridge, 3),
        length(StepKind::rise, DoughFamily::sourdough, Place::fridge, 4),
        length(StepKind::prove, DoughFamily::sourdough, Place::fridge, 5),
    };
    const StepKind rise = StepKind::rise;
    EXPECT_EQ(likely_minutes(knowledge, rise, DoughFamily::lean, Place::counter), 1);
    EXPECT_EQ(likely_minutes(knowledge, rise, DoughFamily::sourdough, Place::counter), 2);
    EXPECT_EQ(likely_minutes(knowledge, rise, DoughFamily::lean, Place::fridge), 3);
    EXPECT_EQ(likely_minutes(knowledge, rise, DoughFamily::sourdough, Place::fridge), 4);
}

TEST(knowledge, a_place_goes_before_a_family_where_no_row_names_both) {
    Knowledge knowledge;
    knowledge.stage_defaults = {
        length(StepKind::rise, DoughFamily::sourdough, std::nullopt, 2),
        length(StepKind::rise, std::nullopt, Place::fridge, 3),
    };
    EXPECT_EQ(likely_minutes(knowledge, StepKind::rise, DoughFamily::sourdough, Place::fridge), 3);
}

TEST(knowledge, a_row_of_another_family_or_place_is_no_default) {
    Knowledge knowledge;
    knowledge.stage_defaults = {length(StepKind::bake, DoughFamily::quick, std::nullopt, 45)};
    EXPECT_EQ(stage_default(knowledge, StepKind::bake, DoughFamily::lean, Place::oven), nullptr);
    EXPECT_EQ(stage_default(knowledge, StepKind::rise, DoughFamily::quick, Place::oven), nullptr);
}

TEST(knowledge, the_cue_of_the_family_goes_before_the_general_one_wherever_it_stands) {
    Knowledge knowledge;
    CueRow general;
    general.kind = StepKind::rise;
    general.text = "doubled";
    CueRow sour = general;
    sour.family = DoughFamily::sourdough;
    sour.text = "half as big again";
    knowledge.cues = {general, sour};
    EXPECT_EQ(cue_for(knowledge, StepKind::rise, DoughFamily::lean)->text, "doubled");
    EXPECT_EQ(cue_for(knowledge, StepKind::rise, DoughFamily::sourdough)->text,
              "half as big again");
    EXPECT_EQ(cue_for(knowledge, StepKind::bake, DoughFamily::lean), nullptr);
}

TEST(knowledge, an_ingredient_is_found_by_its_whole_name_only) {
    Knowledge knowledge;
    IngredientRow water;
    water.item = "water";
    water.aliases = {"tap water"};
    knowledge.ingredients = {water};
    ASSERT_NE(ingredient_named(knowledge, "water"), nullptr);
    EXPECT_EQ(ingredient_named(knowledge, "wat"), nullptr);
    EXPECT_EQ(ingredient_named(knowledge, "tap water"), nullptr);
    EXPECT_EQ(ingredient_named(Knowledge{}, "water"), nullptr);
}

} // namespace
} // namespace loafwright

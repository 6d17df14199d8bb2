// SPDX-License-Identifier: Apache-2.0
//
// The words of the enumerations and what each kind of step asks of the baker.

#include "engine/recipe/recipe.hpp"

#include <gtest/gtest.h>

#include <cstddef>
#include <set>
#include <string>
#include <string_view>
#include <vector>

namespace loafwright {
namespace {

std::vector<StepKind> all_kinds() {
    std::vector<StepKind> kinds;
    for (std::size_t index = 0; index < step_kind_count; ++index) {
        kinds.push_back(static_cast<StepKind>(index));
    }
    return kinds;
}

TEST(recipe, every_kind_of_step_has_a_name_of_its_own_that_leads_back_to_it) {
    std::set<std::string_view> seen;
    for (const StepKind kind : all_kinds()) {
        const std::string_view name = name_of(kind);
        EXPECT_FALSE(name.empty());
        EXPECT_TRUE(seen.insert(name).second) << name;
        EXPECT_EQ(step_kind_named(name), kind) << name;
    }
    EXPECT_EQ(seen.size(), step_kind_count);
}

TEST(recipe, names_are_spelled_as_the_enumerators) {
    EXPECT_EQ(name_of(StepKind::prepare), "prepare");
    EXPECT_EQ(name_of(StepKind::knock_back), "knock_back");
    EXPECT_EQ(name_of(StepKind::activate), "activate");
    EXPECT_EQ(name_of(StepKind::rise), "rise");
    EXPECT_EQ(name_of(StepKind::chill), "chill");
    EXPECT_EQ(name_of(StepKind::preheat), "preheat");
    EXPECT_EQ(name_of(StepKind::cool), "cool");
    EXPECT_EQ(name_of(StepKind::store), "store");
    EXPECT_EQ(name_of(Place::counter), "counter");
    EXPECT_EQ(name_of(Place::hob), "hob");
    EXPECT_EQ(name_of(Attention::near), "near");
    EXPECT_EQ(name_of(Basis::open), "open");
    EXPECT_EQ(name_of(DoughFamily::lean), "lean");
    EXPECT_EQ(name_of(DoughFamily::quick), "quick");
}

TEST(recipe, places_and_bases_lead_back_from_their_names) {
    for (const Place place :
         {Place::counter, Place::warm, Place::fridge, Place::oven, Place::hob}) {
        EXPECT_EQ(place_named(name_of(place)), place);
    }
    for (const Basis basis :
         {Basis::stated, Basis::computed, Basis::assumed, Basis::learned, Basis::open}) {
        EXPECT_EQ(basis_named(name_of(basis)), basis);
    }
}

TEST(recipe, a_word_that_is_no_name_is_not_taken_for_one) {
    EXPECT_FALSE(step_kind_named("").has_value());
    EXPECT_FALSE(step_kind_named("Rise").has_value());
    EXPECT_FALSE(step_kind_named("knock back").has_value());
    EXPECT_FALSE(place_named("worktop").has_value());
    EXPECT_FALSE(basis_named("stated ").has_value());
}

TEST(recipe, attention_is_hands_wait_near_or_none_by_kind) {
    const std::set<StepKind> hands{StepKind::prepare,
                                   StepKind::weigh,
                                   StepKind::mix,
                                   StepKind::knead,
                                   StepKind::fold,
                                   StepKind::knock_back,
                                   StepKind::divide,
                                   StepKind::shape,
                                   StepKind::finish,
                                   StepKind::cook};
    const std::set<StepKind> near{StepKind::preheat, StepKind::bake};
    const std::set<StepKind> none{StepKind::serve, StepKind::store};
    for (const StepKind kind : all_kinds()) {
        const Attention expected = hands.count(kind) != 0  ? Attention::hands
                                   : near.count(kind) != 0 ? Attention::near
                                   : none.count(kind) != 0 ? Attention::none
                                                           : Attention::wait;
        EXPECT_EQ(attention_of(kind), expected) << name_of(kind);
    }
}

TEST(recipe, two_spans_are_the_same_when_both_ends_are) {
    EXPECT_EQ((Span{3, 9}), (Span{3, 9}));
    EXPECT_FALSE((Span{3, 9} == Span{3, 8}));
    EXPECT_FALSE((Span{2, 9} == Span{3, 9}));
}

} // namespace
} // namespace loafwright

// SPDX-License-Identifier: Apache-2.0
#include "engine/breads/bake.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <variant>

namespace loafwright::breads {
namespace {

constexpr const char* small_loaf =
    "A small loaf\n\nMix 300 g strong white flour, 6 g salt, 4 g instant yeast and 190 g water. "
    "Knead for 10 minutes. Leave to rise, covered, for 1 hour, until doubled. Shape it and put it "
    "in a greased tin. Prove for 40 minutes. Heat the oven to 220°C. Bake for 30 minutes until it "
    "sounds hollow.\n";
constexpr const char* other_loaf =
    "Seeded rolls\n\nMix 250 g wholemeal flour, 5 g salt, 4 g instant yeast and 170 g water. Knead "
    "for 8 minutes. Rise for 50 minutes. Shape into 6 rolls. Prove for 30 minutes. Bake at 220°C "
    "for 18 minutes.\n";

const Knowledge& known() {
    static const Knowledge knowledge = built_in_knowledge();
    return knowledge;
}

BakeRequest request_of(const std::vector<std::string>& texts) {
    BakeRequest request;
    for (const std::string& text : texts) {
        request.breads.push_back({"recipe", *check_text(text, "recipe"), {}});
    }
    request.day.now = *parse_rfc3339("2026-11-28T08:00:00Z");
    request.day.start = *parse_rfc3339("2026-11-28T09:00:00Z");
    return request;
}

Event done(const std::string& id, Instant at, int stage, std::size_t bread = 0) {
    Event event;
    event.id = id;
    event.at = at;
    event.stage = stage;
    event.bread = bread;
    return event;
}

TEST(bake, a_text_becomes_a_plan_and_its_page) {
    const auto bake = bake_of(request_of({small_loaf}), known());
    ASSERT_TRUE(bake);
    ASSERT_TRUE(std::holds_alternative<Plan>(bake->outcome));
    const BakeState state = state_of(*bake, {}, bake->request.day.now, known());
    EXPECT_EQ(state.pages.size(), 1U);
    EXPECT_EQ(state.change, "");
    EXPECT_EQ(state.plan.start, *bake->request.day.start);
    EXPECT_EQ(state.plan.stages.size(), state.pages[0].stages.size());
}

TEST(bake, an_answer_about_the_room_is_the_kitchens_unless_the_kitchen_says_so) {
    BakeRequest request = request_of({small_loaf});
    request.breads[0].answers = {{"room-c", "17"}};
    EXPECT_EQ(kitchen_of(request)->room.at(0).temperature.degrees(), 17.0);
    request.kitchen.room = {RoomPeriod{ClockTime{}, Celsius(23.0)}};
    EXPECT_EQ(kitchen_of(request)->room.at(0).temperature.degrees(), 23.0);
    request.kitchen.room.clear();
    request.breads[0].answers = {{"room-c", "cosy"}};
    ASSERT_FALSE(kitchen_of(request));
    EXPECT_EQ(kitchen_of(request).error().at(0).code, "answer_unreadable");
}

TEST(bake, what_the_last_bake_taught_is_said_first_at_its_stage) {
    BakeRequest request = request_of({small_loaf});
    request.breads[0].answers = {{"next-time", "prove: plan 50 min for it"}};
    const auto bake = bake_of(request, known());
    ASSERT_TRUE(bake);
    const Plan& plan = std::get<Plan>(bake->outcome);
    for (const Stage& stage : plan.stages) {
        const bool says = !stage.reminders.empty() &&
                          stage.reminders.front().text == "this time: plan 50 min for it";
        EXPECT_EQ(says, stage.title.find("Prove") != std::string::npos) << stage.title;
    }
    // Without a stage that the recipe has, it stands at the beginning.
    request.breads[0].answers = {{"next-time", "weigh the salt"}};
    const auto other = bake_of(request, known());
    ASSERT_TRUE(other);
    const Stage& first = std::get<Plan>(other->outcome).stages.front();
    ASSERT_FALSE(first.reminders.empty());
    EXPECT_EQ(first.reminders.front().text, "this time: weigh the salt");
}

TEST(bake, words_without_a_method_are_no_recipe) {
    const auto bake = bake_of(request_of({"Dear aunt, thank you for the letter.\n"}), known());
    ASSERT_FALSE(bake);
    EXPECT_EQ(bake.error().at(0).code, "no_recipe_found");
}

TEST(bake, the_line_of_change_tells_only_what_the_last_news_moved) {
    const auto bake = bake_of(request_of({small_loaf}), known());
    ASSERT_TRUE(bake);
    const Plan& plan = std::get<Plan>(bake->outcome);
    const Instant late = later_by_minutes(plan.stages[0].end.likely, 20);
    std::vector<Event> events{done("a", late, 1)};
    EXPECT_NE(state_of(*bake, events, late, known()).change, "");
    Event note = done("n", later_by_minutes(late, 1), 2);
    note.kind = EventKind::note;
    note.text = "sticky";
    events.push_back(note);
    EXPECT_NE(state_of(*bake, events, note.at, known()).change, ""); // a note moves nothing
    Event back = done("b", later_by_minutes(late, 2), 1);
    back.kind = EventKind::taken_back;
    back.undoes = "n";
    events.push_back(back);
    EXPECT_EQ(state_of(*bake, events, back.at, known()).change, "");
}

TEST(bake, the_same_request_gives_the_same_state_whatever_the_order_of_events) {
    const auto bake = bake_of(request_of({small_loaf, other_loaf}), known());
    ASSERT_TRUE(bake);
    const Plan& plan = std::get<Plan>(bake->outcome);
    ASSERT_EQ(plan.breads.size(), 2U);
    std::vector<Event> events{done("a", plan.breads[0].stages[0].end.likely, 1, 0),
                              done("b", plan.breads[1].stages[0].end.likely, 1, 1)};
    const Instant now = std::max(events[0].at, events[1].at);
    const BakeState one = state_of(*bake, events, now, known());
    std::reverse(events.begin(), events.end());
    const auto again = bake_of(request_of({small_loaf, other_loaf}), known());
    const BakeState two = state_of(*again, events, now, known());
    EXPECT_EQ(one.moment.say, two.moment.say);
    ASSERT_EQ(one.plan.stages.size(), two.plan.stages.size());
    for (std::size_t s = 0; s < one.plan.stages.size(); ++s) {
        EXPECT_EQ(one.plan.stages[s].start, two.plan.stages[s].start);
    }
    EXPECT_EQ(one.pages.size(), 3U); // the clock they share, and one each
}

TEST(bake, a_trouble_has_its_remedy_beside_it) {
    const auto bake = bake_of(request_of({small_loaf}), known());
    Event event = done("salt", *bake->request.day.start, 1);
    event.kind = EventKind::trouble;
    event.trouble = Trouble::no_salt;
    const BakeState state = state_of(*bake, {event}, event.at, known());
    ASSERT_EQ(state.remedies.size(), 1U);
    EXPECT_NE(state.remedies[0].remedy.find("salt"), std::string::npos);
}

} // namespace
} // namespace loafwright::breads

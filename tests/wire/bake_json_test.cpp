// SPDX-License-Identifier: Apache-2.0
#include "engine/wire/bake_json.hpp"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>
#include <rapidcheck/gtest.h>

#include <string>

namespace loafwright::wire {
namespace {

using Json = nlohmann::json;

Event any_event() {
    Event event;
    event.id = "phone-1_" + std::to_string(*rc::gen::inRange(0, 1000));
    event.at = Instant{1795000000 + *rc::gen::inRange<std::int64_t>(0, 1000000)};
    event.kind = static_cast<EventKind>(*rc::gen::inRange(0, 11));
    event.bread = static_cast<std::size_t>(*rc::gen::inRange(0, 12));
    event.stage = *rc::gen::inRange(1, 10);
    if (*rc::gen::arbitrary<bool>()) {
        event.until = later_by_minutes(event.at, *rc::gen::inRange(0, 300));
    }
    event.undoes = "tablet-" + std::to_string(*rc::gen::inRange(0, 1000));
    event.act = static_cast<std::size_t>(*rc::gen::inRange(0, 9));
    event.growth = static_cast<Growth>(*rc::gen::inRange(0, 4));
    event.measured = static_cast<Measured>(*rc::gen::inRange(0, 4));
    event.celsius = Celsius(static_cast<double>(*rc::gen::inRange(-30, 400)));
    event.trouble = static_cast<Trouble>(*rc::gen::inRange(0, 7));
    if (*rc::gen::arbitrary<bool>()) {
        event.told.crust = static_cast<Crust>(*rc::gen::inRange(0, 3));
        event.told.crumb = static_cast<Crumb>(*rc::gen::inRange(0, 3));
        event.told.again = *rc::gen::arbitrary<bool>();
        event.told.symptoms = {"a burst side", "sticky “rye”"};
        event.told.changed = {"a longer prove"};
    }
    event.text = event.kind == EventKind::photo ? std::string(64, 'a') : "sticky “rye”\n½";
    return event;
}

RC_GTEST_PROP(event_json, what_is_written_is_read_back, ()) {
    const Event event = any_event();
    const std::string written = event_json(event);
    const auto read = event_from_json(written, "event");
    RC_ASSERT(read.has_value());
    RC_ASSERT(event_json(*read) == written);
    RC_ASSERT(read->kind == event.kind);
    RC_ASSERT(read->at == event.at);
}

std::string code_of(const std::string& json) {
    const auto read = events_from_json(json, "events");
    return read ? "" : read.error().front().code;
}

TEST(event_json, a_list_is_read_as_it_stands) {
    const auto read = events_from_json(
        R"({"events": [{"id": "a", "at": "2026-11-28T14:35:00+01:00", "kind": "grown",
            "stage": 2, "how": "half_as_much"}]})",
        "events");
    ASSERT_TRUE(read);
    ASSERT_EQ(read->size(), 1U);
    EXPECT_EQ(read->front().growth, Growth::half_as_much);
    EXPECT_EQ(read->front().at, *parse_rfc3339("2026-11-28T13:35:00Z"));
}

TEST(event_json, what_is_wrong_is_named) {
    EXPECT_EQ(code_of("["), "json_unreadable");
    EXPECT_EQ(code_of("{}"), "key_missing");
    const std::string rest = R"(, "at": "2026-11-28T14:35:00Z", "kind": )";
    EXPECT_EQ(code_of(R"({"events": [{"id": "a b")" + rest + R"("done"}]})"), "value_out_of_range");
    EXPECT_EQ(code_of(R"({"events": [{"id": "a")" + rest + R"("paused"}]})"), "value_unknown");
    EXPECT_EQ(code_of(R"({"events": [{"id": "a", "at": "soon", "kind": "done"}]})"),
              "time_unreadable");
    EXPECT_EQ(code_of(R"({"events": [{"id": "a")" + rest + R"("photo", "photo": "../x"}]})"),
              "value_out_of_range");
    std::string many = R"({"events": [)";
    for (int n = 0; n < 101; ++n) {
        many += (n == 0 ? "" : ",") + std::string("{}");
    }
    EXPECT_EQ(code_of(many + "]}"), "value_out_of_range");
}

breads::Bake small_bake() {
    breads::BakeRequest request;
    request.breads.push_back(
        {"recipe",
         *check_text("A loaf\n\nMix 300 g flour, 6 g salt, 4 g yeast and 190 g water. Knead for 10 "
                     "minutes. Rise for 1 hour until doubled. Shape. Prove for 40 minutes. Bake at "
                     "220°C for 30 minutes.\n",
                     "recipe"),
         {}});
    request.day.now = *parse_rfc3339("2026-11-28T08:00:00Z");
    request.day.start = *parse_rfc3339("2026-11-28T09:00:00Z");
    return *breads::bake_of(request, built_in_knowledge());
}

TEST(bake_json, a_plan_comes_with_its_pages) {
    const Json json = Json::parse(plan_answer_json(small_bake()));
    EXPECT_EQ(json.at("version"), 1);
    EXPECT_EQ(json.at("sheets").size(), 1U);
    EXPECT_EQ(json.at("sheets")[0].at("stages").size(), json.at("plan").at("stages").size());
    EXPECT_TRUE(json.at("questions").is_array());
}

TEST(bake_json, a_state_says_what_to_do_now_with_the_cue_of_the_page) {
    const breads::Bake bake = small_bake();
    const Plan& plan = std::get<Plan>(bake.outcome);
    Event tick;
    tick.id = "a";
    tick.at = plan.stages[0].end.likely;
    const auto state = breads::state_of(bake, {tick}, tick.at, built_in_knowledge());
    const Json json = Json::parse(bake_state_json(bake, state, 1));
    const Json& doing = json.at("moment").at("doing").at(0);
    EXPECT_EQ(doing.at("stage"), 2);
    EXPECT_EQ(doing.at("cue"), json.at("sheets")[0].at("stages")[1].at("cue"));
    EXPECT_EQ(json.at("last"), 1);
    EXPECT_EQ(json.at("moment").at("lines").at(0).at("done"),
              "2026-11-28T" + clock_text(Zone{}, tick.at) + ":00+00:00");
}

TEST(bake_json, every_trouble_has_words_and_a_remedy) {
    const Json json = Json::parse(help_json(built_in_knowledge()));
    EXPECT_EQ(json.at("troubles").size(), 7U);
    for (const Json& row : json.at("troubles")) {
        EXPECT_FALSE(row.at("tells").get<std::string>().empty());
        EXPECT_FALSE(row.at("remedy").get<std::string>().empty());
    }
}

} // namespace
} // namespace loafwright::wire

// SPDX-License-Identifier: Apache-2.0
#include "engine/wire/bake_log_json.hpp"
#include "engine/wire/findings_json.hpp"
#include "tests/planning/breads.hpp"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <string>

namespace loafwright::wire {
namespace {

using Json = nlohmann::json;

// A whole bake of the made-up tin loaf, with everything that can be told.
BakeLog whole_log() {
    const Knowledge knowledge = built_in_knowledge();
    const FittedRecipe loaf = planning::tin_loaf();
    Day day = planning::day_at("2026-11-28T08:00:00Z");
    day.start = planning::at("2026-11-28T09:00:00Z");
    const Plan plan = planning::plan_in(loafwright::plan(loaf, Kitchen{}, day));
    std::vector<Event> events;
    const auto tell = [&events](const std::string& when, EventKind kind, int stage) -> Event& {
        Event event;
        event.id = "e" + std::to_string(events.size());
        event.at = planning::at("2026-11-28T" + when + ":00Z");
        event.kind = kind;
        event.stage = stage;
        events.push_back(event);
        return events.back();
    };
    tell("09:00", EventKind::begun, 1);
    tell("09:35", EventKind::done, 1);
    Event& read = tell("09:36", EventKind::temperature, 2);
    read.celsius = Celsius(24.0);
    tell("11:00", EventKind::grown, 2).growth = Growth::doubled;
    tell("11:05", EventKind::done, 2);
    tell("11:15", EventKind::done, 3);
    tell("11:30", EventKind::trouble, 4).trouble = Trouble::not_rising;
    tell("12:10", EventKind::done, 4);
    tell("12:45", EventKind::done, 5);
    Event& told = tell("15:00", EventKind::told, 7);
    told.told.crust = Crust::pale;
    told.told.crumb = Crumb::even;
    told.told.again = true;
    told.told.symptoms = {"a soft crust"};
    told.told.changed = {"warmer water"};
    tell("15:01", EventKind::note, 1).text = "rained all day";
    return bake_logs(plan, {loaf}, events, knowledge).front();
}

TEST(bake_log_json, what_is_written_is_read_back) {
    const std::string written = bake_log_json(whole_log());
    const auto read = bake_log_from_json(written, "bake.json");
    ASSERT_TRUE(read) << read.error().front().what << read.error().front().where;
    EXPECT_EQ(bake_log_json(*read), written);
    const Json bake = Json::parse(written).at("bake");
    EXPECT_EQ(bake.at("bread"), "Plain tin loaf");
    EXPECT_EQ(bake.at("told").at("crust"), "pale");
    EXPECT_EQ(bake.at("lines").at(1).at("kind"), "rise");
    EXPECT_EQ(bake.at("lines").at(1).at("begun"), "2026-11-28T09:35:00+00:00");
    EXPECT_EQ(bake.at("lines").at(1).at("grown").at("how"), "doubled");
    EXPECT_EQ(bake.at("lines").at(3).at("troubles"), Json::parse(R"(["not_rising"])"));
    EXPECT_EQ(bake.at("notes").at(0), "rained all day");
}

std::string code_of(Json json) {
    const auto read = bake_log_from_json(json.dump(), "bake.json");
    return read ? "" : read.error().front().code;
}

TEST(bake_log_json, what_does_not_fit_is_named) {
    const Json good = Json::parse(bake_log_json(whole_log()));
    EXPECT_EQ(code_of(good), "");
    Json bad = good;
    bad["bake"]["lines"][1]["minutes"]["low"] = 500;
    EXPECT_EQ(code_of(bad), "value_out_of_range");
    bad = good;
    bad["bake"]["lines"][1]["done"] = "2026-11-28T08:00:00Z";
    EXPECT_EQ(code_of(bad), "value_out_of_range");
    bad = good;
    bad["bake"]["lines"][1]["kind"] = "wobble";
    EXPECT_EQ(code_of(bad), "value_unknown");
    bad = good;
    bad["bake"]["lines"][1]["begun"] = "half past nine";
    EXPECT_EQ(code_of(bad), "time_unreadable");
    bad = good;
    bad["bake"]["lines"][1]["temperatures"][0]["c"] = 4000;
    EXPECT_EQ(code_of(bad), "value_out_of_range");
    bad = good;
    bad["bake"]["told"]["stars"] = 5;
    EXPECT_EQ(code_of(bad), "key_unknown");
    bad = good;
    bad["bake"].erase("bread");
    EXPECT_EQ(code_of(bad), "key_missing");
    bad = good;
    bad["version"] = 2;
    EXPECT_EQ(code_of(bad), "value_out_of_range");
    EXPECT_EQ(code_of(Json::parse(R"({"version": 1, "bake": []})")), "value_wrong_kind");
    EXPECT_FALSE(bake_log_from_json("{", "bake.json"));
}

TEST(bake_log_json, what_is_null_may_be_left_out) {
    Json json = Json::parse(bake_log_json(whole_log()));
    for (Json& line : json["bake"]["lines"]) {
        for (auto key = line.begin(); key != line.end();) {
            key = key->is_null() ? line.erase(key) : std::next(key);
        }
    }
    json["bake"].erase("told");
    json["bake"].erase("dough");
    EXPECT_EQ(code_of(json), "");
}

// Bytes changed at random: read or refused, and never a crash; what is read is written the same.
RC_GTEST_PROP(bake_log_json, any_change_is_read_or_refused, ()) {
    static const std::string good = bake_log_json(whole_log());
    std::string changed = good;
    const int count = *rc::gen::inRange(1, 4);
    for (int k = 0; k < count; ++k) {
        const auto at =
            static_cast<std::size_t>(*rc::gen::inRange<int>(0, static_cast<int>(changed.size())));
        changed[at] = *rc::gen::element('0', '9', '-', '"', '}', ']', ',', 'x', 'e', '.');
    }
    const auto read = bake_log_from_json(changed, "bake.json");
    if (read) {
        const std::string again = bake_log_json(*read);
        const auto twice = bake_log_from_json(again, "bake.json");
        RC_ASSERT(twice.has_value());
        RC_ASSERT(bake_log_json(*twice) == again);
    } else {
        RC_ASSERT(!read.error().empty());
    }
}

TEST(findings_json, has_the_keys_that_are_promised) {
    const BakeLog log = whole_log();
    const Json json =
        Json::parse(findings_json(find_faults({"dense"}, &log, built_in_knowledge())));
    EXPECT_EQ(json.at("version"), 1);
    const Json& first = json.at("findings").at(0);
    EXPECT_TRUE(first.at("cause").is_string());
    EXPECT_TRUE(first.at("stage").is_string());
    EXPECT_TRUE(first.at("probability").is_number());
    EXPECT_TRUE(first.at("for").is_array());
    EXPECT_TRUE(first.at("against").is_array());
    EXPECT_TRUE(json.at("try_next").at("change").is_string());
    EXPECT_TRUE(json.at("try_next").at("because").is_string());
    const Json leaven =
        Json::parse(findings_json(find_faults({"sluggish leaven"}, nullptr, built_in_knowledge())));
    EXPECT_EQ(leaven.at("findings").at(0).at("stage"), "leaven");
    EXPECT_TRUE(Json::parse(findings_json(Findings{})).at("try_next").is_null());
}

} // namespace
} // namespace loafwright::wire

// SPDX-License-Identifier: Apache-2.0
#include "shell/settings/bake_request.hpp"
#include "tests/settings/complaints.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <string>
#include <variant>
#include <vector>

namespace loafwright::settings {
namespace {

const Instant now = *parse_rfc3339("2026-11-28T08:00:00Z");

tl::expected<ReadRequest, Diagnostics> read(const std::string& more) {
    return bake_request_from_json(
        R"({"version": 1, "breads": [{"name": "loaf", "text": "Knead for 10 minutes.",
            "answers": [{"key": "room-c", "value": "19"}]}])" +
            more + "}",
        "request",
        now);
}

std::vector<std::string> codes(const tl::expected<ReadRequest, Diagnostics>& read) {
    std::vector<std::string> all;
    if (!read) {
        for (const Diagnostic& fault : read.error()) {
            all.push_back(fault.code + " " + fault.where);
        }
    }
    return all;
}

TEST(bake_request, kitchen_and_day_have_the_keys_of_the_files) {
    const auto found = read(R"(, "kitchen": {"room_c": 19, "oven": {"max_c": 230, "fan": true},
        "tins": [{"name": "2 lb tin", "length_mm": 210, "width_mm": 110, "height_mm": 70}]},
        "day": {"zone": "Europe/London",
                "windows": [{"state": "asleep", "from": "22:30", "to": "06:30"}]},
        "eat_by": "2026-11-28 18:30", "page": {"clock": "12", "weight": "oz"})");
    ASSERT_TRUE(found) << found.error().front().what;
    const breads::BakeRequest& request = found->request;
    EXPECT_EQ(request.kitchen.room.at(0).temperature.degrees(), 19.0);
    EXPECT_TRUE(request.kitchen.oven.fan);
    EXPECT_EQ(request.kitchen.tins.size(), 1U);
    EXPECT_EQ(request.day.zone.name, "Europe/London");
    EXPECT_TRUE(request.day.sleep_known);
    EXPECT_EQ(request.day.eat_by, *parse_rfc3339("2026-11-28T18:30:00Z"));
    EXPECT_GT(request.day.windows.size(), 3U); // every night
    EXPECT_EQ(request.page.clock, ClockForm::hours_12);
    EXPECT_EQ(request.page.weight, WeightUnit::ounces);
    EXPECT_EQ(request.breads.at(0).answers.at(0).value, "19");
    EXPECT_EQ(request.day.now, now);
}

tl::expected<ReadRequest, Diagnostics> bread_with(const std::string& wish) {
    return bake_request_from_json(
        R"({"breads": [{"name": "loaf", "text": "Knead for 10 minutes.", )" + wish + "}]}",
        "request",
        now);
}

TEST(bake_request, a_bread_is_wanted_in_one_size_and_with_one_yeast) {
    const auto size = [](const std::string& wish) {
        const auto found = bread_with(R"("size": )" + wish);
        EXPECT_TRUE(found) << wish << " " << (found ? "" : found.error().front().what);
        return *found->request.breads.at(0).wanted.size;
    };
    EXPECT_EQ(std::get<PiecesWanted>(size(R"({"pieces": 12})")).pieces, 12.0);
    EXPECT_EQ(std::get<DoughWanted>(size(R"({"dough_grams": 900})")).dough, Grams(900.0));
    EXPECT_EQ(std::get<FactorWanted>(size(R"({"factor": 1.5})")).factor, 1.5);
    const auto tin = size(R"({"tin_mm": {"length": 230, "width": 130, "height": 70}})");
    EXPECT_EQ(std::get<TinWanted>(tin).tin.width, Millimetres(130.0));
    EXPECT_EQ(bread_with(R"("yeast": "leaven")")->request.breads.at(0).wanted.yeast,
              RaisedBy::leaven);
    EXPECT_FALSE(bread_with(R"("answers": [])")->request.breads.at(0).wanted.size);
}

TEST(bake_request, a_wish_that_cannot_be_read_is_told_with_its_place) {
    using Codes = std::vector<std::string>;
    EXPECT_EQ(codes(bread_with(R"("size": {"pieces": 2, "factor": 2})")),
              Codes{"said_twice request breads[0].size"});
    EXPECT_EQ(codes(bread_with(R"("size": {"factor": 0})")),
              Codes{"value_out_of_range request breads[0].size.factor"});
    EXPECT_EQ(codes(bread_with(R"("size": {"tin_mm": {"length": 230, "width": 130}})")),
              Codes{"key_missing request breads[0].size.tin_mm.height"});
    EXPECT_EQ(codes(bread_with(R"("size": {"weight": 3})")),
              Codes{"key_unknown request breads[0].size.weight"});
    EXPECT_EQ(codes(bread_with(R"("yeast": "barm")")),
              Codes{"value_unknown request breads[0].yeast"});
}

TEST(bake_request, a_day_with_a_zone_only_forbids_nothing) {
    const auto found = read(R"(, "day": {"zone": "Europe/Berlin"}, "now": "2026-11-28T07:00:00Z")");
    ASSERT_TRUE(found);
    EXPECT_FALSE(found->request.day.sleep_known);
    EXPECT_EQ(found->request.day.now, *parse_rfc3339("2026-11-28T07:00:00Z"));
    EXPECT_EQ(offset_seconds_at(found->request.day.zone, now), 3600);
}

TEST(bake_request, all_that_is_wrong_is_told_in_one_go_with_its_path) {
    const auto all = codes(read(R"(, "kitchen": {"room_c": 99}, "eat_by": "whenever", "tray": 1,
        "day": {"windows": [{"state": "dancing", "from": "22:30", "to": "06:30"}]})"));
    const auto told = [&all](const std::string& line) {
        return std::find(all.begin(), all.end(), line) != all.end();
    };
    EXPECT_TRUE(told("value_out_of_range request kitchen.room_c"));
    EXPECT_TRUE(told("time_unreadable request eat_by"));
    EXPECT_TRUE(told("key_unknown request tray"));
    EXPECT_EQ(all.size(), 4U);
}

TEST(bake_request, both_a_start_and_a_time_to_eat_are_one_too_many) {
    const auto all = codes(read(R"(, "start": "10:00", "eat_by": "18:00")"));
    ASSERT_EQ(all.size(), 1U);
    EXPECT_EQ(all[0], "both_start_and_eat_by request eat_by");
}

TEST(bake_request, a_request_needs_breads_and_few_enough) {
    EXPECT_EQ(bake_request_from_json("{}", "request", now).error().front().code, "key_missing");
    EXPECT_EQ(bake_request_from_json(R"({"breads": []})", "request", now).error().front().code,
              "value_out_of_range");
    EXPECT_EQ(bake_request_from_json("{", "request", now).error().front().code, "json_unreadable");
    EXPECT_EQ(bake_request_from_json("[1]", "request", now).error().front().code,
              "json_unreadable");
    std::string deep(100, '[');
    EXPECT_EQ(
        bake_request_from_json(R"({"a":)" + deep + std::string(100, ']') + "}", "request", now)
            .error()
            .front()
            .code,
        "json_unreadable");
}

TEST(bake_request, a_bread_without_a_name_is_called_by_its_place) {
    const auto found = bake_request_from_json(
        R"({"breads": [{"name": " ", "text": "Knead."}, {"text": "Bake."}]})", "request", now);
    ASSERT_TRUE(found);
    EXPECT_EQ(found->request.breads.at(0).name, "bread 1");
    EXPECT_EQ(found->request.breads.at(1).name, "bread 2");
}

TEST(bake_request, habits_are_checked_like_a_request) {
    EXPECT_TRUE(
        faults_of_habits(R"({"kitchen": {"room_c": 19}, "day": {}})", "habits", now).empty());
    EXPECT_EQ(faults_of_habits(R"({"kitchen": {"room": "chilly"}})", "habits", now).front().code,
              "value_unknown");
}

RC_GTEST_PROP(bake_request, any_bytes_are_read_or_refused_with_words, (const std::string& bytes)) {
    const auto found = bake_request_from_json(bytes, "request", now);
    RC_ASSERT(found || !found.error().front().what.empty());
}

} // namespace
} // namespace loafwright::settings

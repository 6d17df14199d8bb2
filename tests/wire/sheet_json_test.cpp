// SPDX-License-Identifier: Apache-2.0
//
// The page as JSON, read back by a parser: everything that a sheet can say is there, under the keys
// that the README of the room lists, in their order.
#include "engine/wire/wire.hpp"
#include "tests/sheet/tin_loaf_plan.hpp"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <string>
#include <vector>

namespace loafwright::wire {
namespace {

using Json = nlohmann::ordered_json;

std::vector<std::string> keys_of(const Json& object) {
    std::vector<std::string> keys;
    for (const auto& item : object.items()) {
        keys.push_back(item.key());
    }
    return keys;
}

Sheet tin_loaf_sheet() {
    const BakeDay bake = tin_loaf_day();
    Sheet sheet = compose(bake.plan, bake.recipe, bake.provisions, bake.day, SheetOptions{});
    sheet.ahead = {"The evening before: feed the leaven."};
    sheet.stages[0].normal = "sticky is right";
    sheet.warnings = {"The oven stops at 230 °C."};
    return sheet;
}

TEST(sheet_json, has_all_its_keys_in_order) {
    const Json json = Json::parse(sheet_json(tin_loaf_sheet()));
    EXPECT_EQ(keys_of(json), (std::vector<std::string>{"version", "sheet"}));
    EXPECT_EQ(json.at("version"), 1);
    const Json& sheet = json.at("sheet");
    EXPECT_EQ(keys_of(sheet),
              (std::vector<std::string>{"kind",
                                        "title",
                                        "eat",
                                        "begin",
                                        "free",
                                        "weigh",
                                        "ready",
                                        "ahead",
                                        "stages",
                                        "warnings",
                                        "notes",
                                        "cautions",
                                        "questions",
                                        "day_line"}));
    EXPECT_EQ(keys_of(sheet.at("stages")[0]),
              (std::vector<std::string>{"number",
                                        "time",
                                        "bread",
                                        "title",
                                        "length",
                                        "also",
                                        "box",
                                        "acts",
                                        "cue",
                                        "cue_is_ours",
                                        "reminders",
                                        "normal"}));
}

TEST(sheet_json, says_everything_that_the_sheet_says) {
    const Sheet sheet = tin_loaf_sheet();
    const Json json = Json::parse(sheet_json(sheet)).at("sheet");
    EXPECT_EQ(json.at("kind"), "bread");
    EXPECT_EQ(json.at("title"), "Plain tin loaf");
    EXPECT_EQ(json.at("eat"), (Json{{"words", "eat at"}, {"time", "18:30"}}));
    EXPECT_EQ(json.at("begin"), (Json{{"words", "Begin"}, {"time", "13:00"}}));
    EXPECT_EQ(json.at("free"), sheet.free);
    EXPECT_EQ(json.at("weigh"), sheet.weigh);
    EXPECT_EQ(json.at("ready"), sheet.ready);
    EXPECT_EQ(json.at("ahead"), sheet.ahead);
    EXPECT_EQ(json.at("warnings"), sheet.warnings);
    EXPECT_EQ(json.at("notes"), sheet.notes);
    EXPECT_EQ(json.at("cautions"), sheet.cautions);
    EXPECT_EQ(json.at("questions"), sheet.questions);
    ASSERT_EQ(json.at("stages").size(), sheet.stages.size());
    for (std::size_t i = 0; i < sheet.stages.size(); ++i) {
        const Json& line = json.at("stages")[i];
        const SheetStage& stage = sheet.stages[i];
        EXPECT_EQ(line.at("number"), stage.number);
        EXPECT_EQ(line.at("time"), stage.time);
        EXPECT_EQ(line.at("title"), stage.title);
        EXPECT_EQ(line.value("length", Json(nullptr)).is_null(), stage.length.empty());
        EXPECT_EQ(line.at("box"), stage.box);
        EXPECT_EQ(line.at("cue_is_ours"), stage.cue_is_ours);
        EXPECT_EQ(line.at("reminders"), stage.reminders);
        EXPECT_EQ(line.at("bread"), nullptr);
        EXPECT_EQ(line.at("normal"), i == 0 ? Json("sticky is right") : Json(nullptr));
        ASSERT_EQ(line.at("acts").size(), stage.acts.size());
        for (std::size_t a = 0; a < stage.acts.size(); ++a) {
            EXPECT_EQ(line.at("acts")[a],
                      (Json{{"time", stage.acts[a].time}, {"text", stage.acts[a].text}}));
        }
    }
    EXPECT_EQ(json.at("stages")[3].at("cue"), sheet.stages[3].cue);
    EXPECT_EQ(json.at("stages").back().at("length"), nullptr);
    const Json& line = json.at("day_line");
    EXPECT_EQ(line.at("from"), "2026-11-28T13:00:00+00:00");
    EXPECT_EQ(line.at("minutes"), 330);
    ASSERT_EQ(line.at("spans").size(), sheet.day_line.spans.size());
    EXPECT_EQ(
        line.at("spans")[0],
        (Json{{"number", 1}, {"from_minutes", 0}, {"to_minutes", 30}, {"attention", "hands"}}));
    EXPECT_EQ(line.at("hours")[1], (Json{{"minutes", 60}, {"hour", 14}, {"text", "14:00"}}));
}

TEST(sheet_json, of_a_clock_that_breads_share_says_whose_line_it_is) {
    Sheet clock = tin_loaf_sheet();
    clock.kind = SheetKind::shared_clock;
    clock.day_line = {};
    clock.stages[0].bread = "Soft rolls";
    clock.stages[0].also = "then first rise, look from 14:35";
    const Json json = Json::parse(sheet_json(clock)).at("sheet");
    EXPECT_EQ(json.at("kind"), "shared_clock");
    EXPECT_EQ(json.at("day_line"), nullptr);
    EXPECT_EQ(json.at("stages")[0].at("bread"), "Soft rolls");
    EXPECT_EQ(json.at("stages")[0].at("also"), "then first rise, look from 14:35");
}

TEST(sheet_json, a_broken_letter_is_marked_and_no_fault) {
    Sheet sheet = tin_loaf_sheet();
    sheet.title = "caf\xC3 loaf";
    EXPECT_NE(Json::parse(sheet_json(sheet))
                  .at("sheet")
                  .at("title")
                  .get<std::string>()
                  .find("\xEF\xBF\xBD"),
              std::string::npos);
}

} // namespace
} // namespace loafwright::wire

// SPDX-License-Identifier: Apache-2.0
//
// `loafwright faults` as a baker would run it. What is likely is checked in tests/faults; here is
// what stands where, and with what exit status.
#include "tests/cli/program.hpp"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <string>

namespace loafwright {
namespace {

using Json = nlohmann::json;

class faults_command : public program {
protected:
    // A prove of 40 minutes at 18 °C where 95 were wanted, as the engine writes logs.
    [[nodiscard]] static Json short_prove() {
        return Json::parse(R"json({"version": 1, "bake": {"bread": "Plain tin loaf",
            "family": "lean", "leaven": "yeast", "lines": [{"stage": 4, "title": "prove, covered",
            "kind": "prove", "place": "counter", "attention": "wait",
            "minutes": {"low": 80, "likely": 95, "high": 115, "basis": "computed"},
            "usual_minutes": 95, "chosen": false, "begun": "2026-11-28T11:00:00Z",
            "done": "2026-11-28T11:40:00Z", "timed": true, "stands_c": 18, "wanted_growth": 0.8,
            "temperatures": [], "troubles": []}]}})json");
    }
};

TEST_F(faults_command, says_what_is_likely_and_one_change) {
    write("bake.json", short_prove().dump());
    const Outcome outcome = run(
        {"faults", "--symptom", "dense crumb", "--symptom", "a burst side", "--log", "bake.json"});
    EXPECT_EQ(outcome.status, 0) << outcome.err;
    EXPECT_EQ(outcome.err, "");
    std::string out = outcome.out;
    std::replace(out.begin(), out.end(), '\n', ' ');
    EXPECT_EQ(out.find("Most likely: proved too short."), 0U) << out;
    EXPECT_NE(out.find("Your prove was 40 min at 18 °C; this dough wanted about 1 h 35."),
              std::string::npos)
        << out;
    EXPECT_NE(out.find("Change one thing: "), std::string::npos);
    EXPECT_EQ(out.find("probab"), std::string::npos);
    EXPECT_EQ(out.find('!'), std::string::npos);
}

TEST_F(faults_command, json_has_chances_and_the_change) {
    const Outcome outcome = run({"faults", "--symptom", "pale", "--json"});
    ASSERT_EQ(outcome.status, 0);
    const Json json = Json::parse(outcome.out);
    EXPECT_EQ(json.at("version"), 1);
    double before = 1.0;
    for (const Json& finding : json.at("findings")) {
        EXPECT_LE(finding.at("probability"), before);
        before = finding.at("probability");
    }
    EXPECT_FALSE(json.at("try_next").at("change").get<std::string>().empty());
}

TEST_F(faults_command, a_log_may_tell_of_the_signs_itself) {
    Json log = short_prove();
    log["bake"]["told"] = {{"crumb", "close"}, {"symptoms", {"burst at the side"}}};
    const Outcome outcome = run({"faults", "--log", "-", "--json"}, log.dump());
    ASSERT_EQ(outcome.status, 0) << outcome.err;
    EXPECT_EQ(Json::parse(outcome.out).at("findings").at(0).at("cause"), "proved too short");
}

TEST_F(faults_command, what_cannot_be_read_is_refused_all_in_one_go) {
    expect_refused({"faults"}, {"neither --symptom nor --log"});
    expect_refused({"faults", "--symptom", "lovely"}, {"no sign on a bread", "lovely"});
    expect_refused({"faults", "--symptom", "pale", "--log", "none.json"}, {"none.json"});
    Json log = short_prove();
    log["bake"]["lines"][0]["minutes"]["low"] = 300;
    log["bake"]["lines"][0]["kind"] = "wobble";
    write("bad.json", log.dump());
    expect_refused({"faults", "--symptom", "lovely", "--log", "bad.json"},
                   {"lovely", "bad.json bake.lines[0].minutes", "wobble"});
    const Outcome json = run({"faults", "--symptom", "lovely", "--json"});
    EXPECT_EQ(json.status, 2);
    EXPECT_EQ(Json::parse(json.out).at("error").at(0).at("code"), "symptom_unknown");
}

} // namespace
} // namespace loafwright

// SPDX-License-Identifier: Apache-2.0
//
// `loafwright schedule` on the bake days beside the repository, whose objectives, delays and ways
// out other solvers proved (answers.json); the judge beside them (check.py) shares nothing with
// this project's solver and looks at every plan minute by minute.
#include "tests/cli/program.hpp"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <cstdlib>
#include <string>
#include <vector>

namespace loafwright {
namespace {

using Json = nlohmann::json;

class schedule_command : public program {
protected:
    [[nodiscard]] static fs::path days() {
        return fs::path(LOAFWRIGHT_ROOT) / ".." / "shared" / "reference" / "days";
    }
    [[nodiscard]] static std::vector<fs::path> problems() {
        std::vector<fs::path> files;
        if (fs::exists(days() / "answers.json")) {
            for (const auto& entry : fs::directory_iterator(days())) {
                if (entry.path().extension() == ".json" &&
                    entry.path().filename() != "answers.json") {
                    files.push_back(fs::canonical(entry.path()));
                }
            }
        }
        std::sort(files.begin(), files.end());
        return files;
    }
};

constexpr const char* one_loaf = R"({"version": 1, "id": "one", "horizon": 2880, "pause": 10,
  "people": [{"name": "A", "windows": [{"from": 0, "to": 420, "state": "asleep"}]}],
  "oven": {"slots": 1, "heat_up": [{"temperature": 220, "minutes": 20}], "changeover": [],
           "claims": []}, "fridge": {"slots": 0}, "rather_not": [],
  "breads": [{"name": "tin", "not_before": null, "ready_from": null, "ready_by": 1500, "steps": [
      {"name": "mix", "kind": "hands", "minutes": {"low": 15, "likely": 15, "high": 15},
       "stretch": null, "fridge": 0, "oven": null, "leave": false},
      {"name": "bake", "kind": "oven", "minutes": {"low": 30, "likely": 30, "high": 30},
       "stretch": null, "fridge": 0, "oven": {"slots": 1, "temperature": 220}, "leave": false}],
    "lags": [{"after": 0, "before": 1, "min": 45, "max": 45, "good": null}],
    "alternatives": [{"name": "as written", "weight": 0, "steps": [], "lags": []}]}]})";

std::string with(std::string text, const std::string& old, const std::string& fresh) {
    const std::size_t at = text.find(old);
    EXPECT_NE(at, std::string::npos) << old;
    return text.replace(at, old.size(), fresh);
}

TEST_F(schedule_command, every_published_day_gets_its_proven_answer) {
    const std::vector<fs::path> files = problems();
    if (files.empty()) {
        GTEST_SKIP() << "the folder of bake days is not beside the repository";
    }
    const Json answers = Json::parse(bytes_of(days() / "answers.json"));
    const bool judged = std::system("python3 -c '' >/dev/null 2>&1") == 0;
    fs::create_directory(folder_ / "plans");
    for (const fs::path& file : files) {
        SCOPED_TRACE(file.stem());
        const Json& known = answers.at(file.stem().string());
        const bool possible = known.at("status") == "optimal";
        const Outcome outcome = run({"schedule", file.string(), "--format", "days", "--json"});
        ASSERT_EQ(outcome.status, possible ? 0 : 1) << outcome.err;
        EXPECT_EQ(outcome.err, "");
        const Json plan = Json::parse(outcome.out);
        EXPECT_EQ(plan.at("status"), known.at("status"));
        if (possible) {
            EXPECT_EQ(plan.at("objective"), known.at("objective"));
        } else {
            EXPECT_EQ(plan.at("delay"), known.at("delay"));
            EXPECT_EQ(plan.at("enough"), known.at("enough"));
            EXPECT_FALSE(plan.at("reasons").empty());
        }
        write("plans/" + file.stem().string() + ".plan.json", outcome.out);
    }
    if (!judged) {
        GTEST_SKIP() << "answers hold, python3 for the judge is not installed";
    }
    const std::string command = "python3 '" + (days() / "check.py").string() + "' --folder '" +
                                days().string() + "' '" + in("plans") + "' '" +
                                (days() / "answers.json").string() + "' > '" + in("verdict") + "'";
    EXPECT_EQ(std::system(command.c_str()), 0) << bytes_of(in("verdict"));
    const std::string verdict = bytes_of(in("verdict"));
    EXPECT_NE(verdict.find(std::to_string(files.size()) + " passed, 0 failed"), std::string::npos)
        << verdict;
}

// By hand: out of the oven at 25:00, 30 + 45 + 15 minutes before that is 23:30.
TEST_F(schedule_command, a_task_is_a_line_with_its_minutes_and_its_clock) {
    write("one.json", one_loaf);
    const Outcome outcome = run({"schedule", "one.json"});
    EXPECT_EQ(outcome.status, 0) << outcome.err;
    EXPECT_EQ(outcome.out, R"(one: proven best
wishes not kept 0, minutes tied 90, first start 1410 23:30

tin, as written
   1410 23:30    to  1425 23:45     mix, A
   1470 00:30+1  to  1500 01:00+1   bake
)");
    EXPECT_EQ(run({"schedule", "-"}, one_loaf).out, outcome.out);
}

TEST_F(schedule_command, a_day_that_cannot_be_is_an_honest_no_with_ways_out) {
    // Ready at 07:30 means mixing at 06:00, and A sleeps until 07:00: an hour later it fits.
    write("early.json", with(one_loaf, "\"ready_by\": 1500", "\"ready_by\": 450"));
    const Outcome outcome = run({"schedule", "early.json"});
    EXPECT_EQ(outcome.status, 1);
    EXPECT_EQ(outcome.err, "");
    for (const char* said : {"one: impossible",
                             "cannot be kept together: ",
                             "ready 60 minutes later",
                             "any one of these changes: asleep"}) {
        EXPECT_NE(outcome.out.find(said), std::string::npos) << said << "\n" << outcome.out;
    }
    const Json json = Json::parse(run({"schedule", "early.json", "--json"}).out);
    EXPECT_EQ(json.at("delay"), 60);
}

TEST_F(schedule_command, a_name_in_the_file_cannot_steer_the_terminal) {
    write("one.json", with(one_loaf, "\"mix\"", R"("mi\u001b[2Jx\n")"));
    const Outcome outcome = run({"schedule", "one.json"});
    EXPECT_EQ(outcome.status, 0) << outcome.err;
    EXPECT_EQ(outcome.out.find('\x1b'), std::string::npos);
    EXPECT_EQ(lines_in(outcome.out), 6U);
}

TEST_F(schedule_command, wrong_input_is_told_with_its_place) {
    write("cut.json", std::string(one_loaf).substr(0, 300));
    expect_refused({"schedule", "cut.json"}, {"cut.json: found no JSON: it ends too early"});
    write("minus.json", with(one_loaf, "\"likely\": 30", "\"likely\": -30"));
    expect_refused({"schedule", "minus.json"},
                   {"minus.json breads[0].steps[1].minutes.likely: found -30, expected 30 to"});
    expect_refused({"schedule", "none.json"}, {"none.json: there is no such file"});
    const Outcome outcome = run({"schedule", "cut.json", "--json"});
    EXPECT_EQ(outcome.status, 2);
    EXPECT_EQ(Json::parse(outcome.out).at("error").at(0).at("code"), "json_unreadable");
}

TEST_F(schedule_command, a_key_that_means_nothing_is_told_beside_the_answer) {
    write("one.json", with(one_loaf, "\"pause\"", "\"paws\": 4, \"pause\""));
    const Outcome outcome = run({"schedule", "one.json"});
    EXPECT_EQ(outcome.status, 0);
    EXPECT_NE(outcome.err.find("warning: one.json paws: paws is not a key here"), std::string::npos)
        << outcome.err;
}

TEST_F(schedule_command, a_wrong_call_is_told) {
    write("one.json", one_loaf);
    expect_refused({"schedule"}, {"found 0 files, expected one scheduling problem"});
    expect_refused({"schedule", "one.json", "one.json"}, {"found 2 files"});
    expect_refused({"schedule", "one.json", "--format", "xml"},
                   {"--format is 'xml', expected days, psplib or rcpspmax"});
    expect_refused({"schedule", "one.json", "--conflicts", "many"},
                   {"--conflicts was given 'many', expected a whole number"});
    for (const char* number : {"0", "1000000001", "99999999999999999999"}) {
        expect_refused({"schedule", "one.json", "--conflicts", number},
                       {std::string("--conflicts is ") + number + ", expected 1 to 1000000000"});
    }
    EXPECT_EQ(run({"schedule", "one.json", "--conflicts", "1"}).status, 0);
    EXPECT_EQ(run({"--help"}).out.find("schedule FILE"), std::string::npos);
}

// Two activities of 3 and 2 that share what only one can have, and a greatest lag from 1 to 2.
constexpr const char* lag_back = "2 1 0 0\n0 1 2 1 2 [0] [0]\n1 1 2 3 2 [3] [0]\n"
                                 "2 1 2 3 1 [2] [-4]\n3 1 0\n"
                                 "0 1 0 0\n1 1 3 1\n2 1 2 1\n3 1 0 0\n1\n";

TEST_F(schedule_command, a_project_is_a_line_an_activity_with_its_bounds_above) {
    write("two.x.sch", lag_back);
    const Outcome outcome = run({"schedule", "two.x.sch", "--format", "rcpspmax"});
    EXPECT_EQ(outcome.status, 0) << outcome.err;
    EXPECT_EQ(outcome.out, R"(two.x: proven best
over at 5, cannot be over before 5

      0       0 to      0
      1       0 to      3
      2       3 to      5
      3       5 to      5
)");
    const std::vector<std::string> on_stdin{"schedule", "-", "--format", "rcpspmax", "--json"};
    EXPECT_EQ(Json::parse(run(on_stdin, lag_back).out),
              Json::parse(R"({"version": 1, "id": "-", "status": "optimal", "makespan": 5,
                              "lower_bound": 5, "starts": [0, 0, 3, 5]})"));
}

TEST_F(schedule_command, a_project_that_cannot_be_is_an_honest_no) {
    write("two.sch", with(lag_back, "[-4]", "[-2]"));
    const Outcome outcome = run({"schedule", "two.sch", "--format", "rcpspmax"});
    EXPECT_EQ(outcome.status, 1);
    EXPECT_EQ(outcome.out, "two: impossible, no schedule keeps every rule\n");
    const Outcome json = run({"schedule", "two.sch", "--format", "rcpspmax", "--json"});
    EXPECT_EQ(json.status, 1);
    EXPECT_EQ(Json::parse(json.out).at("status"), "infeasible");
    EXPECT_TRUE(Json::parse(json.out).at("makespan").is_null());
}

TEST_F(schedule_command, a_project_in_another_layout_is_told_with_its_line) {
    write("two.sch", with(lag_back, "[-4]", "-4"));
    expect_refused({"schedule", "two.sch", "--format", "rcpspmax"},
                   {"two.sch:4: found \"-4\", expected \"[\""});
    expect_refused({"schedule", "two.sch", "--format", "psplib"},
                   {"two.sch: found no line \"PRECEDENCE RELATIONS\""});
}

// Whatever the limit, an answer keeps every rule and says whether it is proven, or none is given.
TEST_F(schedule_command, a_small_limit_gives_an_answer_that_says_so_or_none) {
    const std::vector<fs::path> files = problems();
    if (files.empty()) {
        GTEST_SKIP() << "the folder of bake days is not beside the repository";
    }
    const Json answers = Json::parse(bytes_of(days() / "answers.json"));
    const Json& known = answers.at(files.back().stem().string());
    const Outcome outcome = run({"schedule", files.back().string(), "--conflicts", "1", "--json"});
    const Json plan = Json::parse(outcome.out);
    if (outcome.status == 2) {
        EXPECT_EQ(plan.at("error").at(0).at("code"), "value_out_of_range");
    } else {
        EXPECT_EQ(outcome.status, 0);
        EXPECT_TRUE(plan.at("status") == "best" || plan.at("objective") == known.at("objective"));
    }
}

} // namespace
} // namespace loafwright

// SPDX-License-Identifier: Apache-2.0
//
// Scheduling problems as other programs write them, sound and broken. The sound ones are the bake
// days beside the repository, with answers that other solvers proved; broken ones are made here
// from a day small enough to see whole.
#include "engine/schedule/check.hpp"
#include "engine/schedule/solve.hpp"
#include "engine/wire/schedule_answer.hpp"
#include "engine/wire/schedule_problem.hpp"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <functional>
#include <iterator>
#include <set>
#include <string>

namespace loafwright::wire {
namespace {

using Json = nlohmann::json;

constexpr const char* small_day = R"({
  "version": 1, "id": "small", "horizon": 1440, "pause": 10,
  "people": [{"name": "A", "windows": [{"from": 0, "to": 420, "state": "asleep"}]}],
  "oven": {"slots": 1, "heat_up": [{"temperature": 220, "minutes": 20}], "changeover": [],
           "claims": [{"from": 600, "to": 660, "temperature": null}]},
  "fridge": {"slots": 1}, "rather_not": [{"from": 720, "to": 750}],
  "breads": [{"name": "tin", "not_before": null, "ready_from": null, "ready_by": 1080,
    "steps": [
      {"name": "mix", "kind": "hands", "minutes": {"low": 10, "likely": 15, "high": 20},
       "stretch": null, "fridge": 0, "oven": null, "leave": false},
      {"name": "rise", "kind": "wait", "minutes": {"low": 60, "likely": 90, "high": 120},
       "stretch": null, "fridge": 0, "oven": null, "leave": false},
      {"name": "bake", "kind": "oven", "minutes": {"low": 30, "likely": 35, "high": 40},
       "stretch": null, "fridge": 0, "oven": {"slots": 1, "temperature": 220}, "leave": false}],
    "lags": [{"after": 0, "before": 1, "min": 0, "max": 10, "good": null},
             {"after": 1, "before": 2, "min": 0, "max": 20, "good": 10}],
    "alternatives": [
      {"name": "as written", "weight": 0, "steps": [], "lags": []},
      {"name": "slow", "weight": 1, "lags": [{"lag": 1, "max": null}],
       "steps": [{"step": 1, "stretch": {"min": 480, "max": 960}, "fridge": 1, "leave": true}]}]}]
})";

Json changed(const std::function<void(Json&)>& change) {
    Json json = Json::parse(small_day);
    change(json);
    return json;
}

tl::expected<ReadProblem, Diagnostics> read(const std::string& bytes) {
    return schedule_problem_from_json(bytes, "day.json");
}

/// What is wrong, as "code place".
std::set<std::string> faults(const std::string& bytes) {
    const auto problem = read(bytes);
    if (problem) {
        return {};
    }
    std::set<std::string> said;
    for (const Diagnostic& fault : problem.error()) {
        EXPECT_TRUE(is_known_code(fault.code)) << fault.code;
        EXPECT_EQ(fault.severity, Severity::error);
        EXPECT_FALSE(fault.what.empty());
        EXPECT_FALSE(fault.do_this.empty());
        said.insert(fault.code + " " + fault.where);
    }
    return said;
}

std::set<std::string> faults(const std::function<void(Json&)>& change) {
    return faults(changed(change).dump());
}

using Said = std::set<std::string>;

TEST(schedule_problem, a_small_day_is_read_field_by_field) {
    const auto found = read(small_day);
    ASSERT_TRUE(found) << one_line(found.error().front());
    EXPECT_TRUE(found->warnings.empty());
    const schedule::Problem& problem = found->problem;
    EXPECT_EQ(problem.id, "small");
    EXPECT_EQ(problem.horizon, 1440);
    EXPECT_EQ(problem.pause, 10);
    ASSERT_EQ(problem.people.size(), 1U);
    EXPECT_EQ(problem.people[0].windows.at(0).to, 420);
    EXPECT_EQ(problem.people[0].windows.at(0).state, schedule::WindowState::asleep);
    EXPECT_EQ(problem.oven.heat_up.at(0).minutes, 20);
    EXPECT_EQ(problem.oven.claims.at(0).from, 600);
    EXPECT_FALSE(problem.oven.claims.at(0).temperature);
    EXPECT_EQ(problem.fridge.slots, 1);
    EXPECT_EQ(problem.rather_not.at(0).to, 750);
    const schedule::Job& job = problem.jobs.at(0);
    EXPECT_FALSE(job.not_before);
    EXPECT_EQ(job.ready_by, 1080);
    EXPECT_EQ(job.tasks.at(0).kind, schedule::TaskKind::hands);
    EXPECT_EQ(job.tasks.at(0).minutes.high, 20);
    EXPECT_EQ(job.tasks.at(2).oven->temperature, 220);
    EXPECT_EQ(job.lags.at(1).max, 20);
    EXPECT_EQ(job.lags.at(1).good, 10);
}

TEST(schedule_problem, an_alternative_changes_what_it_names_and_leaves_the_rest) {
    const auto found = read(small_day);
    ASSERT_TRUE(found);
    const schedule::Alternative& slow = found->problem.jobs.at(0).alternatives.at(1);
    EXPECT_EQ(slow.weight, 1);
    EXPECT_EQ(slow.lags.at(0).min, 0);
    EXPECT_FALSE(slow.lags.at(0).max); // null takes the bound away
    EXPECT_EQ(slow.lags.at(0).good, 10);
    EXPECT_FALSE(slow.tasks.at(0).minutes);
    EXPECT_TRUE(slow.tasks.at(0).changes_stretch);
    EXPECT_EQ(slow.tasks.at(0).stretch->max, 960);
    EXPECT_EQ(slow.tasks.at(0).fridge, 1);
    EXPECT_EQ(slow.tasks.at(0).leave, true);
}

// By hand: ready by 18:00, 35 minutes of bake, 90 of rise, 15 of mixing, no gaps: 140 minutes tied.
TEST(schedule_problem, a_small_day_is_answered_as_by_hand) {
    const auto found = read(small_day);
    ASSERT_TRUE(found);
    const auto outcome = schedule::solve(found->problem);
    const auto* solved = std::get_if<schedule::Solved>(&outcome);
    ASSERT_NE(solved, nullptr);
    const Json answer = Json::parse(schedule_json(found->problem, *solved));
    EXPECT_EQ(answer, Json::parse(R"({"version": 1, "id": "small", "status": "optimal",
        "objective": {"violations": 0, "tied": 140, "earliest": 940},
        "breads": [{"alternative": 0, "starts": [940, 955, 1045], "ends": [955, 1045, 1080],
                    "people": [0, null, null]}]})"));
}

TEST(schedule_problem, an_answer_keeps_quiet_about_a_delay_that_the_limit_left_open) {
    const auto found = read(small_day);
    ASSERT_TRUE(found);
    schedule::Why why;
    why.reasons = {{"window", 0}, {"hands", {}}};
    why.enough = {"asleep"};
    const Json proven = Json::parse(no_schedule_json(found->problem, why));
    EXPECT_EQ(proven.at("status"), "infeasible");
    EXPECT_TRUE(proven.at("delay").is_null());
    EXPECT_EQ(proven.at("enough"), Json::array({"asleep"}));
    EXPECT_EQ(proven.at("reasons"), Json::parse(R"([{"rule": "window", "bread": 0, "name": "tin"},
                                  {"rule": "hands", "bread": null, "name": null}])"));
    why.proof = schedule::Proof::best_found;
    EXPECT_FALSE(Json::parse(no_schedule_json(found->problem, why)).contains("delay"));
    why.delay = 30;
    EXPECT_EQ(Json::parse(no_schedule_json(found->problem, why)).at("delay"), 30);
}

TEST(schedule_problem, what_may_be_null_may_be_absent) {
    const auto found = read(changed([](Json& day) {
                                day["breads"][0].erase("not_before");
                                day["breads"][0]["steps"][0].erase("stretch");
                                day["breads"][0]["lags"][0].erase("good");
                                day["oven"]["claims"][0].erase("temperature");
                            }).dump());
    EXPECT_TRUE(found);
}

TEST(schedule_problem, a_key_that_means_nothing_is_a_warning_with_its_path) {
    const auto found =
        read(changed([](Json& day) { day["breads"][0]["lags"][0]["goood"] = 3; }).dump());
    ASSERT_TRUE(found);
    ASSERT_EQ(found->warnings.size(), 1U);
    EXPECT_EQ(found->warnings[0].code, "key_unknown");
    EXPECT_EQ(found->warnings[0].severity, Severity::warning);
    EXPECT_EQ(found->warnings[0].where, "day.json breads[0].lags[0].goood");
    const auto odd = read(changed([](Json& day) { day["a\nb"] = 3; }).dump());
    ASSERT_TRUE(odd);
    EXPECT_EQ(odd->warnings.at(0).where, R"(day.json a\nb)");
}

TEST(schedule_problem, every_fault_is_told_in_one_go_with_its_path) {
    EXPECT_EQ(faults([](Json& day) {
                  day["people"][0]["windows"][0]["state"] = "out";
                  day["oven"]["slots"] = "1";
                  day.erase("fridge");
                  day["breads"][0]["ready_by"] = 18.5;
                  day["breads"][0]["steps"][0]["minutes"]["low"] = -5;
                  day["breads"][0]["steps"][1]["leave"] = 0;
                  day["breads"][0]["lags"][1]["before"] = 3;
              }),
              (Said{"value_unknown day.json people[0].windows[0].state",
                    "value_wrong_kind day.json oven.slots",
                    "key_missing day.json fridge",
                    "value_wrong_kind day.json breads[0].ready_by",
                    "value_out_of_range day.json breads[0].steps[0].minutes.low",
                    "value_wrong_kind day.json breads[0].steps[1].leave",
                    "value_out_of_range day.json breads[0].lags[1].before"}));
}

TEST(schedule_problem, lengths_below_nothing_or_out_of_order_are_refused) {
    EXPECT_EQ(faults([](Json& day) {
                  Json& steps = day["breads"][0]["steps"];
                  steps[0]["minutes"] = {{"low", 1}, {"likely", -1}, {"high", 20}};
                  steps[1]["minutes"] = {{"low", 60}, {"likely", 90}, {"high", 80}};
                  steps[2]["stretch"] = {{"min", 30}, {"max", 20}};
                  day["breads"][0]["lags"][0]["max"] = -1;
              }),
              (Said{"value_out_of_range day.json breads[0].steps[0].minutes.likely",
                    "value_out_of_range day.json breads[0].steps[1].minutes.high",
                    "value_out_of_range day.json breads[0].steps[2].stretch.max",
                    "value_out_of_range day.json breads[0].lags[0].max"}));
}

TEST(schedule_problem, numbers_past_any_calendar_are_refused_and_never_wrap) {
    EXPECT_EQ(faults([](Json& day) {
                  day["horizon"] = 100000;
                  day["pause"] = 18446744073709551615ULL;
                  day["fridge"]["slots"] = 4294967296LL;
                  day["breads"][0]["not_before"] = -9223372036854775807LL;
              }),
              (Said{"value_out_of_range day.json horizon",
                    "value_out_of_range day.json pause",
                    "value_out_of_range day.json fridge.slots",
                    "value_out_of_range day.json breads[0].not_before"}));
    EXPECT_EQ(faults(R"({"horizon": 1e999})"), Said{"json_unreadable day.json"});
}

TEST(schedule_problem, ten_thousand_steps_are_too_many_and_five_hundred_are_not) {
    const auto with_steps = [](std::size_t count) {
        return [count](Json& day) {
            Json& bread = day["breads"][0];
            // Bare as it can be, so that the file as a whole is not too long.
            bread["steps"] = Json(count, Json::parse(R"({"name": "", "kind": "wait", "fridge": 0,
                "minutes": {"low": 1, "likely": 1, "high": 1}, "leave": true})"));
            bread["lags"] = Json::array();
            bread["alternatives"].erase(1);
        };
    };
    EXPECT_EQ(faults(with_steps(10000)), Said{"value_out_of_range day.json breads[0].steps"});
    EXPECT_EQ(faults(with_steps(501)), Said{"value_out_of_range day.json breads[0].steps"});
    EXPECT_EQ(faults(with_steps(500)), Said{});
}

TEST(schedule_problem, a_step_in_the_oven_says_how_hot_and_how_long_that_takes) {
    EXPECT_EQ(faults([](Json& day) { day["breads"][0]["steps"][2]["oven"] = nullptr; }),
              Said{"key_missing day.json breads[0].steps[2].oven"});
    EXPECT_EQ(faults([](Json& day) { day["oven"]["heat_up"] = Json::array(); }),
              Said{"value_out_of_range day.json oven.heat_up"});
    EXPECT_EQ(faults([](Json& day) {
                  day["breads"][0]["steps"] = Json::array();
              }).count("value_out_of_range day.json breads[0].lags[0].before"),
              1U);
}

TEST(schedule_problem, another_version_is_refused) {
    EXPECT_EQ(faults([](Json& day) { day["version"] = 2; }),
              Said{"value_out_of_range day.json version"});
}

TEST(schedule_problem, every_value_of_another_kind_is_told_and_nothing_breaks) {
    const std::vector<Json> others = {
        nullptr, true, -1, 2.5, "x", Json::array(), Json::array({1}), Json::object()};
    const Json day = Json::parse(small_day).flatten();
    int refused = 0;
    for (const auto& [path, ignored] : day.items()) {
        // Each leaf, and each list or object on the way to it.
        for (Json::json_pointer at(path); !at.empty(); at.pop_back()) {
            for (const Json& other : others) {
                Json broken = Json::parse(small_day);
                broken[at] = other;
                refused += faults(broken.dump()).empty() ? 0 : 1;
            }
            Json shorter = Json::parse(small_day);
            Json& parent = shorter[at.parent_pointer()];
            if (parent.is_object()) {
                parent.erase(at.back());
                refused += faults(shorter.dump()).empty() ? 0 : 1;
            }
        }
    }
    // Of about a thousand of each, only a few make sense (null for none, another name).
    EXPECT_GT(refused, 1000);
}

TEST(schedule_problem, a_file_cut_short_anywhere_says_where_it_ends) {
    const std::string whole = small_day;
    for (std::size_t length = 0; length < whole.size(); ++length) {
        ASSERT_EQ(faults(whole.substr(0, length)), Said{"json_unreadable day.json"}) << length;
    }
    const auto found = read("{\"version\": 1,\n \"id\": ");
    ASSERT_FALSE(found);
    EXPECT_NE(found.error().front().what.find("ends too early, at line 2, column 8"),
              std::string::npos)
        << found.error().front().what;
}

TEST(schedule_problem, bytes_that_are_no_json_are_refused) {
    for (const std::string& bytes : {std::string(),
                                     std::string("\0\0", 2),
                                     std::string("\xff"),
                                     std::string("version = 1"),
                                     std::string("{\"id\": \"\xc3\"}"),
                                     std::string(1000000, '[')}) {
        EXPECT_EQ(faults(bytes), Said{"json_unreadable day.json"});
    }
    for (const std::string& bytes : {std::string("[]"), std::string("null"), std::string("7")}) {
        EXPECT_EQ(faults(bytes), Said{"value_wrong_kind day.json"});
    }
    EXPECT_EQ(faults(std::string(1048577, ' ')), Said{"text_too_long day.json"});
    const std::string deep = std::string(500000, '[') + std::string(500000, ']');
    EXPECT_EQ(faults(deep), Said{"value_wrong_kind day.json"});
}

TEST(schedule_problem, every_published_day_is_read_without_a_complaint) {
    const std::filesystem::path folder =
        std::filesystem::path(LOAFWRIGHT_ROOT) / ".." / "shared" / "reference" / "days";
    if (!std::filesystem::exists(folder)) {
        GTEST_SKIP() << "the folder of bake days is not beside the repository";
    }
    int days = 0;
    for (const auto& entry : std::filesystem::directory_iterator(folder)) {
        if (entry.path().extension() != ".json" || entry.path().filename() == "answers.json") {
            continue;
        }
        std::ifstream file(entry.path(), std::ios::binary);
        const std::string bytes(std::istreambuf_iterator<char>(file), {});
        const auto found = read(bytes);
        ASSERT_TRUE(found) << entry.path() << one_line(found.error().front());
        EXPECT_TRUE(found->warnings.empty()) << entry.path();
        EXPECT_EQ(found->problem.id, entry.path().stem());
        EXPECT_EQ(found->problem.jobs.size(), Json::parse(bytes).at("breads").size());
        ++days;
    }
    EXPECT_GT(days, 10);
}

} // namespace
} // namespace loafwright::wire

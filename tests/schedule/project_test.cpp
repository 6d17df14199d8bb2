// SPDX-License-Identifier: Apache-2.0
//
// Small random projects, solved twice: by the search, and by trying every start of every activity.
#include "engine/schedule/project_check.hpp"
#include "engine/schedule/project_solve.hpp"
#include "tests/schedule/small_problems.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <limits>
#include <optional>

namespace loafwright::schedule {

namespace {

enum class Lags { forwards, both_ways };

Project small_project(Lags lags) {
    Project project;
    const auto resources = static_cast<std::size_t>(up_to(2));
    for (std::size_t r = 0; r < resources; ++r) {
        project.capacities.push_back(1 + up_to(3));
    }
    const auto activities = static_cast<std::size_t>(1 + up_to(4));
    for (std::size_t i = 0; i < activities; ++i) {
        Activity activity;
        activity.duration = up_to(3);
        for (std::size_t r = 0; r < resources; ++r) {
            activity.demands.push_back(sometimes() ? 0 : up_to(project.capacities[r]));
        }
        project.activities.push_back(activity);
    }
    const auto last = static_cast<std::int64_t>(activities) - 1;
    for (std::int64_t k = up_to(5); k > 0; --k) {
        const auto a = static_cast<std::size_t>(up_to(last));
        const auto b = static_cast<std::size_t>(up_to(last));
        if (lags == Lags::both_ways) {
            project.lags.push_back({a, b, up_to(5) - 3});
        } else if (a != b) {
            project.lags.push_back({std::min(a, b), std::max(a, b), up_to(4)});
        }
    }
    return project;
}

bool lags_hold_so_far(const Project& project, const std::vector<std::int64_t>& starts) {
    return std::all_of(project.lags.begin(), project.lags.end(), [&](const TimeLag& lag) {
        return lag.from >= starts.size() || lag.to >= starts.size() ||
               starts[lag.to] - starts[lag.from] >= lag.least;
    });
}

/// The shortest makespan of all starts up to `last`; what one lag forbids is not looked at further.
void try_all(const Project& project,
             std::int64_t last,
             std::vector<std::int64_t>& starts,
             std::optional<std::int64_t>& best) {
    if (!lags_hold_so_far(project, starts)) {
        return;
    }
    if (starts.size() == project.activities.size()) {
        const std::int64_t makespan = makespan_of(project, starts);
        if ((!best || makespan < *best) && violations(project, starts).empty()) {
            best = makespan;
        }
        return;
    }
    for (std::int64_t start = 0; start <= (starts.empty() ? 0 : last); ++start) {
        starts.push_back(start);
        try_all(project, last, starts, best);
        starts.pop_back();
    }
}

// Two more than any activity can need: longer waits would show.
std::optional<std::int64_t> shortest_of_all(const Project& project) {
    std::vector<std::int64_t> starts;
    std::optional<std::int64_t> best;
    try_all(project, length_in_a_row(project) + 2, starts, best);
    return best;
}

void compare(const Project& project) {
    RC_PRE(faults_in(project).empty());
    const std::optional<std::int64_t> shortest = shortest_of_all(project);
    RC_CLASSIFY(shortest.has_value(), "possible");
    const ProjectOutcome outcome = solve_project(project);
    RC_ASSERT(!std::holds_alternative<OutOfReach>(outcome));
    RC_ASSERT(std::holds_alternative<ProjectSolved>(outcome) == shortest.has_value());
    if (shortest) {
        const auto& solved = std::get<ProjectSolved>(outcome);
        RC_ASSERT(violations(project, solved.starts).empty());
        RC_ASSERT(makespan_of(project, solved.starts) == *shortest);
        RC_ASSERT(solved.makespan == *shortest);
        RC_ASSERT(solved.lower_bound == *shortest);
        RC_ASSERT(solved.proof == Proof::best);
    }
}

Activity activity(std::int64_t duration, std::vector<std::int64_t> demands) {
    return {duration, std::move(demands)};
}

std::int64_t makespan_or_none(const ProjectOutcome& outcome) {
    const auto* solved = std::get_if<ProjectSolved>(&outcome);
    return solved != nullptr ? solved->makespan : -1;
}

} // namespace

RC_GTEST_PROP(schedule_project, the_makespan_is_the_one_found_by_trying_everything, ()) {
    compare(small_project(Lags::forwards));
}

RC_GTEST_PROP(schedule_project, lags_both_ways_reach_what_trying_everything_reaches, ()) {
    compare(small_project(Lags::both_ways));
}

// Larger ones than can be tried: whatever the limit, an answer keeps every rule, its bounds hold,
// and more effort never gives less.
RC_GTEST_PROP(schedule_project, an_answer_within_any_limit_keeps_every_rule, ()) {
    Project project;
    project.capacities = {3 + up_to(5), 4};
    const std::size_t activities = 12;
    for (std::size_t i = 0; i < activities; ++i) {
        project.activities.push_back(activity(up_to(6), {up_to(3), up_to(4)}));
        for (std::int64_t k = up_to(1); k >= 0 && i > 0; --k) {
            const auto from = static_cast<std::size_t>(up_to(static_cast<std::int64_t>(i) - 1));
            project.lags.push_back({from, i, up_to(5)});
            if (sometimes() && sometimes()) {
                project.lags.push_back({i, from, -5 - up_to(10)});
            }
        }
    }
    const ProjectOutcome soon = solve_project(project, 1 + up_to(20));
    const ProjectOutcome later = solve_project(project);
    RC_ASSERT(!std::holds_alternative<OutOfReach>(later));
    if (const auto* solved = std::get_if<ProjectSolved>(&soon)) {
        RC_ASSERT(violations(project, solved->starts).empty());
        RC_ASSERT(makespan_of(project, solved->starts) == solved->makespan);
        RC_ASSERT((solved->lower_bound == solved->makespan) == (solved->proof == Proof::best));
        const auto& best = std::get<ProjectSolved>(later);
        RC_ASSERT(solved->lower_bound <= best.makespan);
        RC_ASSERT(best.makespan <= solved->makespan);
    }
    RC_ASSERT(!std::holds_alternative<NoSchedule>(soon) ||
              std::holds_alternative<NoSchedule>(later));
}

RC_GTEST_PROP(schedule_project, ten_times_the_times_is_ten_times_the_makespan, ()) {
    const Project project = small_project(Lags::both_ways);
    Project longer = project;
    for (Activity& each : longer.activities) {
        each.duration *= 10;
    }
    for (TimeLag& lag : longer.lags) {
        lag.least *= 10;
    }
    const std::int64_t makespan = makespan_or_none(solve_project(project));
    RC_ASSERT(makespan_or_none(solve_project(longer)) == (makespan < 0 ? -1 : 10 * makespan));
}

RC_GTEST_PROP(schedule_project, the_same_project_gets_the_same_starts, ()) {
    const Project project = small_project(Lags::both_ways);
    const ProjectOutcome once = solve_project(project);
    const ProjectOutcome again = solve_project(project);
    RC_PRE(std::holds_alternative<ProjectSolved>(once));
    RC_ASSERT(std::get<ProjectSolved>(again).starts == std::get<ProjectSolved>(once).starts);
}

// By hand: 2 and 3 need the whole resource one after the other, 4 fits beside either.
TEST(schedule_project, what_does_not_fit_together_follows_each_other) {
    Project project;
    project.capacities = {4};
    project.activities = {activity(0, {0}), activity(3, {3}), activity(5, {2}), activity(4, {1})};
    EXPECT_EQ(makespan_or_none(solve_project(project)), 8);
}

TEST(schedule_project, lags_that_contradict_each_other_leave_no_schedule) {
    Project project;
    project.activities = {activity(0, {}), activity(2, {}), activity(2, {})};
    project.lags = {{1, 2, 5}, {2, 1, -4}};
    EXPECT_TRUE(std::holds_alternative<NoSchedule>(solve_project(project)));
    project.lags = {{1, 2, 5}, {2, 1, -5}};
    EXPECT_EQ(makespan_or_none(solve_project(project)), 7);
}

// Each two of the three fit, all three do not, and greatest lags keep them within the time of one.
TEST(schedule_project, a_block_that_is_too_tight_for_its_resource_is_impossible) {
    Project project;
    project.capacities = {2};
    project.activities = {activity(0, {0}), activity(4, {1}), activity(4, {1}), activity(4, {1})};
    for (std::size_t a = 1; a <= 3; ++a) {
        for (std::size_t b = 1; b <= 3; ++b) {
            project.lags.push_back({a, b, -3});
        }
    }
    EXPECT_TRUE(std::holds_alternative<NoSchedule>(solve_project(project)));
    project.capacities = {3};
    EXPECT_EQ(makespan_or_none(solve_project(project)), 4);
}

TEST(schedule_project, one_activity_that_needs_more_than_there_is_is_impossible) {
    Project project;
    project.capacities = {2};
    project.activities = {activity(0, {0}), activity(1, {3})};
    EXPECT_TRUE(std::holds_alternative<NoSchedule>(solve_project(project)));
    project.activities[1].duration = 0; // takes no time, so it takes nothing
    EXPECT_EQ(makespan_or_none(solve_project(project)), 0);
}

TEST(schedule_project, a_project_with_faults_is_answered_with_all_of_them) {
    Project project;
    EXPECT_EQ(faults_in(project).size(), 1U);
    project.capacities = {-1};
    project.activities = {activity(-1, {1}), activity(1, {}), activity(1, {-1})};
    project.lags = {{0, 3, 0}, {0, 1, 1000000000}};
    EXPECT_EQ(faults_in(project).size(), 6U);
    EXPECT_TRUE(std::holds_alternative<OutOfReach>(solve_project(project)));
    project.lags.assign(1000, {0, 3, 0});
    EXPECT_EQ(faults_in(project).size(), 20U);
}

TEST(schedule_project, the_judge_names_what_is_broken) {
    Project project;
    project.capacities = {1};
    project.activities = {activity(1, {1}), activity(2, {1}), activity(1, {0})};
    project.lags = {{1, 2, 2}};
    const auto rules = [&](const std::vector<std::int64_t>& starts) {
        std::vector<std::string> names;
        for (const BrokenProjectRule& broken : violations(project, starts)) {
            names.push_back(broken.rule);
        }
        return names;
    };
    EXPECT_EQ(rules({0, 1, 3}), std::vector<std::string>{});
    EXPECT_EQ(rules({0, 1}), std::vector<std::string>{"form"});
    EXPECT_EQ(rules({0, 1, std::numeric_limits<std::int64_t>::max()}),
              std::vector<std::string>{"form"});
    EXPECT_EQ(rules({1, 2, 4}), std::vector<std::string>{"beginning"});
    EXPECT_EQ(rules({0, 1, 2}), std::vector<std::string>{"lag"});
    EXPECT_EQ(rules({0, 0, 2}), std::vector<std::string>{"resource"});
}

// The largest sizes there are: the answer comes soon, is sound, and says that it is not proven.
TEST(schedule_project, the_largest_projects_get_an_answer_without_end_of_work_or_memory) {
    Project project;
    project.capacities.assign(most_resources, 10);
    for (std::size_t i = 0; i < most_activities; ++i) {
        Activity each;
        each.duration = static_cast<std::int64_t>((i * 37) % 100);
        for (std::size_t r = 0; r < most_resources; ++r) {
            each.demands.push_back(static_cast<std::int64_t>((i * 7 + r * 5) % 8));
        }
        project.activities.push_back(each);
    }
    ASSERT_TRUE(faults_in(project).empty());
    const ProjectOutcome outcome = solve_project(project, 1000);
    const auto& solved = std::get<ProjectSolved>(outcome);
    EXPECT_TRUE(violations(project, solved.starts).empty());
    EXPECT_LE(solved.lower_bound, solved.makespan);
}

} // namespace loafwright::schedule

// SPDX-License-Identifier: Apache-2.0
//
// The gate in front of the solver. Everything behind it may index, add and multiply without looking
// again: indices are in range, numbers are small, every temperature that is used has its heating
// time and every pair that can meet has its changeover. Faults are collected, not thrown, so that a
// file with three of them gives three lines.
#include "engine/schedule/problem.hpp"

#include <algorithm>
#include <map>
#include <set>
#include <utility>

namespace loafwright::schedule {

namespace {

constexpr std::size_t most_faults = 20;
// Far more than any calendar has, far less than would overflow a sum.
constexpr std::int64_t largest_number = 1000000;

class Faults {
public:
    void add(const std::string& where, const std::string& what, const std::string& do_this) {
        if (found_.size() < most_faults) {
            found_.push_back({"value_out_of_range", Severity::error, what, where, do_this});
        }
    }

    void expect_range(const std::string& where,
                      std::int64_t value,
                      std::int64_t low,
                      std::int64_t high) {
        if (value < low || value > high) {
            add(where,
                "found " + std::to_string(value) + ", expected " + std::to_string(low) + " to " +
                    std::to_string(high),
                "give a number inside the range");
        }
    }

    [[nodiscard]] bool full() const { return found_.size() >= most_faults; }
    [[nodiscard]] Diagnostics take() { return std::move(found_); }

private:
    Diagnostics found_;
};

std::string numbered(const std::string& name, std::size_t index) {
    return name + "[" + std::to_string(index) + "]";
}

void look_at_length(Faults& faults, const std::string& where, const Length& length) {
    faults.expect_range(where + ".low", length.low, 0, largest_number);
    faults.expect_range(where + ".likely", length.likely, length.low, largest_number);
    faults.expect_range(where + ".high", length.high, length.likely, largest_number);
}

void look_at_stretch(Faults& faults,
                     const std::string& where,
                     const std::optional<Stretch>& stretch) {
    if (stretch) {
        faults.expect_range(where + ".min", stretch->min, 0, largest_number);
        faults.expect_range(where + ".max", stretch->max, stretch->min, largest_number);
    }
}

void look_at_lag(Faults& faults,
                 const std::string& where,
                 std::int64_t min,
                 const std::optional<std::int64_t>& max,
                 const std::optional<std::int64_t>& good) {
    faults.expect_range(where + ".min", min, -largest_number, largest_number);
    if (max) {
        faults.expect_range(where + ".max", *max, min, largest_number);
    }
    if (good) {
        faults.expect_range(where + ".good", *good, -largest_number, max.value_or(largest_number));
    }
}

void look_at_job(Faults& faults, const std::string& where, const Job& job) {
    if (job.tasks.empty() || job.alternatives.empty()) {
        faults.add(where, "found no task or no alternative, expected one of each", "add one");
    }
    for (const auto& anchor : {job.not_before, job.ready_from, job.ready_by}) {
        if (anchor) {
            faults.expect_range(where + " anchors", *anchor, -largest_number, largest_number);
        }
    }
    for (std::size_t i = 0; i < job.tasks.size() && !faults.full(); ++i) {
        const std::string here = where + "." + numbered("steps", i);
        look_at_length(faults, here + ".minutes", job.tasks[i].minutes);
        look_at_stretch(faults, here + ".stretch", job.tasks[i].stretch);
        faults.expect_range(here + ".fridge", job.tasks[i].fridge, 0, largest_number);
        for (const auto& start : {job.tasks[i].start_from, job.tasks[i].start_to}) {
            if (start) {
                faults.expect_range(here + " start", *start, -largest_number, largest_number);
            }
        }
        if (job.tasks[i].oven) {
            faults.expect_range(here + ".oven.slots", job.tasks[i].oven->slots, 0, largest_number);
        }
    }
    for (std::size_t i = 0; i < job.lags.size() && !faults.full(); ++i) {
        const std::string here = where + "." + numbered("lags", i);
        if (job.lags[i].after >= job.tasks.size() || job.lags[i].before >= job.tasks.size()) {
            faults.add(here, "found a step that does not exist", "count the steps from 0");
        }
        look_at_lag(faults, here, job.lags[i].min, job.lags[i].max, job.lags[i].good);
    }
    for (std::size_t a = 0; a < job.alternatives.size() && !faults.full(); ++a) {
        const std::string here = where + "." + numbered("alternatives", a);
        const Alternative& alternative = job.alternatives[a];
        faults.expect_range(here + ".weight", alternative.weight, 0, largest_number);
        for (const TaskChange& change : alternative.tasks) {
            if (change.task >= job.tasks.size()) {
                faults.add(here, "found a step that does not exist", "count the steps from 0");
            }
            if (change.minutes) {
                look_at_length(faults, here + ".minutes", *change.minutes);
            }
            look_at_stretch(faults, here + ".stretch", change.stretch);
            if (change.fridge) {
                faults.expect_range(here + ".fridge", *change.fridge, 0, largest_number);
            }
        }
        for (const LagChange& change : alternative.lags) {
            if (change.lag >= job.lags.size()) {
                faults.add(here, "found a lag that does not exist", "count the lags from 0");
            }
            look_at_lag(faults, here + ".lags", change.min, change.max, change.good);
        }
    }
}

void look_at_oven(Faults& faults, const Problem& problem) {
    const Oven& oven = problem.oven;
    faults.expect_range("oven.slots", oven.slots, 0, largest_number);
    std::map<int, std::int64_t> heat;
    for (const HeatUp& row : oven.heat_up) {
        faults.expect_range("oven.heat_up", row.minutes, 0, largest_number);
        heat[row.temperature] = row.minutes;
    }
    std::map<std::pair<int, int>, std::int64_t> over;
    for (const Changeover& row : oven.changeover) {
        faults.expect_range("oven.changeover", row.minutes, 0, largest_number);
        over[{row.from, row.to}] = row.minutes;
    }
    std::set<int> used;
    for (const Job& job : problem.jobs) {
        for (const Task& task : job.tasks) {
            if (task.oven) {
                used.insert(task.oven->temperature);
            }
        }
    }
    for (const int temperature : used) {
        if (heat.count(temperature) == 0) {
            faults.add("oven.heat_up",
                       "found no heating time for " + std::to_string(temperature),
                       "add one for every temperature that a step uses");
        }
    }
    std::set<int> before = used;
    for (const Claim& claim : oven.claims) {
        faults.expect_range("oven.claims.from", claim.from, -largest_number, largest_number);
        faults.expect_range("oven.claims.to", claim.to, -largest_number, largest_number);
        if (claim.temperature) {
            before.insert(*claim.temperature);
        }
    }
    for (const int from : before) {
        for (const int to : used) {
            if (faults.full()) {
                return;
            }
            if (from != to && over.count({from, to}) == 0) {
                faults.add("oven.changeover",
                           "found no time from " + std::to_string(from) + " to " +
                               std::to_string(to),
                           "add one for every pair that can follow each other");
            }
        }
    }
    // Tables of more temperatures than this are not a kitchen's; the test is cubic.
    if (used.size() > 200) {
        faults.add("oven", "found more than 200 temperatures", "use fewer");
        return;
    }
    for (const int a : used) {
        for (const int b : used) {
            for (const int c : used) {
                const auto ab = over.find({a, b});
                const auto bc = over.find({b, c});
                const auto ac = over.find({a, c});
                if (ab != over.end() && bc != over.end() && ac != over.end() && a != c &&
                    ac->second > ab->second + bc->second) {
                    faults.add("oven.changeover",
                               "found a way round by " + std::to_string(b) +
                                   " that is shorter than " + std::to_string(a) + " to " +
                                   std::to_string(c),
                               "make every direct changeover the shortest");
                }
            }
        }
    }
}

} // namespace

Diagnostics faults_in(const Problem& problem) {
    Faults faults;
    faults.expect_range("horizon", problem.horizon, 1, longest_horizon_minutes);
    faults.expect_range("pause", problem.pause, 0, largest_number);
    faults.expect_range("fridge.slots", problem.fridge.slots, 0, largest_number);
    for (std::size_t p = 0; p < problem.people.size() && !faults.full(); ++p) {
        for (const Window& window : problem.people[p].windows) {
            faults.expect_range(
                numbered("people", p) + ".from", window.from, -largest_number, largest_number);
            faults.expect_range(
                numbered("people", p) + ".to", window.to, -largest_number, largest_number);
        }
    }
    for (const RatherNot& span : problem.rather_not) {
        faults.expect_range("rather_not.from", span.from, -largest_number, largest_number);
        faults.expect_range("rather_not.to", span.to, -largest_number, largest_number);
    }
    for (std::size_t j = 0; j < problem.jobs.size() && !faults.full(); ++j) {
        look_at_job(faults, numbered("jobs", j), problem.jobs[j]);
    }
    if (!faults.full()) {
        look_at_oven(faults, problem);
    }
    return faults.take();
}

} // namespace loafwright::schedule

// SPDX-License-Identifier: Apache-2.0
#include "engine/schedule/project.hpp"

#include <algorithm>
#include <utility>

namespace loafwright::schedule {

namespace {

constexpr std::size_t most_faults = 20;

class Faults {
public:
    void expect(const std::string& name, std::int64_t value, std::int64_t low, std::int64_t high) {
        if ((value < low || value > high) && found_.size() < most_faults) {
            found_.push_back({"value_out_of_range",
                              Severity::error,
                              name + " is " + std::to_string(value) + ", expected " +
                                  std::to_string(low) + " to " + std::to_string(high),
                              "",
                              "Check the number, or take a smaller project."});
        }
    }
    void expect(const std::string& name, std::size_t value, std::size_t low, std::size_t high) {
        expect(name,
               static_cast<std::int64_t>(value),
               static_cast<std::int64_t>(low),
               static_cast<std::int64_t>(high));
    }
    [[nodiscard]] bool none() const { return found_.empty(); }
    Diagnostics all() { return std::move(found_); }

private:
    Diagnostics found_;
};

void look_at_activity(const Project& project, std::size_t i, Faults& faults) {
    const std::string name = "activity " + std::to_string(i);
    const Activity& activity = project.activities[i];
    faults.expect("the duration of " + name, activity.duration, 0, longest_project);
    faults.expect("the number of demands of " + name,
                  activity.demands.size(),
                  project.capacities.size(),
                  project.capacities.size());
    for (const std::int64_t demand : activity.demands) {
        faults.expect("a demand of " + name, demand, 0, most_units);
    }
}

void look_at_lag(const Project& project, const TimeLag& lag, Faults& faults) {
    const std::size_t last = project.activities.size() - 1;
    faults.expect("the activity that a lag comes from", lag.from, 0, last);
    faults.expect("the activity that a lag leads to", lag.to, 0, last);
    faults.expect("a lag", lag.least, -longest_project, longest_project);
}

} // namespace

std::int64_t makespan_of(const Project& project, const std::vector<std::int64_t>& starts) {
    std::int64_t end = 0;
    for (std::size_t i = 0; i < project.activities.size(); ++i) {
        end = std::max(end, starts[i] + project.activities[i].duration);
    }
    return end;
}

std::int64_t length_in_a_row(const Project& project) {
    std::vector<std::int64_t> steps;
    for (const Activity& activity : project.activities) {
        steps.push_back(activity.duration);
    }
    for (const TimeLag& lag : project.lags) {
        steps[lag.from] = std::max(steps[lag.from], lag.least);
    }
    std::int64_t length = 0;
    for (const std::int64_t step : steps) {
        length += step;
    }
    return length;
}

Diagnostics faults_in(const Project& project) {
    Faults faults;
    faults.expect("the number of activities", project.activities.size(), 1, most_activities);
    faults.expect("the number of resources", project.capacities.size(), 0, most_resources);
    faults.expect("the number of lags", project.lags.size(), 0, most_time_lags);
    if (!faults.none()) {
        return faults.all();
    }
    for (const std::int64_t capacity : project.capacities) {
        faults.expect("the capacity of a resource", capacity, 0, most_units);
    }
    for (std::size_t i = 0; i < project.activities.size(); ++i) {
        look_at_activity(project, i, faults);
    }
    for (const TimeLag& lag : project.lags) {
        look_at_lag(project, lag, faults);
    }
    if (faults.none()) {
        faults.expect("the length of all activities one after the other",
                      length_in_a_row(project),
                      0,
                      longest_project);
    }
    return faults.all();
}

} // namespace loafwright::schedule

// SPDX-License-Identifier: Apache-2.0
//
// The interchange form of a day for the bare scheduler, version 1: one object a problem, whole
// minutes from the day's origin, half open windows, indices from 0. An alternative names only what
// it changes. Ranges that one key shows are looked at here, with the path of that key; what takes
// two lists to see (heating times, changeovers) is left to the scheduler's own gate.
#include "engine/wire/schedule_problem.hpp"

#include "engine/wire/json_fields.hpp"

#include <algorithm>
#include <array>
#include <string>
#include <utility>
#include <vector>

namespace loafwright::wire {

namespace {

// As the scheduler's own gate has it: far more than any calendar, far less than overflows a sum.
constexpr std::int64_t largest = 1000000;
constexpr WholeRange any_minute{-largest, largest};
constexpr WholeRange count{0, largest};
constexpr WholeRange any_temperature{-1000, 10000};

constexpr std::array states{
    schedule::WindowState::away, schedule::WindowState::asleep, schedule::WindowState::busy};
constexpr std::array kinds{
    schedule::TaskKind::hands, schedule::TaskKind::wait, schedule::TaskKind::oven};

int small(std::int64_t number) {
    return static_cast<int>(number);
}

WholeRange index_into(std::size_t size) {
    return {0, std::max<std::int64_t>(0, static_cast<std::int64_t>(size) - 1)};
}

schedule::Length length_of(JsonFields fields) {
    schedule::Length length;
    length.low = fields.whole("low", count);
    length.likely = fields.whole("likely", {length.low, largest});
    length.high = fields.whole("high", {length.likely, largest});
    fields.refuse_others();
    return length;
}

std::optional<schedule::Stretch> stretch_of(std::optional<JsonFields> fields) {
    if (!fields) {
        return std::nullopt;
    }
    schedule::Stretch stretch;
    stretch.min = fields->whole("min", count);
    stretch.max = fields->whole("max", {stretch.min, largest});
    fields->refuse_others();
    return stretch;
}

// A half open span; one that ends before it begins is a slip of the pen.
template <typename Span>
void read_span(JsonFields& fields, Span& span) {
    span.from = fields.whole("from", any_minute);
    span.to = fields.whole("to", {span.from, largest});
}

schedule::Person person_of(JsonFields& fields) {
    schedule::Person person{fields.text("name"), {}};
    for (JsonFields& item : fields.objects("windows", most_windows)) {
        schedule::Window window;
        read_span(item, window);
        window.state = states.at(item.one_of("state", {"away", "asleep", "busy"}));
        item.refuse_others();
        person.windows.push_back(window);
    }
    fields.refuse_others();
    return person;
}

schedule::Oven oven_of(JsonFields fields) {
    schedule::Oven oven;
    oven.slots = small(fields.whole("slots", count));
    for (JsonFields& item : fields.objects("heat_up", most_temperatures)) {
        oven.heat_up.push_back(
            {small(item.whole("temperature", any_temperature)), item.whole("minutes", count)});
        item.refuse_others();
    }
    for (JsonFields& item : fields.objects("changeover", most_changeovers)) {
        oven.changeover.push_back({small(item.whole("from", any_temperature)),
                                   small(item.whole("to", any_temperature)),
                                   item.whole("minutes", count)});
        item.refuse_others();
    }
    for (JsonFields& item : fields.objects("claims", most_windows)) {
        schedule::Claim claim;
        read_span(item, claim);
        if (const auto temperature = item.whole_if_any("temperature", any_temperature)) {
            claim.temperature = small(*temperature);
        }
        item.refuse_others();
        oven.claims.push_back(claim);
    }
    fields.refuse_others();
    return oven;
}

schedule::Task task_of(JsonFields& fields, Complaints& complaints) {
    schedule::Task task;
    task.name = fields.text("name");
    task.kind = kinds.at(fields.one_of("kind", {"hands", "wait", "oven"}));
    task.minutes = length_of(fields.object("minutes"));
    task.stretch = stretch_of(fields.object_if_any("stretch"));
    task.fridge = small(fields.whole("fridge", count));
    if (auto use = fields.object_if_any("oven")) {
        task.oven = schedule::OvenUse{small(use->whole("slots", count)),
                                      small(use->whole("temperature", any_temperature))};
        use->refuse_others();
    } else if (task.kind == schedule::TaskKind::oven) {
        complaints.error("key_missing",
                         fields.path_of("oven"),
                         "a step of kind \"oven\" says nothing of its oven",
                         "Add its slots and temperature.");
    }
    task.leave = fields.truth("leave");
    fields.refuse_others();
    return task;
}

// The wish may lie anywhere up to the longest gap.
WholeRange good_range(const std::optional<std::int64_t>& max) {
    return {-largest, max.value_or(largest)};
}

schedule::Lag lag_of(JsonFields& fields, std::size_t tasks) {
    schedule::Lag lag;
    lag.after = static_cast<std::size_t>(fields.whole("after", index_into(tasks)));
    lag.before = static_cast<std::size_t>(fields.whole("before", index_into(tasks)));
    lag.min = fields.whole("min", any_minute);
    lag.max = fields.whole_if_any("max", {lag.min, largest});
    lag.good = fields.whole_if_any("good", good_range(lag.max));
    fields.refuse_others();
    return lag;
}

schedule::TaskChange task_change_of(JsonFields& fields, std::size_t tasks) {
    schedule::TaskChange change;
    change.task = static_cast<std::size_t>(fields.whole("step", index_into(tasks)));
    if (fields.has("minutes")) {
        change.minutes = length_of(fields.object("minutes"));
    }
    change.changes_stretch = fields.has("stretch");
    change.stretch = stretch_of(fields.object_if_any("stretch"));
    if (fields.has("fridge")) {
        change.fridge = small(fields.whole("fridge", count));
    }
    if (fields.has("leave")) {
        change.leave = fields.truth("leave");
    }
    fields.refuse_others();
    return change;
}

// Null takes a bound away, an absent key leaves it as written.
schedule::LagChange lag_change_of(JsonFields& fields, const std::vector<schedule::Lag>& lags) {
    schedule::LagChange change;
    change.lag = static_cast<std::size_t>(fields.whole("lag", index_into(lags.size())));
    const schedule::Lag written = change.lag < lags.size() ? lags[change.lag] : schedule::Lag{};
    change.min = fields.has("min") ? fields.whole("min", any_minute) : written.min;
    const auto max = fields.whole_if_any("max", {change.min, largest});
    change.max = fields.has("max") ? max : written.max;
    const auto good = fields.whole_if_any("good", good_range(change.max));
    change.good = fields.has("good") ? good : written.good;
    fields.refuse_others();
    return change;
}

schedule::Alternative alternative_of(JsonFields& fields, const schedule::Job& job) {
    schedule::Alternative alternative;
    alternative.name = fields.text("name");
    alternative.weight = fields.whole("weight", count);
    for (JsonFields& item : fields.objects("steps", most_steps_of_a_bread)) {
        alternative.tasks.push_back(task_change_of(item, job.tasks.size()));
    }
    for (JsonFields& item : fields.objects("lags", most_lags_of_a_bread)) {
        alternative.lags.push_back(lag_change_of(item, job.lags));
    }
    fields.refuse_others();
    return alternative;
}

schedule::Job job_of(JsonFields& fields, Complaints& complaints) {
    schedule::Job job;
    job.name = fields.text("name");
    job.not_before = fields.whole_if_any("not_before", any_minute);
    job.ready_from = fields.whole_if_any("ready_from", any_minute);
    job.ready_by = fields.whole_if_any("ready_by", any_minute);
    for (JsonFields& item : fields.objects("steps", most_steps_of_a_bread)) {
        job.tasks.push_back(task_of(item, complaints));
    }
    for (JsonFields& item : fields.objects("lags", most_lags_of_a_bread)) {
        job.lags.push_back(lag_of(item, job.tasks.size()));
    }
    job.alternatives.clear();
    for (JsonFields& item : fields.objects("alternatives", most_alternatives_of_a_bread)) {
        job.alternatives.push_back(alternative_of(item, job));
    }
    fields.refuse_others();
    return job;
}

schedule::Problem problem_of(JsonFields fields, Complaints& complaints) {
    schedule::Problem problem;
    fields.whole("version", {1, 1});
    problem.id = fields.text("id");
    problem.horizon = fields.whole("horizon", {1, schedule::longest_horizon_minutes});
    problem.pause = fields.whole("pause", count);
    for (JsonFields& item : fields.objects("people", most_people)) {
        problem.people.push_back(person_of(item));
    }
    problem.oven = oven_of(fields.object("oven"));
    JsonFields fridge = fields.object("fridge");
    problem.fridge.slots = small(fridge.whole("slots", count));
    fridge.refuse_others();
    for (JsonFields& item : fields.objects("rather_not", most_windows)) {
        schedule::RatherNot span;
        read_span(item, span);
        item.refuse_others();
        problem.rather_not.push_back(span);
    }
    for (JsonFields& item : fields.objects("breads", most_breads)) {
        problem.jobs.push_back(job_of(item, complaints));
    }
    fields.refuse_others();
    return problem;
}

// The scheduler speaks of jobs, its interchange form of breads.
Diagnostics in_words_of_the_file(Diagnostics faults, std::string_view file) {
    for (Diagnostic& fault : faults) {
        if (fault.where.rfind("jobs", 0) == 0) {
            fault.where.replace(0, 4, "breads");
        }
        fault.where = std::string(file) + (fault.where.empty() ? "" : " ") + fault.where;
    }
    return faults;
}

} // namespace

tl::expected<ReadProblem, Diagnostics> schedule_problem_from_json(std::string_view bytes,
                                                                  std::string_view file) {
    Complaints complaints(file);
    auto fields = json_object(bytes, file, complaints);
    if (!fields) {
        return tl::make_unexpected(std::move(fields.error()));
    }
    ReadProblem read;
    read.problem = problem_of(std::move(*fields), complaints);
    if (complaints.any_error()) {
        return tl::make_unexpected(complaints.take_errors());
    }
    if (Diagnostics faults = schedule::faults_in(read.problem); !faults.empty()) {
        return tl::make_unexpected(in_words_of_the_file(std::move(faults), file));
    }
    read.warnings = complaints.take_warnings();
    return read;
}

} // namespace loafwright::wire

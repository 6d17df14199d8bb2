// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/diagnostic/diagnostic.hpp"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

/// Tasks on a calendar. Nothing in this room knows what the tasks are for.
///
/// Time is whole minutes from an origin that the caller chooses. Windows are half open: [from, to).
/// Indices count from 0. README.md states every rule as mathematics, under the name that
/// `check.hpp` reports.
namespace loafwright::schedule {

/// The largest horizon that is looked at: eight weeks.
inline constexpr std::int64_t longest_horizon_minutes = 80640;

enum class WindowState { away, asleep, busy };

/// When a person can do no task of kind `hands`. `busy` people still watch the oven.
struct Window {
    std::int64_t from = 0;
    std::int64_t to = 0;
    WindowState state = WindowState::asleep;
};

struct Person {
    std::string name;
    std::vector<Window> windows;
};

/// Minutes from cold to `temperature`.
struct HeatUp {
    int temperature = 0;
    std::int64_t minutes = 0;
};

/// Minutes from one temperature to another, heating or cooling.
///
/// Invariants: c(a, c) <= c(a, b) + c(b, c).
struct Changeover {
    int from = 0;
    int to = 0;
    std::int64_t minutes = 0;
};

/// Somebody else's use of the oven.
struct Claim {
    std::int64_t from = 0;
    std::int64_t to = 0;
    std::optional<int> temperature;
};

struct Oven {
    int slots = 1;
    std::vector<HeatUp> heat_up;
    std::vector<Changeover> changeover;
    std::vector<Claim> claims;
};

struct Fridge {
    int slots = 0;
};

/// A time in which a task of kind `hands` is allowed and unwelcome.
struct RatherNot {
    std::int64_t from = 0;
    std::int64_t to = 0;
};

/// Invariants: 0 <= low <= likely <= high.
struct Length {
    std::int64_t low = 0;
    std::int64_t likely = 0;
    std::int64_t high = 0;
};

/// The schedule may choose any length in [min, max].
struct Stretch {
    std::int64_t min = 0;
    std::int64_t max = 0;
};

enum class TaskKind { hands, wait, oven };

struct OvenUse {
    int slots = 1;
    int temperature = 0;
};

struct Task {
    std::string name;
    TaskKind kind = TaskKind::wait;
    Length minutes;
    std::optional<Stretch> stretch; // none: it takes minutes.likely
    int fridge = 0;                 // slots
    std::optional<OvenUse> oven;
    bool leave = false; // one may leave the house: it does not tie anybody
    std::optional<std::int64_t> start_from = std::nullopt; // it starts in [start_from, start_to]
    std::optional<std::int64_t> start_to = std::nullopt;
};

/// min <= start(before) - end(after) <= max; more than `good` is allowed and unwelcome.
struct Lag {
    std::size_t after = 0;
    std::size_t before = 0;
    std::int64_t min = 0;
    std::optional<std::int64_t> max;
    std::optional<std::int64_t> good;
};

/// What another way of doing a job changes in one task. What is not named stays.
struct TaskChange {
    std::size_t task = 0;
    std::optional<Length> minutes;
    bool changes_stretch = false;
    std::optional<Stretch> stretch;
    std::optional<int> fridge;
    std::optional<bool> leave;
};

/// What another way of doing a job changes in one lag: min, max and good together.
struct LagChange {
    std::size_t lag = 0;
    std::int64_t min = 0;
    std::optional<std::int64_t> max;
    std::optional<std::int64_t> good;
};

/// One way of doing a job. Number 0 is the job as written.
struct Alternative {
    std::string name;
    std::int64_t weight = 0;
    std::vector<TaskChange> tasks;
    std::vector<LagChange> lags;
};

/// Tasks that belong together. The last one in the list is the one that everything leads to.
///
/// Invariants: at least one task and one alternative.
struct Job {
    std::string name;
    std::optional<std::int64_t> not_before; // no task starts earlier
    std::optional<std::int64_t> ready_from; // the last task ends in [ready_from, ready_by]
    std::optional<std::int64_t> ready_by;
    std::vector<Task> tasks;
    std::vector<Lag> lags;
    std::vector<Alternative> alternatives{Alternative{}};
};

struct Problem {
    std::string id;
    std::int64_t horizon = 1440; // every task lies in [0, horizon]
    std::int64_t pause = 0;      // hands tasks at most this far apart make one block
    std::vector<Person> people;
    Oven oven;
    Fridge fridge;
    std::vector<RatherNot> rather_not;
    std::vector<Job> jobs;
};

struct JobSchedule {
    std::size_t alternative = 0;
    std::vector<std::int64_t> starts;
    std::vector<std::int64_t> ends;
    std::vector<std::optional<std::size_t>> people; // who does it, for hands tasks
};

/// One entry for each job of the problem, in the same order.
struct Schedule {
    std::vector<JobSchedule> jobs;
};

/// What a schedule is judged by, the most important first.
struct Objective {
    std::int64_t violations = 0; // least: wishes not kept
    std::int64_t tied = 0;       // least: minutes in which somebody is tied to the job
    std::int64_t earliest = 0;   // greatest: the first start of all

    friend constexpr bool operator==(const Objective& a, const Objective& b) {
        return a.violations == b.violations && a.tied == b.tied && a.earliest == b.earliest;
    }
};

/// Everything about a problem that has no meaning: counts below zero, indices out of range, a
/// temperature without a heating time, a table of changeovers that breaks the triangle inequality,
/// numbers past any calendar.
///
/// Promises: empty for a problem that keeps all invariants above; at most twenty entries; never a
/// crash.
Diagnostics faults_in(const Problem& problem);

} // namespace loafwright::schedule

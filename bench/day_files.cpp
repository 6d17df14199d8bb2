// SPDX-License-Identifier: Apache-2.0
#include "bench/day_files.hpp"

#include "engine/schedule/cells.hpp"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <optional>
#include <utility>
#include <vector>

namespace loafwright::bench {

namespace {

using namespace schedule;
using Json = nlohmann::ordered_json;

Json maybe(const std::optional<std::int64_t>& value) {
    return value ? Json(*value) : Json(nullptr);
}

Json json_of(const Length& length) {
    return {{"low", length.low}, {"likely", length.likely}, {"high", length.high}};
}

Json json_of(const std::optional<Stretch>& stretch) {
    return stretch ? Json{{"min", stretch->min}, {"max", stretch->max}} : Json(nullptr);
}

const char* word_of(WindowState state) {
    return state == WindowState::away ? "away" : state == WindowState::busy ? "busy" : "asleep";
}

const char* word_of(TaskKind kind) {
    return kind == TaskKind::hands ? "hands" : kind == TaskKind::oven ? "oven" : "wait";
}

Json json_of(const Alternative& alternative) {
    Json steps = Json::array();
    for (const TaskChange& change : alternative.tasks) {
        Json step{{"step", change.task}};
        if (change.minutes) {
            step["minutes"] = json_of(*change.minutes);
        }
        if (change.changes_stretch) {
            step["stretch"] = json_of(change.stretch);
        }
        if (change.fridge) {
            step["fridge"] = *change.fridge;
        }
        if (change.leave) {
            step["leave"] = *change.leave;
        }
        steps.push_back(step);
    }
    Json lags = Json::array();
    for (const LagChange& change : alternative.lags) {
        lags.push_back({{"lag", change.lag},
                        {"min", change.min},
                        {"max", maybe(change.max)},
                        {"good", maybe(change.good)}});
    }
    return {{"name", alternative.name},
            {"weight", alternative.weight},
            {"steps", steps},
            {"lags", lags}};
}

Json json_of(const Job& job) {
    Json bread{{"name", job.name},
               {"not_before", maybe(job.not_before)},
               {"ready_from", maybe(job.ready_from)},
               {"ready_by", maybe(job.ready_by)},
               {"steps", Json::array()},
               {"lags", Json::array()},
               {"alternatives", Json::array()}};
    for (const Task& task : job.tasks) {
        bread["steps"].push_back(
            {{"name", task.name},
             {"kind", word_of(task.kind)},
             {"minutes", json_of(task.minutes)},
             {"stretch", json_of(task.stretch)},
             {"fridge", task.fridge},
             {"oven",
              task.oven ? Json{{"slots", task.oven->slots}, {"temperature", task.oven->temperature}}
                        : Json(nullptr)},
             {"leave", task.leave}});
    }
    for (const Lag& lag : job.lags) {
        bread["lags"].push_back({{"after", lag.after},
                                 {"before", lag.before},
                                 {"min", lag.min},
                                 {"max", maybe(lag.max)},
                                 {"good", maybe(lag.good)}});
    }
    for (const Alternative& alternative : job.alternatives) {
        bread["alternatives"].push_back(json_of(alternative));
    }
    return bread;
}

} // namespace

std::string day_json(const Problem& problem) {
    Json day{{"version", 1},
             {"id", problem.id},
             {"horizon", problem.horizon},
             {"pause", problem.pause},
             {"people", Json::array()},
             {"oven",
              {{"slots", problem.oven.slots},
               {"heat_up", Json::array()},
               {"changeover", Json::array()},
               {"claims", Json::array()}}},
             {"fridge", {{"slots", problem.fridge.slots}}},
             {"rather_not", Json::array()},
             {"breads", Json::array()}};
    for (const Person& person : problem.people) {
        Json windows = Json::array();
        for (const Window& window : person.windows) {
            windows.push_back(
                {{"from", window.from}, {"to", window.to}, {"state", word_of(window.state)}});
        }
        day["people"].push_back({{"name", person.name}, {"windows", windows}});
    }
    for (const HeatUp& row : problem.oven.heat_up) {
        day["oven"]["heat_up"].push_back(
            {{"temperature", row.temperature}, {"minutes", row.minutes}});
    }
    for (const Changeover& row : problem.oven.changeover) {
        day["oven"]["changeover"].push_back(
            {{"from", row.from}, {"to", row.to}, {"minutes", row.minutes}});
    }
    for (const Claim& claim : problem.oven.claims) {
        day["oven"]["claims"].push_back(
            {{"from", claim.from},
             {"to", claim.to},
             {"temperature", claim.temperature ? Json(*claim.temperature) : Json(nullptr)}});
    }
    for (const RatherNot& span : problem.rather_not) {
        day["rather_not"].push_back({{"from", span.from}, {"to", span.to}});
    }
    for (const Job& job : problem.jobs) {
        day["breads"].push_back(json_of(job));
    }
    return day.dump();
}

namespace {

// Of all jobs, one after the other; counted from 1 in the data.
struct FlatWay {
    std::size_t job = 0;
    std::int64_t weight = 0;
    std::vector<Task> tasks;
    std::vector<Lag> lags;
};

std::vector<FlatWay> ways_of(const Job& job, std::size_t j) {
    std::vector<FlatWay> ways;
    for (const Alternative& alternative : job.alternatives) {
        FlatWay way{j, alternative.weight, job.tasks, job.lags};
        for (const TaskChange& change : alternative.tasks) {
            Task& task = way.tasks[change.task];
            task.minutes = change.minutes.value_or(task.minutes);
            task.stretch = change.changes_stretch ? change.stretch : task.stretch;
            task.fridge = change.fridge.value_or(task.fridge);
            task.leave = change.leave.value_or(task.leave);
        }
        for (const LagChange& change : alternative.lags) {
            Lag& lag = way.lags[change.lag];
            lag.min = change.min;
            lag.max = change.max;
            lag.good = change.good;
        }
        ways.push_back(std::move(way));
    }
    return ways;
}

// Groups of tasks without `leave` that lags join.
std::vector<std::vector<std::size_t>> groups_of(const FlatWay& way) {
    std::vector<std::size_t> group(way.tasks.size());
    for (std::size_t i = 0; i < group.size(); ++i) {
        group[i] = i;
    }
    for (bool moved = true; moved;) {
        moved = false;
        for (const Lag& lag : way.lags) {
            std::size_t& a = group[lag.after];
            std::size_t& b = group[lag.before];
            if (!way.tasks[lag.after].leave && !way.tasks[lag.before].leave && a != b) {
                a = b = std::min(a, b);
                moved = true;
            }
        }
    }
    std::vector<std::vector<std::size_t>> groups(way.tasks.size());
    for (std::size_t i = 0; i < group.size(); ++i) {
        if (!way.tasks[i].leave) {
            groups[group[i]].push_back(i);
        }
    }
    groups.erase(std::remove_if(
                     groups.begin(), groups.end(), [](const auto& tasks) { return tasks.empty(); }),
                 groups.end());
    return groups;
}

std::vector<Window> unwatched(const Problem& problem) {
    std::vector<Window> runs;
    for (std::int64_t t = 0; t < problem.horizon; ++t) {
        const bool somebody =
            std::any_of(problem.people.begin(), problem.people.end(), [t](const Person& person) {
                return std::none_of(
                    person.windows.begin(), person.windows.end(), [t](const Window& window) {
                        return window.state != WindowState::busy && window.from <= t &&
                               t < window.to;
                    });
            });
        if (somebody) {
            continue;
        }
        if (!runs.empty() && runs.back().to == t) {
            ++runs.back().to;
        } else {
            runs.push_back({t, t + 1, WindowState::away});
        }
    }
    return runs;
}

// All times in cells of the grid, as our own solver has them.
Problem divided(Problem problem, std::int64_t grid) {
    const auto part = [grid](std::int64_t& minutes) { minutes /= grid; };
    const auto maybe_part = [&](std::optional<std::int64_t>& minutes) {
        if (minutes) {
            part(*minutes);
        }
    };
    const auto task_part = [&](Length& length, std::optional<Stretch>& stretch) {
        part(length.likely);
        if (stretch) {
            part(stretch->min);
            part(stretch->max);
        }
    };
    part(problem.horizon);
    for (Person& person : problem.people) {
        for (Window& window : person.windows) {
            part(window.from);
            part(window.to);
        }
    }
    for (HeatUp& row : problem.oven.heat_up) {
        part(row.minutes);
    }
    for (Changeover& row : problem.oven.changeover) {
        part(row.minutes);
    }
    for (Claim& claim : problem.oven.claims) {
        part(claim.from);
        part(claim.to);
    }
    for (RatherNot& span : problem.rather_not) {
        part(span.from);
        part(span.to);
    }
    for (Job& job : problem.jobs) {
        maybe_part(job.not_before);
        maybe_part(job.ready_from);
        maybe_part(job.ready_by);
        for (Task& task : job.tasks) {
            task_part(task.minutes, task.stretch);
        }
        for (Lag& lag : job.lags) {
            part(lag.min);
            maybe_part(lag.max);
            maybe_part(lag.good);
        }
        for (Alternative& alternative : job.alternatives) {
            for (TaskChange& change : alternative.tasks) {
                Length none;
                task_part(change.minutes ? *change.minutes : none, change.stretch);
            }
            for (LagChange& change : alternative.lags) {
                part(change.min);
                maybe_part(change.max);
                maybe_part(change.good);
            }
        }
    }
    return problem;
}

class Data {
public:
    void number(const char* name, std::int64_t value) {
        text_ += std::string(name) + " = " + std::to_string(value) + ";\n";
    }
    template <typename Items, typename Number>
    void list(const char* name, const Items& items, const Number& number) {
        text_ += std::string(name) + " = [";
        for (const auto& item : items) {
            text_ += std::to_string(number(item)) + ",";
        }
        text_ += "];\n";
    }
    template <typename Number>
    void table(const char* name, std::size_t rows, std::size_t columns, const Number& number) {
        text_ += std::string(name) + " = array2d(1.." + std::to_string(rows) + ",1.." +
                 std::to_string(columns) + ",[";
        for (std::size_t r = 0; r < rows; ++r) {
            for (std::size_t c = 0; c < columns; ++c) {
                text_ += std::to_string(number(r, c)) + ",";
            }
        }
        text_ += "]);\n";
    }
    void line(const std::string& line) { text_ += line + "\n"; }
    [[nodiscard]] const std::string& text() const { return text_; }

private:
    std::string text_;
};

// All jobs in one row of tasks, one of lags and one of ways.
struct Flat {
    explicit Flat(const Problem& problem) {
        for (std::size_t j = 0; j < problem.jobs.size(); ++j) {
            const Job& job = problem.jobs[j];
            first_task.push_back(tasks.size());
            first_lag.push_back(lags.size());
            for (const Task& task : job.tasks) {
                tasks.push_back(task);
                job_of.push_back(j);
            }
            for (Lag lag : job.lags) {
                lag.after += first_task.back();
                lag.before += first_task.back();
                lags.push_back(lag);
                lag_job.push_back(j);
            }
            for (FlatWay& way : ways_of(job, j)) {
                ways.push_back(std::move(way));
            }
        }
    }

    template <typename Number>
    auto of_task(const Number& number) const {
        return [this, number](std::size_t w, std::size_t i) -> std::int64_t {
            const FlatWay& way = ways[w];
            return way.job == job_of[i] ? number(way.tasks[i - first_task[way.job]]) : 0;
        };
    }
    template <typename Number>
    auto of_lag(const Number& number) const {
        return [this, number](std::size_t w, std::size_t l) -> std::int64_t {
            const FlatWay& way = ways[w];
            return way.job == lag_job[l] ? number(way.lags[l - first_lag[way.job]]) : 0;
        };
    }

    std::vector<Task> tasks;
    std::vector<std::size_t> job_of;
    std::vector<std::size_t> first_task;
    std::vector<Lag> lags;
    std::vector<std::size_t> lag_job;
    std::vector<std::size_t> first_lag;
    std::vector<FlatWay> ways;
};

void write_jobs(Data& data, const Problem& problem, const Flat& flat) {
    const std::int64_t none = problem.horizon;
    data.list("job_of", flat.job_of, [](std::size_t j) { return j + 1; });
    data.list("way_job", flat.ways, [](const FlatWay& way) { return way.job + 1; });
    data.list("weight", flat.ways, [](const FlatWay& way) { return way.weight; });
    const auto tasks = [&](const char* name, const auto& number) {
        data.table(name, flat.ways.size(), flat.tasks.size(), flat.of_task(number));
    };
    tasks("least", [](const Task& t) { return t.stretch ? t.stretch->min : t.minutes.likely; });
    tasks("most", [](const Task& t) { return t.stretch ? t.stretch->max : t.minutes.likely; });
    tasks("fridge", [](const Task& t) { return std::int64_t{t.fridge}; });
    data.list("after", flat.lags, [](const Lag& lag) { return lag.after + 1; });
    data.list("before", flat.lags, [](const Lag& lag) { return lag.before + 1; });
    const auto lags = [&](const char* name, const auto& number) {
        data.table(name, flat.ways.size(), flat.lags.size(), flat.of_lag(number));
    };
    lags("lag_min", [](const Lag& lag) { return lag.min; });
    lags("lag_max", [none](const Lag& lag) { return lag.max.value_or(none); });
    lags("lag_good", [none](const Lag& lag) { return lag.good.value_or(none); });
    std::size_t last = 0;
    data.list(
        "last_task", problem.jobs, [&last](const Job& job) { return last += job.tasks.size(); });
    data.list(
        "not_before", problem.jobs, [](const Job& job) { return job.not_before.value_or(0); });
    data.list(
        "ready_from", problem.jobs, [](const Job& job) { return job.ready_from.value_or(0); });
    data.list(
        "ready_by", problem.jobs, [none](const Job& job) { return job.ready_by.value_or(none); });
    std::string sets = "sitting_tasks = [";
    std::vector<std::size_t> sitting_way;
    for (std::size_t w = 0; w < flat.ways.size(); ++w) {
        for (const auto& group : groups_of(flat.ways[w])) {
            sitting_way.push_back(w + 1);
            sets += "{";
            for (const std::size_t i : group) {
                sets += (i == group.front() ? "" : ",") +
                        std::to_string(flat.first_task[flat.ways[w].job] + i + 1);
            }
            sets += "},";
        }
    }
    data.number("sittings", static_cast<std::int64_t>(sitting_way.size()));
    data.list("sitting_way", sitting_way, [](std::size_t w) { return w; });
    data.line(sets + "];");
}

void write_kitchen(Data& data, const Problem& problem, const Flat& flat) {
    const std::vector<HeatUp>& rows = problem.oven.heat_up;
    const auto change = [&](int from, int to) -> std::int64_t {
        for (const Changeover& row : problem.oven.changeover) {
            if (row.from == from && row.to == to) {
                return row.minutes;
            }
        }
        return 0;
    };
    data.number("shelves", problem.oven.slots);
    data.number("fridge_shelves", problem.fridge.slots);
    data.number("temperatures", static_cast<std::int64_t>(rows.size()));
    data.list("heat_up", rows, [](const HeatUp& row) { return row.minutes; });
    data.table("changeover", rows.size(), rows.size(), [&](std::size_t a, std::size_t b) {
        return a == b ? 0 : change(rows[a].temperature, rows[b].temperature);
    });
    data.list("temperature", flat.tasks, [&](const Task& task) -> std::size_t {
        for (std::size_t k = 0; task.oven && k < rows.size(); ++k) {
            if (rows[k].temperature == task.oven->temperature) {
                return k + 1;
            }
        }
        return 0;
    });
    data.list("oven_slots", flat.tasks, [](const Task& t) { return t.oven ? t.oven->slots : 0; });
    const std::vector<Claim>& claims = problem.oven.claims;
    data.number("claims", static_cast<std::int64_t>(claims.size()));
    data.list("claim_from", claims, [](const Claim& claim) { return claim.from; });
    data.list("claim_to", claims, [](const Claim& claim) { return claim.to; });
    data.table("claim_settles", claims.size(), rows.size(), [&](std::size_t c, std::size_t k) {
        const auto& before = claims[c].temperature;
        return !before                          ? rows[k].minutes
               : *before == rows[k].temperature ? 0
                                                : change(*before, rows[k].temperature);
    });
}

void write_people(Data& data, const Problem& problem) {
    std::vector<std::pair<std::size_t, Window>> windows;
    for (std::size_t p = 0; p < problem.people.size(); ++p) {
        for (const Window& window : problem.people[p].windows) {
            windows.emplace_back(p + 1, window);
        }
    }
    data.number("people", static_cast<std::int64_t>(problem.people.size()));
    data.number("windows", static_cast<std::int64_t>(windows.size()));
    data.list("window_person", windows, [](const auto& row) { return row.first; });
    data.list("window_from", windows, [](const auto& row) { return row.second.from; });
    data.list("window_to", windows, [](const auto& row) { return row.second.to; });
    const std::vector<Window> runs = unwatched(problem);
    data.number("unwatched", static_cast<std::int64_t>(runs.size()));
    data.list("unwatched_from", runs, [](const Window& run) { return run.from; });
    data.list("unwatched_to", runs, [](const Window& run) { return run.to; });
    const std::vector<RatherNot>& spans = problem.rather_not;
    data.number("rather_nots", static_cast<std::int64_t>(spans.size()));
    data.list("rather_from", spans, [](const RatherNot& span) { return span.from; });
    data.list("rather_to", spans, [](const RatherNot& span) { return span.to; });
}

} // namespace

std::string day_data(const Problem& in_minutes) {
    const std::int64_t grid = cells::grid_of_day(in_minutes, {}, {});
    const Problem problem = divided(in_minutes, grid);
    const Flat flat(problem);
    Data data;
    data.number("grid", grid);
    data.number("horizon", problem.horizon);
    data.number("jobs", static_cast<std::int64_t>(problem.jobs.size()));
    data.number("tasks", static_cast<std::int64_t>(flat.tasks.size()));
    data.number("lags", static_cast<std::int64_t>(flat.lags.size()));
    data.number("ways", static_cast<std::int64_t>(flat.ways.size()));
    std::string hands = "hands = [";
    for (const Task& task : flat.tasks) {
        hands += task.kind == TaskKind::hands ? "true," : "false,";
    }
    data.line(hands + "];");
    write_jobs(data, problem, flat);
    write_kitchen(data, problem, flat);
    write_people(data, problem);
    return data.text();
}

} // namespace loafwright::bench

// SPDX-License-Identifier: Apache-2.0
#include "bench/day_kinds.hpp"

#include <cstdint>
#include <random>
#include <string>

namespace loafwright::bench {

namespace {

using namespace schedule;

// The distribution is ours: the library's may differ from one to another.
class Dice {
public:
    explicit Dice(unsigned seed) : engine_(seed) {}
    // low, low + step … high
    std::int64_t roll(std::int64_t low, std::int64_t high, std::int64_t step = 5) {
        const auto sides = static_cast<unsigned long>((high - low) / step + 1);
        return low + step * static_cast<std::int64_t>(engine_() % sides);
    }

private:
    std::mt19937 engine_;
};

Task task(const char* name, TaskKind kind, std::int64_t minutes, bool leave = false) {
    Task made;
    made.name = name;
    made.kind = kind;
    made.minutes = {minutes, minutes, minutes};
    made.leave = leave;
    return made;
}

OvenUse oven_at(std::int64_t temperature) {
    return {1, static_cast<int>(temperature)};
}

std::string name_of_bread(std::size_t number) {
    return "bread " + std::to_string(100 + number);
}

Alternative fridge_prove(std::size_t prove) {
    Alternative cold{"prove in the fridge", 1, {}, {}};
    TaskChange change;
    change.task = prove;
    change.changes_stretch = true;
    change.stretch = Stretch{480, 960};
    change.fridge = 1;
    change.leave = true;
    cold.tasks.push_back(change);
    return cold;
}

// Mix, rise, shape, prove, bake, cool; every third with a soaker that joins at the mixing.
Job roomy_bread(Dice& dice, std::size_t number) {
    Job job;
    job.name = name_of_bread(number);
    const bool soaked = number % 3 == 2;
    if (soaked) {
        job.tasks.push_back(task("soaker", TaskKind::hands, 5));
        job.tasks.push_back(task("soak", TaskKind::wait, 60, true));
        job.tasks.back().stretch = Stretch{60, 480};
        job.lags.push_back({0, 1, 0, 10, {}});
        job.tasks.push_back(task("sponge", TaskKind::hands, 5));
        job.tasks.push_back(task("ferment", TaskKind::wait, dice.roll(90, 150)));
        job.lags.push_back({2, 3, 0, 10, {}});
    }
    const std::size_t mix = job.tasks.size();
    job.tasks.push_back(task("mix", TaskKind::hands, dice.roll(10, 20)));
    job.tasks.push_back(task("rise", TaskKind::wait, dice.roll(60, 150)));
    job.tasks.push_back(task("shape", TaskKind::hands, dice.roll(5, 15)));
    job.tasks.push_back(task("prove", TaskKind::wait, dice.roll(40, 80)));
    job.tasks.push_back(task("bake", TaskKind::oven, dice.roll(20, 50)));
    job.tasks.push_back(task("cool", TaskKind::wait, dice.roll(30, 90), true));
    job.tasks[mix + 4].oven = oven_at(dice.roll(180, 240, 20));
    if (soaked) {
        job.lags.push_back({1, mix, 0, 120, {}});
        job.lags.push_back({3, mix, 0, 45, 20});
    }
    job.lags.push_back({mix, mix + 1, 0, 5, {}});
    job.lags.push_back({mix + 1, mix + 2, 0, 40, 20});
    job.lags.push_back({mix + 2, mix + 3, 0, 5, {}});
    job.lags.push_back({mix + 3, mix + 4, 0, 20, 10});
    job.lags.push_back({mix + 4, mix + 5, 0, 0, {}});
    job.alternatives.push_back(fridge_prove(mix + 3));
    job.ready_by = dice.roll(2400, 2640, 60);
    job.ready_from = *job.ready_by - 480;
    return job;
}

// One line of steps whose waits hold for half an hour.
Job plain_bread(std::size_t number,
                std::int64_t mix,
                std::int64_t rise,
                std::int64_t prove,
                std::int64_t bake,
                std::int64_t temperature) {
    Job job;
    job.name = name_of_bread(number);
    job.tasks = {task("mix", TaskKind::hands, mix),
                 task("rise", TaskKind::wait, rise),
                 task("shape", TaskKind::hands, 10),
                 task("prove", TaskKind::wait, prove),
                 task("bake", TaskKind::oven, bake),
                 task("cool", TaskKind::wait, 60, true)};
    job.tasks[4].oven = oven_at(temperature);
    job.lags = {
        {0, 1, 0, 0, {}}, {1, 2, 0, 30, 10}, {2, 3, 0, 0, {}}, {3, 4, 0, 30, 10}, {4, 5, 0, 0, {}}};
    return job;
}

void add_people(Problem& problem, Dice& dice, std::size_t breads) {
    for (int p = 0; p < (breads <= 4 ? 1 : 2); ++p) {
        problem.people.push_back({p == 0 ? "A" : "B",
                                  {{0, dice.roll(360, 420), WindowState::asleep},
                                   {1350, dice.roll(1830, 1890), WindowState::asleep},
                                   {2010, dice.roll(2040, 2070), WindowState::away}}});
    }
}

void add_oven(Problem& problem, int slots) {
    problem.oven.slots = slots;
    for (int from = 180; from <= 240; from += 20) {
        problem.oven.heat_up.push_back({from, 20 + (from - 180) / 4});
        for (int to = 180; to <= 240; to += 20) {
            if (from != to) {
                problem.oven.changeover.push_back({from, to, from < to ? 5 : 10});
            }
        }
    }
}

Problem roomy_day(std::size_t breads, unsigned seed) {
    Dice dice(seed);
    Problem problem;
    problem.horizon = 2880;
    add_people(problem, dice, breads);
    add_oven(problem, 3);
    problem.fridge.slots = 2;
    problem.rather_not = {{2190, 2220}};
    for (std::size_t b = 0; b < breads; ++b) {
        problem.jobs.push_back(roomy_bread(dice, b));
    }
    return problem;
}

// Everything at one meal of the second day; `minute` moves lengths off the marks of five minutes.
Problem tight_day(std::size_t breads, unsigned seed, bool minute) {
    Dice dice(seed);
    Problem problem;
    problem.horizon = 2880;
    add_people(problem, dice, breads);
    add_oven(problem, 2);
    for (std::size_t b = 0; b < breads; ++b) {
        const std::int64_t off = minute ? dice.roll(0, 4, 1) : 0;
        Job job = plain_bread(b,
                              dice.roll(10, 20) + off,
                              dice.roll(60, 120) + off,
                              dice.roll(40, 70),
                              dice.roll(25, 45) + off,
                              dice.roll(200, 240, 20));
        job.ready_by = 2640 - dice.roll(0, 60, 30);
        job.ready_from = *job.ready_by - 60 * (3 + static_cast<std::int64_t>(breads) / 2);
        problem.jobs.push_back(job);
    }
    return problem;
}

Problem alike_day(std::size_t breads, unsigned seed) {
    Dice dice(seed);
    Problem problem;
    problem.horizon = 2880;
    add_people(problem, dice, breads);
    add_oven(problem, 2);
    const std::int64_t mix = dice.roll(10, 20);
    const std::int64_t rise = dice.roll(60, 120);
    const std::int64_t prove = dice.roll(40, 70);
    const std::int64_t bake = dice.roll(25, 45);
    for (std::size_t b = 0; b < breads; ++b) {
        Job job = plain_bread(b, mix, rise, prove, bake, 220);
        job.ready_by = 2640;
        job.ready_from = 2160;
        problem.jobs.push_back(job);
    }
    return problem;
}

Problem cold_day(std::size_t breads, unsigned seed) {
    Dice dice(seed);
    Problem problem;
    problem.horizon = 2880;
    add_people(problem, dice, breads);
    add_oven(problem, 2);
    problem.fridge.slots = 2;
    for (std::size_t b = 0; b < breads; ++b) {
        Job job = plain_bread(b,
                              dice.roll(10, 20),
                              dice.roll(60, 120),
                              dice.roll(40, 70),
                              dice.roll(25, 45),
                              dice.roll(200, 240, 20));
        job.alternatives.push_back(fridge_prove(3));
        job.ready_by = 2040 + dice.roll(0, 120, 30);
        job.ready_from = *job.ready_by - 720;
        problem.jobs.push_back(job);
    }
    return problem;
}

} // namespace

const char* name_of(DayKind kind) {
    switch (kind) {
    case DayKind::roomy:
        return "roomy";
    case DayKind::tight:
        return "tight";
    case DayKind::by_the_minute:
        return "by_the_minute";
    case DayKind::alike:
        return "alike";
    case DayKind::cold:
        return "cold";
    }
    return "";
}

Problem day_of(DayKind kind, std::size_t breads, unsigned seed) {
    Problem problem = kind == DayKind::roomy           ? roomy_day(breads, seed)
                      : kind == DayKind::tight         ? tight_day(breads, seed, false)
                      : kind == DayKind::by_the_minute ? tight_day(breads, seed, true)
                      : kind == DayKind::alike         ? alike_day(breads, seed)
                                                       : cold_day(breads, seed);
    problem.id =
        std::string(name_of(kind)) + "-" + std::to_string(breads) + "-" + std::to_string(seed);
    return problem;
}

} // namespace loafwright::bench

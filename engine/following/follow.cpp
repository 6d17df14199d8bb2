// SPDX-License-Identifier: Apache-2.0
#include "engine/following/follow.hpp"

#include "engine/following/progress.hpp"
#include "engine/planning/words.hpp"
#include "engine/recipe/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <tuple>

namespace loafwright {

namespace {

using following::BreadProgress;
using following::LineProgress;
namespace words = planning::words;

constexpr std::int64_t worth_saying = 5; // minutes
// A line that nobody has begun lies at the next mark of five minutes, however late it is.
constexpr std::int64_t as_good_as_now = 5;
constexpr std::int64_t hands_may_take = 5; // minutes beyond their latest before it is called late

bool has_box(const Stage& line) {
    return line.attention != Attention::none;
}

Standing standing_of(const Stage& line, const LineProgress& progress, Instant now) {
    if (!progress.begun) {
        return Standing::to_begin;
    }
    const std::int64_t grace = line.attention == Attention::hands ? hands_may_take : 0;
    if (now > later_by_minutes(line.end.high, grace)) {
        return Standing::late;
    }
    const Instant look = std::max(line.look_from.value_or(line.end.high),
                                  progress.look_again.value_or(line.look_from.value_or(now)));
    return line.look_from && now >= look ? Standing::look : Standing::running;
}

std::vector<MomentAct> acts_of(const Stage& line, const LineProgress& progress, Instant now) {
    std::vector<MomentAct> acts;
    for (std::size_t a = 0; a < line.acts.size(); ++a) {
        const bool done = progress.acts_done.count(a) != 0;
        acts.push_back(
            {a, line.acts[a].at, line.acts[a].text, done, !done && line.acts[a].at <= now});
    }
    return acts;
}

// When a wait next asks for something.
std::optional<Instant>
asks_at(const Stage& line, const LineProgress& progress, const std::vector<MomentAct>& acts) {
    std::optional<Instant> first = line.look_from;
    if (first && progress.look_again) {
        first = std::max(*first, *progress.look_again);
    }
    for (const MomentAct& act : acts) {
        if (!act.done && (!first || act.at < *first)) {
            first = act.at;
        }
    }
    return first;
}

bool can_grow(const Stage& line, const LineProgress& progress) {
    return line.attention == Attention::wait && progress.begun && line.cue.has_value();
}

Doing doing_of(const Stage& line, std::size_t bread, const LineProgress& progress, Instant now) {
    Doing doing;
    doing.bread = bread;
    doing.bread_name = line.bread;
    doing.stage = line.own_number;
    doing.title = line.title;
    doing.attention = line.attention;
    doing.standing = standing_of(line, progress, now);
    doing.begun = progress.begun;
    doing.end = line.end;
    doing.look_from = line.look_from;
    if (doing.look_from && progress.look_again) {
        doing.look_from = std::max(*doing.look_from, *progress.look_again);
    }
    doing.acts = acts_of(line, progress, now);
    doing.grows = can_grow(line, progress);
    if (line.attention == Attention::wait) {
        const auto asks = asks_at(line, progress, doing.acts);
        if (asks && *asks > now) {
            doing.free_until = asks;
        }
    }
    return doing;
}

void add_alarms(std::vector<Alarm>& alarms,
                const Plan& plan,
                std::size_t bread,
                const BreadProgress& progress,
                Instant now) {
    const auto add = [&](const Stage& line, Instant at, std::string text, AlarmKind kind) {
        if (at > now) {
            alarms.push_back({at, std::move(text), bread, line.own_number, kind});
        }
    };
    for (std::size_t s = 0; s < plan.stages.size(); ++s) {
        const Stage& line = plan.stages[s];
        if (progress[s].done || !has_box(line)) {
            continue;
        }
        if (line.attention == Attention::hands && !progress[s].begun) {
            add(line, line.start, line.title, AlarmKind::hands);
        }
        if (line.look_from) {
            const Instant look =
                std::max(*line.look_from, progress[s].look_again.value_or(*line.look_from));
            add(line, look, fmt::format("{}: look", line.title), AlarmKind::look);
        }
        for (std::size_t a = 0; a < line.acts.size(); ++a) {
            if (progress[s].acts_done.count(a) == 0) {
                add(line, line.acts[a].at, capitalised(line.acts[a].text), AlarmKind::act);
            }
        }
    }
    const bool eaten = !plan.stages.empty() && !has_box(plan.stages.back());
    if (eaten && plan.cut_from > now) {
        const Stage& last = plan.stages.back();
        alarms.push_back(
            {plan.cut_from,
             fmt::format("{}: ready to cut", last.bread.empty() ? "The bread" : last.bread),
             bread,
             last.own_number,
             AlarmKind::ready});
    }
}

// What one line says of itself.
std::string say_doing(const Doing& doing, const Day& day, Instant now) {
    const auto clock = [&](Instant moment) {
        return words::clock_unless_today(day.zone, now, moment);
    };
    for (const MomentAct& act : doing.acts) {
        if (act.due) {
            return fmt::format("{} now.", capitalised(act.text));
        }
    }
    switch (doing.standing) {
    case Standing::to_begin:
        return fmt::format("Begin: {}.", uncapitalised(doing.title));
    case Standing::late:
        return doing.attention == Attention::hands
                   ? fmt::format("{}. Tick it when it is done.", doing.title)
                   : fmt::format("{}. Look now, it may be past its best.", doing.title);
    case Standing::look:
        return fmt::format("{}. Look now.", doing.title);
    case Standing::running:
        break;
    }
    if (doing.attention == Attention::wait && doing.free_until) {
        const bool look = doing.look_from && *doing.free_until == *doing.look_from;
        return fmt::format("{}. Free until {}{}.",
                           doing.title,
                           clock(*doing.free_until),
                           look ? ", then look" : "");
    }
    if (doing.attention == Attention::near && doing.look_from) {
        return fmt::format("{}. Stay near; look from {}.", doing.title, clock(*doing.look_from));
    }
    return fmt::format("{}.", doing.title);
}

// What asks loudest is said: acts that are due, then hands, then what wants a look.
int urgency(const Doing& doing) {
    const bool due = std::any_of(
        doing.acts.begin(), doing.acts.end(), [](const MomentAct& act) { return act.due; });
    if (due) {
        return 0;
    }
    if (doing.standing == Standing::late && doing.attention != Attention::hands) {
        return 1;
    }
    if (doing.attention == Attention::hands) {
        return 2;
    }
    return doing.standing == Standing::look || doing.standing == Standing::to_begin ? 3 : 4;
}

std::string say_of(const Moment& moment, const Day& day) {
    if (moment.finished) {
        return "All done. Eat, and enjoy it.";
    }
    if (moment.doing.empty()) {
        if (moment.next.empty()) {
            return "Nothing to do.";
        }
        const Upcoming& first = moment.next.front();
        return fmt::format("Begin at {}: {}.",
                           words::clock_unless_today(day.zone, moment.now, first.at),
                           uncapitalised(first.title));
    }
    const auto loudest =
        std::min_element(moment.doing.begin(),
                         moment.doing.end(),
                         [](const Doing& a, const Doing& b) { return urgency(a) < urgency(b); });
    const std::string line = say_doing(*loudest, day, moment.now);
    const bool several = !loudest->bread_name.empty() && moment.doing.size() > 1;
    return several ? fmt::format("{}: {}", loudest->bread_name, uncapitalised(line)) : line;
}

std::optional<Instant> free_until(const Moment& moment) {
    std::optional<Instant> until;
    const auto no_later = [&until](Instant at) { until = until ? std::min(*until, at) : at; };
    for (const Doing& doing : moment.doing) {
        if (!doing.free_until) {
            return std::nullopt;
        }
        no_later(*doing.free_until);
    }
    for (const Upcoming& next : moment.next) {
        const bool waits =
            std::any_of(moment.doing.begin(), moment.doing.end(), [&next](const Doing& doing) {
                return doing.bread == next.bread;
            });
        if (!waits && next.attention != Attention::none) {
            no_later(next.at);
        }
    }
    if (until && minutes_between(moment.now, *until) >= worth_saying) {
        return until;
    }
    return std::nullopt;
}

} // namespace

std::string_view name_of(Standing standing) {
    constexpr std::array<std::string_view, 4> names{"to_begin", "running", "look", "late"};
    return names.at(static_cast<std::size_t>(standing));
}

std::string_view name_of(AlarmKind kind) {
    constexpr std::array<std::string_view, 4> names{"hands", "look", "act", "ready"};
    return names.at(static_cast<std::size_t>(kind));
}

Moment follow(const Plan& plan,
              const Day& day,
              const std::vector<Event>& events,
              Instant now,
              const Knowledge& knowledge) {
    const std::vector<const Plan*> breads = following::breads_of(plan);
    const std::vector<BreadProgress> progress = following::progress_of(plan, events, knowledge);
    Moment moment;
    moment.now = now;
    moment.eat = plan.eat;
    moment.finished = true;
    for (std::size_t b = 0; b < breads.size(); ++b) {
        const std::vector<Stage>& lines = breads[b]->stages;
        std::size_t at = 0; // the first line that is not done
        for (std::size_t s = 0; s < lines.size(); ++s) {
            moment.lines.push_back({b,
                                    lines[s].own_number,
                                    progress[b][s].begun,
                                    progress[b][s].done,
                                    progress[b][s].acts_done});
            at = progress[b][s].done ? s + 1 : at;
        }
        add_alarms(moment.alarms, *breads[b], b, progress[b], now);
        if (at >= lines.size() || !has_box(lines[at])) {
            continue;
        }
        moment.finished = false;
        const bool here = progress[b][at].begun.has_value() ||
                          lines[at].start < later_by_minutes(now, as_good_as_now);
        if (here) {
            moment.doing.push_back(doing_of(lines[at], b, progress[b][at], now));
        }
        const std::size_t next = here ? at + 1 : at;
        if (next < lines.size()) {
            moment.next.push_back({b,
                                   lines[next].bread,
                                   lines[next].own_number,
                                   lines[next].title,
                                   lines[next].start,
                                   lines[next].attention});
        }
    }
    std::stable_sort(moment.next.begin(), moment.next.end(), [](const auto& a, const auto& b) {
        return std::tie(a.at.seconds, a.bread) < std::tie(b.at.seconds, b.bread);
    });
    std::stable_sort(moment.alarms.begin(), moment.alarms.end(), [](const auto& a, const auto& b) {
        return a.at < b.at;
    });
    moment.free_until = free_until(moment);
    moment.say = say_of(moment, day);
    return moment;
}

} // namespace loafwright

// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/following/event.hpp"
#include "engine/kitchen/kitchen.hpp"
#include "engine/knowledge/knowledge.hpp"
#include "engine/planning/plan.hpp"

#include <cstddef>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

namespace loafwright {

/// An act of a line that is being done.
struct MomentAct {
    std::size_t act = 0; // in the order of the line's acts
    Instant at;
    std::string text;
    bool done = false;
    bool due = false;
};

/// How a line stands: its time has come and nobody has begun it; it runs; it is time to look; it is
/// past its latest.
enum class Standing { to_begin, running, look, late };
std::string_view name_of(Standing standing);

/// A line that is being done.
struct Doing {
    std::size_t bread = 0;
    std::string bread_name;
    int stage = 1; // the line's number on that bread's own page
    std::string title;
    Attention attention = Attention::hands;
    Standing standing = Standing::running;
    std::optional<Instant> begun;
    Band<Instant> end;
    std::optional<Instant> look_from;
    std::optional<Instant> free_until; // waits only, and only while it lies ahead
    std::vector<MomentAct> acts;
    bool grows = false; // how far it has grown says something about the rest
};

struct Upcoming {
    std::size_t bread = 0;
    std::string bread_name;
    int stage = 1;
    std::string title;
    Instant at;
    Attention attention = Attention::hands;
};

enum class AlarmKind { hands, look, act, ready };
std::string_view name_of(AlarmKind kind);

/// Something to be called for.
struct Alarm {
    Instant at;
    std::string text;
    std::size_t bread = 0;
    int stage = 1;
    AlarmKind kind = AlarmKind::hands;
};

/// One line as it really went.
struct LineStory {
    std::size_t bread = 0;
    int stage = 1;
    std::optional<Instant> begun;
    std::optional<Instant> done;
    std::set<std::size_t> acts_done;
};

/// What there is to do now.
struct Moment {
    Instant now;
    bool finished = false; // every line with a box is ticked
    /// Nothing is asked until then; none while something is, or where it is less than five minutes
    /// away.
    std::optional<Instant> free_until;
    /// One line: "First rise. Free until 14:35, then look."
    std::string say;
    std::vector<Doing> doing;     // one for each bread that has begun and is not finished
    std::vector<Upcoming> next;   // one for each bread, soonest first
    std::vector<Alarm> alarms;    // those ahead, soonest first
    std::vector<LineStory> lines; // every line of every bread
    Band<Instant> eat;
};

/// What is to be done now, what is next, and how long one is free.
///
/// Needs:    `plan` as it stands, that is with what the events moved (replan); `day` for the zone.
/// Promises: a cheap fold; the order of the events does not matter, and a retry counts once; no
/// alarm lies in the past or belongs to what is ticked off. Never: reads a clock, throws.
Moment follow(const Plan& plan,
              const Day& day,
              const std::vector<Event>& events,
              Instant now,
              const Knowledge& knowledge);

} // namespace loafwright

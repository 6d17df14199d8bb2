// SPDX-License-Identifier: Apache-2.0
//
// A day file becomes a Day. Its clock times are laid over the calendar of its zone: a bare time is
// daily, a time with a day happens once. What happens once and is over does no harm and is left out
// with a note, so that last week's file still works.
#include "shell/settings/fields.hpp"
#include "shell/settings/said_time.hpp"
#include "shell/settings/settings.hpp"
#include "shell/settings/suggest.hpp"
#include "shell/settings/tree.hpp"
#include "shell/settings/tree_readers.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <tuple>

namespace loafwright::settings {

namespace {

using Kind = TreeValue::Kind;
using SaidDay = SaidTime::Day;

constexpr std::int64_t seconds_per_day = 86400;
// A time given as a weekday lies up to seven days ahead, and a bread takes up to three more.
constexpr std::int64_t daily_days = 10;
constexpr std::int64_t days_after_goal = 3;
// A Zone knows its offsets for so long (zone_named).
constexpr std::int64_t furthest_days = 30;
constexpr std::size_t most_people = 20;
constexpr std::size_t most_windows = 200;
constexpr Range claim_range{30.0, 350.0, Measure::celsius};

const std::vector<std::string>& top_keys() {
    static const std::vector<std::string> keys = {
        "zone", "eat_by", "start", "people", "window", "oven_claim"};
    return keys;
}

struct Stretch {
    Instant from;
    Instant to;
};

// What every function below needs: the day so far, the file's name, and where mistakes go.
struct Work {
    Day day;
    std::string_view file;
    Diagnostics complaints;
    Diagnostics remarks;
};

// The time that a value gives, in words or in TOML's own notation.
std::optional<SaidTime> said_in(Fields& fields, std::string_view key, const TreeValue& value) {
    SaidTime said;
    switch (value.kind) {
    case Kind::text: {
        const auto words = said_time(value.text);
        if (words) {
            return *words;
        }
        const Diagnostic& fault = words.error();
        fields.complain(fault.code, value, key, ": " + fault.what, fault.do_this);
        return std::nullopt;
    }
    case Kind::clock:
        said.clock = value.civil.clock;
        return said;
    case Kind::date_time:
        said.day = SaidDay::date;
        said.date = value.civil.date;
        said.clock = value.civil.clock;
        return said;
    case Kind::instant:
        said.day = SaidDay::instant;
        said.instant = value.instant;
        return said;
    default:
        fields.complain("value_wrong_kind",
                        value,
                        key,
                        fmt::format(" is {}, expected a time", value_words(value)),
                        R"(Write it as "18:30", "sat 09:00" or "2026-11-28 09:00".)");
        return std::nullopt;
    }
}

// The instant at which the wall clock shows `civil`; where the clocks skip it, the instant at which
// they do. For what happens daily, one odd night is no mistake.
Instant on_any_day(const Zone& zone, const CivilTime& civil) {
    const auto instant = instant_of(zone, civil);
    if (instant) {
        return *instant;
    }
    // Read with the offset after the jump, a skipped time lies before the jump, and with the one
    // before, behind it.
    const Instant nominal{days_from_civil(civil.date) * seconds_per_day +
                          std::int64_t{civil.clock.hour} * 3600 +
                          std::int64_t{civil.clock.minute} * 60};
    int before = zone.first_offset_seconds;
    for (const ZoneChange& change : zone.changes) {
        const bool skips = nominal.seconds - before >= change.from.seconds &&
                           nominal.seconds - change.offset_seconds < change.from.seconds;
        if (skips) {
            return change.from;
        }
        before = change.offset_seconds;
    }
    return Instant{nominal.seconds - before};
}

// Every day from the one before now to the horizon.
std::vector<Stretch> daily(const Day& day, ClockTime from, ClockTime to) {
    std::vector<Stretch> stretches;
    const CivilDate today = civil_of(day.zone, day.now).date;
    std::int64_t days = daily_days;
    for (const auto& goal : {day.start, day.eat_by}) {
        if (goal) {
            const std::int64_t ahead = (goal->seconds - day.now.seconds) / seconds_per_day;
            days = std::max(days, ahead + days_after_goal);
        }
    }
    const bool over_midnight = std::tuple(to.hour, to.minute) < std::tuple(from.hour, from.minute);
    for (int ahead = -1; ahead <= days; ++ahead) {
        const Stretch stretch{
            on_any_day(day.zone, on_day(today, ahead, from)),
            on_any_day(day.zone, on_day(today, ahead + (over_midnight ? 1 : 0), to))};
        // Both ends of a short stretch may fall into one skipped hour.
        if (stretch.from < stretch.to && stretch.to > day.now) {
            stretches.push_back(stretch);
        }
    }
    return stretches;
}

// The end of what begins at `from`: a bare clock time or a weekday means the next one after it.
tl::expected<Instant, Diagnostic> end_after(const Day& day, Instant from, const SaidTime& said) {
    if (said.day != SaidDay::unsaid && said.day != SaidDay::weekday) {
        return instant_said(said, day.zone, day.now);
    }
    const CivilDate first = civil_of(day.zone, from).date;
    const bool any_day = said.day == SaidDay::unsaid;
    const int days = any_day ? 0 : (said.weekday - weekday_of(first) + 7) % 7;
    auto end = instant_of(day.zone, on_day(first, days, said.clock));
    // "sat 17:00" to "sat 09:00" stays as it is, to be reported: nobody is away for a week less
    // eight hours.
    if (any_day && end && *end <= from) {
        return instant_of(day.zone, on_day(first, 1, said.clock));
    }
    return end;
}

// Something that happens once. On a Saturday, "sat 09:00" to "sat 17:00" is today as long as it is
// not over, though its beginning may have passed.
tl::expected<Stretch, Diagnostic> once(const Day& day, const SaidTime& from, const SaidTime& to) {
    const auto both = [&](const tl::expected<Instant, Diagnostic>& begin) {
        using Answer = tl::expected<Stretch, Diagnostic>;
        if (!begin) {
            return Answer(tl::unexpected(begin.error()));
        }
        const auto end = end_after(day, *begin, to);
        return end ? Answer(Stretch{*begin, *end}) : Answer(tl::unexpected(end.error()));
    };
    const bool follows = to.day == SaidDay::unsaid || to.day == SaidDay::weekday;
    if (from.day != SaidDay::weekday || !follows) {
        return both(instant_said(from, day.zone, day.now));
    }
    const CivilDate today = civil_of(day.zone, day.now).date;
    const int last = -((weekday_of(today) - from.weekday + 7) % 7);
    auto running = both(instant_of(day.zone, on_day(today, last, from.clock)));
    const bool wrong_today = last == 0 && (!running || running->to <= running->from);
    if (wrong_today || (running && running->to > day.now)) {
        return running;
    }
    return both(instant_of(day.zone, on_day(today, last + 7, from.clock)));
}

Diagnostic note_of_past(const Fields& fields, const TreeValue& value) {
    Diagnostic note;
    note.code = "time_past";
    note.severity = Severity::note;
    note.where = fields.where(value.line, "to");
    note.what = fields.path("to") + " has passed, so this was left out";
    note.do_this = "Take it out of the file, or give it a new day.";
    return note;
}

// `from` and `to` of a window or a claim, laid over the calendar; nothing when wrong or over.
std::vector<Stretch> stretches_of(Fields& fields, Work& work) {
    const TreeValue* from = fields.value("from");
    const TreeValue* to = fields.value("to");
    if (from == nullptr) {
        fields.missing("from", "from = \"08:30\"");
    }
    if (to == nullptr) {
        fields.missing("to", "to = \"15:15\"");
    }
    const auto said_from = from != nullptr ? said_in(fields, "from", *from) : std::nullopt;
    const auto said_to = to != nullptr ? said_in(fields, "to", *to) : std::nullopt;
    if (!said_from || !said_to) {
        return {};
    }
    if (said_from->day == SaidDay::unsaid) {
        if (said_to->day != SaidDay::unsaid) {
            fields.complain("value_wrong_kind",
                            *to,
                            "to",
                            " names a day and from does not, expected both or neither",
                            "Name the day in from too, or leave it out of both for every day.");
            return {};
        }
        if (said_from->clock == said_to->clock) {
            fields.complain(
                "value_out_of_range",
                *to,
                "to",
                fmt::format(" is {} like from, expected another time", clock_text(said_to->clock)),
                R"(For a whole day write from = "00:00" and to = "23:59".)");
            return {};
        }
        return daily(work.day, said_from->clock, said_to->clock);
    }
    const auto stretch = once(work.day, *said_from, *said_to);
    if (!stretch) {
        const Diagnostic& fault = stretch.error();
        fields.complain(fault.code, *from, "from", ": " + fault.what, fault.do_this);
        return {};
    }
    if (stretch->to <= stretch->from) {
        const Zone& zone = work.day.zone;
        fields.complain("value_out_of_range",
                        *to,
                        "to",
                        fmt::format(" is {} {}, expected later than from, {} {}",
                                    day_text(zone, stretch->to),
                                    clock_text(zone, stretch->to),
                                    day_text(zone, stretch->from),
                                    clock_text(zone, stretch->from)),
                        "Swap the two, or give the end a later day.");
        return {};
    }
    if (stretch->to <= work.day.now) {
        work.remarks.push_back(note_of_past(fields, *to));
        return {};
    }
    return {*stretch};
}

void read_zone(Fields& fields, Work& work, bool zone_is_told) {
    const auto name = fields.text("zone");
    if (!name || zone_is_told) {
        return;
    }
    auto zone = zone_named(*name, work.day.now);
    if (zone) {
        work.day.zone = *zone;
        return;
    }
    const Diagnostic& fault = zone.error();
    fields.complain(fault.code, *fields.value("zone"), "zone", ": " + fault.what, fault.do_this);
}

std::optional<Instant> goal_of(Fields& fields, Work& work, std::string_view key) {
    const TreeValue* value = fields.value(key);
    const auto said = value != nullptr ? said_in(fields, key, *value) : std::nullopt;
    if (!said) {
        return std::nullopt;
    }
    const auto instant = instant_said(*said, work.day.zone, work.day.now);
    if (!instant) {
        const Diagnostic& fault = instant.error();
        fields.complain(fault.code, *value, key, ": " + fault.what, fault.do_this);
        return std::nullopt;
    }
    if (instant->seconds > work.day.now.seconds + furthest_days * seconds_per_day) {
        fields.complain("value_out_of_range",
                        *value,
                        key,
                        fmt::format(" is {}, expected at most {} days from now",
                                    rfc3339(work.day.zone, *instant),
                                    furthest_days),
                        "Plan it when the day is nearer.");
        return std::nullopt;
    }
    return *instant;
}

void read_goals(Fields& fields, Work& work) {
    work.day.start = goal_of(fields, work, "start");
    work.day.eat_by = goal_of(fields, work, "eat_by");
    const TreeValue* start = fields.value("start");
    const TreeValue* eat_by = fields.value("eat_by");
    if (start != nullptr && eat_by != nullptr) {
        fields.complain(
            "both_start_and_eat_by",
            *eat_by,
            "eat_by",
            fmt::format(" stands beside start in line {}, expected one of the two", start->line),
            "Leave one of the two lines out.");
    }
}

void read_people(Fields& fields, Work& work) {
    const TreeValue* people = fields.value("people");
    if (people == nullptr) {
        return;
    }
    if (people->kind != Kind::array) {
        const std::string name = people->kind == Kind::text ? in_quotes(people->text) : "\"Maren\"";
        fields.complain("value_wrong_kind",
                        *people,
                        "people",
                        fmt::format(" is {}, expected a list of names", value_words(*people)),
                        fmt::format("Write people = [{}].", name));
        return;
    }
    if (people->items.empty() || people->items.size() > most_people) {
        fields.complain(
            "value_out_of_range",
            *people,
            "people",
            fmt::format(" has {} names, expected 1 to {}", people->items.size(), most_people),
            "Leave the line out when you bake alone.");
        return;
    }
    std::vector<std::string> names;
    for (const TreeValue& item : people->items) {
        const bool named = item.kind == Kind::text && item.text.size() <= 100 &&
                           item.text.find_first_not_of(" \t\r\n") != std::string::npos;
        if (!named) {
            fields.complain("value_wrong_kind",
                            item,
                            "people",
                            fmt::format(" lists {}, expected a name", value_words(item)),
                            "Write each name in quotation marks.");
        } else if (std::find(names.begin(), names.end(), item.text) != names.end()) {
            fields.complain(
                "value_out_of_range",
                item,
                "people",
                fmt::format(" lists {} twice, expected each name once", in_quotes(item.text)),
                "Tell the two apart by a second name.");
        } else {
            names.push_back(item.text);
        }
    }
    if (!names.empty()) {
        work.day.people = names;
    }
}

// The index of the person whom a window is about.
std::optional<std::size_t> person_of(Fields& fields, const Work& work, bool people_named) {
    const std::vector<std::string>& people = work.day.people;
    const TreeValue* value = fields.value("person");
    if (value == nullptr) {
        if (people.size() == 1) {
            return 0;
        }
        fields.missing("person", fmt::format("person = {}", in_quotes(people.front())));
        return std::nullopt;
    }
    const auto name = fields.text("person");
    if (!name) {
        return std::nullopt;
    }
    const auto match = std::find(people.begin(), people.end(), *name);
    if (match != people.end()) {
        return static_cast<std::size_t>(match - people.begin());
    }
    const auto near = nearest(*name, people);
    std::string do_this =
        fmt::format("Add the name to people at the top: people = [{}].", in_quotes(*name));
    if (near) {
        do_this = fmt::format("Did you mean {}?", in_quotes(*near));
    } else if (people_named) {
        do_this = "Add the name to people at the top.";
    }
    fields.complain("value_unknown",
                    *value,
                    "person",
                    fmt::format(" is {}, expected one of the people", in_quotes(*name)),
                    do_this);
    return std::nullopt;
}

void read_windows(Fields& top, Work& work) {
    const bool people_named = top.value("people") != nullptr;
    for (const TreeValue* table : top.tables("window", most_windows)) {
        Fields fields(*table, "window", work.file, work.complaints);
        const auto person = person_of(fields, work, people_named);
        const auto state = fields.one_of("state", {"away", "asleep", "busy"});
        if (fields.value("state") == nullptr) {
            fields.missing("state", "state = \"away\"");
        }
        const std::vector<Stretch> stretches = stretches_of(fields, work);
        fields.refuse_others(top_keys());
        if (!person || !state) {
            continue;
        }
        const Presence presence = *state == 0   ? Presence::away
                                  : *state == 1 ? Presence::asleep
                                                : Presence::busy;
        for (const Stretch& stretch : stretches) {
            work.day.windows.push_back({*person, presence, stretch.from, stretch.to});
        }
    }
    std::stable_sort(work.day.windows.begin(),
                     work.day.windows.end(),
                     [](const PresenceWindow& a, const PresenceWindow& b) {
                         return std::tuple(a.from.seconds, a.to.seconds, a.person) <
                                std::tuple(b.from.seconds, b.to.seconds, b.person);
                     });
}

void read_claims(Fields& top, Work& work) {
    for (const TreeValue* table : top.tables("oven_claim", most_windows)) {
        Fields fields(*table, "oven_claim", work.file, work.complaints);
        const std::vector<Stretch> stretches = stretches_of(fields, work);
        const auto degrees = fields.number("temperature_c", claim_range);
        fields.refuse_others(top_keys());
        for (const Stretch& stretch : stretches) {
            OvenClaim claim{stretch.from, stretch.to, std::nullopt};
            if (degrees) {
                claim.temperature = Celsius(*degrees);
            }
            work.day.oven_claims.push_back(claim);
        }
    }
    std::stable_sort(work.day.oven_claims.begin(),
                     work.day.oven_claims.end(),
                     [](const OvenClaim& a, const OvenClaim& b) { return a.from < b.from; });
}

} // namespace

tl::expected<DayFile, Diagnostics> day_from_toml(std::string_view text,
                                                 std::string_view name,
                                                 const Zone& zone,
                                                 bool zone_is_told,
                                                 Instant now) {
    const auto tree = parse_toml(text, name);
    if (!tree) {
        return tl::unexpected(Diagnostics{tree.error()});
    }
    return day_from_tree(*tree, "", name, zone, zone_is_told, now);
}

tl::expected<DayFile, Diagnostics> day_from_tree(const TreeValue& tree,
                                                 std::string heading,
                                                 std::string_view name,
                                                 const Zone& zone,
                                                 bool zone_is_told,
                                                 Instant now) {
    Work work;
    work.file = name;
    work.day.zone = zone;
    work.day.now = now;
    Fields fields(tree, std::move(heading), name, work.complaints);
    // In this order: times need the zone, daily windows the horizon, windows the people.
    read_zone(fields, work, zone_is_told);
    read_goals(fields, work);
    read_people(fields, work);
    read_windows(fields, work);
    read_claims(fields, work);
    work.day.sleep_known =
        std::any_of(work.day.windows.begin(),
                    work.day.windows.end(),
                    [](const PresenceWindow& one) { return one.state == Presence::asleep; });
    fields.refuse_others();
    if (!work.complaints.empty()) {
        sort_by_line(work.complaints, name);
        return tl::unexpected(work.complaints);
    }
    sort_by_line(work.remarks, name);
    return DayFile{work.day, work.remarks};
}

} // namespace loafwright::settings

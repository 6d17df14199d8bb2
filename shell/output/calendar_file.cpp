// SPDX-License-Identifier: Apache-2.0
//
// The plan for a calendar, by RFC 5545. A stage is an event (section 3.6.1); work and the oven show
// as busy, waits do not (TRANSP, 3.8.2.7). Alarms (3.6.6) hang on their event, counted from its
// start, so that an event moved by hand takes them along.
#include "shell/output/calendar_file.hpp"

#include "shell/output/calendar_lines.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <map>
#include <optional>
#include <utility>

namespace loafwright::output {

namespace {

// Time to wash one's hands and find the scraper (common practice).
constexpr std::int64_t before_work_minutes = 10;
constexpr std::int64_t before_oven_minutes = 5;
constexpr std::int64_t largest_sequence = 2147483647; // section 3.3.8
// A file that somebody else wrote cannot make ours grow without end.
constexpr std::size_t most_events = 200;

// FNV-1a with 64 bits (Fowler, Noll, Vo: draft-eastlake-fnv); twice, the second time over a text
// that begins differently. It parts bakes from each other, it keeps no secret.
std::uint64_t fnv_1a(std::string_view text, std::uint64_t hash = 0xCBF29CE484222325U) {
    for (const char c : text) {
        hash = (hash ^ static_cast<unsigned char>(c)) * 0x00000100000001B3U;
    }
    return hash;
}

std::string bake_id(const std::string& identity) {
    return fmt::format("{:016x}{:016x}", fnv_1a(identity), fnv_1a(identity, fnv_1a("bake")));
}

std::string uid_of(const std::string& bake, const std::string& key) {
    return fmt::format("{}-{}@loafwright", bake, key);
}

// What a stage does, so that its event keeps its UID when lines before it are merged or parted.
std::vector<std::string> keys_of(const std::vector<Stage>& stages) {
    std::vector<std::string> keys;
    std::map<std::string, int> seen;
    for (const Stage& stage : stages) {
        std::string key = stage.attention == Attention::none
                              ? std::string("eat")
                              : std::string(name_of(stage.attention));
        if (!stage.steps.empty()) {
            key +=
                fmt::format("-{}", *std::min_element(stage.steps.begin(), stage.steps.end()) + 1);
        }
        if (stage.bread_index > 0) { // of several breads, each keeps its own
            key = fmt::format("bread-{}-{}", stage.bread_index + 1, key);
        }
        const int times = ++seen[key];
        keys.push_back(times == 1 ? key : fmt::format("{}-again-{}", key, times - 1));
    }
    return keys;
}

void append_line(std::string& text, const std::string& line) {
    if (!line.empty()) {
        text += (text.empty() ? "" : "\n") + line;
    }
}

/// Knows the plan and its words, so that the parts below need not be handed them one by one.
class Writer {
public:
    Writer(const Plan& plan, const Sheet& sheet, const Zone& zone, const CalendarMarks& marks)
        : plan_(plan), sheet_(sheet), zone_(zone), marks_(marks) {}

    [[nodiscard]] std::string run() const {
        CalendarLines file;
        file.line("BEGIN", "VCALENDAR");
        file.line("VERSION", "2.0");
        file.line("PRODID", "-//Loafwright//Loafwright//EN");
        if (!calendar_zone_id(zone_).empty()) {
            add_calendar_zone(file, zone_, plan_.start, last_moment());
        }
        const std::string id = bake_id(marks_.identity);
        const std::vector<std::string> keys = keys_of(plan_.stages);
        const std::optional<std::size_t> cut = stage_of_first_slice();
        for (std::size_t i = 0; i < plan_.stages.size(); ++i) {
            begin_event(file, uid_of(id, keys[i]));
            fill(file, i);
            if (cut == i) {
                add_alarm(file, plan_.stages[i], plan_.cut_from, "Ready to cut");
            }
            file.line("END", "VEVENT");
        }
        for (const std::string& gone : marks_.withdrawn) {
            call_off(file, gone);
        }
        file.line("END", "VCALENDAR");
        return file.bytes();
    }

private:
    [[nodiscard]] Instant last_moment() const {
        Instant last = std::max(plan_.start, plan_.cut_from);
        for (const Stage& stage : plan_.stages) {
            last = std::max(last, stage.end.high);
        }
        return last;
    }

    // The event that carries the alarm: the last line that has begun by then and is not the meal.
    [[nodiscard]] std::optional<std::size_t> stage_of_first_slice() const {
        std::optional<std::size_t> found;
        for (std::size_t i = 0; i < plan_.stages.size(); ++i) {
            const Stage& stage = plan_.stages[i];
            if (!found || (stage.attention != Attention::none && stage.start <= plan_.cut_from)) {
                found = i;
            }
        }
        return found;
    }

    [[nodiscard]] std::string with_bread(const std::string& what) const {
        return says_something(sheet_.title) ? what + " \u00B7 " + sheet_.title : what;
    }

    void add_alarm(CalendarLines& file,
                   const Stage& stage,
                   Instant when,
                   const std::string& words) const {
        file.line("BEGIN", "VALARM");
        file.line("ACTION", "DISPLAY");
        if (offset_seconds_at(zone_, when) == offset_seconds_at(zone_, stage.start)) {
            const std::int64_t after = minutes_between(stage.start, when);
            file.line("TRIGGER",
                      fmt::format("{}PT{}M", after < 0 ? "-" : "", after < 0 ? -after : after));
        } else {
            // Minutes are exact (section 3.3.6), but there are readers that count them on the wall
            // clock (ical.js 2.2.1).
            file.utc("TRIGGER;VALUE=DATE-TIME", when);
        }
        file.words("DESCRIPTION", with_bread(words));
        file.line("END", "VALARM");
    }

    void begin_event(CalendarLines& file, const std::string& uid) const {
        file.line("BEGIN", "VEVENT");
        file.line("UID", uid);
        file.utc("DTSTAMP", marks_.now);
        const auto sequence = std::clamp<std::int64_t>(marks_.sequence, 0, largest_sequence);
        file.line("SEQUENCE", std::to_string(sequence));
    }

    void fill(CalendarLines& file, std::size_t index) const {
        const Stage& stage = plan_.stages[index];
        file.moment("DTSTART", zone_, stage.start);
        // An event that takes no time has no end (section 3.6.1).
        if (stage.end.likely > stage.start) {
            file.moment("DTEND", zone_, stage.end.likely);
        }
        const SheetStage line = index < sheet_.stages.size() ? sheet_.stages[index] : SheetStage{};
        const std::string title = says_something(line.title) ? line.title : stage.title;
        file.words("SUMMARY", with_bread(title));
        if (const std::string words = description(line, index == 0); says_something(words)) {
            file.words("DESCRIPTION", words);
        }
        const bool busy = stage.attention == Attention::hands || stage.attention == Attention::near;
        file.line("TRANSP", busy ? "OPAQUE" : "TRANSPARENT");
        const bool out_of_oven = stage.attention == Attention::wait && index > 0 &&
                                 plan_.stages[index - 1].attention == Attention::near;
        if (stage.attention == Attention::hands) {
            add_alarm(file, stage, later_by_minutes(stage.start, -before_work_minutes), title);
        } else if (stage.attention == Attention::near || out_of_oven) {
            add_alarm(file, stage, later_by_minutes(stage.start, -before_oven_minutes), title);
        }
        for (std::size_t a = 0; a < stage.acts.size(); ++a) {
            const std::string words = a < line.acts.size() ? line.acts[a].text : stage.acts[a].text;
            add_alarm(file, stage, stage.acts[a].at, words);
        }
    }

    [[nodiscard]] std::string description(const SheetStage& line, bool is_first) const {
        std::string text = line.length;
        for (const std::string& reminder : line.reminders) {
            append_line(text, reminder);
        }
        for (const SheetAct& act : line.acts) {
            append_line(text, act.time + " " + act.text);
        }
        append_line(text, line.cue);
        if (is_first) {
            append_line(text, opening(sheet_));
            for (const std::string& before : sheet_.ahead) {
                append_line(text, before);
            }
            for (const std::string& weighed : sheet_.weigh) {
                append_line(text, weighed);
            }
        }
        return text;
    }

    void call_off(CalendarLines& file, const std::string& uid) const {
        begin_event(file, uid);
        file.utc("DTSTART", plan_.start);
        file.words("SUMMARY", with_bread("No longer planned"));
        file.line("STATUS", "CANCELLED");
        file.line("TRANSP", "TRANSPARENT");
        file.line("END", "VEVENT");
    }

    const Plan& plan_;
    const Sheet& sheet_;
    const Zone& zone_;
    const CalendarMarks& marks_;
};

// A UID as we write them for this bake, whoever wrote the file.
bool is_ours_of(std::string_view uid, const std::string& bake) {
    constexpr std::string_view end = "@loafwright";
    constexpr std::size_t longest_key = 64;
    if (uid.size() < bake.size() + 1 + end.size() || uid.rfind(bake + "-", 0) != 0 ||
        uid.substr(uid.size() - end.size()) != end) {
        return false;
    }
    const std::string_view key = uid.substr(bake.size(), uid.size() - bake.size() - end.size());
    return key.size() <= longest_key && std::all_of(key.begin(), key.end(), [](char c) {
               return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '-';
           });
}

// Events of this bake in an earlier file.
struct Earlier {
    std::int64_t sequence = 0;
    std::vector<std::string> uids;
};

Earlier earlier_in(const std::vector<std::string>& before, const std::string& id) {
    Earlier found;
    bool is_ours = false;
    std::int64_t sequence = 0;
    for (const std::string& line : before) {
        if (value_in(line, "BEGIN") == "VEVENT") {
            is_ours = false;
            sequence = 0;
        } else if (const auto uid = value_in(line, "UID"); is_ours_of(uid, id)) {
            is_ours = true;
            const bool is_new =
                std::find(found.uids.begin(), found.uids.end(), uid) == found.uids.end();
            if (is_new && found.uids.size() < most_events) {
                found.uids.emplace_back(uid);
            }
        } else if (const auto number = value_in(line, "SEQUENCE"); !number.empty()) {
            std::from_chars(number.data(), number.data() + number.size(), sequence);
        }
        if (is_ours) {
            found.sequence = std::max(found.sequence, std::min(sequence, largest_sequence));
        }
    }
    return found;
}

// A calendar without the times of writing, to see whether anything else has changed.
std::vector<std::string> without_stamps(std::vector<std::string> lines) {
    const auto is_stamp = [](const std::string& line) {
        return !value_in(line, "DTSTAMP").empty();
    };
    lines.erase(std::remove_if(lines.begin(), lines.end(), is_stamp), lines.end());
    return lines;
}

} // namespace

std::string
calendar_file(const Plan& plan, const Sheet& sheet, const Zone& zone, const CalendarMarks& marks) {
    return Writer(plan, sheet, zone, marks).run();
}

std::string calendar_file_after(std::string_view before,
                                const Plan& plan,
                                const Sheet& sheet,
                                const Zone& zone,
                                CalendarMarks marks) {
    const std::vector<std::string> lines = unfolded(before);
    const std::string id = bake_id(marks.identity);
    const Earlier earlier = earlier_in(lines, id);
    marks.sequence = earlier.sequence;
    marks.withdrawn = earlier.uids;
    for (const std::string& key : keys_of(plan.stages)) {
        const std::string stays = uid_of(id, key);
        marks.withdrawn.erase(std::remove(marks.withdrawn.begin(), marks.withdrawn.end(), stays),
                              marks.withdrawn.end());
    }
    std::string file = calendar_file(plan, sheet, zone, marks);
    if (!earlier.uids.empty() && without_stamps(unfolded(file)) != without_stamps(lines)) {
        ++marks.sequence;
        file = calendar_file(plan, sheet, zone, marks);
    }
    return file;
}

} // namespace loafwright::output

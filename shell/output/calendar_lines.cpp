// SPDX-License-Identifier: Apache-2.0
//
// Content lines of RFC 5545: escaping, folding and times, which is all of the format that a plan
// needs. Why not a library: docs/decisions/0009.
#include "shell/output/calendar_lines.hpp"

#include "shell/output/text_lines.hpp"

#include <fmt/format.h>
#include <utf8cpp/utf8/checked.h>

#include <algorithm>
#include <cstdlib>
#include <iterator>

namespace loafwright::output {

namespace {

constexpr std::size_t longest_line = 75; // octets without the line end (section 3.1)
constexpr std::size_t longest_zone_name = 64;

// A zone without a change in sight has had its offset since before any bake.
constexpr CivilTime long_ago{{1970, 1, 1}, {0, 0}, 0};

// One paragraph a line, without control characters and with single blanks.
std::vector<std::string> paragraphs_of(std::string_view text) {
    std::string valid;
    utf8::replace_invalid(text.begin(), text.end(), std::back_inserter(valid));
    std::vector<std::string> paragraphs;
    std::string_view rest = valid;
    while (true) {
        const std::size_t end = rest.find('\n');
        paragraphs.push_back(printable(rest.substr(0, end)));
        if (end == std::string_view::npos) {
            return paragraphs;
        }
        rest.remove_prefix(end + 1);
    }
}

// Section 3.3.11: backslash, semicolon and comma are escaped; a colon is not.
std::string escaped(std::string_view text) {
    std::string out;
    for (const std::string& paragraph : paragraphs_of(text)) {
        out += out.empty() ? "" : "\\n";
        for (const char c : paragraph) {
            if (c == '\\' || c == ';' || c == ',') {
                out += '\\';
            }
            out += c;
        }
    }
    return out;
}

// Section 3.3.5, forms 1 and 2 without the letter that makes it UTC.
std::string civil_text(CivilTime civil) {
    return fmt::format("{:04}{:02}{:02}T{:02}{:02}{:02}",
                       civil.date.year,
                       civil.date.month,
                       civil.date.day,
                       civil.clock.hour,
                       civil.clock.minute,
                       civil.second);
}

std::string utc_text(Instant moment) {
    return civil_text(civil_of(Zone{}, moment)) + "Z";
}

// Section 3.3.14: seconds only where there are some; never "-0000".
std::string offset_text(int seconds) {
    const int size = std::abs(seconds);
    std::string text =
        fmt::format("{}{:02}{:02}", seconds < 0 ? '-' : '+', size / 3600, size / 60 % 60);
    if (size % 60 != 0) {
        text += fmt::format("{:02}", size % 60);
    }
    return text;
}

bool is_utc(const Zone& zone) {
    return zone.name == "UTC" && zone.first_offset_seconds == 0 && zone.changes.empty();
}

bool is_shown_twice(const Zone& zone, Instant moment) {
    int before = zone.first_offset_seconds;
    for (const ZoneChange& change : zone.changes) {
        const int back = before - change.offset_seconds;
        before = change.offset_seconds;
        if (moment.seconds >= change.from.seconds - back &&
            moment.seconds < change.from.seconds + back) {
            return true;
        }
    }
    return false;
}

void add_offset(CalendarLines& file, int from_seconds, int to_seconds, CivilTime onset) {
    // The data has no word for it, so the later clock is called daylight saving.
    const std::string_view part = to_seconds > from_seconds ? "DAYLIGHT" : "STANDARD";
    file.line("BEGIN", part);
    file.line("DTSTART", civil_text(onset));
    file.line("TZOFFSETFROM", offset_text(from_seconds));
    file.line("TZOFFSETTO", offset_text(to_seconds));
    file.line("END", part);
}

// What a clock shows that never changes.
CivilTime with_offset(Instant moment, int offset_seconds) {
    Zone fixed;
    fixed.first_offset_seconds = offset_seconds;
    return civil_of(fixed, moment);
}

char small_letter(char c) {
    return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}

} // namespace

void CalendarLines::line(std::string_view name, std::string_view value) {
    const std::string whole = fmt::format("{}:{}", name, value);
    std::size_t used = 0; // octets in the line that grows
    for (std::size_t at = 0; at < whole.size();) {
        std::size_t end = at + 1;
        while (end < whole.size() && (static_cast<unsigned char>(whole[end]) & 0xC0U) == 0x80U) {
            ++end;
        }
        if (used + (end - at) > longest_line) {
            bytes_ += "\r\n ";
            used = 1;
        }
        bytes_.append(whole, at, end - at);
        used += end - at;
        at = end;
    }
    bytes_ += "\r\n";
}

void CalendarLines::words(std::string_view name, std::string_view text) {
    line(name, escaped(text));
}

void CalendarLines::utc(std::string_view name, Instant moment) {
    line(name, utc_text(moment));
}

void CalendarLines::moment(std::string_view name, const Zone& zone, Instant moment) {
    const std::string id = calendar_zone_id(zone);
    if (id.empty() || is_shown_twice(zone, moment)) {
        utc(name, moment);
    } else {
        line(fmt::format("{};TZID={}", name, id), civil_text(civil_of(zone, moment)));
    }
}

bool says_something(std::string_view text) {
    const std::vector<std::string> paragraphs = paragraphs_of(text);
    return std::any_of(paragraphs.begin(), paragraphs.end(), [](const std::string& paragraph) {
        return !paragraph.empty();
    });
}

std::string calendar_zone_id(const Zone& zone) {
    if (is_utc(zone)) {
        return {};
    }
    // TZ may hold a rule instead of a name, with marks that would part a line.
    std::string id = zone.name.substr(0, longest_zone_name);
    std::replace_if(
        id.begin(),
        id.end(),
        [](char c) {
            const bool letter_or_digit =
                (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9');
            return !letter_or_digit && c != '/' && c != '_' && c != '+' && c != '-';
        },
        '-');
    // A leading slash would claim a name in a list that everybody shares (section 3.8.3.1).
    id.erase(0, std::min(id.find_first_not_of('/'), id.size()));
    return id.empty() ? "local-time" : id;
}

void add_calendar_zone(CalendarLines& file, const Zone& zone, Instant from, Instant to) {
    file.line("BEGIN", "VTIMEZONE");
    file.line("TZID", calendar_zone_id(zone));
    const auto next = std::find_if(zone.changes.begin(),
                                   zone.changes.end(),
                                   [from](const ZoneChange& change) { return change.from > from; });
    if (next == zone.changes.begin()) {
        // The change that brought this offset is out of sight. Beside a change it matters which of
        // the two is the later clock, so that both get their right name.
        const int offset = zone.first_offset_seconds;
        const bool falls = next != zone.changes.end() && next->offset_seconds < offset;
        add_offset(file, falls ? next->offset_seconds : offset, offset, long_ago);
    }
    const auto begin = next == zone.changes.begin() ? next : std::prev(next);
    for (auto change = begin; change != zone.changes.end() && change->from <= to; ++change) {
        const int before = change == zone.changes.begin() ? zone.first_offset_seconds
                                                          : std::prev(change)->offset_seconds;
        add_offset(file, before, change->offset_seconds, with_offset(change->from, before));
    }
    file.line("END", "VTIMEZONE");
}

std::vector<std::string> unfolded(std::string_view bytes) {
    std::vector<std::string> lines;
    while (!bytes.empty()) {
        const std::size_t end = std::min(bytes.find('\n'), bytes.size());
        std::string_view line = bytes.substr(0, end);
        bytes.remove_prefix(std::min(end + 1, bytes.size()));
        if (!line.empty() && line.back() == '\r') {
            line.remove_suffix(1);
        }
        const bool goes_on = !line.empty() && (line.front() == ' ' || line.front() == '\t');
        if (goes_on && !lines.empty()) {
            lines.back() += line.substr(1);
        } else {
            lines.emplace_back(line);
        }
    }
    return lines;
}

std::string_view value_in(std::string_view line, std::string_view name) {
    const std::size_t end = line.find_first_of(";:");
    const std::size_t colon = line.find(':');
    const bool is_it = end == name.size() && colon != std::string_view::npos &&
                       std::equal(name.begin(), name.end(), line.begin(), [](char a, char b) {
                           return small_letter(a) == small_letter(b);
                       });
    return is_it ? line.substr(colon + 1) : std::string_view();
}

} // namespace loafwright::output

// SPDX-License-Identifier: Apache-2.0
//
// Words for a time: an optional day (today, tomorrow, a weekday, a date) and a clock time, or RFC
// 3339. What is accepted is kept small, so that nothing is guessed; what people write otherwise
// ("18.30", "6 pm", "half past six") is understood only as far as it takes to name the time that
// was probably meant.
#include "shell/settings/said_time.hpp"

#include "shell/settings/suggest.hpp"

#include <fmt/format.h>

#include <array>
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace loafwright::settings {

namespace {

constexpr std::size_t longest_words = 100;

bool is_digit(char c) {
    return c >= '0' && c <= '9';
}

bool is_blank(char c) {
    return c == ' ' || c == '\t' || c == '\n' || c == '\r';
}

char lower(char c) {
    return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}

// The words in lower case, parted at blanks.
std::vector<std::string> parted(std::string_view text) {
    std::vector<std::string> words;
    bool inside = false;
    for (const char c : text) {
        if (is_blank(c)) {
            inside = false;
            continue;
        }
        if (!inside) {
            words.emplace_back();
        }
        inside = true;
        words.back() += lower(c);
    }
    return words;
}

// All of `text` as a number of at most four digits.
std::optional<int> whole_number(std::string_view text) {
    if (text.empty() || text.size() > 4) {
        return std::nullopt;
    }
    int value = 0;
    for (const char c : text) {
        if (!is_digit(c)) {
            return std::nullopt;
        }
        value = value * 10 + (c - '0');
    }
    return value;
}

// "18:30" with any sign in the place of the colon: the two numbers, whatever they are.
std::optional<ClockTime> two_numbers(std::string_view text, std::string_view signs) {
    const std::size_t sign = text.find_first_of(signs);
    if (sign == std::string_view::npos) {
        return std::nullopt;
    }
    const auto hour = whole_number(text.substr(0, sign));
    const auto minute = whole_number(text.substr(sign + 1));
    if (!hour || !minute || sign > 2 || text.size() - sign - 1 != 2) {
        return std::nullopt;
    }
    return ClockTime{*hour, *minute};
}

bool is_on_the_clock(ClockTime clock) {
    return clock.hour >= 0 && clock.hour <= 23 && clock.minute >= 0 && clock.minute <= 59;
}

std::optional<int> weekday_named(std::string_view word) {
    constexpr std::array<std::string_view, 7> names = {
        "monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday"};
    for (std::size_t day = 0; day < names.size(); ++day) {
        const std::string_view name = names[day];
        // "tues", "weds" and "thurs" are as usual as the three letters.
        const bool begins = word.size() >= 3 && name.substr(0, word.size()) == word;
        if (begins || (day == 2 && word == "weds")) {
            return static_cast<int>(day);
        }
    }
    return std::nullopt;
}

// "2026-11-28", checked against the calendar.
std::optional<CivilDate> date_written(std::string_view word) {
    if (word.size() != 10 || word[4] != '-' || word[7] != '-') {
        return std::nullopt;
    }
    const auto year = whole_number(word.substr(0, 4));
    const auto month = whole_number(word.substr(5, 2));
    const auto day = whole_number(word.substr(8, 2));
    if (!year || !month || !day || *month < 1 || *month > 12 || *day < 1) {
        return std::nullopt;
    }
    const CivilDate date{*year, *month, *day};
    // A day that the month does not have comes back as one of the next month.
    return civil_from_days(days_from_civil(date)) == date ? std::optional<CivilDate>(date)
                                                          : std::nullopt;
}

std::optional<int> hour_word(std::string_view word) {
    constexpr std::array<std::string_view, 12> names = {"one",
                                                        "two",
                                                        "three",
                                                        "four",
                                                        "five",
                                                        "six",
                                                        "seven",
                                                        "eight",
                                                        "nine",
                                                        "ten",
                                                        "eleven",
                                                        "twelve"};
    for (std::size_t i = 0; i < names.size(); ++i) {
        if (names[i] == word) {
            return static_cast<int>(i + 1);
        }
    }
    const auto number = whole_number(word);
    return number && *number >= 1 && *number <= 12 ? number : std::nullopt;
}

// Both times of the day that a clock face shows as this one.
std::vector<ClockTime> twice_a_day(int hour, int minute) {
    return {ClockTime{hour % 12, minute}, ClockTime{hour % 12 + 12, minute}};
}

// "half past six", "quarter to 7", "six o'clock".
std::vector<ClockTime> spoken(const std::vector<std::string>& words) {
    const std::size_t at = words[0] == "a" ? 1 : 0;
    if (words.size() == at + 3 && (words[at] == "half" || words[at] == "quarter")) {
        const auto hour = hour_word(words[at + 2]);
        const bool past = words[at + 1] == "past";
        const bool to = words[at + 1] == "to" && words[at] == "quarter";
        if (hour && (past || to)) {
            const int minute = words[at] == "half" ? 30 : past ? 15 : 45;
            return twice_a_day(to ? *hour + 11 : *hour, minute);
        }
    }
    const bool o_clock = words.size() == 2 &&
                         (words[1] == "o'clock" || words[1] == "o’clock" || words[1] == "oclock");
    const auto hour = o_clock ? hour_word(words[0]) : std::nullopt;
    return hour ? twice_a_day(*hour, 0) : std::vector<ClockTime>{};
}

// "6pm", "6.30 pm".
std::optional<ClockTime> of_half_a_day(const std::vector<std::string>& words) {
    std::string joined;
    for (const std::string& word : words) {
        joined += word;
    }
    if (joined.size() < 3) {
        return std::nullopt;
    }
    const std::string_view half = std::string_view(joined).substr(joined.size() - 2);
    const std::string_view clock = std::string_view(joined).substr(0, joined.size() - 2);
    if (half != "am" && half != "pm") {
        return std::nullopt;
    }
    std::optional<ClockTime> meant = two_numbers(clock, ":.");
    if (const auto hour = whole_number(clock)) {
        meant = ClockTime{*hour, 0};
    }
    if (!meant || meant->hour < 1 || meant->hour > 12) {
        return std::nullopt;
    }
    meant->hour = meant->hour % 12 + (half == "pm" ? 12 : 0);
    return meant;
}

// "18.30", "18h30", "1830", "18", "noon".
std::optional<ClockTime> of_one_word(const std::string& word) {
    if (word == "noon" || word == "midday") {
        return ClockTime{12, 0};
    }
    if (const auto digits = whole_number(word)) {
        return word.size() >= 3 ? ClockTime{*digits / 100, *digits % 100} : ClockTime{*digits, 0};
    }
    return two_numbers(word, ".h-");
}

// What was probably meant by `words` in the place of a clock time behind the word `day`.
std::string clock_hint(const std::vector<std::string>& words, const std::string& day) {
    std::vector<ClockTime> meant;
    if (!words.empty()) {
        if (words[0] == "midnight" || words[0] == "24:00") {
            return "Midnight is 00:00 at the beginning of a day: did you mean \"tomorrow 00:00\"?";
        }
        meant = spoken(words);
        const auto other = words.size() == 1 ? of_one_word(words[0]) : std::nullopt;
        for (const auto& one : {of_half_a_day(words), other}) {
            if (meant.empty() && one && is_on_the_clock(*one)) {
                meant.push_back(*one);
            }
        }
    }
    if (meant.empty()) {
        return "Write the time as HH:MM, such as 18:30 or \"tomorrow 07:30\".";
    }
    std::string hint = "Did you mean ";
    for (const ClockTime& clock : meant) {
        hint += clock == meant.front() ? "" : " or ";
        hint += day.empty() ? clock_text(clock) : in_quotes(day + " " + clock_text(clock));
    }
    return hint + "?";
}

Diagnostic unreadable(std::string what, std::string do_this) {
    Diagnostic diagnostic;
    diagnostic.code = "time_unreadable";
    diagnostic.what = std::move(what);
    diagnostic.do_this = std::move(do_this);
    return diagnostic;
}

// The clock at the end of the words.
tl::expected<ClockTime, Diagnostic>
said_clock(const std::vector<std::string>& words, std::string_view whole, const std::string& day) {
    const bool midnight = words.size() == 1 && words[0] == "24:00";
    if (words.size() == 1 && !midnight) {
        if (const auto clock = two_numbers(words[0], ":")) {
            if (is_on_the_clock(*clock)) {
                return *clock;
            }
            const std::string part =
                clock->hour > 23 ? fmt::format("the hour {}, expected 0 to 23", clock->hour)
                                 : fmt::format("the minute {}, expected 0 to 59", clock->minute);
            return tl::unexpected(unreadable(in_quotes(whole) + " has " + part,
                                             "Write the time as HH:MM, such as 18:30."));
        }
    }
    return tl::unexpected(
        unreadable(in_quotes(whole) + " was not understood, expected a time such as 18:30",
                   clock_hint(words, day)));
}

} // namespace

tl::expected<SaidTime, Diagnostic> said_time(std::string_view words_as_given) {
    std::string_view text = words_as_given;
    while (!text.empty() && is_blank(text.front())) {
        text.remove_prefix(1);
    }
    while (!text.empty() && is_blank(text.back())) {
        text.remove_suffix(1);
    }
    if (text.empty()) {
        return tl::unexpected(unreadable("the time is empty, expected one such as 18:30",
                                         "Write the time as HH:MM."));
    }
    if (text.size() > longest_words) {
        return tl::unexpected(
            unreadable(in_quotes(text) + " is too long for a time, expected one such as 18:30",
                       "Write the time as HH:MM."));
    }
    SaidTime said;
    if (const auto instant = parse_rfc3339(text)) {
        said.day = SaidTime::Day::instant;
        said.instant = *instant;
        return said;
    }
    std::vector<std::string> words = parted(text);
    // "2026-11-28T09:00" without an offset: the wall clock here.
    if (words.size() == 1 && words[0].size() == 16 && words[0][10] == 't') {
        words = {words[0].substr(0, 10), words[0].substr(11)};
    }
    const std::string first = words.front();
    if (first == "today" || first == "tomorrow") {
        said.day = SaidTime::Day::ahead;
        said.days_ahead = first == "today" ? 0 : 1;
    } else if (const auto weekday = weekday_named(first)) {
        said.day = SaidTime::Day::weekday;
        said.weekday = *weekday;
    } else if (const auto date = date_written(first)) {
        said.day = SaidTime::Day::date;
        said.date = *date;
    } else if (first.size() == 10 && first[4] == '-' && first[7] == '-') {
        return tl::unexpected(unreadable(in_quotes(text) + " names no day of the calendar",
                                         "Write the date as year-month-day, such as 2026-11-28."));
    }
    if (said.day != SaidTime::Day::unsaid) {
        words.erase(words.begin());
        if (words.empty()) {
            return tl::unexpected(unreadable(
                in_quotes(text) + " names a day but no clock time",
                fmt::format("Put the time behind it in the same quotation marks: \"{} 13:00\".",
                            first)));
        }
    }
    const auto clock = said_clock(words, text, said.day == SaidTime::Day::unsaid ? "" : first);
    if (!clock) {
        return tl::unexpected(clock.error());
    }
    said.clock = *clock;
    return said;
}

tl::expected<Instant, Diagnostic>
instant_said(const SaidTime& said, const Zone& zone, Instant now) {
    const CivilDate today = civil_of(zone, now).date;
    switch (said.day) {
    case SaidTime::Day::instant:
        return said.instant;
    case SaidTime::Day::date:
        return instant_of(zone, on_day(said.date, 0, said.clock));
    case SaidTime::Day::unsaid:
    case SaidTime::Day::ahead:
        return instant_of(zone, on_day(today, said.days_ahead, said.clock));
    case SaidTime::Day::weekday:
        break;
    }
    const int days = (said.weekday - weekday_of(today) + 7) % 7;
    auto next = instant_of(zone, on_day(today, days, said.clock));
    if (days == 0 && next && *next < now) {
        return instant_of(zone, on_day(today, 7, said.clock));
    }
    return next;
}

CivilTime on_day(CivilDate date, int days_after, ClockTime clock) {
    return CivilTime{civil_from_days(days_from_civil(date) + days_after), clock, 0};
}

} // namespace loafwright::settings

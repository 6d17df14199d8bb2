// SPDX-License-Identifier: Apache-2.0
//
// Times as people give them on the command line, laid over the calendar of one zone from "now" on.
#include "shell/settings/said_time.hpp"
#include "shell/settings/settings.hpp"

#include <algorithm>

namespace loafwright::settings {

namespace {

bool is_digit(char c) {
    return c >= '0' && c <= '9';
}

// One or two digits, a colon, two digits: a clock time or a slip in one.
bool is_clock_like(std::string_view word) {
    const std::size_t colon = word.find(':');
    return (colon == 1 || colon == 2) && word.size() == colon + 3 &&
           std::all_of(word.begin(), word.end(), [](char c) { return c == ':' || is_digit(c); });
}

} // namespace

tl::expected<Instant, Diagnostic>
time_from_words(std::string_view words, const Zone& zone, Instant now) {
    const auto said = said_time(words);
    if (!said) {
        return tl::unexpected(said.error());
    }
    return instant_said(*said, zone, now);
}

bool looks_like_a_time(std::string_view words) {
    if (said_time(words)) {
        return true;
    }
    if (words.find_first_not_of(" \t\r\n") == std::string_view::npos) {
        return false;
    }
    // A word that a shell has split off a time: `tomorrow` of `tomorrow 07:30`, or a clock time
    // with a slip in it.
    const std::string with_clock = std::string(words.substr(0, 60)) + " 00:00";
    return is_clock_like(words) || said_time(with_clock).has_value();
}

} // namespace loafwright::settings

// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/quantity/time.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace loafwright::output {

/// The lines of a calendar file as they grow (RFC 5545 section 3.1).
///
/// Promises: every line ends in CRLF and has at most 75 octets before it; no letter is parted;
///           whatever bytes come as words, valid UTF-8 without control characters goes out.
class CalendarLines {
public:
    /// Needs: both in the form that the standard asks for, one line.
    void line(std::string_view name, std::string_view value);
    /// TEXT (section 3.3.11): escaped, a line end as "\n".
    void words(std::string_view name, std::string_view text);
    /// A moment in UTC.
    void utc(std::string_view name, Instant moment);
    /// A moment by the wall clock of the zone, or in UTC where the clock shows that time twice:
    /// section 3.3.5 takes the first, but not every reader does (libical 3.0.16 takes the second
    /// west of Greenwich).
    void moment(std::string_view name, const Zone& zone, Instant moment);

    [[nodiscard]] const std::string& bytes() const { return bytes_; }

private:
    std::string bytes_;
};

/// TEXT that says something: the words cleaned as CalendarLines does it are not empty.
bool says_something(std::string_view text);

/// The name by which times refer to the zone; empty for UTC, which needs none.
std::string calendar_zone_id(const Zone& zone);

/// VTIMEZONE with the offset in force at `from` and the changes until `to` (section 3.6.5).
void add_calendar_zone(CalendarLines& file, const Zone& zone, Instant from, Instant to);

/// The lines of a calendar file with their folds undone, whatever its bytes and line ends.
std::vector<std::string> unfolded(std::string_view bytes);

/// The value of a line when its name is this one, without its parameters; else empty.
std::string_view value_in(std::string_view line, std::string_view name);

} // namespace loafwright::output

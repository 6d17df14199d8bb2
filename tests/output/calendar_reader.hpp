// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/quantity/time.hpp"

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace loafwright::output {

/// A calendar file as libical reads it, with the file's own time zone put to its times.
struct ReadEvent {
    std::string uid;
    std::string summary;
    std::string description;
    std::int64_t sequence = -1;
    Instant start;
    Instant end;
    bool busy = false;
    bool called_off = false;
    struct Alarm {
        Instant at;
        std::string words;
    };
    std::vector<Alarm> alarms; // expanded
};

struct ReadCalendar {
    int faults = 0; // that libical counts, and properties that libical's rules miss
    std::vector<ReadEvent> events;
    struct Observance {
        int from_seconds = 0;
        int to_seconds = 0;
    };
    std::vector<Observance> observances;
};

ReadCalendar read_calendar(const std::string& bytes);

/// Content lines by RFC 5545 section 3.1, taken apart by the letter of the standard and without
/// libical: unfolded, with the ends of lines checked.
struct ContentLines {
    std::vector<std::string> lines;
    std::size_t longest_octets = 0; // of a line as it stands in the file
    bool every_line_ends_in_crlf = true;
    bool no_letter_is_parted = true;
};
ContentLines content_lines(std::string_view bytes);

/// A TEXT value by section 3.3.11 with its escapes undone.
std::string text_value(std::string_view escaped);

/// The values of all lines "NAME:value" or "NAME;…:value" without quoted parameters.
std::vector<std::string> values_of(const ContentLines& content, std::string_view name);

} // namespace loafwright::output

// SPDX-License-Identifier: Apache-2.0
//
// A compiled time zone file, read by RFC 8536: a header, a block with 32-bit times, and from
// version 2 on a second header and block with 64-bit times and a footer with the rule for the years
// after the table. Only offsets are kept; names of zones and marks of summer time are not needed.
// Reading one file is some fifty times quicker than opening a whole database of zones, and start-up
// is where that counts.
#include "shell/settings/tzif.hpp"

#include "shell/settings/posix_rule.hpp"

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <vector>

namespace loafwright::settings {

namespace {

constexpr std::size_t header_size = 44;

// Section 3.1: after magic, version and fifteen unused bytes stand six counts.
struct Header {
    char version = '\0';
    std::uint64_t ut_marks = 0;
    std::uint64_t standard_marks = 0;
    std::uint64_t leaps = 0;
    std::uint64_t times = 0;
    std::uint64_t types = 0;
    std::uint64_t name_bytes = 0;

    [[nodiscard]] std::uint64_t block_size(std::uint64_t time_size) const {
        return times * time_size + times + types * 6 + name_bytes + leaps * (time_size + 4) +
               standard_marks + ut_marks;
    }
};

// A big-endian number of `size` bytes in two's complement.
std::int64_t number_at(std::string_view bytes, std::size_t at, std::size_t size) {
    std::uint64_t value = 0;
    for (std::size_t i = 0; i < size; ++i) {
        value = value << 8u | static_cast<unsigned char>(bytes[at + i]);
    }
    if (size == 4) {
        return static_cast<std::int32_t>(static_cast<std::uint32_t>(value));
    }
    return static_cast<std::int64_t>(value);
}

std::optional<Header> header_of(std::string_view bytes) {
    if (bytes.size() < header_size || bytes.substr(0, 4) != "TZif") {
        return std::nullopt;
    }
    const auto count = [bytes](std::size_t index) {
        return static_cast<std::uint64_t>(number_at(bytes, 20 + 4 * index, 4)) & 0xFFFFFFFFu;
    };
    return Header{bytes[4], count(0), count(1), count(2), count(3), count(4), count(5)};
}

// Everything the file knows about offsets, in order.
struct Table {
    int first_offset_seconds = 0;
    std::vector<ZoneChange> changes;
};

bool is_plausible_offset(std::int64_t seconds) {
    // RFC 8536 section 3.2: between -24:59:59 and 25:59:59.
    return seconds > -90000 && seconds < 93600;
}

// Section 3.2, with the block standing at the beginning of `bytes`.
std::optional<Table> table_of(std::string_view bytes, const Header& header, std::size_t time_size) {
    if (header.leaps != 0 || header.types == 0 || header.types > 256) {
        return std::nullopt;
    }
    const std::size_t times = header.times;
    const std::size_t kinds_at = times * time_size;
    const std::size_t types_at = kinds_at + times;
    std::vector<int> offsets;
    for (std::size_t type = 0; type < header.types; ++type) {
        const std::int64_t seconds = number_at(bytes, types_at + type * 6, 4);
        if (!is_plausible_offset(seconds)) {
            return std::nullopt;
        }
        offsets.push_back(static_cast<int>(seconds));
    }
    Table table;
    // Before the first change local time is of type 0.
    table.first_offset_seconds = offsets.front();
    for (std::size_t i = 0; i < times; ++i) {
        const auto type = static_cast<unsigned char>(bytes[kinds_at + i]);
        const Instant from{number_at(bytes, i * time_size, time_size)};
        const bool in_order = table.changes.empty() || table.changes.back().from < from;
        if (type >= offsets.size() || !in_order) {
            return std::nullopt;
        }
        table.changes.push_back({from, offsets[type]});
    }
    return table;
}

int year_of(Instant instant) {
    return civil_of(Zone{}, instant).date.year;
}

// Lets the rule go on where the table ends.
void append_rule(Table& table, const PosixRule& rule, Instant from, Instant to) {
    // A year before, so that the offset in force at `from` is known.
    std::vector<ZoneChange> by_rule = changes_by_rule(rule, year_of(from) - 1, year_of(to) + 1);
    if (!rule.has_summer) {
        if (table.changes.empty()) {
            table.first_offset_seconds = rule.standard_offset_seconds;
        }
        return;
    }
    if (table.changes.empty()) {
        table.first_offset_seconds = rule.standard_offset_seconds;
    } else {
        const Instant last = table.changes.back().from;
        by_rule.erase(std::remove_if(by_rule.begin(),
                                     by_rule.end(),
                                     [last](const ZoneChange& c) { return c.from <= last; }),
                      by_rule.end());
    }
    table.changes.insert(table.changes.end(), by_rule.begin(), by_rule.end());
}

Zone window_of(const Table& table, std::string_view name, Instant from, Instant to) {
    Zone zone;
    zone.name = std::string(name);
    zone.first_offset_seconds = table.first_offset_seconds;
    int offset = table.first_offset_seconds;
    for (std::size_t i = 0; i < table.changes.size(); ++i) {
        const ZoneChange& change = table.changes[i];
        // Of two changes at one instant the later in the list holds.
        if (i + 1 < table.changes.size() && table.changes[i + 1].from == change.from) {
            continue;
        }
        if (change.from > to) {
            break;
        }
        if (change.from <= from) {
            zone.first_offset_seconds = change.offset_seconds;
        } else if (change.offset_seconds != offset) {
            zone.changes.push_back(change);
        }
        offset = change.offset_seconds;
    }
    return zone;
}

} // namespace

std::optional<Zone>
zone_from_tzif(std::string_view bytes, std::string_view name, Instant from, Instant to) {
    auto header = header_of(bytes);
    if (!header) {
        return std::nullopt;
    }
    std::size_t time_size = 4;
    bytes.remove_prefix(header_size);
    if (header->block_size(time_size) > bytes.size()) {
        return std::nullopt;
    }
    const bool has_second_block = header->version >= '2';
    if (has_second_block) {
        bytes.remove_prefix(header->block_size(time_size));
        time_size = 8;
        header = header_of(bytes);
        if (!header) {
            return std::nullopt;
        }
        bytes.remove_prefix(header_size);
        if (header->block_size(time_size) > bytes.size()) {
            return std::nullopt;
        }
    }
    auto table = table_of(bytes, *header, time_size);
    if (!table) {
        return std::nullopt;
    }
    if (has_second_block) {
        // Section 3.3: a line break, the rule, a line break; an empty rule says nothing about later
        // years.
        std::string_view footer = bytes.substr(header->block_size(time_size));
        const std::size_t end = footer.find('\n', 1);
        if (footer.empty() || footer.front() != '\n' || end == std::string_view::npos) {
            return std::nullopt;
        }
        footer = footer.substr(1, end - 1);
        if (!footer.empty()) {
            const auto rule = parse_posix_rule(footer);
            if (!rule) {
                return std::nullopt;
            }
            append_rule(*table, *rule, from, to);
        }
    }
    return window_of(*table, name, from, to);
}

std::optional<Zone>
zone_from_rule(std::string_view rule, std::string_view name, Instant from, Instant to) {
    const auto parsed = parse_posix_rule(rule);
    if (!parsed) {
        return std::nullopt;
    }
    Table table;
    append_rule(table, *parsed, from, to);
    return window_of(table, name, from, to);
}

} // namespace loafwright::settings

// SPDX-License-Identifier: Apache-2.0
//
// Any bytes as a compiled time zone file (TZif, RFC 8536) and as a yearly rule. What is accepted is
// a zone whose changes lie in the window that was asked for.
#include "fuzz/promise.hpp"
#include "fuzz/zones.hpp"
#include "shell/settings/posix_rule.hpp"
#include "shell/settings/tzif.hpp"

#include <optional>
#include <string_view>

namespace loafwright::fuzz {
namespace {

constexpr std::int64_t minutes_a_day = 1440;

void check(const std::optional<Zone>& zone, Instant from, Instant to) {
    if (!zone) {
        return;
    }
    promise(zone->name == "Some/Where", "a zone has the name it was given");
    // A day and some hours either way: RFC 8536 section 3.2, and a rule's own hours and one more.
    constexpr int widest = 26 * 3600;
    promise(zone->first_offset_seconds >= -widest && zone->first_offset_seconds <= widest,
            "offsets are a day or so at most");
    for (const ZoneChange& change : zone->changes) {
        promise(from < change.from && change.from <= to, "changes lie in the window");
        promise(change.offset_seconds >= -widest && change.offset_seconds <= widest,
                "offsets are a day or so at most");
    }
    promise_zone(*zone);
}

void one_text(std::string_view bytes) {
    // The window that the program uses, and one of two years.
    for (const std::int64_t days : {std::int64_t{30}, std::int64_t{720}}) {
        const Instant from = later_by_minutes(now(), -10 * minutes_a_day);
        const Instant to = later_by_minutes(now(), days * minutes_a_day);
        check(settings::zone_from_tzif(bytes, "Some/Where", from, to), from, to);
        check(settings::zone_from_rule(bytes, "Some/Where", from, to), from, to);
    }
    if (const auto rule = settings::parse_posix_rule(bytes)) {
        constexpr int first = 2024;
        constexpr int last = 2030;
        const auto changes = settings::changes_by_rule(*rule, first, last);
        promise(changes.size() == (rule->has_summer ? std::size_t{2} * (last - first + 1) : 0),
                "two changes a year");
        for (std::size_t i = 1; i < changes.size(); ++i) {
            promise(changes[i - 1].from <= changes[i].from, "changes are in order");
        }
    }
}

} // namespace
} // namespace loafwright::fuzz

int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    loafwright::fuzz::one_text(loafwright::fuzz::text_of(data, size));
    return 0;
}

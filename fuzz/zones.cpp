// SPDX-License-Identifier: Apache-2.0
//
// Fixed moments and a fixed zone for the targets, and what any zone must promise.
#include "fuzz/zones.hpp"

#include "fuzz/promise.hpp"

namespace loafwright::fuzz {

Instant now() {
    return Instant{1795597200};
}

Zone london() {
    Zone zone;
    zone.name = "Europe/London";
    zone.first_offset_seconds = 0;
    // The last Sundays of March and October at 01:00 UTC (tz database, the rules since 1996).
    zone.changes = {{Instant{1774746000}, 3600},
                    {Instant{1792890000}, 0},
                    {Instant{1806195600}, 3600},
                    {Instant{1824944400}, 0}};
    return zone;
}

void promise_zone(const Zone& zone) {
    int offset = zone.first_offset_seconds;
    const Instant* before = nullptr;
    for (const ZoneChange& change : zone.changes) {
        promise(before == nullptr || *before < change.from, "changes are in order");
        promise(change.offset_seconds != offset, "a change goes to another offset");
        promise(offset_seconds_at(zone, Instant{change.from.seconds - 1}) == offset,
                "the old offset holds until the change");
        promise(offset_seconds_at(zone, change.from) == change.offset_seconds,
                "the new offset holds from the change on");
        for (const std::int64_t seconds : {-3600, -1, 0, 1, 3600}) {
            const Instant moment{change.from.seconds + seconds};
            const auto again = instant_of(zone, civil_of(zone, moment));
            promise(again.has_value(), "a wall clock time that was shown exists");
            promise(*again <= moment, "a repeated hour means the first one");
            promise(civil_of(zone, *again).clock == civil_of(zone, moment).clock,
                    "the way back leads to the same wall clock time");
        }
        offset = change.offset_seconds;
        before = &change.from;
    }
}

} // namespace loafwright::fuzz

// SPDX-License-Identifier: Apache-2.0
//
// Any bytes as a day file. What is accepted is a day as the engine needs it: windows and claims
// sorted, none of them over, none turned round, and everybody in them known.
#include "fuzz/promise.hpp"
#include "fuzz/zones.hpp"
#include "shell/settings/settings.hpp"

#include <algorithm>
#include <string>
#include <string_view>

namespace loafwright::fuzz {
namespace {

// Both kinds of span have `from` and `to`.
template <typename Spans>
void sorted_and_ahead(const Spans& spans) {
    for (const auto& span : spans) {
        promise(span.from < span.to, "a window ends after it begins");
        promise(span.to > now(), "what is over is not in the day");
    }
    promise(std::is_sorted(spans.begin(),
                           spans.end(),
                           [](const auto& a, const auto& b) { return a.from < b.from; }),
            "windows and claims are sorted");
}

void check(const settings::DayFile& file) {
    const Day& day = file.day;
    promise(day.sleep_known == std::any_of(day.windows.begin(),
                                           day.windows.end(),
                                           [](const PresenceWindow& one) {
                                               return one.state == Presence::asleep;
                                           }),
            "sleep is known where somebody sleeps");
    promise(!(day.start && day.eat_by), "a day has a start or a time to eat, not both");
    promise(!day.people.empty() && day.people.size() <= 20, "one to twenty people");
    sorted_and_ahead(day.windows);
    sorted_and_ahead(day.oven_claims);
    for (const PresenceWindow& window : day.windows) {
        promise(window.person < day.people.size(), "a window is somebody's");
    }
    for (const OvenClaim& claim : day.oven_claims) {
        promise(!claim.temperature ||
                    (claim.temperature->degrees() >= 30.0 && claim.temperature->degrees() <= 350.0),
                "figures keep to their ranges");
    }
    constexpr std::int64_t days_ahead = 31;
    for (const auto& moment : {day.start, day.eat_by}) {
        promise(!moment || moment->seconds <= now().seconds + days_ahead * 86400,
                "a start and a time to eat are near");
    }
    promise(!has_errors(file.remarks), "remarks are no errors");
    promise_zone(day.zone);
}

void one_text(std::string_view text) {
    for (const bool zone_is_told : {false, true}) {
        const auto day = settings::day_from_toml(text, "day.toml", london(), zone_is_told, now());
        if (day) {
            check(*day);
        } else {
            promise_told(day.error());
        }
    }
}

} // namespace
} // namespace loafwright::fuzz

int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    loafwright::fuzz::one_text(loafwright::fuzz::text_of(data, size));
    return 0;
}

// SPDX-License-Identifier: Apache-2.0
//
// Zones as shell/settings reads them against two independent readers of the system's time zone
// data: the library date-tz up to 2037, where the tables of the data end, and the C library after
// that, where the yearly rules go on.
#include "engine/quantity/time.hpp"
#include "shell/settings/settings.hpp"

#include <date/tz.h>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <chrono>
#include <cstdlib>
#include <ctime>
#include <string>
#include <vector>

namespace loafwright::published {
namespace {

using settings::zone_named;

constexpr std::int64_t day = 86400;

// Half hours, quarter hours, a day left out, summer time that is the standard (Dublin), a zone
// without changes, both hemispheres, and one whose clocks go back for a month each year
// (Casablanca).
const std::vector<std::string>& zone_names() {
    static const std::vector<std::string> names = {"Africa/Casablanca",
                                                   "America/New_York",
                                                   "America/Sao_Paulo",
                                                   "America/St_Johns",
                                                   "Antarctica/Troll",
                                                   "Asia/Kathmandu",
                                                   "Asia/Tehran",
                                                   "Australia/Lord_Howe",
                                                   "Europe/Dublin",
                                                   "Europe/London",
                                                   "Pacific/Apia",
                                                   "Pacific/Auckland",
                                                   "UTC"};
    return names;
}

Instant start_of(int year) {
    return Instant{days_from_civil({year, 1, 1}) * day};
}

date::sys_seconds library_time(Instant instant) {
    return date::sys_seconds{std::chrono::seconds{instant.seconds}};
}

int library_offset(const date::time_zone& zone, Instant instant) {
    return static_cast<int>(zone.get_info(library_time(instant)).offset.count());
}

// The instants from 2000 to 2037 at which the offset changes, by the library.
std::vector<Instant> library_changes(const date::time_zone& zone) {
    std::vector<Instant> changes;
    Instant at = start_of(2000);
    while (at < start_of(2038)) {
        const date::sys_info info = zone.get_info(library_time(at));
        const Instant end{info.end.time_since_epoch().count()};
        if (end < start_of(2038) && library_offset(zone, end) != info.offset.count()) {
            changes.push_back(end);
        }
        at = end;
    }
    return changes;
}

Zone our_zone(const std::string& name, Instant around) {
    const auto zone = zone_named(name, around);
    EXPECT_TRUE(zone.has_value()) << name;
    return zone.value_or(Zone{});
}

TEST(clock_changes, are_where_the_library_has_them_from_2000_to_2037) {
    std::size_t compared = 0;
    for (const std::string& name : zone_names()) {
        const date::time_zone* library = date::locate_zone(name);
        for (const Instant change : library_changes(*library)) {
            const Zone zone = our_zone(name, change);
            bool found = false;
            for (const ZoneChange& ours : zone.changes) {
                found = found || ours.from == change;
            }
            EXPECT_TRUE(found) << name << " " << change.seconds;
            for (const std::int64_t shift : {-10 * day + 1,
                                             -day,
                                             std::int64_t{-1},
                                             std::int64_t{0},
                                             std::int64_t{1},
                                             day,
                                             30 * day}) {
                const Instant instant{change.seconds + shift};
                EXPECT_EQ(offset_seconds_at(zone, instant), library_offset(*library, instant))
                    << name << " " << instant.seconds;
            }
            ++compared;
        }
    }
    // Seven of the zones change twice a year for 38 years.
    EXPECT_GT(compared, 500u);
}

TEST(clock_changes, are_nowhere_else_from_2000_to_2037) {
    for (const std::string& name : zone_names()) {
        const date::time_zone* library = date::locate_zone(name);
        for (Instant around = start_of(2000); around < start_of(2037); around.seconds += 20 * day) {
            const Zone zone = our_zone(name, around);
            int before = zone.first_offset_seconds;
            EXPECT_EQ(before, library_offset(*library, Instant{around.seconds - 10 * day})) << name;
            for (const ZoneChange& change : zone.changes) {
                EXPECT_NE(change.offset_seconds, before) << name << " " << change.from.seconds;
                EXPECT_EQ(library_offset(*library, change.from), change.offset_seconds);
                EXPECT_EQ(library_offset(*library, Instant{change.from.seconds - 1}), before);
                before = change.offset_seconds;
            }
        }
    }
}

// Sets the C library's zone for the length of a scope.
class ZoneOfCLibrary {
public:
    explicit ZoneOfCLibrary(const std::string& name) {
        const char* before = std::getenv("TZ");
        was_set_ = before != nullptr;
        before_ = was_set_ ? before : "";
        setenv("TZ", name.c_str(), 1);
        tzset();
    }
    ZoneOfCLibrary(const ZoneOfCLibrary&) = delete;
    ZoneOfCLibrary& operator=(const ZoneOfCLibrary&) = delete;
    ~ZoneOfCLibrary() {
        if (was_set_) {
            setenv("TZ", before_.c_str(), 1);
        } else {
            unsetenv("TZ");
        }
        tzset();
    }

    [[nodiscard]] int offset_at(Instant instant) const {
        const std::time_t moment = instant.seconds;
        std::tm local{};
        localtime_r(&moment, &local);
        return static_cast<int>(local.tm_gmtoff);
    }

private:
    bool was_set_ = false;
    std::string before_;
};

TEST(clock_changes, go_on_by_the_yearly_rule_after_the_table_ends) {
    for (const std::string& name : zone_names()) {
        // Casablanca's table is written out to 2087 and has no yearly rule.
        const ZoneOfCLibrary library(name);
        for (Instant around = start_of(2036); around < start_of(2062); around.seconds += 35 * day) {
            const Zone zone = our_zone(name, around);
            for (std::int64_t hours = -240; hours < 30 * 24; hours += 5) {
                const Instant instant{around.seconds + hours * 3600};
                ASSERT_EQ(offset_seconds_at(zone, instant), library.offset_at(instant))
                    << name << " " << instant.seconds;
            }
        }
    }
}

TEST(clock_changes, rules_in_the_variable_tz_mean_what_the_c_library_takes_them_for) {
    // Without a sign hours lie west of Greenwich; "J" counts days without 29 February; hours may go
    // below zero.
    for (const char* rule : {"GMT0BST,M3.5.0/1,M10.5.0",
                             "EST5EDT,M3.2.0,M11.1.0",
                             "<+1030>-10:30<+11>-11,M10.1.0,M4.1.0",
                             "IST-1GMT0,M10.5.0,M3.5.0/1",
                             "AAA3BBB,J60/3,J300",
                             "AAA3BBB,59/3,299/0:30",
                             "<-02>2<-01>,M3.5.0/-1,M10.5.0/0",
                             "NPT-5:45"}) {
        const ZoneOfCLibrary library(rule);
        for (Instant around = start_of(2023); around < start_of(2029); around.seconds += 35 * day) {
            const settings::FoundZone found = settings::zone_found(around);
            ASSERT_FALSE(found.warning.has_value()) << rule;
            for (std::int64_t hours = -240; hours < 30 * 24; hours += 1) {
                const Instant instant{around.seconds + hours * 3600};
                ASSERT_EQ(offset_seconds_at(found.zone, instant), library.offset_at(instant))
                    << rule << " " << instant.seconds;
            }
        }
    }
}

TEST(clock_changes, there_and_back_agrees_with_the_library) {
    rc::check([] {
        const std::string name = *rc::gen::elementOf(zone_names());
        const Instant instant{
            *rc::gen::inRange<std::int64_t>(start_of(2000).seconds, start_of(2037).seconds)};
        const Zone zone = our_zone(name, instant);
        const CivilTime civil = civil_of(zone, instant);
        const date::time_zone* library = date::locate_zone(name);
        const auto local = library->to_local(library_time(instant));
        const std::int64_t ours = days_from_civil(civil.date) * day + civil.clock.hour * 3600 +
                                  civil.clock.minute * 60 + civil.second;
        RC_ASSERT(ours == local.time_since_epoch().count());
        const auto back = instant_of(zone, civil);
        RC_ASSERT(back.has_value());
        const auto earliest = library->to_sys(local, date::choose::earliest);
        RC_ASSERT(back->seconds == earliest.time_since_epoch().count());
    });
}

struct ClockCase {
    const char* zone;
    CivilDate date;
    ClockTime clock;
    const char* instant; // empty: skipped
};

// Worked out by hand from the announced changes, and confirmed by date-tz below.
const std::vector<ClockCase>& clock_cases() {
    static const std::vector<ClockCase> cases = {
        {"Europe/London", {2026, 3, 29}, {1, 30}, ""},
        {"Europe/London", {2026, 10, 25}, {1, 30}, "2026-10-25T01:30:00+01:00"},
        {"America/New_York", {2026, 3, 8}, {2, 30}, ""},
        {"America/New_York", {2026, 11, 1}, {1, 30}, "2026-11-01T01:30:00-04:00"},
        {"Australia/Lord_Howe", {2026, 10, 4}, {2, 15}, ""},
        {"Australia/Lord_Howe", {2026, 10, 4}, {2, 30}, "2026-10-04T02:30:00+11:00"},
        {"Australia/Lord_Howe", {2026, 4, 5}, {1, 45}, "2026-04-05T01:45:00+11:00"},
        {"Pacific/Apia", {2011, 12, 30}, {12, 0}, ""},
        {"Pacific/Apia", {2011, 12, 29}, {23, 59}, "2011-12-29T23:59:00-10:00"},
        {"Pacific/Apia", {2011, 12, 31}, {0, 0}, "2011-12-31T00:00:00+14:00"},
        {"Asia/Kathmandu", {2026, 11, 28}, {18, 30}, "2026-11-28T18:30:00+05:45"},
        {"UTC", {2026, 11, 28}, {18, 30}, "2026-11-28T18:30:00+00:00"},
    };
    return cases;
}

TEST(clock_changes, skipped_and_repeated_hours_are_those_of_the_library) {
    for (const ClockCase& c : clock_cases()) {
        const std::int64_t local =
            days_from_civil(c.date) * day + c.clock.hour * 3600 + c.clock.minute * 60;
        const Zone zone = our_zone(c.zone, Instant{local});
        SCOPED_TRACE(std::string(c.zone) + " " + clock_text(c.clock));
        const auto instant = instant_of(zone, {c.date, c.clock, 0});
        const date::local_seconds library_local{std::chrono::seconds{local}};
        const date::local_info info = date::locate_zone(c.zone)->get_info(library_local);
        const bool skipped = std::string(c.instant).empty();
        EXPECT_EQ(info.result == date::local_info::nonexistent, skipped);
        ASSERT_EQ(instant.has_value(), !skipped);
        if (skipped) {
            EXPECT_EQ(instant.error().code, "time_skipped");
        } else {
            EXPECT_EQ(rfc3339(zone, *instant), c.instant);
            EXPECT_EQ(instant->seconds, local - info.first.offset.count());
        }
    }
}

TEST(clock_changes, the_day_that_apia_left_out_is_named_with_both_ends) {
    const Zone zone = our_zone("Pacific/Apia", start_of(2012));
    const auto instant = instant_of(zone, {{2011, 12, 30}, {12, 0}, 0});
    ASSERT_FALSE(instant.has_value());
    EXPECT_EQ(instant.error().what,
              "12:00 on Fri 30 Dec does not exist in Pacific/Apia: the clocks go forward from "
              "00:00 to 00:00 on Sat 31 Dec");
}

} // namespace
} // namespace loafwright::published

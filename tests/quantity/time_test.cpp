// SPDX-License-Identifier: Apache-2.0
//
// Calendar, wall clock and zones drawn inside the test. Real zones are compared with the system's
// data in tests/published.
#include "engine/quantity/time.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <string>

namespace loafwright {
namespace {

constexpr int hour = 3600;

Instant utc(std::string_view text) {
    return parse_rfc3339(text).value();
}

// One hour forward on 29 March 2026 and back on 25 October, as in London.
Zone london() {
    Zone zone;
    zone.name = "Europe/London";
    zone.changes = {{utc("2026-03-29T01:00:00Z"), hour}, {utc("2026-10-25T01:00:00Z"), 0}};
    return zone;
}

CivilTime civil(CivilDate date, int at_hour, int minute) {
    return {date, {at_hour, minute}, 0};
}

TEST(time, the_wall_clock_follows_the_offset_in_force) {
    const Zone zone = london();
    EXPECT_EQ(rfc3339(zone, utc("2026-03-29T00:59:59Z")), "2026-03-29T00:59:59+00:00");
    EXPECT_EQ(rfc3339(zone, utc("2026-03-29T01:00:00Z")), "2026-03-29T02:00:00+01:00");
    EXPECT_EQ(rfc3339(zone, utc("2026-10-25T00:59:59Z")), "2026-10-25T01:59:59+01:00");
    EXPECT_EQ(rfc3339(zone, utc("2026-10-25T01:00:00Z")), "2026-10-25T01:00:00+00:00");
    EXPECT_EQ(clock_text(zone, utc("2026-07-01T17:30:00Z")), "18:30");
    EXPECT_EQ(day_text(zone, utc("2026-07-01T23:30:00Z")), "Thu 2 Jul");
}

TEST(time, a_repeated_hour_means_the_first_one) {
    const auto instant = instant_of(london(), civil({2026, 10, 25}, 1, 30));
    ASSERT_TRUE(instant.has_value());
    EXPECT_EQ(*instant, utc("2026-10-25T00:30:00Z"));
}

TEST(time, a_skipped_hour_is_refused_with_both_ends_of_the_gap) {
    const auto instant = instant_of(london(), civil({2026, 3, 29}, 1, 30));
    ASSERT_FALSE(instant.has_value());
    EXPECT_EQ(instant.error().code, "time_skipped");
    EXPECT_EQ(instant.error().what,
              "01:30 on Sun 29 Mar does not exist in Europe/London: the clocks go forward from "
              "01:00 to 02:00");
    EXPECT_EQ(instant.error().do_this, "Choose a time before 01:00 or from 02:00 on.");
}

TEST(time, the_ends_of_a_gap_belong_to_what_stands_beside_it) {
    EXPECT_EQ(instant_of(london(), civil({2026, 3, 29}, 2, 0)).value(),
              utc("2026-03-29T01:00:00Z"));
    EXPECT_EQ(instant_of(london(), civil({2026, 3, 29}, 0, 59)).value(),
              utc("2026-03-29T00:59:00Z"));
}

TEST(time, minutes_between_round_towards_the_past) {
    EXPECT_EQ(minutes_between(Instant{0}, Instant{119}), 1);
    EXPECT_EQ(minutes_between(Instant{0}, Instant{120}), 2);
    EXPECT_EQ(minutes_between(Instant{0}, Instant{-1}), -1);
    EXPECT_EQ(later_by_minutes(Instant{30}, -2), Instant{-90});
}

TEST(time, known_days_fall_on_their_weekday) {
    EXPECT_EQ(weekday_of({1970, 1, 1}), 3);
    EXPECT_EQ(weekday_of({2026, 11, 28}), 5);
    EXPECT_EQ(weekday_of({1969, 12, 29}), 0);
    EXPECT_EQ(weekday_of({1, 1, 1}), 0);
}

TEST(time, clock_and_day_texts_have_fixed_shapes) {
    EXPECT_EQ(clock_text(ClockTime{7, 5}), "07:05");
    EXPECT_EQ(clock_text(ClockTime{0, 0}), "00:00");
    EXPECT_EQ(day_text(Zone{}, utc("2026-11-28T18:30:00Z")), "Sat 28 Nov");
    EXPECT_EQ(day_text(Zone{}, utc("2027-01-03T00:00:00Z")), "Sun 3 Jan");
}

RC_GTEST_PROP(time, days_there_and_back_are_the_same_day, (int days)) {
    const CivilDate date = civil_from_days(days);
    RC_ASSERT(date.month >= 1 && date.month <= 12);
    RC_ASSERT(date.day >= 1 && date.day <= 31);
    RC_ASSERT(days_from_civil(date) == days);
    RC_ASSERT(date < civil_from_days(days + std::int64_t{1}));
    const int next = weekday_of(civil_from_days(days + std::int64_t{1}));
    RC_ASSERT(next == (weekday_of(date) + 1) % 7);
}

RC_GTEST_PROP(time, any_text_is_read_or_refused_without_harm, (const std::string& text)) {
    const auto instant = parse_rfc3339(text);
    if (instant) {
        RC_ASSERT(parse_rfc3339(rfc3339(Zone{}, *instant)) == instant);
    }
}

// Zones of any changes, a week apart at least, as real ones are.
rc::Gen<Zone> any_zone() {
    const auto offset =
        rc::gen::map(rc::gen::inRange(-48, 57), [](int quarters) { return quarters * 900; });
    return rc::gen::map(rc::gen::tuple(offset, rc::gen::container<std::vector<int>>(offset)),
                        [](const std::tuple<int, std::vector<int>>& offsets) {
                            Zone zone;
                            zone.name = "Some/Where";
                            zone.first_offset_seconds = std::get<0>(offsets);
                            std::int64_t at = 1700000000;
                            for (const int seconds : std::get<1>(offsets)) {
                                at += 7 * 86400 + seconds;
                                zone.changes.push_back({Instant{at}, seconds});
                            }
                            return zone;
                        });
}

RC_GTEST_PROP(time, the_wall_clock_leads_back_to_the_first_instant_that_shows_it, ()) {
    const Zone zone = *any_zone();
    const Instant instant{1700000000 + *rc::gen::inRange<std::int64_t>(0, 100 * 86400)};
    const CivilTime shown = civil_of(zone, instant);
    const auto back = instant_of(zone, shown);
    RC_ASSERT(back.has_value());
    RC_ASSERT(*back <= instant);
    const CivilTime again = civil_of(zone, *back);
    RC_ASSERT(again.date == shown.date);
    RC_ASSERT(again.clock == shown.clock);
    RC_ASSERT(again.second == shown.second);
    RC_ASSERT(parse_rfc3339(rfc3339(zone, instant)) == instant);
}

RC_GTEST_PROP(time, a_wall_clock_time_is_either_shown_or_skipped, ()) {
    const Zone zone = *any_zone();
    const std::int64_t local = 1700000000 + *rc::gen::inRange<std::int64_t>(0, 100 * 86400);
    const CivilTime wanted = civil_of(Zone{}, Instant{local});
    const auto instant = instant_of(zone, wanted);
    // Checked the slow way: does any offset of the zone lead to an instant that shows the time?
    bool shown = false;
    for (int quarter = -48; quarter <= 56; ++quarter) {
        const Instant candidate{local - quarter * 900};
        shown = shown || offset_seconds_at(zone, candidate) == quarter * 900;
    }
    RC_ASSERT(instant.has_value() == shown);
    if (!instant) {
        RC_ASSERT(instant.error().code == "time_skipped");
        RC_ASSERT(!instant.error().do_this.empty());
    }
}

} // namespace
} // namespace loafwright

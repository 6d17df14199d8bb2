// SPDX-License-Identifier: Apache-2.0
//
// Zones by name, by the environment, and from bytes that are no zone. Whether their offsets are
// right is checked in tests/published.
#include "shell/settings/posix_rule.hpp"
#include "shell/settings/settings.hpp"
#include "shell/settings/tzif.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cstdlib>
#include <fstream>
#include <iterator>
#include <string>

namespace loafwright::settings {
namespace {

Instant at(std::string_view text) {
    return parse_rfc3339(text).value();
}

const Instant november = at("2026-11-25T09:00:00Z");

// Sets TZ for the length of a test.
class TimeZoneVariable : public testing::Test {
protected:
    void SetUp() override {
        const char* before = std::getenv("TZ");
        was_set_ = before != nullptr;
        before_ = was_set_ ? before : "";
    }
    void TearDown() override {
        if (was_set_) {
            setenv("TZ", before_.c_str(), 1);
        } else {
            unsetenv("TZ");
        }
    }

private:
    bool was_set_ = false;
    std::string before_;
};

TEST(zone, holds_the_changes_from_ten_days_before_to_thirty_days_after) {
    const auto change = at("2026-10-25T01:00:00Z");
    const auto around = [&](std::int64_t days) {
        return zone_named("Europe/London", Instant{change.seconds + days * 86400}).value();
    };
    EXPECT_EQ(around(9).changes.size(), 1u);
    EXPECT_EQ(around(-29).changes.size(), 1u);
    EXPECT_EQ(around(11).changes.size(), 0u);
    EXPECT_EQ(around(11).first_offset_seconds, 0);
    EXPECT_EQ(around(-31).changes.size(), 0u);
    EXPECT_EQ(around(-31).first_offset_seconds, 3600);
    EXPECT_EQ(around(0).name, "Europe/London");
}

TEST(zone, an_unknown_name_is_answered_with_near_ones) {
    const auto asked = [](std::string_view name) {
        const auto zone = zone_named(name, november);
        EXPECT_FALSE(zone.has_value()) << name;
        EXPECT_EQ(zone.error().code, "zone_unknown");
        return zone ? "" : zone.error().do_this;
    };
    EXPECT_EQ(asked("London"), "Did you mean Europe/London?");
    EXPECT_EQ(asked("europe/london"), "Did you mean Europe/London?");
    EXPECT_EQ(asked("Europe/Lodnon"), "Did you mean Europe/London?");
    EXPECT_EQ(asked("new york"), "Did you mean America/New_York?");
    EXPECT_EQ(asked("Nowhere/AtAll"),
              "Name the zone by its region and largest city, or write UTC.");
    EXPECT_EQ(asked(""), "Name the zone by its region and largest city, or write UTC.");
}

TEST(zone, names_never_lead_out_of_the_folder_of_zones) {
    for (const char* name : {"../../../etc/passwd",
                             "/etc/localtime",
                             "Europe/../UTC",
                             "Europe",
                             "Europe/",
                             ".",
                             "tzdata.zi",
                             "zone.tab",
                             "Europe//London"}) {
        const auto zone = zone_named(name, november);
        if (std::string(name) != "Europe//London") {
            EXPECT_FALSE(zone.has_value()) << name;
        }
    }
}

TEST_F(TimeZoneVariable, names_the_zone_when_it_is_set) {
    setenv("TZ", "Asia/Kathmandu", 1);
    EXPECT_EQ(zone_found(november).zone.name, "Asia/Kathmandu");
    EXPECT_FALSE(zone_found(november).warning.has_value());
    setenv("TZ", ":America/New_York", 1);
    EXPECT_EQ(zone_found(november).zone.name, "America/New_York");
    setenv("TZ", "/usr/share/zoneinfo/Asia/Tokyo", 1);
    EXPECT_EQ(zone_found(november).zone.name, "Asia/Tokyo");
}

TEST_F(TimeZoneVariable, may_hold_a_yearly_rule) {
    setenv("TZ", "GMT0BST,M3.5.0/1,M10.5.0", 1);
    const FoundZone found = zone_found(at("2026-07-01T12:00:00Z"));
    EXPECT_FALSE(found.warning.has_value());
    EXPECT_EQ(found.zone.first_offset_seconds, 3600);
}

TEST_F(TimeZoneVariable, is_passed_over_with_a_warning_when_it_names_nothing) {
    setenv("TZ", "Nowhere/AtAll", 1);
    const FoundZone found = zone_found(november);
    ASSERT_TRUE(found.warning.has_value());
    EXPECT_EQ(found.warning->code, "zone_unknown");
    EXPECT_EQ(found.warning->severity, Severity::warning);
    EXPECT_EQ(found.warning->where, "TZ");
}

TEST_F(TimeZoneVariable, when_unset_leaves_the_choice_to_the_system) {
    unsetenv("TZ");
    const FoundZone found = zone_found(november);
    EXPECT_FALSE(found.zone.name.empty());
    if (found.warning) {
        EXPECT_EQ(found.warning->code, "zone_unset");
        EXPECT_EQ(found.zone.name, "UTC");
    }
}

std::string london_bytes() {
    std::ifstream file("/usr/share/zoneinfo/Europe/London", std::ios::binary);
    return std::string((std::istreambuf_iterator<char>(file)), std::istreambuf_iterator<char>());
}

TEST(zone_bytes, cut_short_anywhere_are_refused) {
    const std::string bytes = london_bytes();
    ASSERT_GT(bytes.size(), 100u);
    const Instant to = later_by_minutes(november, 30 * 24 * 60);
    ASSERT_TRUE(zone_from_tzif(bytes, "x", november, to).has_value());
    for (std::size_t size = 0; size < bytes.size(); ++size) {
        EXPECT_FALSE(zone_from_tzif(std::string_view(bytes).substr(0, size), "x", november, to))
            << size;
    }
}

RC_GTEST_PROP(zone_bytes, with_any_byte_changed_are_read_or_refused_without_harm, ()) {
    static const std::string original = london_bytes();
    std::string bytes = original;
    const int slips = *rc::gen::inRange(1, 8);
    for (int i = 0; i < slips; ++i) {
        const auto place = *rc::gen::inRange<std::size_t>(0, bytes.size());
        bytes[place] = *rc::gen::arbitrary<char>();
    }
    const auto zone = zone_from_tzif(bytes, "x", november, later_by_minutes(november, 43200));
    if (zone) {
        for (std::size_t i = 1; i < zone->changes.size(); ++i) {
            RC_ASSERT(zone->changes[i - 1].from < zone->changes[i].from);
        }
    }
}

TEST(posix_rule, what_is_not_one_is_refused) {
    for (const char* text : {"",
                             "G",
                             "GM0",
                             "GMT",
                             "GMT0BST",
                             "GMT0BST,M3.5.0",
                             "GMT0BST,M13.1.0,M3.1.0",
                             "GMT0BST,M3.6.0,M10.5.0",
                             "GMT0BST,M3.5.7,M10.5.0",
                             "GMT0BST,J0,J300",
                             "GMT0BST,366,1",
                             "GMT0BST,M3.5.0/168,M10.5.0",
                             "GMT0BST,M3.5.0,M10.5.0x",
                             "<GMT0",
                             "<GM>0",
                             "GMT25",
                             "GMT0:60",
                             "GMT0BST,,"}) {
        EXPECT_FALSE(parse_posix_rule(text).has_value()) << text;
    }
}

// RFC 8536 section 3.3.1: summer time all the year round is written so that it ends as it begins
// again.
TEST(posix_rule, summer_time_all_the_year_round_never_ends) {
    const auto zone =
        zone_from_rule("AAA3BBB4,0/0,J365/23", "x", november, at("2027-02-01T00:00:00Z"));
    ASSERT_TRUE(zone.has_value());
    EXPECT_EQ(zone->first_offset_seconds, -4 * 3600);
    EXPECT_TRUE(zone->changes.empty());
}

RC_GTEST_PROP(posix_rule, any_text_is_read_or_refused_without_harm, (const std::string& text)) {
    const auto rule = parse_posix_rule(text);
    if (rule) {
        RC_ASSERT(changes_by_rule(*rule, 2026, 2027).size() <= 4u);
    }
}

} // namespace
} // namespace loafwright::settings

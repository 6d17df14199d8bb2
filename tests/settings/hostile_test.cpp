// SPDX-License-Identifier: Apache-2.0
//
// Whatever bytes arrive, settings answer with a value or with diagnostics of the catalogue, and
// never throw.
#include "shell/settings/settings.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <string>
#include <vector>

namespace loafwright::settings {
namespace {

const Instant now = parse_rfc3339("2026-11-25T09:00:00Z").value();

void check(const Diagnostics& diagnostics) {
    RC_ASSERT(!diagnostics.empty());
    for (const Diagnostic& diagnostic : diagnostics) {
        RC_ASSERT(is_known_code(diagnostic.code));
        RC_ASSERT(!diagnostic.what.empty());
        RC_ASSERT(!diagnostic.do_this.empty());
        RC_ASSERT(one_line(diagnostic).find('\n') == std::string::npos);
    }
}

void read_all(const std::string& text) {
    const auto kitchen = kitchen_from_toml(text, "kitchen.toml");
    if (!kitchen) {
        check(kitchen.error());
    }
    const auto day = day_from_toml(text, "day.toml", Zone{}, false, now);
    if (!day) {
        check(day.error());
    }
    const auto time = time_from_words(text, Zone{}, now);
    if (!time) {
        check({time.error()});
    }
    looks_like_a_time(text);
}

RC_GTEST_PROP(hostile, any_bytes_are_answered, (const std::string& text)) {
    read_all(text);
}

// Pieces of real files in any order come far deeper than bytes do.
RC_GTEST_PROP(hostile, pieces_of_real_files_in_any_order_are_answered, ()) {
    static const std::vector<std::string> pieces = {"room_c",
                                                    "oven",
                                                    "[oven]",
                                                    "[[tin]]",
                                                    "[[window]]",
                                                    "[[oven_claim]]",
                                                    "people",
                                                    "state",
                                                    "from",
                                                    "to",
                                                    "c",
                                                    "zone",
                                                    "eat_by",
                                                    "start",
                                                    "person",
                                                    "max_c",
                                                    "length_mm",
                                                    " = ",
                                                    " = ",
                                                    "\n",
                                                    "\n",
                                                    "[",
                                                    "]",
                                                    "{",
                                                    "}",
                                                    ",",
                                                    ".",
                                                    "\"22:30\"",
                                                    "\"sat 09:00\"",
                                                    "\"25:00\"",
                                                    "19",
                                                    "1e308",
                                                    "-inf",
                                                    "nan",
                                                    "true",
                                                    "\"away\"",
                                                    "[\"a\", \"b\"]",
                                                    "[{from = \"07:00\", c = 19}]",
                                                    "2026-11-28T09:00:00",
                                                    "2026-11-28",
                                                    "09:00:00",
                                                    "0001-01-01T00:00:00Z",
                                                    "9999-12-31T23:59:59-23:59",
                                                    "\"Europe/London\"",
                                                    "\"\"",
                                                    "'x'",
                                                    "# x\n",
                                                    "\xEF\xBB\xBF",
                                                    "é"};
    const auto words = *rc::gen::container<std::vector<std::string>>(rc::gen::elementOf(pieces));
    std::string text;
    for (const std::string& word : words) {
        text += word;
    }
    read_all(text);
}

TEST(hostile, deep_nesting_is_answered) {
    const std::string open(100000, '[');
    EXPECT_FALSE(kitchen_from_toml("room_c = " + open, "kitchen.toml").has_value());
    EXPECT_FALSE(day_from_toml("people = " + open, "day.toml", Zone{}, false, now).has_value());
}

TEST(hostile, far_away_dates_are_answered) {
    for (const char* from : {"0000-01-01 00:00", "9999-12-31 23:59", "0001-01-01T00:00:00+23:59"}) {
        const std::string text = "[[window]]\nstate = \"away\"\nfrom = \"" + std::string(from) +
                                 "\"\nto = \"9999-12-31T23:59:59Z\"\n";
        const auto day = day_from_toml(text, "day.toml", Zone{}, false, now);
        EXPECT_TRUE(day.has_value() || !day.error().empty());
    }
    EXPECT_FALSE(day_from_toml("start = \"9999-12-31 23:59\"", "day.toml", Zone{}, false, now));
}

} // namespace
} // namespace loafwright::settings

// SPDX-License-Identifier: Apache-2.0
//
// What oven words mean, against NIST's page of culinary temperatures (read). Where our table
// follows a second source as well its range may be wider by ten degrees at an end, never narrower.
#include "engine/knowledge/knowledge.hpp"

#include <gtest/gtest.h>

#include <array>
#include <string>

namespace loafwright::published {
namespace {

struct NistRow {
    const char* words;
    double low;
    double high;
};

constexpr std::array<NistRow, 8> nist = {{
    {"cool oven", 90.0, 90.0},
    {"very slow oven", 120.0, 120.0},
    {"slow oven", 150.0, 160.0},
    {"moderately slow oven", 160.0, 180.0},
    {"moderate oven", 180.0, 190.0},
    {"moderately hot oven", 190.0, 200.0},
    {"hot oven", 200.0, 230.0},
    {"very hot oven", 230.0, 260.0},
}};

TEST(oven_words, cover_the_published_temperatures) {
    const Knowledge knowledge = built_in_knowledge();
    for (const NistRow& row : nist) {
        int found = 0;
        for (const OvenWordRow& ours : knowledge.oven_words) {
            if (ours.words != row.words) {
                continue;
            }
            ++found;
            EXPECT_LE(ours.oven.low.degrees(), row.low) << row.words;
            EXPECT_GE(ours.oven.low.degrees(), row.low - 10.0) << row.words;
            EXPECT_GE(ours.oven.high.degrees(), row.high) << row.words;
            EXPECT_LE(ours.oven.high.degrees(), row.high + 10.0) << row.words;
        }
        EXPECT_EQ(found, 1) << row.words;
    }
}

} // namespace
} // namespace loafwright::published

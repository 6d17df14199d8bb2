// SPDX-License-Identifier: Apache-2.0
//
// The near word, and words quoted for a message.
#include "shell/settings/suggest.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <string>
#include <vector>

namespace loafwright::settings {
namespace {

TEST(suggest, letters_apart_counts_single_slips) {
    EXPECT_EQ(letters_apart("oven", "oven"), 0u);
    EXPECT_EQ(letters_apart("oven", "Oven"), 0u);
    EXPECT_EQ(letters_apart("oven", "ovens"), 1u);
    EXPECT_EQ(letters_apart("oven", "oen"), 1u);
    EXPECT_EQ(letters_apart("oven", "oben"), 1u);
    EXPECT_EQ(letters_apart("oven", "ovne"), 1u);
    EXPECT_EQ(letters_apart("", "oven"), 4u);
    EXPECT_EQ(letters_apart("kitten", "sitting"), 3u);
}

RC_GTEST_PROP(suggest,
              letters_apart_is_the_same_both_ways,
              (const std::string& a, const std::string& b)) {
    RC_ASSERT(letters_apart(a, b) == letters_apart(b, a));
    RC_ASSERT(letters_apart(a, a) == 0u);
    RC_ASSERT(letters_apart(a, b) <= std::max(a.size(), b.size()));
}

TEST(suggest, the_nearest_word_is_offered_and_a_far_one_is_not) {
    const std::vector<std::string> keys = {"room_c", "flour_c", "fridge_c", "heat_up_minutes"};
    EXPECT_EQ(nearest("fridge", keys), "fridge_c");
    EXPECT_EQ(nearest("roomc", keys), "room_c");
    EXPECT_EQ(nearest("Flour_C", keys), "flour_c");
    EXPECT_EQ(nearest("heat_up_mins", keys), "heat_up_minutes");
    EXPECT_EQ(nearest("shelves", keys), std::nullopt);
    EXPECT_EQ(nearest("", keys), std::nullopt);
    EXPECT_EQ(nearest(std::string(10000, 'x'), keys), std::nullopt);
    EXPECT_EQ(nearest("x", {}), std::nullopt);
}

TEST(suggest, quoted_words_stay_on_one_line_and_end_between_characters) {
    EXPECT_EQ(in_quotes("half past six"), "\"half past six\"");
    EXPECT_EQ(in_quotes("a\nb\tc"), "\"a b c\"");
    EXPECT_EQ(in_quotes(std::string(50, 'x')), "\"" + std::string(40, 'x') + "…\"");
    // The é takes two bytes, of which the second would be the first one left out.
    EXPECT_EQ(in_quotes(std::string(39, 'x') + "é and more"), "\"" + std::string(39, 'x') + "…\"");
}

} // namespace
} // namespace loafwright::settings

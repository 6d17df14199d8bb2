// SPDX-License-Identifier: Apache-2.0
#include "engine/recipe/words.hpp"

#include <gtest/gtest.h>

namespace loafwright {
namespace {

TEST(words, a_word_is_found_whole_or_not_at_all) {
    EXPECT_TRUE(has_word("soft rolls, twelve", "rolls"));
    EXPECT_FALSE(has_word("scrolls", "rolls"));
    EXPECT_FALSE(has_word("rollsé", "rolls"));
    EXPECT_FALSE(has_word("", "rolls"));
}

TEST(words, capital_letters_of_ascii_become_small_and_all_else_stays) {
    EXPECT_EQ(lower_case("Strong WHITE Flour, 500 g"), "strong white flour, 500 g");
    EXPECT_EQ(lower_case("Crème"), "crème");
}

} // namespace
} // namespace loafwright

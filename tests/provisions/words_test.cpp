// SPDX-License-Identifier: Apache-2.0
//
// Finding phrases, and seeing when the text denies them or offers them as the second choice.

#include "engine/provisions/words.hpp"

#include <gtest/gtest.h>

#include <string>
#include <string_view>

namespace loafwright::provisions {
namespace {

std::string cut(std::string_view text) {
    std::string all;
    for (const Word& word : words_of(text)) {
        all += (word.after_mark ? "|" : " ") + word.text;
    }
    return all;
}

bool says(std::string_view text, std::string_view phrase) {
    return says_any(words_of(text), {phrase});
}

bool second_choice(std::string_view text, std::string_view phrase) {
    const Words words = words_of(text);
    const auto found = matches(words, phrase);
    EXPECT_EQ(found.size(), 1U) << text;
    return !found.empty() && is_alternative(words, found.front());
}

TEST(provisions, a_text_is_cut_at_blanks_hyphens_and_marks) {
    EXPECT_EQ(cut("Deep-fry it; don\xE2\x80\x99t hurry, (10 min.)"),
              " deep fry it|don't hurry|10 min");
    EXPECT_EQ(cut("  …"), " …");
    EXPECT_EQ(cut(""), "");
}

TEST(provisions, a_phrase_is_whole_words_side_by_side_within_a_clause) {
    EXPECT_TRUE(says("Grease two loaf tins well", "loaf tin"));
    EXPECT_TRUE(says("DEEP-FRY them", "deep fry"));
    EXPECT_FALSE(says("Take the eggplant", "egg"));
    EXPECT_FALSE(says("Set the loaf, tin and all, aside", "loaf tin"));
    EXPECT_FALSE(says("rye", "rye flour"));
}

TEST(provisions, a_denied_phrase_is_not_said) {
    EXPECT_TRUE(says("There is a need of a mixer", "mixer"));
    EXPECT_FALSE(says("No mixer is needed", "mixer"));
    EXPECT_FALSE(says("do not cover it", "cover"));
    EXPECT_FALSE(says("made without honey", "honey"));
    EXPECT_FALSE(says("you don\xE2\x80\x99t need a thermometer", "thermometer"));
    EXPECT_TRUE(says("do not hurry, cover it", "cover"));
    EXPECT_TRUE(says("see that it does not stick to the baking paper", "baking paper"));
}

TEST(provisions, what_follows_or_is_the_second_choice) {
    EXPECT_TRUE(second_choice("a basket or a bowl lined with a cloth", "bowl"));
    EXPECT_TRUE(second_choice("knead by hand or in a stand mixer", "stand mixer"));
    EXPECT_FALSE(second_choice("a basket or a bowl", "basket"));
    EXPECT_FALSE(second_choice("ten minutes or so in the bowl", "bowl"));
    EXPECT_FALSE(second_choice("by hand or by machine, in a bowl", "bowl"));
}

} // namespace
} // namespace loafwright::provisions

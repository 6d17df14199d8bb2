// SPDX-License-Identifier: Apache-2.0
#include "engine/quantity/phrase.hpp"

#include <gtest/gtest.h>

namespace loafwright {
namespace {

TEST(phrase, keeps_numbers_apart_from_words) {
    const Phrase made =
        phrase("{} is {}; {}", {std::string("your kitchen"), Celsius(19.0), Grams(5.0)});
    ASSERT_EQ(made.parts.size(), 4U);
    EXPECT_EQ(std::get<std::string>(made.parts[0]), "your kitchen is ");
    EXPECT_EQ(std::get<Celsius>(made.parts[1]), Celsius(19.0));
    EXPECT_EQ(std::get<std::string>(made.parts[2]), "; ");
    EXPECT_EQ(std::get<Grams>(made.parts[3]), Grams(5.0));
}

TEST(phrase, too_many_or_too_few_parts_do_no_harm) {
    EXPECT_EQ(phrase("a {} b {}", {Celsius(1.0)}).parts.size(), 3U);
    EXPECT_EQ(phrase("a", {Celsius(1.0)}), phrase("a"));
    EXPECT_TRUE(phrase("").parts.empty());
}

TEST(phrase, grows_at_its_end) {
    Phrase words = phrase("water");
    words += phrase(" at {}", {Celsius(28.0)});
    EXPECT_EQ(words, phrase("water at {}", {Celsius(28.0)}));
    words += words;
    EXPECT_EQ(words, phrase("water at {}water at {}", {Celsius(28.0), Celsius(28.0)}));
}

TEST(phrase, takes_a_capital_where_it_begins_with_a_letter) {
    EXPECT_EQ(with_capital(phrase("your")), phrase("Your"));
    EXPECT_EQ(with_capital(phrase("{} of water", {Grams(5.0)})),
              phrase("{} of water", {Grams(5.0)}));
}

} // namespace
} // namespace loafwright

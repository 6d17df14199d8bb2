// SPDX-License-Identifier: Apache-2.0
//
// A word that a picture does not show clearly is asked about, and never guessed in silence.
#include "engine/reading/doubt.hpp"
#include "engine/reading/read.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <string>

namespace loafwright {
namespace {

const std::string words = "Tea loaf\n\n- 5OO g strong white flour\n- 320 g water\n- 10 g salt\n"
                          "- 7 g instant yeast\n\n1. Mix everything and knead for 10 minutes.\n"
                          "2. Leave to rise for 1 hour until doubled.\n"
                          "3. Bake at 220°C for 35 minutes.\n";

Doubt doubt_of(const std::string& word, std::vector<std::string> maybe = {}) {
    const std::size_t at = words.find(word);
    EXPECT_NE(at, std::string::npos);
    return {Span{at, at + word.size()}, std::move(maybe)};
}

Reading reading_of(const std::string& text, const std::vector<OpenDoubt>& doubts = {}) {
    static const Knowledge knowledge = built_in_knowledge();
    auto checked = check_text(text, "test");
    EXPECT_TRUE(checked.has_value());
    return read(*checked, knowledge, {}, doubts);
}

TEST(doubts, without_an_answer_are_asked_where_a_figure_hangs_on_them) {
    const Settled settled =
        settle(words, {doubt_of("5OO", {"500"}), doubt_of("Leave"), doubt_of("35")}, {});
    EXPECT_EQ(settled.text, words);
    const std::size_t before = reading_of(settled.text).questions.size();
    const Reading reading = reading_of(settled.text, settled.open);
    // "Leave" has no figure in it; of "5OO" the reader asks by itself, and once is enough.
    ASSERT_EQ(reading.questions.size(), before + 1);
    EXPECT_EQ(reading.questions[0].key, "word-at-" + std::to_string(words.find("5OO")));
    EXPECT_EQ(reading.questions[0].default_answer, "500");
    EXPECT_NE(reading.questions[0].ask.find("500"), std::string::npos);
    EXPECT_EQ(reading.questions[1].default_answer, "35");
}

TEST(doubts, an_answer_stands_in_the_text_and_moves_what_comes_behind) {
    const std::string key = "word-at-" + std::to_string(words.find("35"));
    const Settled settled =
        settle(words, {doubt_of("5OO"), doubt_of("35")}, {{key, "135"}, {"oven-c", "220"}});
    EXPECT_NE(settled.text.find("for 135 minutes"), std::string::npos);
    ASSERT_EQ(settled.open.size(), 1U);
    ASSERT_EQ(settled.others.size(), 1U);
    EXPECT_EQ(settled.others[0].key, "oven-c");
    const Reading reading = reading_of(settled.text);
    EXPECT_DOUBLE_EQ(reading.recipe.steps.back().minutes->minutes.likely.count(), 135.0);
}

// The doubts that stay open keep their words, whatever was said of the others.
RC_GTEST_PROP(doubts, keep_their_words, ()) {
    std::vector<Doubt> doubts;
    for (std::size_t at = 0; at + 3 < words.size();) {
        const auto gap = *rc::gen::inRange<std::size_t>(0, 40);
        const auto length = *rc::gen::inRange<std::size_t>(1, 4);
        at += gap;
        if (at + length > words.size()) {
            break;
        }
        doubts.push_back({Span{at, at + length}, {}});
        at += length;
    }
    Answers answers;
    for (const Doubt& doubt : doubts) {
        if (*rc::gen::inRange(0, 2) == 0) {
            answers.push_back(
                {"word-at-" + std::to_string(doubt.span.begin), *rc::gen::string<std::string>()});
        }
    }
    const Settled settled = settle(words, doubts, answers);
    RC_ASSERT(settled.open.size() + answers.size() == doubts.size());
    for (const OpenDoubt& open : settled.open) {
        const std::size_t first = std::stoul(open.key.substr(std::string("word-at-").size()));
        const Span span = open.doubt.span;
        RC_ASSERT(settled.text.substr(span.begin, span.end - span.begin) ==
                  words.substr(first, span.end - span.begin));
    }
}

} // namespace
} // namespace loafwright

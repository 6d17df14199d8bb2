// SPDX-License-Identifier: Apache-2.0
//
// What parent and child say to each other, and what the parent does not believe.
#include "shell/intake/message.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <string>
#include <utility>

namespace loafwright::intake {
namespace {

TakenIn some_words() {
    TakenIn taken;
    taken.kind = Kind::image;
    taken.text = "Bake 35 minutes at 220 °C.\n";
    taken.unsure.push_back({{5, 7}, 0.5, Clipping{1, 10, 20, 30, 12}, {"85", "38"}});
    taken.pages.push_back({300, 400, std::string("\x89PNG\0\n\n", 7)});
    taken.remarks.push_back({"handwriting", Severity::warning, "what", "where", "do this"});
    return taken;
}

std::string with(const std::string& from, const std::string& to) {
    std::string message = answer_message(some_words());
    const std::size_t at = message.find(from);
    EXPECT_NE(at, std::string::npos) << from;
    return message.replace(at, from.size(), to);
}

TEST(message, an_answer_comes_back_as_it_was_said) {
    const auto answer = answer_from(answer_message(some_words()));
    ASSERT_TRUE(answer && *answer);
    const TakenIn& taken = **answer;
    EXPECT_EQ(taken.kind, Kind::image);
    EXPECT_EQ(taken.text, "Bake 35 minutes at 220 °C.\n");
    ASSERT_EQ(taken.unsure.size(), 1U);
    EXPECT_EQ(taken.unsure[0].span, (Span{5, 7}));
    EXPECT_EQ(taken.unsure[0].maybe, (std::vector<std::string>{"85", "38"}));
    ASSERT_TRUE(taken.unsure[0].clipping);
    EXPECT_EQ(taken.unsure[0].clipping->width, 30);
    ASSERT_EQ(taken.pages.size(), 1U);
    EXPECT_EQ(taken.pages[0].png, some_words().pages[0].png);
    ASSERT_EQ(taken.remarks.size(), 1U);
}

TEST(message, a_request_comes_back_with_bytes_of_every_value) {
    std::string all;
    for (int byte = 0; byte < 256; ++byte) {
        all += static_cast<char>(byte);
    }
    Wish wish;
    wish.limits.most_pages = 3;
    const std::string message = request_message({{"a.jpg", all}, {"b\n\xFF.jpg", "x"}}, wish);
    const auto request = request_from(message);
    ASSERT_TRUE(request);
    ASSERT_EQ(request->files.size(), 2U);
    EXPECT_EQ(request->files[0].bytes, all);
    EXPECT_EQ(request->files[1].bytes, "x");
    EXPECT_EQ(request->limits.most_pages, 3U);
}

TEST(message, complaints_come_back) {
    const Diagnostics wrong = {{"file_damaged", Severity::error, "broken", "a.pdf", "Save it."}};
    const auto answer = answer_from(answer_message(tl::make_unexpected(wrong)));
    ASSERT_TRUE(answer);
    ASSERT_FALSE(*answer);
    EXPECT_EQ(answer->error().at(0).code, "file_damaged");
}

// The child has read hostile bytes: whatever it says may be a lie.
TEST(message, an_answer_that_cannot_be_is_not_believed) {
    EXPECT_FALSE(answer_from(""));
    EXPECT_FALSE(answer_from("{}\n"));
    EXPECT_FALSE(answer_from("{\"version\":2}\n"));
    EXPECT_FALSE(answer_from(with("\"end\":7", "\"end\":700"))) << "a span outside the text";
    EXPECT_FALSE(answer_from(with("\"end\":7", "\"end\":3")))
        << "a span that ends before it begins";
    EXPECT_FALSE(answer_from(with("\"begin\":5", "\"begin\":-5")));
    EXPECT_FALSE(answer_from(with("Bake", "\\u001b[2J"))) << "bytes that steer a terminal";
    EXPECT_FALSE(answer_from(with("Bake", "\\u0000")));
    EXPECT_FALSE(answer_from(with("\"code\":\"handwriting\"", "\"code\":\"all_is_well\"")));
    EXPECT_TRUE(answer_from(with("Bake", "Take"))) << "the changes above and not the changing";
}

RC_GTEST_PROP(message, any_bytes_are_an_answer_or_none, (const std::string& bytes)) {
    RC_ASSERT(!answer_from(bytes));
    RC_ASSERT(!answer_from("{\"version\":1}\n" + bytes));
}

} // namespace
} // namespace loafwright::intake

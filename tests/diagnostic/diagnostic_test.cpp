// SPDX-License-Identifier: Apache-2.0
//
// The catalogue of codes, and how one Diagnostic stands on one line.
#include "engine/diagnostic/diagnostic.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <string>

namespace loafwright {
namespace {

TEST(diagnostic, codes_stand_in_byte_order_and_once) {
    const auto& codes = diagnostic_codes();
    ASSERT_FALSE(codes.empty());
    for (std::size_t i = 1; i < codes.size(); ++i) {
        EXPECT_LT(codes[i - 1].code, codes[i].code);
    }
}

TEST(diagnostic, codes_are_small_letters_digits_and_underscores) {
    for (const DiagnosticCode& row : diagnostic_codes()) {
        const bool plain = std::all_of(row.code.begin(), row.code.end(), [](char c) {
            return c == '_' || (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9');
        });
        EXPECT_TRUE(plain && !row.code.empty()) << row.code;
        EXPECT_FALSE(row.meaning.empty()) << row.code;
    }
}

TEST(diagnostic, a_code_is_known_only_when_it_stands_in_the_catalogue) {
    EXPECT_TRUE(is_known_code("time_skipped"));
    EXPECT_FALSE(is_known_code("time_skippe"));
    EXPECT_FALSE(is_known_code("time_skipped_"));
    EXPECT_FALSE(is_known_code(""));
}

TEST(diagnostic, only_an_error_counts_as_one) {
    Diagnostic warning;
    warning.severity = Severity::warning;
    Diagnostic note;
    note.severity = Severity::note;
    EXPECT_FALSE(has_errors({}));
    EXPECT_FALSE(has_errors({warning, note}));
    EXPECT_TRUE(has_errors({warning, Diagnostic{}, note}));
}

TEST(diagnostic, severities_are_called_as_in_the_files) {
    EXPECT_EQ(name_of(Severity::error), "error");
    EXPECT_EQ(name_of(Severity::warning), "warning");
    EXPECT_EQ(name_of(Severity::note), "note");
}

TEST(diagnostic, one_line_holds_where_what_and_what_to_do) {
    Diagnostic diagnostic;
    diagnostic.what = "oven.max_c is 2300, expected 100 to 350";
    EXPECT_EQ(one_line(diagnostic), "oven.max_c is 2300, expected 100 to 350");
    diagnostic.do_this = "Did you mean 230?";
    EXPECT_EQ(one_line(diagnostic), "oven.max_c is 2300, expected 100 to 350. Did you mean 230?");
    diagnostic.where = "kitchen.toml:7 oven.max_c";
    EXPECT_EQ(one_line(diagnostic),
              "kitchen.toml:7 oven.max_c: oven.max_c is 2300, expected 100 to 350. "
              "Did you mean 230?");
}

} // namespace
} // namespace loafwright

// SPDX-License-Identifier: Apache-2.0
//
// Runs every text case of tests/cases/reading. A new phenomenon is a new case in one of its files,
// or a new file.
#include "tests/reading/case_file.hpp"

#include <gtest/gtest.h>

namespace loafwright::tests {
namespace {

class Reads : public ::testing::TestWithParam<ReadingCase> {};

TEST_P(Reads, as_the_case_says) {
    const std::vector<std::string> failures = failures_of(GetParam());
    if (GetParam().not_yet) {
        EXPECT_FALSE(failures.empty()) << GetParam().file << ":" << GetParam().line
                                       << ": this is read now; take the \"not yet\" away";
        return;
    }
    for (const std::string& failure : failures) {
        ADD_FAILURE() << GetParam().file << ":" << GetParam().line << ": " << failure;
    }
}

INSTANTIATE_TEST_SUITE_P(cases, Reads, ::testing::ValuesIn(all_cases()), [](const auto& one) {
    std::string name;
    for (const char c : one.param.name) {
        name += std::isalnum(static_cast<unsigned char>(c)) != 0 ? c : '_';
    }
    return name;
});

} // namespace
} // namespace loafwright::tests

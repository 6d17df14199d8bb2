// SPDX-License-Identifier: Apache-2.0
//
// docs/errors.md explains every code of the catalogue and no other: heading, meaning, example,
// cure, in the same order.
#include "engine/diagnostic/diagnostic.hpp"

#include <gtest/gtest.h>

#include <fstream>
#include <string>
#include <vector>

namespace loafwright {
namespace {

struct Entry {
    std::string code;
    std::string meaning;
    bool has_example = false;
    bool has_cure = false;
};

bool begins(const std::string& line, const std::string& with) {
    return line.rfind(with, 0) == 0;
}

std::vector<Entry> documented_entries() {
    std::vector<Entry> entries;
    std::ifstream file(LOAFWRIGHT_ROOT "/docs/errors.md");
    std::string line;
    while (std::getline(file, line)) {
        if (begins(line, "## ")) {
            entries.push_back({line.substr(3), "", false, false});
        } else if (entries.empty() || line.empty()) {
            continue;
        } else if (begins(line, "    ")) {
            entries.back().has_example = true;
        } else if (begins(line, "Cure: ")) {
            entries.back().has_cure = true;
        } else if (entries.back().meaning.empty()) {
            entries.back().meaning = line;
        }
    }
    return entries;
}

// "a sentence" as the catalogue has it, "A sentence." as the page has it.
std::string as_sentence(std::string_view meaning) {
    std::string sentence(meaning);
    sentence[0] = static_cast<char>(sentence[0] - 'a' + 'A');
    return sentence + ".";
}

TEST(errors_page, explains_exactly_the_codes_of_the_catalogue) {
    std::vector<std::string> documented;
    for (const Entry& entry : documented_entries()) {
        documented.push_back(entry.code);
    }
    std::vector<std::string> catalogued;
    for (const DiagnosticCode& row : diagnostic_codes()) {
        catalogued.emplace_back(row.code);
    }
    EXPECT_EQ(documented, catalogued);
}

TEST(errors_page, gives_each_code_its_meaning_an_example_and_a_cure) {
    const std::vector<Entry> entries = documented_entries();
    const auto& codes = diagnostic_codes();
    ASSERT_EQ(entries.size(), codes.size());
    for (std::size_t i = 0; i < codes.size(); ++i) {
        EXPECT_EQ(entries[i].meaning, as_sentence(codes[i].meaning)) << entries[i].code;
        EXPECT_TRUE(entries[i].has_example) << entries[i].code;
        EXPECT_TRUE(entries[i].has_cure) << entries[i].code;
    }
}

} // namespace
} // namespace loafwright

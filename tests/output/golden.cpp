// SPDX-License-Identifier: Apache-2.0
#include "tests/output/golden.hpp"

#include "tests/output/svg_outline.hpp"

#include <gtest/gtest.h>

#include <cstdlib>
#include <fstream>
#include <sstream>

namespace loafwright::output {

namespace {

// What is in the file, once it has been written anew where that was asked for.
std::string golden_of(const std::string& name, const std::string& page) {
    const std::string path = std::string(LOAFWRIGHT_ROOT) + "/tests/golden/" + name;
    const char* update = std::getenv("LOAFWRIGHT_UPDATE_GOLDEN");
    if (update != nullptr && std::string(update) == "1") {
        std::ofstream(path, std::ios::binary) << page;
    }
    std::ifstream file(path, std::ios::binary);
    EXPECT_TRUE(file) << path;
    std::ostringstream golden;
    golden << file.rdbuf();
    return golden.str();
}

} // namespace

void expect_golden(const std::string& name, const std::string& page) {
    EXPECT_EQ(page, golden_of(name, page)) << name;
}

void expect_golden_within(const std::string& name, const std::string& outline, double points) {
    EXPECT_EQ(difference(golden_of(name, outline), outline, points), "") << name;
}

} // namespace loafwright::output

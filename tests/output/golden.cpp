// SPDX-License-Identifier: Apache-2.0
#include "tests/output/golden.hpp"

#include <gtest/gtest.h>

#include <cstdlib>
#include <fstream>
#include <sstream>

namespace loafwright::output {

void expect_golden(const std::string& name, const std::string& page) {
    const std::string path = std::string(LOAFWRIGHT_ROOT) + "/tests/golden/" + name;
    const char* update = std::getenv("LOAFWRIGHT_UPDATE_GOLDEN");
    if (update != nullptr && std::string(update) == "1") {
        std::ofstream(path, std::ios::binary) << page;
    }
    std::ifstream file(path, std::ios::binary);
    ASSERT_TRUE(file) << path;
    std::ostringstream golden;
    golden << file.rdbuf();
    EXPECT_EQ(page, golden.str()) << name;
}

} // namespace loafwright::output

// SPDX-License-Identifier: Apache-2.0
//
// The page in the README is what the program prints, to the letter. `./test --update` writes it
// anew.
#include <gtest/gtest.h>

#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <sstream>
#include <string>

namespace {

std::string file_text(const std::string& path) {
    std::ifstream in(path);
    std::stringstream text;
    text << in.rdbuf();
    return text.str();
}

std::string output_of(const std::string& command) {
    std::string out;
    FILE* pipe = popen(command.c_str(), "r");
    if (pipe == nullptr) {
        return out;
    }
    char buffer[4096];
    std::size_t count = 0;
    while ((count = fread(buffer, 1, sizeof buffer, pipe)) > 0) {
        out.append(buffer, count);
    }
    pclose(pipe);
    return out;
}

TEST(readme, shows_the_page_that_its_first_command_prints) {
    const std::string path = std::string(LOAFWRIGHT_ROOT) + "/README.md";
    const std::string readme = file_text(path);
    const std::string mark = "<!-- page: ";
    const std::size_t begin = readme.find(mark);
    ASSERT_NE(begin, std::string::npos);
    const std::size_t end = readme.find(" -->", begin);
    ASSERT_NE(end, std::string::npos);
    const std::string command = readme.substr(begin + mark.size(), end - begin - mark.size());
    ASSERT_NE(readme.find("./run " + command), std::string::npos)
        << "the command stands among the first two";
    const std::size_t open = readme.find("```\n", end) + 4;
    const std::size_t close = readme.find("```", open);
    ASSERT_NE(close, std::string::npos);

    const std::string page =
        output_of("cd '" + std::string(LOAFWRIGHT_ROOT) + "' && '" LOAFWRIGHT_PROGRAM "' " +
                  command + " --now 2026-11-27T09:00:00+00:00 --zone Europe/London 2>&1");
    const char* update = std::getenv("LOAFWRIGHT_UPDATE_GOLDEN");
    if (update != nullptr && std::string(update) == "1") {
        std::ofstream(path) << readme.substr(0, open) << page << readme.substr(close);
        return;
    }
    EXPECT_EQ(page, readme.substr(open, close - open));
}

} // namespace

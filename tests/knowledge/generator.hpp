// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <gtest/gtest.h>
#include <sys/wait.h>
#include <unistd.h>

#include <array>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>

/// The generator as the build runs it, on files that a test writes.
namespace loafwright::generator {

namespace fs = std::filesystem;

struct Outcome {
    int status = -1;
    std::string said;
};

// A folder of its own for each test, gone afterwards.
class Generator : public ::testing::Test {
protected:
    Generator() {
        static int count = 0;
        folder_ = fs::temp_directory_path() /
                  ("loafwright-data-" + std::to_string(::getpid()) + "-" + std::to_string(count++));
        fs::create_directories(folder_);
    }
    ~Generator() override {
        std::error_code ignored;
        fs::remove_all(folder_, ignored);
    }

    fs::path file(const std::string& name, const std::string& text) {
        std::ofstream(folder_ / name) << text;
        return folder_ / name;
    }

    Outcome run(const std::string& arguments) {
        const std::string command = std::string("\"") + LOAFWRIGHT_GENERATOR + "\" \"" +
                                    (folder_ / "out").string() + "\" " + arguments + " 2>&1";
        Outcome outcome;
        FILE* pipe = ::popen(command.c_str(), "r");
        if (pipe == nullptr) {
            return outcome;
        }
        std::array<char, 4096> part{};
        std::size_t got = 0;
        while ((got = std::fread(part.data(), 1, part.size(), pipe)) > 0) {
            outcome.said.append(part.data(), got);
        }
        const int ended = ::pclose(pipe);
        outcome.status = WIFEXITED(ended) ? WEXITSTATUS(ended) : -1;
        return outcome;
    }

    // Runs one table on one text and gives what was said, without the folder.
    std::string said_of(const std::string& table, const std::string& text, int status = 1) {
        const fs::path path = file(table + ".toml", text);
        const Outcome outcome = run(table + "=\"" + path.string() + "\"");
        EXPECT_EQ(outcome.status, status) << outcome.said;
        std::string said = outcome.said;
        const std::string prefix = folder_.string() + "/";
        for (std::size_t at = said.find(prefix); at != std::string::npos; at = said.find(prefix)) {
            said.erase(at, prefix.size());
        }
        return said;
    }

    std::string written(const std::string& table) {
        std::ifstream in(folder_ / "out" / ("knowledge_" + table + ".cpp"));
        std::ostringstream text;
        text << in.rdbuf();
        return text.str();
    }

    fs::path folder_;
};

inline const std::string ours = "source = \"assumed\"\nbecause = \"a test\"\n"; // two lines

} // namespace loafwright::generator

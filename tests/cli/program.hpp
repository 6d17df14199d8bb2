// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <fcntl.h>
#include <gtest/gtest.h>
#include <stdlib.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>
#include <vector>

namespace loafwright {

namespace fs = std::filesystem;

struct Outcome {
    int status = -1;
    std::string out;
    std::string err;
};

inline std::string bytes_of(const fs::path& path) {
    std::ifstream file(path, std::ios::binary);
    std::ostringstream bytes;
    bytes << file.rdbuf();
    return bytes.str();
}

inline constexpr const char* loaf = R"(Plain tin loaf

500g strong white flour
10g salt
7g instant yeast
330ml water

Mix the flour, salt, yeast and water in a bowl. Knead for 10 minutes until smooth.
Cover and leave to rise for 1 hour until doubled. Knock back and shape into a loaf, then put it in a greased 2lb tin.
Cover and leave to prove for 45 minutes. Bake for 35 minutes at 220°C. Cool on a rack.
)";

/// A folder of its own for each test, and the built program run in it.
class program : public testing::Test {
protected:
    void SetUp() override {
        std::string pattern = (fs::temp_directory_path() / "loafwright-test-XXXXXX").string();
        ASSERT_NE(::mkdtemp(pattern.data()), nullptr);
        folder_ = pattern;
        write("loaf.txt", loaf);
    }
    void TearDown() override {
        std::error_code ignored;
        fs::remove_all(folder_, ignored);
    }
    void write(const std::string& name, const std::string& bytes) const {
        std::ofstream(folder_ / name, std::ios::binary) << bytes;
    }
    [[nodiscard]] std::string in(const std::string& name) const {
        return (folder_ / name).string();
    }

    /// Runs the program in UTC with these words and this standard input.
    [[nodiscard]] Outcome run(std::vector<std::string> words, const std::string& input = "") const {
        write(".in", input);
        const pid_t child = ::fork();
        if (child == 0) {
            const auto send = [this](const char* name, int flags, int to) {
                const int file = ::open((folder_ / name).c_str(), flags, 0600);
                if (file < 0 || ::dup2(file, to) < 0) {
                    ::_exit(126);
                }
            };
            send(".in", O_RDONLY, STDIN_FILENO);
            send(".out", O_WRONLY | O_CREAT | O_TRUNC, STDOUT_FILENO);
            send(".err", O_WRONLY | O_CREAT | O_TRUNC, STDERR_FILENO);
            ::setenv("TZ", "UTC", 1);
            if (::chdir(folder_.c_str()) != 0) {
                ::_exit(126);
            }
            words.insert(words.begin(), "loafwright");
            std::vector<char*> arguments;
            for (std::string& word : words) {
                arguments.push_back(word.data());
            }
            arguments.push_back(nullptr);
            ::execv(LOAFWRIGHT_PROGRAM, arguments.data());
            ::_exit(127);
        }
        int state = 0;
        ::waitpid(child, &state, 0);
        return {WIFEXITED(state) ? WEXITSTATUS(state) : -1,
                bytes_of(folder_ / ".out"),
                bytes_of(folder_ / ".err")};
    }

    /// Wrong input: exit 2, nothing on standard output, and every one of these words in the
    /// message.
    void expect_refused(const std::vector<std::string>& words,
                        const std::vector<std::string>& said,
                        const std::string& input = "") const {
        const Outcome outcome = run(words, input);
        EXPECT_EQ(outcome.status, 2) << outcome.err;
        EXPECT_EQ(outcome.out, "");
        for (const std::string& part : said) {
            EXPECT_NE(outcome.err.find(part), std::string::npos) << "not said: " << part << "\n"
                                                                 << outcome.err;
        }
    }

    fs::path folder_;
};

inline std::size_t lines_in(const std::string& text) {
    return static_cast<std::size_t>(std::count(text.begin(), text.end(), '\n'));
}

} // namespace loafwright

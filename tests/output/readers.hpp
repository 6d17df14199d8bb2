// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <fcntl.h>
#include <stdlib.h>
#include <sys/wait.h>
#include <unistd.h>

#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>
#include <vector>

namespace loafwright {

/// What a program of somebody else's says about a file of ours.
struct Said {
    int status = -1; // 127: the program is not there
    std::string out;
};

/// Runs a program with both its streams into one text.
inline Said said_by(std::vector<std::string> words) {
    std::string path = (std::filesystem::temp_directory_path() / "loafwright-said-XXXXXX").string();
    const int file = ::mkstemp(path.data());
    const pid_t child = ::fork();
    if (child == 0) {
        if (::dup2(file, STDOUT_FILENO) < 0 || ::dup2(file, STDERR_FILENO) < 0) {
            ::_exit(126);
        }
        std::vector<char*> arguments;
        for (std::string& word : words) {
            arguments.push_back(word.data());
        }
        arguments.push_back(nullptr);
        ::execvp(arguments.front(), arguments.data());
        ::_exit(127);
    }
    ::close(file);
    int state = 0;
    ::waitpid(child, &state, 0);
    std::ifstream in(path, std::ios::binary);
    std::ostringstream out;
    out << in.rdbuf();
    std::filesystem::remove(path);
    return {WIFEXITED(state) ? WEXITSTATUS(state) : -1, out.str()};
}

/// A folder that goes away with it.
class Scratch {
public:
    Scratch() {
        std::string pattern =
            (std::filesystem::temp_directory_path() / "loafwright-test-XXXXXX").string();
        if (::mkdtemp(pattern.data()) != nullptr) {
            path_ = pattern;
        }
    }
    ~Scratch() {
        std::error_code ignored;
        std::filesystem::remove_all(path_, ignored);
    }
    Scratch(const Scratch&) = delete;
    Scratch& operator=(const Scratch&) = delete;

    /// Writes the bytes and gives the path.
    [[nodiscard]] std::string file(const std::string& name, const std::string& bytes) const {
        std::ofstream(path_ / name, std::ios::binary) << bytes;
        return (path_ / name).string();
    }
    [[nodiscard]] std::string in(const std::string& name) const { return (path_ / name).string(); }

private:
    std::filesystem::path path_;
};

/// No-break spaces as plain ones, blanks and line ends as one blank: words as they are read.
inline std::string as_read(const std::string& text) {
    std::string out;
    for (std::size_t i = 0; i < text.size(); ++i) {
        const bool no_break = text.compare(i, 2, "\xC2\xA0") == 0;
        const bool blank = no_break || text[i] == ' ' || text[i] == '\n' || text[i] == '\f';
        i += no_break ? 1 : 0;
        if (!blank) {
            out += text[i];
        } else if (!out.empty() && out.back() != ' ') {
            out += ' ';
        }
    }
    return out;
}

} // namespace loafwright

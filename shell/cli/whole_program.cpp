// SPDX-License-Identifier: Apache-2.0
//
// The light program hands over to the whole one: same process, same words, same streams.
#include "shell/cli/heavy_parts.hpp"

#include <unistd.h>

#include <cerrno>
#include <filesystem>
#include <system_error>

namespace loafwright::cli {

namespace {

constexpr const char* whole_name = "loafwright-whole";

} // namespace

Diagnostic become_the_whole_program(const std::vector<std::string>& words) {
    std::error_code unknown;
    const std::filesystem::path own = std::filesystem::read_symlink("/proc/self/exe", unknown);
    const std::string whole = (own.parent_path() / whole_name).string();
    std::vector<std::string> kept{"loafwright"};
    kept.insert(kept.end(), words.begin(), words.end());
    std::vector<char*> pointers;
    for (std::string& word : kept) {
        pointers.push_back(word.data());
    }
    pointers.push_back(nullptr);
    execv(whole.c_str(), pointers.data());
    const std::string why = std::generic_category().message(errno);
    return {"internal",
            Severity::error,
            "drawing and serving need " + whole + ", which could not be started: " + why,
            "",
            "Put it beside loafwright; both are built together."};
}

} // namespace loafwright::cli

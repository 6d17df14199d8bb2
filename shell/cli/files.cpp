// SPDX-License-Identifier: Apache-2.0
//
// Reading files: with a limit, and with the system's reason in words when it does not work.
#include "shell/cli/files.hpp"

#include "engine/reading/read.hpp"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cerrno>
#include <cstring>

namespace loafwright::cli {

namespace {

tl::unexpected<Diagnostics> missing(const std::string& path, const char* what) {
    return tl::make_unexpected(Diagnostics{
        {"file_missing", Severity::error, what, path, "Check the name and the folder."}});
}

tl::unexpected<Diagnostics> unreadable(const std::string& path, int reason) {
    return tl::make_unexpected(Diagnostics{{"file_unreadable",
                                            Severity::error,
                                            std::string("cannot be read: ") + std::strerror(reason),
                                            path,
                                            "Check who may read it."}});
}

} // namespace

tl::expected<std::string, Diagnostics> file_bytes(const std::string& path) {
    return file_bytes(path, [](std::string_view) { return longest_text_bytes; });
}

tl::expected<std::string, Diagnostics> file_bytes(const std::string& path, LongestByStart longest) {
    const std::string name = name_for_messages(path);
    const bool is_input = path == "-";
    const int file = is_input ? STDIN_FILENO : ::open(path.c_str(), O_RDONLY | O_CLOEXEC);
    if (file < 0) {
        return errno == ENOENT || errno == ENOTDIR ? missing(name, "there is no such file")
                                                   : unreadable(name, errno);
    }
    std::string bytes;
    std::array<char, 65536> block{};
    int reason = 0;
    // One byte more than is allowed tells that it is too long.
    std::size_t most = longest_text_bytes;
    while (bytes.size() <= most) {
        const std::size_t wanted = std::min(block.size(), most + 1 - bytes.size());
        const ssize_t count = ::read(file, block.data(), wanted);
        if (count < 0 && errno == EINTR) {
            continue;
        }
        if (count < 0) {
            reason = errno;
            break;
        }
        if (count == 0) {
            break;
        }
        bytes.append(block.data(), static_cast<std::size_t>(count));
        most = longest(bytes);
    }
    if (!is_input) {
        ::close(file);
    }
    if (reason == EISDIR) {
        return missing(name, "this is a folder, expected a file");
    }
    if (reason != 0) {
        return unreadable(name, reason);
    }
    return bytes;
}

std::string name_for_messages(const std::string& path) {
    return path == "-" ? "standard input" : path;
}

} // namespace loafwright::cli

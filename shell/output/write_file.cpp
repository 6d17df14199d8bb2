// SPDX-License-Identifier: Apache-2.0
//
// The usual safe way on POSIX: a new file beside the old one, its bytes forced to disk, then
// renamed over it, and the folder's own entry forced to disk too. Rename within one folder replaces
// at once (IEEE Std 1003.1, rename).
#include "shell/output/write_file.hpp"

#include <fcntl.h>
#include <stdlib.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <cstring>
#include <memory>

namespace loafwright::output {

namespace {

Diagnostic unwritable(const std::string& path, int reason) {
    Diagnostic diagnostic;
    diagnostic.code = "unwritable";
    diagnostic.what = "could not be written: " + std::string(std::strerror(reason));
    diagnostic.where = path;
    diagnostic.do_this = "Name a file in a folder that you may write to.";
    return diagnostic;
}

// 0, or the reason why not.
int write_all(int file, std::string_view bytes) {
    while (!bytes.empty()) {
        const ssize_t written = ::write(file, bytes.data(), bytes.size());
        if (written < 0) {
            if (errno == EINTR) {
                continue;
            }
            return errno;
        }
        bytes.remove_prefix(static_cast<std::size_t>(written));
    }
    return 0;
}

// What a new file would get from open(): the process's mask is only to be had by setting it.
mode_t usual_mode() {
    const mode_t mask = ::umask(0);
    ::umask(mask);
    return 0666U & ~mask;
}

std::string folder_of(const std::string& path) {
    const std::size_t slash = path.rfind('/');
    return slash == std::string::npos ? "." : slash == 0 ? "/" : path.substr(0, slash);
}

std::optional<Diagnostic> write_in_place(const std::string& path, std::string_view bytes) {
    const int file = ::open(path.c_str(), O_WRONLY | O_CLOEXEC);
    if (file < 0) {
        return unwritable(path, errno);
    }
    int reason = write_all(file, bytes);
    if (::close(file) != 0 && reason == 0) {
        reason = errno;
    }
    return reason != 0 ? std::optional(unwritable(path, reason)) : std::nullopt;
}

} // namespace

std::optional<Diagnostic> write_file(const std::string& path, std::string_view bytes) {
    if (path.empty()) {
        return unwritable("\"\"", ENOENT);
    }
    struct stat old {};
    const bool exists = ::stat(path.c_str(), &old) == 0;
    if (exists && S_ISDIR(old.st_mode)) {
        return unwritable(path, EISDIR);
    }
    if (exists && !S_ISREG(old.st_mode)) {
        return write_in_place(path, bytes);
    }
    std::string target = path;
    if (exists) {
        const std::unique_ptr<char, decltype(&::free)> real(::realpath(path.c_str(), nullptr),
                                                            &::free);
        if (real) {
            target = real.get();
        }
        // A file that may not be written is not to be replaced behind its owner's back.
        if (::access(target.c_str(), W_OK) != 0) {
            return unwritable(path, errno);
        }
    }
    const std::string folder = folder_of(target);
    std::string beside = folder + "/.loafwright-XXXXXX";
    const int file = ::mkstemp(beside.data());
    if (file < 0) {
        return unwritable(path, errno);
    }
    int reason = write_all(file, bytes);
    if (reason == 0 && ::fchmod(file, exists ? old.st_mode & 07777U : usual_mode()) != 0) {
        reason = errno;
    }
    if (reason == 0 && ::fsync(file) != 0) {
        reason = errno;
    }
    if (::close(file) != 0 && reason == 0) {
        reason = errno;
    }
    if (reason == 0 && ::rename(beside.c_str(), target.c_str()) != 0) {
        reason = errno;
    }
    if (reason != 0) {
        ::unlink(beside.c_str());
        return unwritable(path, reason);
    }
    // The new name is safe on disk only when the folder is. Some file systems refuse this; the file
    // itself is whole.
    const int directory = ::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    if (directory >= 0) {
        ::fsync(directory);
        ::close(directory);
    }
    return std::nullopt;
}

} // namespace loafwright::output

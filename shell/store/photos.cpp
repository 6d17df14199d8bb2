// SPDX-License-Identifier: Apache-2.0
#include "shell/store/photos.hpp"

#include "engine/quantity/plain_id.hpp"

#include <fcntl.h>
#include <sodium.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cerrno>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>

namespace loafwright::store {

namespace {

namespace fs = std::filesystem;

Diagnostic trouble(int number, const std::string& path) {
    const bool full = number == ENOSPC || number == EDQUOT;
    return {full ? "store_full" : "store_read_only",
            Severity::error,
            full ? "there is no room left to keep this photo" : "the photo cannot be kept",
            path,
            full ? "Make room on the disk, then try again."
                 : "Check the permissions of the folder."};
}

Diagnostic unreadable(const std::string& path) {
    return {"store_unreachable",
            Severity::error,
            "the photos cannot be read",
            path,
            "Check the permissions of the folder and its files."};
}

// Makes a new file from a pattern with six X at its end. Returns 0, or what went wrong.
int write_new(std::string& pattern, std::string_view bytes) {
    const int file = ::mkostemp(pattern.data(), O_CLOEXEC); // readable by its owner alone
    if (file < 0) {
        pattern.clear();
        return errno;
    }
    int wrong = 0;
    while (!bytes.empty() && wrong == 0) {
        const ssize_t written = ::write(file, bytes.data(), bytes.size());
        if (written < 0 && errno != EINTR) {
            wrong = errno;
        } else if (written > 0) {
            bytes.remove_prefix(static_cast<std::size_t>(written));
        }
    }
    if (wrong == 0 && ::fsync(file) != 0) {
        wrong = errno;
    }
    ::close(file);
    return wrong;
}

// A name is on the disk when the folder that holds it is.
void sync_folder(const fs::path& path) {
    const int folder = ::open(path.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    if (folder >= 0) {
        ::fsync(folder);
        ::close(folder);
    }
}

} // namespace

std::string sha256(std::string_view bytes) {
    std::array<unsigned char, crypto_hash_sha256_BYTES> hash{};
    crypto_hash_sha256(
        hash.data(), reinterpret_cast<const unsigned char*>(bytes.data()), bytes.size());
    constexpr std::string_view digits = "0123456789abcdef";
    std::string text;
    for (const unsigned char byte : hash) {
        text += digits[byte >> 4U];
        text += digits[byte & 0xfU];
    }
    return text;
}

std::string Photos::path_of(std::string_view hash) const {
    return (fs::path(folder_) / hash.substr(0, 2) / hash).string();
}

tl::expected<std::string, Diagnostic> Photos::put(std::string_view bytes) const {
    const std::string hash = sha256(bytes);
    const std::string path = path_of(hash);
    if (const auto there = get(hash); there && *there) {
        return hash;
    }
    const fs::path folder = fs::path(path).parent_path();
    std::error_code wrong;
    const bool is_new = fs::create_directories(folder, wrong);
    if (wrong) {
        return tl::make_unexpected(trouble(wrong.value(), folder.string()));
    }
    // Two processes that share the folder may bring the same photo at once, so no name is shared.
    std::string beside = path + ".XXXXXX";
    int number = write_new(beside, bytes);
    if (number == 0 && ::rename(beside.c_str(), path.c_str()) != 0) {
        number = errno;
    }
    if (number != 0) {
        ::unlink(beside.c_str());
        return tl::make_unexpected(trouble(number, path));
    }
    sync_folder(folder);
    if (is_new) {
        sync_folder(folder.parent_path());
        sync_folder(folder.parent_path().parent_path());
    }
    return hash;
}

tl::expected<std::optional<std::string>, Diagnostic> Photos::get(std::string_view hash) const {
    if (!is_content_hash(hash)) {
        return std::nullopt;
    }
    const std::string path = path_of(hash);
    std::error_code wrong;
    const fs::file_status found = fs::status(path, wrong);
    if (found.type() == fs::file_type::not_found) {
        return std::nullopt;
    }
    std::ifstream in(path, std::ios::binary);
    if (!in) {
        return tl::make_unexpected(unreadable(path));
    }
    std::string bytes((std::istreambuf_iterator<char>(in)), std::istreambuf_iterator<char>());
    if (sha256(bytes) != hash) {
        return tl::make_unexpected(Diagnostic{"store_damaged",
                                              Severity::error,
                                              "a photo is no longer what was kept",
                                              path,
                                              "Keep it again, or put a copy in its place."});
    }
    return bytes;
}

tl::expected<std::vector<std::string>, Diagnostic> Photos::all() const {
    std::vector<std::string> hashes;
    std::error_code wrong;
    if (fs::status(folder_, wrong).type() == fs::file_type::not_found) {
        return hashes; // there was no photo yet
    }
    fs::recursive_directory_iterator entry(folder_, wrong);
    while (!wrong && entry != fs::recursive_directory_iterator()) {
        std::string name = entry->path().filename().string();
        if (is_content_hash(name)) {
            hashes.push_back(std::move(name));
        }
        entry.increment(wrong);
    }
    if (wrong) {
        return tl::make_unexpected(unreadable(folder_));
    }
    std::sort(hashes.begin(), hashes.end());
    return hashes;
}

} // namespace loafwright::store

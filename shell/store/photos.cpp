// SPDX-License-Identifier: Apache-2.0
#include "shell/store/photos.hpp"

#include <fcntl.h>
#include <sodium.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <atomic>
#include <cerrno>
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

// Returns 0, or what went wrong.
int write_whole(const std::string& path, std::string_view bytes) {
    const int file = ::open(path.c_str(), O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC, 0600);
    if (file < 0) {
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

void sync_folder(const std::string& path) {
    const int folder = ::open(path.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    if (folder >= 0) {
        ::fsync(folder);
        ::close(folder);
    }
}

} // namespace

bool is_hash(std::string_view text) {
    return text.size() == 64 && std::all_of(text.begin(), text.end(), [](char c) {
               return (c >= '0' && c <= '9') || (c >= 'a' && c <= 'f');
           });
}

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
    static std::atomic<unsigned> number{0};
    const std::string hash = sha256(bytes);
    const std::string path = path_of(hash);
    std::error_code wrong;
    if (fs::exists(path, wrong)) {
        return hash;
    }
    const fs::path folder = fs::path(path).parent_path();
    fs::create_directories(folder, wrong);
    if (wrong) {
        return tl::make_unexpected(trouble(wrong.value(), folder.string()));
    }
    const std::string beside =
        path + "." + std::to_string(::getpid()) + "." + std::to_string(++number);
    if (const int number_of_fault = write_whole(beside, bytes)) {
        ::unlink(beside.c_str());
        return tl::make_unexpected(trouble(number_of_fault, path));
    }
    if (::rename(beside.c_str(), path.c_str()) != 0) {
        const int number_of_fault = errno;
        ::unlink(beside.c_str());
        return tl::make_unexpected(trouble(number_of_fault, path));
    }
    sync_folder(folder.string());
    return hash;
}

tl::expected<std::optional<std::string>, Diagnostic> Photos::get(std::string_view hash) const {
    if (!is_hash(hash)) {
        return std::nullopt;
    }
    const std::string path = path_of(hash);
    std::ifstream in(path, std::ios::binary);
    if (!in) {
        return std::nullopt;
    }
    std::string bytes((std::istreambuf_iterator<char>(in)), std::istreambuf_iterator<char>());
    if (sha256(bytes) != hash) {
        return tl::make_unexpected(Diagnostic{"store_damaged",
                                              Severity::error,
                                              "a photo is no longer what was kept",
                                              path,
                                              "Put a copy in its place."});
    }
    return bytes;
}

std::vector<std::string> Photos::all() const {
    std::vector<std::string> hashes;
    std::error_code wrong;
    for (const auto& entry : fs::recursive_directory_iterator(folder_, wrong)) {
        std::string name = entry.path().filename().string();
        if (is_hash(name)) {
            hashes.push_back(std::move(name));
        }
    }
    std::sort(hashes.begin(), hashes.end());
    return hashes;
}

} // namespace loafwright::store

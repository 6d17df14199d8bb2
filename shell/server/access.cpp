// SPDX-License-Identifier: Apache-2.0
#include "shell/server/access.hpp"

#include "shell/server/target.hpp"

#include <fcntl.h>
#include <fmt/format.h>
#include <sodium.h>
#include <sys/stat.h>
#include <unistd.h>

#include <array>
#include <filesystem>
#include <fstream>
#include <utility>

namespace loafwright::server {

namespace {

constexpr int most_wrong = 10;
constexpr std::chrono::minutes pause{1};

// "http://host:8424" without its scheme.
std::string_view authority_of(std::string_view origin) {
    const std::size_t slashes = origin.find("://");
    return slashes == std::string_view::npos ? std::string_view() : origin.substr(slashes + 3);
}

bool only_reads(std::string_view method) {
    return method == "GET" || method == "HEAD";
}

// Of these pages, so that the way in leads nowhere else.
bool own_path(std::string_view path) {
    constexpr std::string_view letters =
        "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789-_/";
    return !path.empty() && path.front() == '/' && path.find("//") == std::string_view::npos &&
           path.find_first_not_of(letters) == std::string_view::npos;
}

Response see_other(std::string_view to, std::string cookie) {
    Response response;
    response.status = 303;
    response.content_type = "text/plain; charset=utf-8";
    response.body = std::make_shared<const std::string>();
    response.headers = {{"Location", std::string(own_path(to) ? to : "/")},
                        {"Set-Cookie", std::move(cookie)}};
    return response;
}

} // namespace

Access::Access(std::set<std::string> hosts, std::string token)
    : hosts_(std::move(hosts)), token_(std::move(token)) {}

bool Access::knows(const Credentials& credentials) const {
    constexpr std::string_view bearer = "Bearer ";
    const std::string_view authorization = credentials.authorization;
    if (authorization.substr(0, bearer.size()) == bearer) {
        return same_secret(authorization.substr(bearer.size()), token_);
    }
    const auto cookie = cookie_of(credentials.cookie, cookie_name);
    return cookie && same_secret(*cookie, token_);
}

std::optional<Response> Access::refusal(const Credentials& credentials, bool open) const {
    if (hosts_.count(host_name(credentials.host)) == 0) {
        return error_response(421,
                              "host_unknown",
                              "this server is not called that",
                              "Use the address that it printed when it began.");
    }
    if (!only_reads(credentials.method)) {
        const bool other_page =
            !credentials.origin.empty() && authority_of(credentials.origin) != credentials.host;
        const bool told_cross = !credentials.fetch_site.empty() &&
                                credentials.fetch_site != "same-origin" &&
                                credentials.fetch_site != "none";
        if (other_page || told_cross) {
            return error_response(403,
                                  "origin_unknown",
                                  "a page from elsewhere may not change anything here",
                                  "Open the pages of this server itself.");
        }
    }
    if (!open && !token_.empty() && !knows(credentials)) {
        return error_response(401,
                              "token_missing",
                              "this kitchen is not open to everybody",
                              "Scan the code again, or open the address with its token.");
    }
    return std::nullopt;
}

Response Access::enter(std::string_view token, std::string_view to) {
    const std::lock_guard guard(lock_);
    const auto now = std::chrono::steady_clock::now();
    if (now - minute_ > pause) {
        minute_ = now;
        wrong_ = 0;
    }
    if (wrong_ >= most_wrong) {
        return error_response(429,
                              "too_many_tries",
                              "too many wrong tokens in a minute",
                              "Wait a minute, then scan the code again.");
    }
    if (token_.empty()) {
        return see_other(to, fmt::format("{}=; Path=/; Max-Age=0", cookie_name));
    }
    if (!same_secret(token, token_)) {
        ++wrong_;
        return error_response(
            401, "token_wrong", "that token does not fit", "Scan the code again.");
    }
    return see_other(to,
                     fmt::format("{}={}; Path=/; Max-Age=31536000; HttpOnly; SameSite=Strict",
                                 cookie_name,
                                 token_));
}

std::string Access::way_in(std::string_view address) const {
    const std::string_view rest = authority_of(address);
    const std::string_view authority = rest.substr(0, rest.find('/'));
    if (token_.empty() || hosts_.count(host_name(authority)) == 0) {
        return std::string(address);
    }
    const std::string_view path = rest.substr(authority.size());
    return fmt::format("{}/enter?token={}{}{}",
                       address.substr(0, address.size() - path.size()),
                       token_,
                       own_path(path) && path != "/" ? "&to=" : "",
                       own_path(path) && path != "/" ? path : "");
}

std::string random_word() {
    if (sodium_init() < 0) {
        return "";
    }
    std::array<unsigned char, 32> bytes{};
    randombytes_buf(bytes.data(), bytes.size());
    std::array<char, 64> text{};
    sodium_bin2base64(text.data(),
                      text.size(),
                      bytes.data(),
                      bytes.size(),
                      sodium_base64_VARIANT_URLSAFE_NO_PADDING);
    return std::string(text.data());
}

tl::expected<std::string, Diagnostic> kept_token(const std::string& folder) {
    const std::string path = (std::filesystem::path(folder) / "token").string();
    const auto fault = [&path](const char* code, const char* what) {
        return tl::make_unexpected(
            Diagnostic{code, Severity::error, what, path, "Check the folder's permissions."});
    };
    if (std::ifstream in{path}) {
        std::string token;
        in >> token;
        if (token.size() >= 32) {
            return token;
        }
    }
    const std::string token = random_word();
    if (token.empty()) {
        return fault("internal", "no source of random numbers");
    }
    const int file = ::open(path.c_str(), O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC, 0600);
    if (file < 0) {
        return fault("unwritable", "the token could not be kept");
    }
    const ssize_t written = ::write(file, token.data(), token.size());
    const bool kept = ::fsync(file) == 0 && written == static_cast<ssize_t>(token.size());
    ::close(file);
    if (!kept) {
        return fault("unwritable", "the token could not be kept");
    }
    return token;
}

} // namespace loafwright::server

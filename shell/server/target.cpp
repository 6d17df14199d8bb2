// SPDX-License-Identifier: Apache-2.0
#include "shell/server/target.hpp"

#include <utf8.h>

#include <algorithm>
#include <cstdint>

namespace loafwright::server {

namespace {

int hex_digit(char c) {
    if (c >= '0' && c <= '9') {
        return c - '0';
    }
    if (c >= 'a' && c <= 'f') {
        return c - 'a' + 10;
    }
    return c >= 'A' && c <= 'F' ? c - 'A' + 10 : -1;
}

// Nothing for a percent sign without two digits, for control characters, for bytes that are no
// UTF-8.
std::optional<std::string> decoded(std::string_view text, bool plus_is_blank) {
    std::string out;
    for (std::size_t i = 0; i < text.size(); ++i) {
        char c = text[i];
        if (c == '%') {
            const int high = i + 2 < text.size() ? hex_digit(text[i + 1]) : -1;
            const int low = i + 2 < text.size() ? hex_digit(text[i + 2]) : -1;
            if (high < 0 || low < 0) {
                return std::nullopt;
            }
            c = static_cast<char>(high * 16 + low);
            i += 2;
        } else if (c == '+' && plus_is_blank) {
            c = ' ';
        }
        const auto byte = static_cast<unsigned char>(c);
        if (byte < 0x20U || byte == 0x7fU) {
            return std::nullopt;
        }
        out += c;
    }
    if (!utf8::is_valid(out.begin(), out.end())) {
        return std::nullopt;
    }
    return out;
}

std::vector<std::string_view> parts(std::string_view text, char at) {
    std::vector<std::string_view> all;
    while (true) {
        const std::size_t end = text.find(at);
        all.push_back(text.substr(0, end));
        if (end == std::string_view::npos) {
            return all;
        }
        text.remove_prefix(end + 1);
    }
}

std::string_view trimmed(std::string_view text) {
    const std::size_t first = text.find_first_not_of(" \t");
    if (first == std::string_view::npos) {
        return {};
    }
    return text.substr(first, text.find_last_not_of(" \t") - first + 1);
}

std::string lower(std::string_view text) {
    std::string out(text);
    std::transform(out.begin(), out.end(), out.begin(), [](char c) {
        return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    });
    return out;
}

bool good_segment(const std::string& segment) {
    return !segment.empty() && segment != "." && segment != ".." &&
           segment.find_first_of("/\\") == std::string::npos;
}

std::optional<Query> query_of(std::string_view text) {
    Query query;
    if (text.empty()) {
        return query;
    }
    for (const std::string_view pair : parts(text, '&')) {
        const std::size_t equals = pair.find('=');
        const auto name = decoded(pair.substr(0, equals), true);
        const auto value = decoded(
            equals == std::string_view::npos ? std::string_view() : pair.substr(equals + 1), true);
        if (!name || !value) {
            return std::nullopt;
        }
        query[*name] = *value;
    }
    return query;
}

} // namespace

std::string Target::path() const {
    std::string path;
    for (const std::string& segment : segments) {
        path += "/" + segment;
    }
    return path.empty() ? "/" : path;
}

std::optional<Target> target_of(std::string_view text) {
    if (text.empty() || text.size() > longest_target || text.front() != '/') {
        return std::nullopt;
    }
    const std::size_t mark = text.find('?');
    std::string_view path = text.substr(1, mark == std::string_view::npos ? mark : mark - 1);
    Target target;
    if (!path.empty() && path.back() == '/') {
        path.remove_suffix(1);
        if (path.empty()) {
            return std::nullopt; // "//"
        }
    }
    if (!path.empty()) {
        for (const std::string_view part : parts(path, '/')) {
            auto segment = decoded(part, false);
            if (!segment || !good_segment(*segment)) {
                return std::nullopt;
            }
            target.segments.push_back(std::move(*segment));
        }
    }
    auto query =
        query_of(mark == std::string_view::npos ? std::string_view() : text.substr(mark + 1));
    if (!query) {
        return std::nullopt;
    }
    target.query = std::move(*query);
    return target;
}

std::optional<std::string> cookie_of(std::string_view header, std::string_view name) {
    for (const std::string_view pair : parts(header, ';')) {
        const std::string_view cookie = trimmed(pair);
        const std::size_t equals = cookie.find('=');
        if (equals != std::string_view::npos && cookie.substr(0, equals) == name) {
            return std::string(cookie.substr(equals + 1));
        }
    }
    return std::nullopt;
}

bool accepts_gzip(std::string_view header) {
    bool any = false;
    for (const std::string_view entry : parts(header, ',')) {
        const std::vector<std::string_view> words = parts(entry, ';');
        const std::string coding = lower(trimmed(words.front()));
        bool refused = false;
        for (std::size_t w = 1; w < words.size(); ++w) {
            const std::string weight = lower(trimmed(words[w]));
            refused = refused || (weight.rfind("q=0", 0) == 0 &&
                                  weight.find_first_of("123456789", 3) == std::string::npos);
        }
        if (coding == "gzip") {
            return !refused;
        }
        any = any || (coding == "*" && !refused);
    }
    return any;
}

std::string host_name(std::string_view authority) {
    if (!authority.empty() && authority.front() == '[') {
        const std::size_t end = authority.find(']');
        return end == std::string_view::npos ? std::string() : lower(authority.substr(1, end - 1));
    }
    return lower(authority.substr(0, authority.find(':')));
}

bool same_secret(std::string_view a, std::string_view b) {
    std::uint8_t differs = a.size() == b.size() ? 0 : 1;
    for (std::size_t i = 0; i < a.size(); ++i) {
        const char other = b.empty() ? '\0' : b[i % b.size()];
        differs = static_cast<std::uint8_t>(
            differs | (static_cast<std::uint8_t>(a[i]) ^ static_cast<std::uint8_t>(other)));
    }
    return differs == 0;
}

} // namespace loafwright::server

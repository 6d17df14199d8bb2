// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

/// What stands in the first line and the headers of a request and is ours to read. Pure functions.
namespace loafwright::server {

/// Names and values of a query; of one that stands twice the last counts.
using Query = std::map<std::string, std::string, std::less<>>;

/// A request target in origin form (RFC 9112 section 3.2.1), decoded.
struct Target {
    std::vector<std::string> segments; // "/api/v1/bakes" is three; "/" is none
    Query query;

    /// "/api/v1/bakes".
    [[nodiscard]] std::string path() const;
};

inline constexpr std::size_t longest_target = 4096;

/// Promises: no segment is empty, ".", "..", or holds "/", "\", a control character or bytes that
/// are
///           not UTF-8; a single slash at the end does not count.
/// Errors:   nothing for any other target: it is answered 400.
std::optional<Target> target_of(std::string_view text);

/// The value of a cookie (RFC 6265), or nothing.
std::optional<std::string> cookie_of(std::string_view header, std::string_view name);

/// True when an Accept-Encoding header lets gzip through (RFC 9110 section 12.5.3).
bool accepts_gzip(std::string_view header);

/// Host or authority without its port: "[::1]:80" becomes "::1"; in lower case.
std::string host_name(std::string_view authority);

/// The same at every length, so that its time tells nothing of where two texts differ.
bool same_secret(std::string_view a, std::string_view b);

} // namespace loafwright::server

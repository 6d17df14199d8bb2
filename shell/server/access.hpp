// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/diagnostic/diagnostic.hpp"
#include "shell/server/exchange.hpp"

#include <tl/expected.hpp>

#include <chrono>
#include <mutex>
#include <optional>
#include <set>
#include <string>
#include <string_view>

namespace loafwright::server {

/// What a request shows of itself.
struct Credentials {
    std::string method;
    std::string host;          // Host
    std::string origin;        // Origin, "" when absent
    std::string fetch_site;    // Sec-Fetch-Site, "" when absent
    std::string cookie;        // Cookie
    std::string authorization; // Authorization
};

/// Who may ask what.
///
/// On loopback only names of loopback are let in, so that no page from elsewhere can lead a browser
/// here under another name. Elsewhere everybody needs the token too: in the address that is
/// scanned, then in a cookie.
class Access {
public:
    static constexpr std::string_view cookie_name = "loafwright";

    /// `token` empty: none is asked for.
    Access(std::set<std::string> hosts, std::string token);

    /// The answer to a request that may not go on; nothing where it may. `open` routes need no
    /// token.
    [[nodiscard]] std::optional<Response> refusal(const Credentials& credentials, bool open) const;

    /// The way in: the token of the address becomes a cookie and the address is left behind for
    /// `to`, a path of these pages ("/bake/one"); for "/" where it is none. After ten wrong ones in
    /// a minute nobody gets in for the rest of it.
    Response enter(std::string_view token, std::string_view to = "/");

    /// What another screen has to open to come to `address`: the way in, token and all, where one
    /// is asked for and the address is one of this server; else the address itself.
    [[nodiscard]] std::string way_in(std::string_view address) const;

    [[nodiscard]] const std::string& token() const { return token_; }

private:
    [[nodiscard]] bool knows(const Credentials& credentials) const;

    std::set<std::string> hosts_;
    std::string token_;
    std::mutex lock_;
    std::chrono::steady_clock::time_point minute_;
    int wrong_ = 0;
};

/// 32 random bytes in base64url: letters, digits, - and _. Empty where the system has none.
std::string random_word();

/// The token kept in `folder`/token, made on first use: 32 random bytes in base64url, readable by
/// its owner only.
///
/// Errors: unwritable, file_unreadable.
tl::expected<std::string, Diagnostic> kept_token(const std::string& folder);

} // namespace loafwright::server

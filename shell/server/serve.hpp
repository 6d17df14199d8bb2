// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/diagnostic/diagnostic.hpp"

#include <cstdint>
#include <functional>
#include <optional>
#include <string>

namespace loafwright::server {

struct ServeOptions {
    std::string host = "127.0.0.1";
    std::uint16_t port = 8424; // 0: a free one
    std::string data;          // a folder, or postgresql://…
    std::string folder;        // for the token, and for photos beside a PostgreSQL
    std::string pages;         // where the pages are; empty: only the addresses below /api
    bool log = true;
};

/// Serves until it is told to stop by SIGINT or SIGTERM.
///
/// Promises: `ready` gets the address to open, with its token where one is needed, once connections
///           are taken; an empty store gets a recipe to try.
/// Errors:   those of store::open, kept_token, StaticFiles::load and HttpServer::listen.
std::optional<Diagnostic> serve(const ServeOptions& options,
                                const std::function<void(const std::string& address)>& ready);

/// True for an address of this machine alone.
bool is_loopback(const std::string& host);

} // namespace loafwright::server

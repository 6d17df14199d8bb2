// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/diagnostic/diagnostic.hpp"
#include "shell/server/access.hpp"
#include "shell/server/event_hub.hpp"
#include "shell/server/metrics.hpp"
#include "shell/server/router.hpp"
#include "shell/server/static_files.hpp"

#include <tl/expected.hpp>

#include <chrono>
#include <cstdint>
#include <memory>
#include <string>

namespace loafwright::server {

struct HttpOptions {
    std::string host = "127.0.0.1"; // an address, not a name
    std::uint16_t port = 0;         // 0: a free one
    std::size_t workers = 2;        // threads that handlers run on
    std::size_t most_connections = 4096;
    std::size_t most_header_bytes = 16384;
    std::size_t most_bodies_bytes = 402653184; // of all requests together: an import and some more
    std::chrono::seconds reading{20};          // for a whole request, once its first byte is there
    std::chrono::seconds idle{60};             // between requests
    std::chrono::seconds writing{30};
    std::chrono::seconds heartbeat{15};
    bool log = true; // a line of JSON on standard error for each request, without what people wrote
};

/// What the server serves. All of it outlives the server.
struct HttpParts {
    const Router& router;
    const StaticFiles* files = nullptr; // none: only routes
    Access& access;
    Metrics& metrics;
};

/// HTTP/1.1 (RFC 9112) on one network thread; handlers run on others.
///
/// Promises: a body that is too long is answered 413 before it is read; what is not HTTP is 400 and
///           closed; slow, silent and surplus connections are let go; every answer has the headers
///           that keep pages from elsewhere out.
/// Never:    throws on what comes over the network.
class HttpServer {
public:
    HttpServer(HttpOptions options, HttpParts parts);
    ~HttpServer();
    HttpServer(const HttpServer&) = delete;
    HttpServer& operator=(const HttpServer&) = delete;

    /// Opens the port; afterwards connections wait to be served. The port that is listened on.
    ///
    /// Errors: address_unusable, port_taken.
    tl::expected<std::uint16_t, Diagnostic> listen();

    /// Serves until `stop`, or until SIGINT or SIGTERM where `on_signals`. What runs is finished,
    /// at most for five seconds; no handler runs any more when it returns.
    void run(bool on_signals);
    /// From any thread.
    void stop();

    struct Inside; // hides the network library

private:
    std::unique_ptr<Inside> inside_;
};

} // namespace loafwright::server

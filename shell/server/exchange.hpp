// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/diagnostic/diagnostic.hpp"
#include "shell/server/target.hpp"

#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

/// A request and its answer, as handlers see them: nothing of sockets.
namespace loafwright::server {

class EventStream;

struct Request {
    std::string method; // "GET"
    Target target;
    /// What the braces of the route's template stood for.
    std::vector<std::string> parameters;
    std::string content_type;
    std::string body;
    std::string last_event_id; // of an event stream that comes back
    bool gzip = false;         // the answer may be compressed

    /// The value of a name in the query, or "".
    [[nodiscard]] std::string query(std::string_view name) const {
        const auto found = target.query.find(name);
        return found == target.query.end() ? std::string() : found->second;
    }
};

struct Response {
    unsigned status = 200;
    std::string content_type = "application/json";
    std::shared_ptr<const std::string> body; // may be shared with other answers
    std::vector<std::pair<std::string, std::string>> headers;
    /// Where set, the answer goes on until either end closes it.
    std::shared_ptr<EventStream> stream;
};

/// Promises of the one who calls it: exactly once, from any thread.
using Respond = std::function<void(Response)>;
using Handler = std::function<void(Request, Respond)>;

Response json_response(unsigned status, std::string json);
/// {"version": 1, "error": [...]}.
Response error_response(unsigned status, const Diagnostics& diagnostics);
Response error_response(unsigned status, std::string code, std::string what, std::string do_this);

} // namespace loafwright::server

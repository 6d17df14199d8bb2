// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "shell/server/exchange.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace loafwright::server {

/// What a route asks of the server before its handler runs.
struct RouteRules {
    std::size_t most_body_bytes = 1572864; // larger ones are 413 before they are read
    bool open = false;                     // needs no token: health, and the way in
};

struct Route {
    std::string method;
    std::string path; // "/api/v1/bakes/{}/events"; metrics count by it
    std::vector<std::string> segments;
    RouteRules rules;
    Handler handler;
};

/// What a method and a path lead to.
struct Routed {
    const Route* route = nullptr; // null: none
    std::vector<std::string> parameters;
    /// Where the path is known and the method is not: those that are, "GET, HEAD, PUT".
    std::string allowed;
};

class Router {
public:
    /// "{}" stands for one segment.
    void add(std::string method, std::string path, RouteRules rules, Handler handler);
    /// HEAD leads to what GET does.
    [[nodiscard]] Routed route(std::string_view method, const Target& target) const;

private:
    std::vector<Route> routes_;
};

} // namespace loafwright::server

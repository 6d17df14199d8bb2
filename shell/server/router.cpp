// SPDX-License-Identifier: Apache-2.0
#include "shell/server/router.hpp"

#include <algorithm>
#include <optional>
#include <utility>

namespace loafwright::server {

namespace {

std::vector<std::string> segments_of(std::string_view path) {
    std::vector<std::string> segments;
    while (!path.empty()) {
        path.remove_prefix(1); // the slash
        const std::size_t end = std::min(path.find('/'), path.size());
        if (end > 0) {
            segments.emplace_back(path.substr(0, end));
        }
        path.remove_prefix(end);
    }
    return segments;
}

std::optional<std::vector<std::string>> matched(const Route& route, const Target& target) {
    if (route.segments.size() != target.segments.size()) {
        return std::nullopt;
    }
    std::vector<std::string> parameters;
    for (std::size_t s = 0; s < route.segments.size(); ++s) {
        if (route.segments[s] == "{}") {
            parameters.push_back(target.segments[s]);
        } else if (route.segments[s] != target.segments[s]) {
            return std::nullopt;
        }
    }
    return parameters;
}

} // namespace

void Router::add(std::string method, std::string path, RouteRules rules, Handler handler) {
    std::vector<std::string> segments = segments_of(path);
    routes_.push_back(
        {std::move(method), std::move(path), std::move(segments), rules, std::move(handler)});
}

Routed Router::route(std::string_view method, const Target& target) const {
    Routed routed;
    const std::string_view wanted = method == "HEAD" ? "GET" : method;
    for (const Route& route : routes_) {
        auto parameters = matched(route, target);
        if (!parameters) {
            continue;
        }
        if (route.method == wanted) {
            return {&route, std::move(*parameters), ""};
        }
        routed.allowed += (routed.allowed.empty() ? "" : ", ") + route.method;
        if (route.method == "GET") {
            routed.allowed += ", HEAD";
        }
    }
    return routed;
}

} // namespace loafwright::server

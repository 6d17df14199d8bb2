// SPDX-License-Identifier: Apache-2.0
//
// The parts put together: a store opened twice (for those who ask and for the one who writes), the
// routes, the pages, the port.
#include "shell/server/serve.hpp"

#include "shell/server/access.hpp"
#include "shell/server/api.hpp"
#include "shell/server/example_recipe.hpp"
#include "shell/server/http_server.hpp"
#include "shell/server/intake_jobs.hpp"

#include <fmt/format.h>
#include <ifaddrs.h>
#include <malloc.h>
#include <netdb.h>
#include <nlohmann/json.hpp>
#include <sys/resource.h>
#include <sys/socket.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <chrono>
#include <filesystem>
#include <memory>
#include <set>
#include <utility>

namespace loafwright::server {

namespace {

namespace fs = std::filesystem;

Instant system_now() {
    const auto since = std::chrono::system_clock::now().time_since_epoch();
    return Instant{std::chrono::duration_cast<std::chrono::seconds>(since).count()};
}

// The addresses and the name of this machine, as others may call it.
std::set<std::string> names_of_machine() {
    std::set<std::string> names;
    ifaddrs* first = nullptr;
    if (::getifaddrs(&first) == 0) {
        for (const ifaddrs* entry = first; entry != nullptr; entry = entry->ifa_next) {
            const bool ip4 = entry->ifa_addr != nullptr && entry->ifa_addr->sa_family == AF_INET;
            const bool ip6 = entry->ifa_addr != nullptr && entry->ifa_addr->sa_family == AF_INET6;
            std::array<char, NI_MAXHOST> text{};
            if ((ip4 || ip6) && ::getnameinfo(entry->ifa_addr,
                                              ip4 ? sizeof(sockaddr_in) : sizeof(sockaddr_in6),
                                              text.data(),
                                              text.size(),
                                              nullptr,
                                              0,
                                              NI_NUMERICHOST) == 0) {
                std::string name(text.data());
                names.insert(name.substr(0, name.find('%')));
            }
        }
        ::freeifaddrs(first);
    }
    std::array<char, 256> host{};
    if (::gethostname(host.data(), host.size() - 1) == 0) {
        const std::string name = host_name(host.data());
        names.insert(name);
        names.insert(name + ".local");
    }
    return names;
}

std::set<std::string> hosts_of(const std::string& host) {
    std::set<std::string> hosts{"127.0.0.1", "localhost", "::1"};
    if (!is_loopback(host)) {
        hosts.insert(host_name(host));
        hosts.merge(names_of_machine());
    }
    return hosts;
}

// The address that another device in the house can open.
std::string open_at(const std::string& host) {
    if (host != "0.0.0.0" && host != "::") {
        return host.find(':') == std::string::npos ? host : "[" + host + "]";
    }
    for (const std::string& name : names_of_machine()) {
        const bool ip4 = name.find_first_not_of("0123456789.") == std::string::npos;
        if (ip4 && !is_loopback(name)) {
            return name;
        }
    }
    return "127.0.0.1";
}

// Something to try, the first time.
std::optional<Diagnostic> lay_out_example(store::Store& store) {
    const auto recipes = store.documents("recipe");
    if (!recipes) {
        return recipes.error();
    }
    const auto laid_out = store.document("settings", "example");
    if (!laid_out) {
        return laid_out.error();
    }
    if (!recipes->empty() || *laid_out) {
        return std::nullopt;
    }
    const nlohmann::ordered_json recipe{{"name", "The hall loaf"},
                                        {"text", std::string(example_recipe())},
                                        {"answers", nlohmann::ordered_json::array()}};
    const auto kept = store.put_document("recipe", "first-loaf", recipe.dump());
    const auto noted = store.put_document("settings", "example", R"({"laid_out":true})");
    if (!kept || !noted) {
        return kept ? noted.error() : kept.error();
    }
    return std::nullopt;
}

std::optional<Diagnostic> make_folder(const std::string& folder) {
    std::error_code wrong;
    fs::create_directories(folder, wrong);
    if (wrong) {
        return Diagnostic{"store_read_only",
                          Severity::error,
                          "the folder cannot be made",
                          folder,
                          "Choose another with --data."};
    }
    fs::permissions(folder, fs::perms::owner_all, wrong); // what is baked here is private
    return std::nullopt;
}

// What one request frees the next one takes. Given back to the system each time, a plan takes more
// than twice as long: it touches some twenty pages anew.
void keep_freed_memory() {
    constexpr int most_bytes = 67108864;
    ::mallopt(M_TRIM_THRESHOLD, most_bytes);
}

// Each connection is a descriptor, and the usual soft limit of 1024 is soon reached by streams.
void allow_connections(std::size_t most) {
    constexpr rlim_t others = 256;
    const auto wanted = static_cast<rlim_t>(most) + others;
    rlimit limit{};
    if (::getrlimit(RLIMIT_NOFILE, &limit) == 0 && limit.rlim_cur < wanted) {
        limit.rlim_cur = std::min(wanted, limit.rlim_max);
        ::setrlimit(RLIMIT_NOFILE, &limit);
    }
}

} // namespace

bool is_loopback(const std::string& host) {
    return host.rfind("127.", 0) == 0 || host == "::1";
}

std::optional<Diagnostic> serve(const ServeOptions& options,
                                const std::function<void(const std::string&)>& ready) {
    if (auto fault = make_folder(options.folder)) {
        return fault;
    }
    const std::string photos = (fs::path(options.folder) / "photos").string();
    auto reading = store::open(options.data, photos);
    if (!reading) {
        return reading.error();
    }
    auto writing = store::open(options.data, photos);
    if (!writing) {
        return writing.error();
    }
    if (auto fault = lay_out_example(**writing)) {
        return fault;
    }
    std::string token;
    if (!is_loopback(options.host)) {
        auto kept = kept_token(options.folder);
        if (!kept) {
            return kept.error();
        }
        token = std::move(*kept);
    }
    std::optional<StaticFiles> files;
    if (!options.pages.empty()) {
        auto loaded = StaticFiles::load(options.pages);
        if (!loaded) {
            return loaded.error();
        }
        files = std::move(*loaded);
    }

    const Knowledge knowledge = built_in_knowledge();
    Metrics metrics;
    EventHub hub;
    auto keeper = std::make_unique<Keeper>(std::move(*reading), std::move(*writing), hub, metrics);
    Planner planner(knowledge);
    Access access(hosts_of(options.host), token);
    Router router;
    ToldBakes bakes(planner, *keeper, system_now);
    Journal journal(bakes, *keeper, knowledge);
    if (auto trouble = journal.catch_up()) {
        return trouble;
    }
    const ApiParts parts{planner, *keeper, hub, bakes, journal, system_now, access};
    add_plan_routes(router, parts);
    add_shelf_routes(router, parts);
    add_bake_routes(router, parts);
    add_journal_routes(router, parts);
    add_notebook_routes(router, parts);
    IntakeJobs intake_jobs;
    add_intake_routes(router, intake_jobs);
    router.add("GET", "/healthz", {0, true}, at_once([](const Request& /*request*/) {
                   return json_response(200, "{\"ok\":true}\n");
               }));
    router.add("GET", "/metrics", {0, false}, at_once([&metrics](const Request& /*request*/) {
                   Response response;
                   response.content_type = "text/plain; version=0.0.4; charset=utf-8";
                   response.body = std::make_shared<const std::string>(metrics.text());
                   return response;
               }));
    router.add("GET", "/enter", {0, true}, at_once([&access](const Request& request) {
                   return access.enter(request.query("token"), request.query("to"));
               }));

    HttpOptions http;
    http.host = options.host;
    http.port = options.port;
    http.log = options.log;
    allow_connections(http.most_connections);
    keep_freed_memory();
    HttpServer server(http, {router, files ? &*files : nullptr, access, metrics});
    const auto port = server.listen();
    if (!port) {
        return port.error();
    }
    const std::string address = fmt::format("http://{}:{}/", open_at(options.host), *port);
    ready(token.empty() ? address : address + "enter?token=" + token);
    server.run(true);
    keeper.reset(); // what it still writes is answered to the server, which must be there
    return std::nullopt;
}

} // namespace loafwright::server

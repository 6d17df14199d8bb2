// SPDX-License-Identifier: Apache-2.0
//
// What can be asked without anything being kept: what a text says, a plan, its page.
#include "engine/breads/known_breads.hpp"
#include "engine/reading/read.hpp"
#include "engine/wire/bake_json.hpp"
#include "engine/wire/wire.hpp"
#include "shell/output/short_code.hpp"
#include "shell/server/api.hpp"
#include "shell/server/page_bytes.hpp"
#include "shell/settings/bake_request.hpp"
#include "shell/store/json_depth.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <exception>
#include <iterator>
#include <utility>
#include <variant>

namespace loafwright::server {

namespace {

using Json = nlohmann::ordered_json;

tl::expected<breads::Bake, Response> bake_of(const ApiParts& parts, const std::string& json) {
    auto read = settings::bake_request_from_json(json, "request", parts.clock());
    if (!read) {
        return tl::make_unexpected(error_response(400, read.error()));
    }
    if (!read->has_learned) {
        read->request.kitchen.factors = parts.journal.factors();
    }
    auto bake = parts.planner.bake(std::move(read->request));
    if (!bake) {
        return tl::make_unexpected(error_response(422, bake.error()));
    }
    return std::move(*bake);
}

Response read_text(const ApiParts& parts, const Request& request) {
    // One bread of a request, so that there is one form for both.
    const auto told = settings::bake_request_from_json(
        R"({"breads": [)" + request.body + "]}", "request", parts.clock());
    if (!told) {
        return error_response(400, told.error());
    }
    const auto reading = breads::read_as_wanted(
        told->request.breads.front(), parts.planner.knowledge(), parts.planner.reader());
    return reading ? json_response(200, wire::reading_json(*reading))
                   : error_response(422, reading.error());
}

Response plan_of(const ApiParts& parts, const Request& request) {
    const auto bake = bake_of(parts, request.body);
    return bake ? json_response(200, wire::plan_answer_json(*bake)) : bake.error();
}

// The words of {"form", "paper", "large_print", "address"} beside a request.
struct PageWish {
    std::string request;
    std::string form = "pdf";
    output::PageOptions options;
};

tl::expected<PageWish, Response> page_wish(const std::string& body) {
    const auto wrong = [](const char* what, const char* do_this) {
        return tl::make_unexpected(error_response(400, "json_unreadable", what, do_this));
    };
    const Json json =
        store::is_nested_too_deeply(body) ? Json() : Json::parse(body, nullptr, false);
    if (!json.is_object() || !json.contains("request")) {
        return wrong("found no request for a page",
                     R"(Send {"request": {…}, "form": "pdf", "paper": "a4"}.)");
    }
    const auto text = [&json](const char* key, const char* otherwise) {
        return json.contains(key) && json[key].is_string() ? json[key].get<std::string>()
                                                           : std::string(otherwise);
    };
    PageWish wish;
    wish.request = json["request"].dump(-1, ' ', false, Json::error_handler_t::replace);
    wish.form = text("form", "pdf");
    wish.options.paper =
        text("paper", "a4") == "letter" ? output::Paper::letter : output::Paper::a4;
    wish.options.print = json.value("large_print", Json(false)) == Json(true)
                             ? output::Print::large
                             : output::Print::usual;
    wish.options.address = text("address", "");
    return wish;
}

Response page_of(const ApiParts& parts, const Request& request) {
    auto wish = page_wish(request.body);
    if (!wish) {
        return wish.error();
    }
    const auto bake = bake_of(parts, wish->request);
    if (!bake) {
        return bake.error();
    }
    const auto* plan = std::get_if<Plan>(&bake->outcome);
    if (plan == nullptr) {
        return json_response(422, wire::plan_answer_json(*bake));
    }
    const std::vector<Sheet> pages =
        bake->known->pages(*plan, bake->request.day, bake->request.page);
    std::string identity = rfc3339(Zone{}, plan->eat.likely);
    for (const breads::BreadText& bread : bake->request.breads) {
        identity += bread.text.view();
    }
    wish->options.dated = plan->start;
    return page_bytes(
        {*plan, pages, bake->request.day, std::move(identity), 0}, wish->form, wish->options);
}

Response code_of(const Request& request, const Access& access) {
    const std::string address = access.way_in(request.query("address"));
    const bool web = address.rfind("http://", 0) == 0 || address.rfind("https://", 0) == 0;
    const auto code = web ? output::short_code(address) : std::nullopt;
    if (!code) {
        return error_response(400,
                              "value_out_of_range",
                              "that address is none, or too long for a code",
                              "Ask for /api/v1/code?address=http://…");
    }
    const std::size_t side = code->side + 2 * output::quiet_modules;
    std::string path;
    for (std::size_t row = 0; row < code->side; ++row) {
        for (std::size_t column = 0; column < code->side; ++column) {
            if (code->is_dark(row, column)) {
                fmt::format_to(std::back_inserter(path),
                               "M{} {}h1v1h-1z",
                               column + output::quiet_modules,
                               row + output::quiet_modules);
            }
        }
    }
    Response response;
    response.content_type = "image/svg+xml";
    response.body = std::make_shared<const std::string>(
        fmt::format("<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {0} {0}\" "
                    "shape-rendering=\"crispEdges\"><title>Short code</title><rect width=\"{0}\" "
                    "height=\"{0}\" fill=\"#fff\"/><path d=\"{1}\" fill=\"#000\"/></svg>\n",
                    side,
                    path));
    return response;
}

} // namespace

Handler at_once(std::function<Response(const Request&)> make) {
    return [make = std::move(make)](const Request& request, const Respond& respond) {
        respond(make(request));
    };
}

void add_plan_routes(Router& router, const ApiParts& parts) {
    router.add("POST", "/api/v1/read", {}, at_once([parts](const Request& request) {
                   return read_text(parts, request);
               }));
    router.add("POST", "/api/v1/plan", {}, at_once([parts](const Request& request) {
                   return plan_of(parts, request);
               }));
    router.add("POST", "/api/v1/page", {}, at_once([parts](const Request& request) {
                   return page_of(parts, request);
               }));
    router.add("GET", "/api/v1/help", {}, at_once([parts](const Request& /*request*/) {
                   return json_response(200, wire::help_json(parts.planner.knowledge()));
               }));
    router.add("GET", "/api/v1/code", {}, at_once([&access = parts.access](const Request& request) {
                   return code_of(request, access);
               }));
}

} // namespace loafwright::server

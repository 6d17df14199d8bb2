// SPDX-License-Identifier: Apache-2.0
//
// Bakes: begun with a request, gone on with by events. A bake's plan is worked out once and kept in
// mind; what it comes to is worked out anew for each question.
#include "engine/quantity/plain_id.hpp"
#include "engine/wire/bake_json.hpp"
#include "engine/wire/factors_json.hpp"
#include "engine/wire/wire.hpp"
#include "shell/server/api.hpp"
#include "shell/server/page_bytes.hpp"
#include "shell/settings/bake_request.hpp"
#include "shell/store/json_depth.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <charconv>
#include <cstdint>
#include <utility>
#include <variant>

namespace loafwright::server {

namespace {

using Json = nlohmann::ordered_json;

constexpr std::size_t most_listed = 200;

class BakeRoutes {
public:
    explicit BakeRoutes(ApiParts parts) : parts_(std::move(parts)) {}

    Response begin(const Request& request) {
        const bool is_deep = store::is_nested_too_deeply(request.body);
        const Json json = is_deep ? Json() : Json::parse(request.body, nullptr, false);
        if (!json.is_object() || !json.contains("id") || !json["id"].is_string() ||
            !json.contains("request") || !json["request"].is_object()) {
            return error_response(400,
                                  "json_unreadable",
                                  "found no bake to begin",
                                  R"(Send {"id": "…", "request": {…}}.)");
        }
        const auto id = json["id"].get<std::string>();
        if (!is_plain_id(id)) {
            return error_response(400,
                                  "value_out_of_range",
                                  "id: expected 1 to 64 letters, digits, - and _",
                                  "Make a new id for each bake.");
        }
        const Instant now = parts_.clock();
        Json kept = json["request"];
        if (!kept.contains("now")) {
            kept["now"] = rfc3339(Zone{}, now);
        }
        // What the kitchen has taught until today stays with the bake: it is planned the same later
        // on.
        const KitchenFactors factors = parts_.journal.factors();
        if (!kept.contains("learned") && teaches(factors)) {
            kept["learned"] = Json::parse(wire::factors_json(factors));
        }
        const std::string text = kept.dump(-1, ' ', false, Json::error_handler_t::replace);
        auto bake = parts_.bakes.bake_from(text);
        if (!bake) {
            return bake.error();
        }
        if (std::holds_alternative<Impossible>((*bake)->outcome)) {
            return json_response(422, wire::plan_answer_json(**bake));
        }
        const auto made = parts_.keeper.with(
            [&](store::Store& store) { return store.create_bake(id, text, now); });
        if (!made) {
            return store_trouble(made.error());
        }
        const bool is_new = *made == store::Kept::made;
        if (is_new) {
            parts_.bakes.remember(id, *bake);
        }
        return json_response(is_new ? 201 : 200, Json({{"version", 1}, {"id", id}}).dump() + "\n");
    }

    Response list() {
        const auto bakes =
            parts_.keeper.with([](store::Store& store) { return store.bakes(most_listed); });
        if (!bakes) {
            return store_trouble(bakes.error());
        }
        Json json{{"version", 1}, {"bakes", Json::array()}};
        for (const store::BakeRecord& record : *bakes) {
            json["bakes"].push_back({{"id", record.id},
                                     {"title", title_of(record)},
                                     {"begun", rfc3339(Zone{}, record.created)},
                                     {"last", record.last}});
        }
        return json_response(200, json.dump(-1, ' ', false, Json::error_handler_t::replace));
    }

    Response show(const Request& request) {
        const std::string& id = request.parameters.front();
        const auto found = parts_.bakes.record_of(id);
        if (!found) {
            return found.error();
        }
        const auto events = parts_.bakes.events_of(id, 0);
        if (!events) {
            return store_trouble(events.error());
        }
        // What is kept is JSON already.
        std::string json = fmt::format(
            R"({{"version":1,"id":"{}","request":{},"events":[)", found->id, found->request);
        std::int64_t last = 0;
        for (const store::StoredEvent& event : *events) {
            json += (last == 0 ? "" : ",") + event.json;
            last = event.sequence;
        }
        json += fmt::format("],\"last\":{}}}", last);
        return json_response(200, std::move(json));
    }

    Response state(const Request& request) {
        const auto told = parts_.bakes.told_of(request.parameters.front());
        if (!told) {
            return told.error();
        }
        const auto now = now_of(request, *told);
        if (!now) {
            return now.error();
        }
        const breads::BakeState state =
            breads::state_of(*told->bake, told->events, *now, parts_.planner.knowledge());
        return json_response(200, wire::bake_state_json(*told->bake, state, told->last));
    }

    Response page(const Request& request) {
        const auto told = parts_.bakes.told_of(request.parameters.front());
        if (!told) {
            return told.error();
        }
        const auto now = now_of(request, *told);
        if (!now) {
            return now.error();
        }
        const breads::BakeState state =
            breads::state_of(*told->bake, told->events, *now, parts_.planner.knowledge());
        Day day = told->bake->request.day;
        day.now = *now;
        output::PageOptions options;
        options.paper =
            request.query("paper") == "letter" ? output::Paper::letter : output::Paper::a4;
        options.print =
            request.query("large_print") == "true" ? output::Print::large : output::Print::usual;
        options.address = request.query("address");
        options.dated = state.plan.start;
        return page_bytes({state.plan, state.pages, day, request.parameters.front(), told->last},
                          request.query("form"),
                          options);
    }

    void append(const Request& request, const Respond& respond) {
        auto events = wire::events_from_json(request.body, "events");
        if (!events) {
            respond(error_response(400, events.error()));
            return;
        }
        if (events->empty()) {
            respond(error_response(400,
                                   "value_out_of_range",
                                   "events: expected at least one",
                                   "Send what has happened."));
            return;
        }
        store::Append append{request.parameters.front(), {}};
        for (const Event& event : *events) {
            append.events.push_back({event.id, wire::event_json(event)});
        }
        parts_.keeper.append(
            std::move(append), [respond](const store::Answer<store::Appended>& kept) {
                if (!kept) {
                    respond(store_trouble(kept.error()));
                } else if (!*kept) {
                    respond(no_bake());
                } else {
                    const std::int64_t last = *std::max_element((*kept)->begin(), (*kept)->end());
                    const Json json{{"version", 1}, {"sequences", **kept}, {"last", last}};
                    respond(json_response(200, json.dump()));
                }
            });
    }

    Response listen(const Request& request) {
        const std::string& id = request.parameters.front();
        const auto found = parts_.bakes.record_of(id);
        if (!found) {
            return found.error();
        }
        const std::string& told =
            request.last_event_id.empty() ? request.query("after") : request.last_event_id;
        std::int64_t after = 0;
        std::from_chars(told.data(), told.data() + told.size(), after);
        // Whoever claims to know what has not happened would wait for it in vain.
        after = std::clamp<std::int64_t>(after, 0, found->last);
        std::optional<Diagnostic> trouble;
        Response response;
        response.stream = parts_.hub.subscribe(id, after, [&](const auto& give) {
            const auto events = parts_.bakes.events_of(id, after);
            if (!events) {
                trouble = events.error();
                return;
            }
            for (const store::StoredEvent& event : *events) {
                give(event.sequence, event.json);
            }
        });
        return trouble ? store_trouble(*trouble) : response;
    }

private:
    // The screen's clock where it says, the server's else; never before the bake was asked for.
    tl::expected<Instant, Response> now_of(const Request& request, const Told& told) const {
        const std::string words = request.query("now");
        Instant now = parts_.clock();
        if (!words.empty()) {
            const auto said = parse_rfc3339(words);
            if (!said) {
                return tl::make_unexpected(
                    error_response(400,
                                   "time_unreadable",
                                   "now: found no time such as 2026-11-28T18:30:00Z",
                                   "Leave it out, or write date, clock time and offset."));
            }
            now = *said;
        }
        return std::max(
            now, told.bake->request.day.now, [](Instant a, Instant b) { return a < b; });
    }

    std::string title_of(const store::BakeRecord& record) const {
        const Json json = Json::parse(record.request, nullptr, false);
        std::string title;
        if (json.is_object() && json.contains("breads") && json["breads"].is_array()) {
            for (const Json& bread : json["breads"]) {
                if (bread.is_object() && bread.contains("name") && bread["name"].is_string()) {
                    title += (title.empty() ? "" : ", ") + bread["name"].get<std::string>();
                }
            }
        }
        return title;
    }

    ApiParts parts_;
};

} // namespace

void add_bake_routes(Router& router, const ApiParts& parts) {
    const auto routes = std::make_shared<BakeRoutes>(parts);
    const auto add =
        [&](const char* method, const char* path, Response (BakeRoutes::*make)(const Request&)) {
            router.add(method, path, {}, at_once([routes, make](const Request& request) {
                           return ((*routes).*make)(request);
                       }));
        };
    add("POST", "/api/v1/bakes", &BakeRoutes::begin);
    router.add("GET", "/api/v1/bakes", {}, at_once([routes](const Request& /*request*/) {
                   return routes->list();
               }));
    add("GET", "/api/v1/bakes/{}", &BakeRoutes::show);
    add("GET", "/api/v1/bakes/{}/state", &BakeRoutes::state);
    add("GET", "/api/v1/bakes/{}/page", &BakeRoutes::page);
    add("GET", "/api/v1/bakes/{}/stream", &BakeRoutes::listen);
    router.add("POST",
               "/api/v1/bakes/{}/events",
               {},
               [routes](const Request& request, const Respond& respond) {
                   routes->append(request, respond);
               });
}

} // namespace loafwright::server

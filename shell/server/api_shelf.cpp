// SPDX-License-Identifier: Apache-2.0
//
// What can be asked about a shelf of recipes before one of them is baked. Nothing is kept.
#include "engine/choosing/choose.hpp"
#include "engine/wire/wire.hpp"
#include "shell/server/api.hpp"
#include "shell/settings/bake_request.hpp"

namespace loafwright::server {

namespace {

Response choose_of(const ApiParts& parts, const Request& request) {
    const auto told = settings::bake_request_from_json(request.body, "request", parts.clock());
    if (!told) {
        return error_response(400, told.error());
    }
    const auto ready = parts.planner.fitted(told->request);
    if (!ready) {
        return error_response(422, ready.error());
    }
    const Day& day = told->request.day;
    return json_response(200,
                         wire::choices_json(choose(ready->known->fitted,
                                                   ready->kitchen,
                                                   day,
                                                   parts.planner.knowledge()),
                                            day.zone));
}

} // namespace

void add_shelf_routes(Router& router, const ApiParts& parts) {
    router.add("POST", "/api/v1/choose", {}, at_once([parts](const Request& request) {
                   return choose_of(parts, request);
               }));
}

} // namespace loafwright::server

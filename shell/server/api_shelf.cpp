// SPDX-License-Identifier: Apache-2.0
//
// What can be asked about a shelf of recipes before one of them is baked. Nothing is kept.
#include "engine/choosing/choose.hpp"
#include "engine/formula/analyse.hpp"
#include "engine/provisions/gather.hpp"
#include "engine/wire/wire.hpp"
#include "shell/server/api.hpp"
#include "shell/settings/bake_request.hpp"

#include <cstddef>
#include <optional>
#include <vector>

namespace loafwright::server {

namespace {

// Each bread by itself, so that a text which is no recipe does not stand in the way of the others
// and what is known of one is known again in another company.
Response choose_of(const ApiParts& parts, const Request& request) {
    const auto told = settings::bake_request_from_json(request.body, "request", parts.clock());
    if (!told) {
        return error_response(400, told.error());
    }
    breads::BakeRequest asked = told->request;
    if (!told->has_learned) {
        asked.kitchen.factors = parts.journal.factors();
    }
    wire::Shelf shelf;
    std::vector<FittedRecipe> fitted;
    std::optional<Kitchen> kitchen;
    Diagnostics wrong;
    for (std::size_t i = 0; i < asked.breads.size(); ++i) {
        breads::BakeRequest one = asked;
        one.breads = {asked.breads[i]};
        const auto ready = parts.planner.fitted(one);
        if (!ready) {
            wrong.insert(wrong.end(), ready.error().begin(), ready.error().end());
            shelf.left_out.push_back(i);
            continue;
        }
        kitchen = kitchen.value_or(ready->kitchen);
        shelf.places.push_back(i);
        fitted.push_back(ready->known->fitted.front());
    }
    if (fitted.empty()) {
        return error_response(422, wrong);
    }
    shelf.choices = choose(fitted, *kitchen, asked.day, parts.planner.knowledge());
    return json_response(200, wire::choices_json(shelf, asked.day.zone));
}

// What to have out for all breads of a request together.
Response gather_for(const ApiParts& parts, const Request& request) {
    const auto told = settings::bake_request_from_json(request.body, "request", parts.clock());
    if (!told) {
        return error_response(400, told.error());
    }
    const auto ready = parts.planner.fitted(told->request);
    if (!ready) {
        return error_response(422, ready.error());
    }
    return json_response(200, wire::provisions_json(together(ready->known->provisions)));
}

// One bread, as /read takes it.
Response formula_of(const ApiParts& parts, const Request& request) {
    const auto told = settings::bake_request_from_json(
        R"({"breads": [)" + request.body + "]}", "request", parts.clock());
    if (!told) {
        return error_response(400, told.error());
    }
    const auto reading = breads::read_as_wanted(
        told->request.breads.front(), parts.planner.knowledge(), parts.planner.reader());
    if (!reading) {
        return error_response(422, reading.error());
    }
    const auto formula = analyse(reading->recipe, parts.planner.knowledge());
    return formula ? json_response(200, wire::formula_json(*formula))
                   : error_response(422, formula.error());
}

} // namespace

void add_shelf_routes(Router& router, const ApiParts& parts) {
    router.add("POST", "/api/v1/choose", {}, at_once([parts](const Request& request) {
                   return choose_of(parts, request);
               }));
    router.add("POST", "/api/v1/gather", {}, at_once([parts](const Request& request) {
                   return gather_for(parts, request);
               }));
    router.add("POST", "/api/v1/formula", {}, at_once([parts](const Request& request) {
                   return formula_of(parts, request);
               }));
}

} // namespace loafwright::server

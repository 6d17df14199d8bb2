// SPDX-License-Identifier: Apache-2.0
#include "shell/server/told_bakes.hpp"

#include "engine/wire/bake_json.hpp"
#include "shell/server/api.hpp"
#include "shell/settings/bake_request.hpp"

#include <utility>
#include <variant>

namespace loafwright::server {

Response no_bake() {
    return not_here("there is no such bake");
}

tl::expected<store::BakeRecord, Response> ToldBakes::record_of(const std::string& id) {
    auto found = keeper_.with([&id](store::Store& store) { return store.bake(id); });
    if (!found) {
        return tl::make_unexpected(store_trouble(found.error()));
    }
    if (!*found) {
        return tl::make_unexpected(no_bake());
    }
    return std::move(**found);
}

store::Answer<std::vector<store::StoredEvent>> ToldBakes::events_of(const std::string& id,
                                                                    std::int64_t after) {
    return keeper_.with(
        [&](store::Store& store) { return store.events_after(id, after, SIZE_MAX); });
}

tl::expected<std::shared_ptr<const breads::Bake>, Response>
ToldBakes::bake_from(const std::string& request_json) {
    auto read = settings::bake_request_from_json(request_json, "request", clock_());
    if (!read) {
        return tl::make_unexpected(error_response(400, read.error()));
    }
    auto bake = planner_.bake(std::move(read->request));
    if (!bake) {
        return tl::make_unexpected(error_response(422, bake.error()));
    }
    return std::make_shared<const breads::Bake>(std::move(*bake));
}

tl::expected<Told, Response> ToldBakes::told_of(const std::string& id) {
    Told told;
    told.bake = begun_.find(id);
    if (!told.bake) {
        const auto found = record_of(id);
        if (!found) {
            return tl::make_unexpected(found.error());
        }
        auto bake = bake_from(found->request);
        if (!bake) {
            return tl::make_unexpected(std::move(bake.error()));
        }
        told.bake = std::move(*bake);
        begun_.keep(id, told.bake);
    }
    const auto events = events_of(id, 0);
    if (!events) {
        return tl::make_unexpected(store_trouble(events.error()));
    }
    for (const store::StoredEvent& stored : *events) {
        if (auto event = wire::event_from_json(stored.json, "event")) {
            told.events.push_back(std::move(*event));
        }
        told.last = stored.sequence;
    }
    if (!std::holds_alternative<Plan>(told.bake->outcome)) {
        return tl::make_unexpected(json_response(422, wire::plan_answer_json(*told.bake)));
    }
    return told;
}

} // namespace loafwright::server

// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/breads/bake.hpp"
#include "engine/following/event.hpp"
#include "shell/server/bakes.hpp"
#include "shell/server/exchange.hpp"
#include "shell/server/keeper.hpp"

#include <tl/expected.hpp>

#include <cstdint>
#include <functional>
#include <memory>
#include <string>
#include <vector>

namespace loafwright::server {

/// A bake as it was begun, and everything that has been told of it.
///
/// Invariants: bake->outcome holds a plan.
struct Told {
    std::shared_ptr<const breads::Bake> bake;
    std::vector<Event> events;
    std::int64_t last = 0;
};

/// The bakes that are kept, those of late planned already. Safe from any thread.
class ToldBakes {
public:
    ToldBakes(Planner& planner, Keeper& keeper, std::function<Instant()> clock)
        : planner_(planner), keeper_(keeper), clock_(std::move(clock)), begun_(256) {}

    /// What a request comes to. Errors: 400 and 422, in words.
    tl::expected<std::shared_ptr<const breads::Bake>, Response>
    bake_from(const std::string& request_json);
    /// What a kept bake was made of need not be worked out again.
    void remember(const std::string& id, std::shared_ptr<const breads::Bake> bake) {
        begun_.keep(id, std::move(bake));
    }
    /// Errors: 404, 503; 422 where it cannot be planned any more.
    tl::expected<Told, Response> told_of(const std::string& id);
    tl::expected<store::BakeRecord, Response> record_of(const std::string& id);
    /// All events after a number, however long the bake is.
    store::Answer<std::vector<store::StoredEvent>> events_of(const std::string& id,
                                                             std::int64_t after);

private:
    Planner& planner_;
    Keeper& keeper_;
    std::function<Instant()> clock_;
    Remembered<breads::Bake> begun_;
};

Response no_bake();

} // namespace loafwright::server

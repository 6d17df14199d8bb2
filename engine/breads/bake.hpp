// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/breads/known_breads.hpp"
#include "engine/diagnostic/diagnostic.hpp"
#include "engine/following/follow.hpp"
#include "engine/kitchen/kitchen.hpp"
#include "engine/knowledge/knowledge.hpp"
#include "engine/planning/plan.hpp"
#include "engine/sheet/options.hpp"

#include <tl/expected.hpp>

#include <memory>
#include <string>
#include <vector>

/// From words to a page, and on through the bake: the verbs in their usual order.
namespace loafwright::breads {

/// Everything that is needed to plan, as values. A bake is kept as its request: the same request
/// gives the same plan everywhere.
///
/// Invariants: day.now is when it was asked.
struct BakeRequest {
    std::vector<BreadText> breads;
    Kitchen kitchen;
    Day day;
    SheetOptions page;
};

/// A request that was read, fitted and planned.
///
/// Invariants: `known` was made of `request.breads` in `kitchen`, which is the request's with the
/// answer to the question about the room.
struct Bake {
    BakeRequest request;
    Kitchen kitchen;
    std::shared_ptr<const KnownBreads> known;
    PlanOutcome outcome;
};

/// The kitchen of a request, with what the answers say of it.
///
/// Errors: answer_unreadable.
tl::expected<Kitchen, Diagnostics> kitchen_of(const BakeRequest& request);

/// Needs:    `known` made of the request's breads in `kitchen`; both can be kept for another day.
Bake planned(BakeRequest request, Kitchen kitchen, std::shared_ptr<const KnownBreads> known);

/// Reading, fitting and planning in one.
///
/// Errors: answer_unreadable, no_recipe_found.
tl::expected<Bake, Diagnostics> bake_of(BakeRequest request, const Knowledge& knowledge);

/// A remedy that was given: what happened, and what to do.
struct Given {
    std::string id; // the event's
    Instant at;
    std::size_t bread = 0;
    int stage = 1;
    Trouble trouble = Trouble::no_salt;
    std::string remedy;
    std::optional<Instant> until;
};

/// A bake as it stands.
struct BakeState {
    Plan plan;
    std::vector<Sheet> pages;
    Moment moment;
    /// What the last thing that was told moved, in one line; empty where nothing.
    std::string change;
    std::vector<Given> remedies; // latest first
};

/// Needs:    `bake.outcome` holds a plan.
/// Promises: the order of `events` does not matter; events after `now` count as told and not yet
/// happened.
BakeState state_of(const Bake& bake,
                   const std::vector<Event>& events,
                   Instant now,
                   const Knowledge& knowledge);

} // namespace loafwright::breads

// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "shell/server/access.hpp"
#include "shell/server/bakes.hpp"
#include "shell/server/event_hub.hpp"
#include "shell/server/journal.hpp"
#include "shell/server/keeper.hpp"
#include "shell/server/metrics.hpp"
#include "shell/server/router.hpp"
#include "shell/server/told_bakes.hpp"

#include <functional>
#include <string>

/// The addresses below /api/v1, as docs/openapi.yaml has them. Handlers parse and decide nothing
/// about bread: they hand words to the engine and keep what they are given.
namespace loafwright::server {

class IntakeJobs;

/// What handlers work with; all of it outlives the router.
struct ApiParts {
    Planner& planner;
    Keeper& keeper;
    EventHub& hub;
    ToldBakes& bakes;
    Journal& journal;
    std::function<Instant()> clock;
    const Access& access;
};

void add_plan_routes(Router& router, const ApiParts& parts);    // read, plan, page, help, code
void add_shelf_routes(Router& router, const ApiParts& parts);   // choose, gather, formula
void add_journal_routes(Router& router, const ApiParts& parts); // findings, progress
void add_bake_routes(Router& router, const ApiParts& parts);    // bakes and their events
void add_notebook_routes(Router& router,
                         const ApiParts& parts);          // recipes, settings, photos, export
void add_intake_routes(Router& router, IntakeJobs& jobs); // photos, PDFs and web pages

/// A handler that makes its answer at once.
Handler at_once(std::function<Response(const Request&)> make);

/// 503, in the store's words.
Response store_trouble(const Diagnostic& diagnostic);
Response not_here(std::string what);

} // namespace loafwright::server

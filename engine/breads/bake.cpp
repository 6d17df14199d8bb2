// SPDX-License-Identifier: Apache-2.0
#include "engine/breads/bake.hpp"

#include "engine/following/change_line.hpp"
#include "engine/following/progress.hpp"
#include "engine/following/replan.hpp"
#include "engine/following/troubles.hpp"

#include <algorithm>
#include <utility>
#include <variant>

namespace loafwright::breads {

namespace {

// Whether it can move anything.
bool moves(const Event& event) {
    switch (event.kind) {
    case EventKind::note:
    case EventKind::photo:
    case EventKind::temperature:
    case EventKind::act_done:
    case EventKind::told:
        return false;
    case EventKind::begun:
    case EventKind::done:
    case EventKind::not_ready:
    case EventKind::taken_back:
    case EventKind::grown:
    case EventKind::trouble:
        return true;
    }
    return false;
}

// Without the last thing that was told; `events` are in the order in which they were told.
std::vector<Event> before_the_last(const std::vector<Event>& events) {
    std::vector<Event> before = events;
    for (std::size_t k = before.size(); k > 0; --k) {
        if (moves(before[k - 1])) {
            before.erase(before.begin() + static_cast<std::ptrdiff_t>(k) - 1);
            break;
        }
    }
    return before;
}

std::string change_between(const Plan& before, const Plan& after, const Day& day, Instant now) {
    const auto old_breads = following::breads_of(before);
    const auto new_breads = following::breads_of(after);
    std::string change;
    for (std::size_t b = 0; b < std::min(old_breads.size(), new_breads.size()); ++b) {
        const std::string line = following::change_line(*old_breads[b], *new_breads[b], day, now);
        if (!line.empty()) {
            const bool several = new_breads.size() > 1;
            change += (change.empty() ? "" : " ") +
                      (several ? new_breads[b]->stages.front().bread + ": " : std::string()) + line;
        }
    }
    return change;
}

} // namespace

tl::expected<Kitchen, Diagnostics> kitchen_of(const BakeRequest& request) {
    Answers all;
    for (const BreadText& bread : request.breads) {
        all.insert(all.end(), bread.answers.begin(), bread.answers.end());
    }
    return kitchen_as_answered(request.kitchen, all);
}

Bake planned(BakeRequest request, Kitchen kitchen, std::shared_ptr<const KnownBreads> known) {
    PlanOutcome outcome = plan(known->fitted, kitchen, request.day);
    return {std::move(request), std::move(kitchen), std::move(known), std::move(outcome)};
}

tl::expected<Bake, Diagnostics> bake_of(BakeRequest request, const Knowledge& knowledge) {
    auto kitchen = kitchen_of(request);
    if (!kitchen) {
        return tl::make_unexpected(std::move(kitchen.error()));
    }
    auto known = read_breads(request.breads, *kitchen, knowledge);
    if (!known) {
        return tl::make_unexpected(std::move(known.error()));
    }
    return planned(std::move(request),
                   std::move(*kitchen),
                   std::make_shared<const KnownBreads>(std::move(*known)));
}

BakeState state_of(const Bake& bake,
                   const std::vector<Event>& events,
                   Instant now,
                   const Knowledge& knowledge) {
    const Plan& first = std::get<Plan>(bake.outcome);
    const Day& day = bake.request.day;
    const auto again = [&](const std::vector<Event>& told) {
        return replan(first, bake.known->fitted, bake.kitchen, day, told, now, knowledge).plan;
    };
    BakeState state;
    state.plan = again(events);
    const std::vector<Event> before = before_the_last(events);
    if (before.size() < events.size()) {
        state.change = change_between(again(before), state.plan, day, now);
    }
    Day page_day = day;
    page_day.now = now;
    state.pages = bake.known->pages(state.plan, page_day, bake.request.page);
    state.moment = follow(state.plan, day, events, now, knowledge);
    for (const Event* event : following::in_order(events)) {
        const RemedyRow* row = event->kind == EventKind::trouble
                                   ? following::remedy_for(knowledge, event->trouble)
                                   : nullptr;
        if (row != nullptr) {
            state.remedies.push_back({event->id,
                                      event->at,
                                      event->bread,
                                      event->stage,
                                      event->trouble,
                                      std::string(row->remedy),
                                      event->until});
        }
    }
    std::reverse(state.remedies.begin(), state.remedies.end());
    return state;
}

} // namespace loafwright::breads

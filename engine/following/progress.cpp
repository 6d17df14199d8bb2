// SPDX-License-Identifier: Apache-2.0
#include "engine/following/progress.hpp"

#include "engine/following/troubles.hpp"

#include <algorithm>
#include <set>
#include <string>
#include <tuple>

namespace loafwright::following {

namespace {

// The last moment that is known of the lines before `line`.
Instant known_before(const BreadProgress& bread, std::size_t line) {
    Instant last{INT64_MIN};
    for (std::size_t k = 0; k < line; ++k) {
        last = std::max({last, bread[k].begun.value_or(last), bread[k].done.value_or(last)});
    }
    return last;
}

// Everything before `line` is over when it begins; what nobody told went as planned, as far as that
// can be.
void end_before(BreadProgress& bread, const Plan& plan, std::size_t line, Instant begins) {
    Instant last{INT64_MIN};
    const auto as_planned = [&](Instant planned) {
        return std::clamp(planned, std::min(last, begins), begins);
    };
    for (std::size_t k = 0; k < line; ++k) {
        LineProgress& before = bread[k];
        before.begun = before.begun ? *before.begun : as_planned(plan.stages[k].start);
        last = *before.begun;
        before.done = before.done ? *before.done : as_planned(plan.stages[k].end.likely);
        last = *before.done;
    }
}

void begin(BreadProgress& bread, const Plan& plan, std::size_t line, Instant at) {
    if (line < bread.size() && bread[line].begun) {
        return;
    }
    end_before(bread, plan, line, at);
    if (line < bread.size()) {
        bread[line].begun = at;
    }
}

// A line that something is told of was begun: as planned, where nobody told when.
void must_have_begun(BreadProgress& bread, const Plan& plan, std::size_t line, Instant by) {
    begin(bread,
          plan,
          line,
          std::max(std::min(plan.stages[line].start, by), known_before(bread, line)));
}

// What a remedy does to the wait that runs.
void amend(LineProgress& line, const Event& event, const RemedyRow& remedy) {
    if (!line.begun || line.done) {
        return;
    }
    if (remedy.wait == WaitAfter::again) {
        line.begun = event.at;
        line.told_begun = true;
        line.grown.reset();
        line.look_again.reset();
        line.longer_percent.reset();
        line.again_percent = remedy.wait_percent;
    } else if (remedy.wait == WaitAfter::longer) {
        line.longer_percent = remedy.wait_percent;
    }
}

// Where nobody said when: dough in ten minutes, what is in the oven in five. Common practice.
Instant look_again(const Stage& stage, Instant now) {
    const int minutes = stage.attention == Attention::near ? 5 : 10;
    return Instant{now.seconds + minutes * 60};
}

void tell(BreadProgress& bread, const Plan& plan, const Event& event, const Knowledge& knowledge) {
    const std::size_t line = static_cast<std::size_t>(event.stage) - 1;
    LineProgress& here = bread[line];
    switch (event.kind) {
    case EventKind::begun:
        begin(bread, plan, line, event.at);
        here.told_begun = true;
        break;
    case EventKind::done:
        must_have_begun(bread, plan, line, event.at);
        if (!here.done) {
            here.done = event.at;
            begin(bread, plan, line + 1, event.at);
        }
        break;
    case EventKind::not_ready:
        must_have_begun(bread, plan, line, event.at);
        if (!here.done) {
            const Instant until = event.until.value_or(look_again(plan.stages[line], event.at));
            here.look_again = std::max(here.look_again.value_or(until), until);
        }
        break;
    case EventKind::act_done:
        must_have_begun(bread, plan, line, event.at);
        here.acts_done.insert(event.act);
        break;
    case EventKind::grown:
        must_have_begun(bread, plan, line, event.at);
        here.grown = Looked{event.at, event.growth};
        break;
    case EventKind::trouble:
        if (const RemedyRow* remedy = remedy_for(knowledge, event.trouble);
            remedy != nullptr && plan.stages[line].attention == Attention::wait) {
            amend(here, event, *remedy);
        }
        break;
    case EventKind::note:
    case EventKind::photo:
    case EventKind::temperature:
    case EventKind::told:
    case EventKind::taken_back:
        break;
    }
}

} // namespace

std::vector<const Event*> in_order(const std::vector<Event>& events) {
    std::set<std::string> undone;
    for (const Event& event : events) {
        if (event.kind == EventKind::taken_back) {
            undone.insert(event.undoes);
        }
    }
    std::vector<const Event*> order;
    std::set<std::string> seen;
    for (const Event& event : events) {
        const bool counts = event.kind != EventKind::taken_back && undone.count(event.id) == 0;
        if (counts && seen.insert(event.id).second) {
            order.push_back(&event);
        }
    }
    std::sort(order.begin(), order.end(), [](const Event* a, const Event* b) {
        return std::tie(a->at, a->id) < std::tie(b->at, b->id);
    });
    return order;
}

std::vector<const Plan*> breads_of(const Plan& plan) {
    std::vector<const Plan*> breads;
    if (plan.breads.empty()) {
        breads.push_back(&plan);
    }
    for (const Plan& bread : plan.breads) {
        breads.push_back(&bread);
    }
    return breads;
}

std::vector<BreadProgress>
progress_of(const Plan& plan, const std::vector<Event>& events, const Knowledge& knowledge) {
    std::vector<BreadProgress> breads;
    for (const Plan* bread : breads_of(plan)) {
        breads.emplace_back(bread->stages.size());
    }
    const std::vector<const Plan*> plans = breads_of(plan);
    for (const Event* event : in_order(events)) {
        const bool exists = event->bread < breads.size() && event->stage >= 1 &&
                            static_cast<std::size_t>(event->stage) <= breads[event->bread].size();
        if (exists) {
            tell(breads[event->bread], *plans[event->bread], *event, knowledge);
        }
    }
    return breads;
}

} // namespace loafwright::following

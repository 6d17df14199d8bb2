// SPDX-License-Identifier: Apache-2.0
#include "engine/planning/merge.hpp"

#include <algorithm>
#include <utility>

namespace loafwright::planning {

namespace {

constexpr std::int64_t worth_going_out = 20;

bool is_eating(const Stage& stage) {
    return stage.attention == Attention::none;
}

// When this bread wants nobody: before it is begun, in its free time, and once it is out of the
// oven for good.
std::vector<FreeSpan> left_alone(const Plan& plan, const FreeSpan& day) {
    std::vector<FreeSpan> spans;
    Instant done = plan.start;
    for (const Stage& stage : plan.stages) {
        const bool asks = stage.attention == Attention::hands || stage.attention == Attention::near;
        if (asks) {
            done = std::max(done, stage.end.likely);
        }
        for (const Act& act : stage.acts) {
            done = std::max(done, later_by_minutes(act.at, 5));
        }
    }
    spans.push_back({day.from, plan.start});
    for (const FreeSpan& span : plan.free) {
        spans.push_back({span.from, std::min(span.to, done)});
    }
    spans.push_back({done, day.to});
    return spans;
}

std::vector<FreeSpan> both(const std::vector<FreeSpan>& a, const std::vector<FreeSpan>& b) {
    std::vector<FreeSpan> spans;
    for (const FreeSpan& one : a) {
        for (const FreeSpan& other : b) {
            const FreeSpan span{std::max(one.from, other.from), std::min(one.to, other.to)};
            if (span.from < span.to) {
                spans.push_back(span);
            }
        }
    }
    return spans;
}

std::vector<FreeSpan> free_of_all(const std::vector<Plan>& plans, const FreeSpan& day) {
    std::vector<FreeSpan> spans{day};
    for (const Plan& plan : plans) {
        spans = both(spans, left_alone(plan, day));
    }
    spans.erase(std::remove_if(spans.begin(),
                               spans.end(),
                               [](const FreeSpan& span) {
                                   return minutes_between(span.from, span.to) < worth_going_out;
                               }),
                spans.end());
    std::sort(spans.begin(), spans.end(), [](const FreeSpan& a, const FreeSpan& b) {
        return a.from < b.from;
    });
    return spans;
}

void add_stages(std::vector<Stage>& all, const Plan& plan, std::size_t bread) {
    for (Stage stage : plan.stages) {
        stage.bread_index = bread;
        const auto same = std::find_if(all.begin(), all.end(), [&stage](const Stage& other) {
            return is_eating(stage) && is_eating(other) && other.start == stage.start;
        });
        if (same == all.end()) {
            all.push_back(stage);
        } else {
            same->bread.clear(); // all of them
            same->steps.clear();
        }
    }
}

} // namespace

Plan merged(const std::vector<Plan>& plans) {
    Plan all = plans.front();
    all.stages.clear();
    all.parts.clear();
    all.warnings.clear();
    all.hands_on_minutes = 0;
    Instant asked_until = all.start;
    for (std::size_t b = 0; b < plans.size(); ++b) {
        const Plan& plan = plans[b];
        all.start = std::min(all.start, plan.start);
        all.out_of_oven = std::max(all.out_of_oven, plan.out_of_oven);
        all.cut_from = std::max(all.cut_from, plan.cut_from);
        all.best_from = std::max(all.best_from, plan.best_from);
        all.eat.low = std::max(all.eat.low, plan.eat.low);
        all.eat.likely = std::max(all.eat.likely, plan.eat.likely);
        all.eat.high = std::max(all.eat.high, plan.eat.high);
        all.hands_on_minutes += plan.hands_on_minutes;
        asked_until = std::max(asked_until, plan.out_of_oven);
        add_stages(all.stages, plan, b);
        for (const Diagnostic& warning : plan.warnings) {
            all.warnings.push_back(warning);
        }
    }
    all.total_minutes = minutes_between(all.start, all.cut_from);
    std::stable_sort(all.stages.begin(), all.stages.end(), [](const Stage& a, const Stage& b) {
        return std::make_pair(a.start, is_eating(a)) < std::make_pair(b.start, is_eating(b));
    });
    for (std::size_t s = 0; s < all.stages.size(); ++s) {
        all.stages[s].number = static_cast<int>(s) + 1;
    }
    all.free = free_of_all(plans, {all.start, asked_until});
    all.breads = plans;
    return all;
}

} // namespace loafwright::planning

// SPDX-License-Identifier: Apache-2.0
//
// What is known narrows the cells, and clauses made anew without the values that went are a smaller
// problem than the old ones with more clauses on top. Every bound here holds in all schedules that
// reach the objectives settled so far, so none of them is lost.
#include "engine/schedule/check.hpp"
#include "engine/schedule/search.hpp"
#include "engine/schedule/twins.hpp"

#include <algorithm>

namespace loafwright::schedule::sat {

void Search::build() {
    const std::int64_t left = clauses_->conflicts_left();
    encoding_.reset();
    clauses_.emplace(left);
    encoding_.emplace(*clauses_, day_, Guards::none);
    order_twins(*clauses_, *encoding_, twins_of(problem_, order_), wish_.aim);
    starts_ = cells::starts_left(day_);
}

// What a serial schedule reaches and none can undercut needs no question.
void Search::note_proven(const std::optional<LeastCost>& least) {
    if (wish_.aim != Aim::begin_late || !least) {
        return;
    }
    const Objective reached = objective_of(problem_, best_);
    if (reached.violations == least->violations) {
        violations_ = reached.violations;
        if (reached.tied == least->tied) {
            tied_ = reached.tied / day_.grid;
            first_from_ = first_start();
        }
    }
}

// The cells, as narrow as what is known.
cells::DayCells Search::narrowed() const {
    cells::DayCells day = day_;
    for (cells::JobCells& job : day.jobs) {
        std::vector<cells::Way> ways;
        for (cells::Way& way : job.ways) {
            for (cells::WayLag& lag : way.lags) {
                if (violations_ == 0 && lag.good) {
                    lag.max = std::min(lag.max.value_or(*lag.good), *lag.good);
                }
            }
            if (!violations_ || way.weight <= *violations_) {
                ways.push_back(std::move(way));
            }
        }
        job.ways = std::move(ways);
        if (first_from_) {
            job.not_before = std::max(job.not_before.value_or(0), *first_from_);
        }
        if (last_end_) {
            job.ready_by = std::min(job.ready_by.value_or(*last_end_), *last_end_);
        }
    }
    if (tied_) {
        cells::keep_tied(day, *tied_);
    }
    cells::look_again(day);
    return day;
}

// The same question with fewer values: what is known by now is left out of the clauses instead of
// being forbidden by them.
bool Search::begin_again(cells::DayCells narrower) {
    encoding_.reset();
    day_ = std::move(narrower);
    build();
    keep_first_start();
    keep_found();
    prefer(best_);
    const Answer answer = ask({});
    clauses_->forget_preferences();
    return answer == Answer::yes;
}

// Begins again where a quarter of all values has gone.
bool Search::keep_narrow() {
    cells::DayCells narrower = narrowed();
    return 4 * cells::starts_left(narrower) > 3 * starts_ || begin_again(std::move(narrower));
}

void Search::keep_found() {
    if (violations_) {
        const std::vector<Sum> parts = violation_parts(*clauses_, day_, *encoding_);
        if (*violations_ == 0) {
            for (const Sum& part : parts) {
                fix(at_most(part, 0));
            }
        } else {
            fix(at_most(total(*clauses_, parts, *violations_ + 1), *violations_));
        }
    }
    if (tied_) {
        TiedParts tied(*clauses_, day_, *encoding_);
        const std::int64_t most = *tied_ - tied.base();
        const std::vector<Sum> parts = tied.parts(most + 1);
        if (most == 0) {
            for (const Sum& part : parts) {
                fix(at_most(part, 0));
            }
        } else {
            fix(at_most(total(*clauses_, parts, most + 1), most));
        }
    }
    if (first_from_) {
        fix(all_from(*first_from_));
    }
    if (first_to_) {
        clauses_->add({some_by(*first_to_)});
    }
    if (last_end_) {
        fix(all_over_by(*last_end_));
    }
}

} // namespace loafwright::schedule::sat

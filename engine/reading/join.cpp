// SPDX-License-Identifier: Apache-2.0
//
// Which neighbouring drafts are one step. Hands steps of one kind in a row are one; a wait told
// twice is one wait; a bake keeps a part for each stretch of time or heat. What runs beside a wait
// (folds, the oven heating up) is tied to it, so that it adds nothing to the clock.
#include "engine/reading/join.hpp"

#include <algorithm>

namespace loafwright::reading {
namespace {

bool is_hands(StepKind kind) {
    const Attention attention = attention_of(kind);
    return attention == Attention::hands && kind != StepKind::cook;
}

bool same_minutes(const Step& a, const Step& b) {
    return a.minutes && b.minutes && a.minutes->minutes == b.minutes->minutes;
}

bool both_timed(const Step& a, const Step& b) {
    return a.minutes && b.minutes;
}

bool may_join(const Draft& left, const Draft& right) {
    const Step& a = left.step;
    const Step& b = right.step;
    if (a.kind != b.kind || a.part != b.part || a.during != b.during ||
        a.repeat.has_value() != b.repeat.has_value()) {
        return false;
    }
    if (a.optional != b.optional && (a.minutes || b.minutes)) {
        return false;
    }
    if (right.is_further) {
        return false;
    }
    if (a.kind == StepKind::bake) {
        // A turn of the oven begins a new part; a part without a time takes the time that comes
        // next.
        if (right.turns_down) {
            return !a.minutes && !a.temperature;
        }
        if (a.temperature && b.temperature && a.minutes) {
            return false;
        }
        return !both_timed(a, b) || (same_minutes(a, b) && !left.turns_down);
    }
    if (is_hands(a.kind)) {
        if (a.optional != b.optional) {
            return false;
        }
        return !both_timed(a, b) || same_minutes(a, b);
    }
    if (a.kind == StepKind::preheat) {
        return a.place == b.place;
    }
    if (attention_of(a.kind) == Attention::wait) {
        return !both_timed(a, b) &&
               (a.place == b.place || a.place == Place::counter || b.place == Place::counter);
    }
    return !both_timed(a, b);
}

void join(Draft& left, Draft&& right) {
    Step& a = left.step;
    Step& b = right.step;
    if (!a.minutes) {
        a.minutes = b.minutes;
    }
    if (!a.temperature) {
        a.temperature = b.temperature;
    }
    if (!a.cue) {
        a.cue = b.cue;
    }
    if (a.place == Place::counter) {
        a.place = b.place;
    }
    if (!a.before_next) {
        a.before_next = b.before_next;
    }
    if (!a.clock) {
        a.clock = b.clock;
    }
    if (!left.total) {
        left.total = right.total;
    }
    a.optional = a.optional && b.optional;
    a.alternatives.insert(a.alternatives.end(), b.alternatives.begin(), b.alternatives.end());
    a.span.end = std::max(a.span.end, b.span.end);
    left.clauses.insert(left.clauses.end(), right.clauses.begin(), right.clauses.end());
    left.turns_down = left.turns_down || right.turns_down;
    left.at_night = left.at_night || right.at_night;
    left.sureness = std::max(left.sureness, right.sureness);
}

// All joins in one pass, so that long texts stay linear: drafts are rebuilt, old indices are mapped
// once.
void join_neighbours(Assembly& assembly) {
    std::vector<Draft> kept;
    std::vector<std::size_t> moved(assembly.drafts.size());
    for (std::size_t index = 0; index < assembly.drafts.size(); ++index) {
        Draft& draft = assembly.drafts[index];
        if (!kept.empty() && may_join(kept.back(), draft)) {
            join(kept.back(), std::move(draft));
        } else {
            kept.push_back(std::move(draft));
        }
        moved[index] = kept.size() - 1;
    }
    assembly.drafts = std::move(kept);
    for (Draft& draft : assembly.drafts) { // a fold may stand before the wait that it runs in
        if (draft.step.during) {
            draft.step.during = moved[*draft.step.during];
        }
    }
    for (ClauseUse& use : assembly.uses) {
        if (use.draft) {
            use.draft = moved[*use.draft];
        }
    }
}

// Folding told right beside a rise that has a rhythm goes into it; a fold step with a rhythm but
// before its wait too.
void tie_folds(Assembly& assembly) {
    for (std::size_t index = 0; index < assembly.drafts.size(); ++index) {
        Step& step = assembly.drafts[index].step;
        if (step.kind == StepKind::fold && step.repeat && !step.during) {
            for (std::size_t next = index + 1; next < assembly.drafts.size() && next < index + 3;
                 ++next) {
                if (is_rising(assembly.drafts[next].step.kind)) {
                    step.during = next;
                    break;
                }
            }
        }
    }
}

// The oven heats while the dough does its last wait.
void tie_preheats(Assembly& assembly) {
    for (std::size_t index = 0; index < assembly.drafts.size(); ++index) {
        Step& step = assembly.drafts[index].step;
        if (step.kind != StepKind::preheat || step.during) {
            continue;
        }
        for (std::size_t before = index; before > 0; --before) {
            const StepKind kind = assembly.drafts[before - 1].step.kind;
            if (attention_of(kind) == Attention::wait && kind != StepKind::cool &&
                kind != StepKind::activate) {
                step.during = before - 1;
                break;
            }
            if (kind == StepKind::bake) {
                break;
            }
        }
    }
}

// "30 minutes in all": the last part is what the parts before it leave.
void share_totals(Assembly& assembly) {
    for (std::size_t index = 0; index < assembly.drafts.size(); ++index) {
        Draft& draft = assembly.drafts[index];
        if (!draft.total) {
            continue;
        }
        double before = 0.0;
        for (std::size_t earlier = index;
             earlier > 0 && assembly.drafts[earlier - 1].step.kind == draft.step.kind;
             --earlier) {
            const Step& step = assembly.drafts[earlier - 1].step;
            before += step.minutes ? step.minutes->minutes.likely.count() : 0.0;
        }
        const double rest = draft.total->count() - before;
        if (rest > 0 &&
            (!draft.step.minutes ||
             draft.step.minutes->minutes.likely.count() + before > draft.total->count() - 0.5)) {
            draft.step.minutes = TimedBand{exactly(Minutes(rest)), Basis::stated};
        }
    }
}

} // namespace

void join_drafts(Assembly& assembly) {
    tie_folds(assembly);
    tie_preheats(assembly);
    join_neighbours(assembly);
    share_totals(assembly);
}

} // namespace loafwright::reading

// SPDX-License-Identifier: Apache-2.0
//
// The order encoding. A difference x >= y + k becomes one clause of two literals for each value of
// y, and unit propagation then does what a propagator of bounds would do.
#include "engine/schedule/moments.hpp"

namespace loafwright::schedule::sat {

namespace {

std::vector<Literal> with(std::vector<Literal> clause, Literal a, Literal b) {
    clause.push_back(a);
    clause.push_back(b);
    return clause;
}

} // namespace

Moment::Moment(Clauses& clauses, const std::vector<std::int64_t>& values) : from_(values.front()) {
    std::vector<Literal> literals{always};
    Literal before = always;
    for (std::size_t k = 1; k < values.size(); ++k) {
        const Literal here = clauses.fresh();
        clauses.add({-here, before});
        before = here;
        literals.resize(static_cast<std::size_t>(values[k] - from_) + 1, here);
    }
    literals.push_back(never);
    literals_ = std::make_shared<const std::vector<Literal>>(std::move(literals));
}

Moment Moment::plus(std::int64_t cells) const {
    Moment moved = *this;
    moved.offset_ += cells;
    return moved;
}

std::int64_t Moment::size() const {
    return static_cast<std::int64_t>(literals_->size());
}

Literal Moment::at_least(std::int64_t time) const {
    const std::int64_t k = time - earliest();
    if (k <= 0) {
        return always;
    }
    return k >= size() ? never : (*literals_)[static_cast<std::size_t>(k)];
}

std::int64_t Moment::in_model(const Clauses& clauses) const {
    std::int64_t time = latest();
    while (time > earliest() && !clauses.holds(at_least(time))) {
        --time;
    }
    return time;
}

void keep_apart(Clauses& clauses,
                const Moment& later,
                const Moment& earlier,
                std::int64_t gap,
                const std::vector<Literal>& unless) {
    Literal before = always;
    for (std::int64_t t = earlier.earliest(); t <= earlier.latest(); ++t) {
        if (!earlier.is_value(t)) {
            continue;
        }
        const Literal when = earlier.at_least(t);
        const Literal then = later.at_least(t + gap);
        // What a smaller value already asks for is not asked again. Two moments of the same
        // literals say it without a clause.
        if (then != before && then != when) {
            clauses.add(with(unless, -when, then));
        }
        before = then;
        if (then == never) {
            return;
        }
    }
}

void mark_apart(Clauses& clauses,
                const Moment& later,
                const Moment& earlier,
                std::int64_t gap,
                Literal then,
                const std::vector<Literal>& unless) {
    std::vector<Literal> others = unless;
    others.push_back(then);
    Literal after = 0; // no literal
    for (std::int64_t t = earlier.latest(); t >= earlier.earliest(); --t) {
        if (!earlier.is_value(t)) {
            continue;
        }
        const Literal far = later.at_least(t + gap);
        if (far != after && far != never) {
            clauses.add(with(others, -far, -earlier.at_most(t)));
        }
        after = far;
    }
}

} // namespace loafwright::schedule::sat

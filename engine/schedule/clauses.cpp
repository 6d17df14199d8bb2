// SPDX-License-Identifier: Apache-2.0
//
// CaDiCaL (Biere, Fazekas, Fleury, Heisinger, "CaDiCaL, Kissat, Paracooba, Plingeling and
// Treengeling entering the SAT Competition 2020", 2020), used incrementally: clauses are only ever
// added, and what is tried is assumed. Its own limit is one of a single call, so the clauses it
// learns are counted here, one for each conflict, and what is left is handed to the next call.
#include "engine/schedule/clauses.hpp"

#include <cadical.hpp>

#include <algorithm>
#include <limits>

namespace loafwright::schedule::sat {

namespace {

class Counter : public CaDiCaL::Learner {
public:
    bool learning(int) override {
        ++learned;
        return false; // the number is enough
    }
    void learn(int) override {}

    std::int64_t learned = 0;
};

} // namespace

struct Clauses::Inside {
    CaDiCaL::Solver solver;
    Counter counter;
    std::int64_t conflicts = 0;
};

Clauses::Clauses(std::int64_t conflicts) : inside_(std::make_unique<Inside>()) {
    inside_->conflicts = conflicts;
    inside_->solver.set("quiet", 1); // it would write to standard output
    inside_->solver.connect_learner(&inside_->counter);
    add({fresh()}); // `always`
}

Clauses::~Clauses() {
    inside_->solver.disconnect_learner();
}

Literal Clauses::fresh() {
    return ++last_;
}

void Clauses::add(const std::vector<Literal>& clause) {
    if (last_ > 1 && std::find(clause.begin(), clause.end(), always) != clause.end()) {
        return;
    }
    literals_ += static_cast<std::int64_t>(clause.size()) + 1;
    if (too_large()) {
        return;
    }
    for (const Literal literal : clause) {
        if (literal != never) {
            inside_->solver.add(literal);
        }
    }
    inside_->solver.add(0);
}

Answer Clauses::solve(const std::vector<Literal>& assumptions) {
    const std::int64_t left = conflicts_left();
    if (left <= 0 || too_large()) {
        return Answer::stopped;
    }
    for (const Literal literal : assumptions) {
        inside_->solver.assume(literal);
    }
    inside_->solver.limit(
        "conflicts",
        static_cast<int>(std::min<std::int64_t>(left, std::numeric_limits<int>::max())));
    const int answer = inside_->solver.solve();
    if (answer == 10) {
        model_.resize(static_cast<std::size_t>(last_) + 1);
        for (Literal variable = 1; variable <= last_; ++variable) {
            model_[static_cast<std::size_t>(variable)] = inside_->solver.val(variable) > 0;
        }
        return Answer::yes;
    }
    return answer == 20 ? Answer::no : Answer::stopped;
}

bool Clauses::holds(Literal literal) const {
    const auto variable = static_cast<std::size_t>(std::abs(literal));
    return (variable < model_.size() && model_[variable]) == (literal > 0);
}

bool Clauses::failed(Literal assumption) const {
    return inside_->solver.failed(assumption);
}

bool Clauses::impossible(Literal literal) const {
    return literal == never || (literal != always && inside_->solver.fixed(literal) < 0);
}

void Clauses::prefer(Literal literal) {
    if (literal != always && literal != never) {
        inside_->solver.phase(literal);
        preferred_.push_back(literal);
    }
}

void Clauses::forget_preferences() {
    for (const Literal literal : preferred_) {
        inside_->solver.unphase(literal);
    }
    preferred_.clear();
}

void Clauses::limit(std::int64_t conflicts) {
    inside_->conflicts = inside_->counter.learned + conflicts;
}

std::int64_t Clauses::conflicts_left() const {
    return inside_->conflicts - inside_->counter.learned;
}

} // namespace loafwright::schedule::sat

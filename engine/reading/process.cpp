// SPDX-License-Identifier: Apache-2.0
//
// Which step each clause is, decided over the whole method at once. The dough is in one of a few
// states (raw, dough, risen, shaped…); a step moves it on at a cost that data/process.toml gives.
// The best path through all clauses is found by Viterbi's algorithm (Viterbi 1967, IEEE Trans. Inf.
// Theory 13:260, from memory). A clause may also be no step, which costs nothing and earns nothing.
#include "engine/reading/process.hpp"

#include <algorithm>
#include <limits>

namespace loafwright::reading {
namespace {

constexpr double unlisted = 3.0;      // a kind that the data does not expect in a state
constexpr double against_words = 0.8; // a state other than the one that the words name
constexpr double never = -std::numeric_limits<double>::infinity();

} // namespace

Process::Process(const Knowledge& knowledge) {
    const auto state_of = [this](std::string_view name) {
        const auto found = std::find(states_.begin(), states_.end(), name);
        if (found != states_.end()) {
            return static_cast<std::size_t>(found - states_.begin());
        }
        states_.push_back(name);
        return states_.size() - 1;
    };
    for (const ProcessRow& row : knowledge.process) {
        if (row.from != "*") {
            state_of(row.from);
        }
        if (row.to != "=") {
            state_of(row.to);
        }
    }
    moves_.resize(states_.size());
    for (const ProcessRow& row : knowledge.process) {
        const auto kind = step_kind_named(row.kind);
        if (!kind) {
            continue;
        }
        for (std::size_t state = 0; state < states_.size(); ++state) {
            if (row.from == "*" || row.from == states_[state]) {
                const std::size_t to = row.to == "=" ? state : state_of(row.to);
                moves_[state][static_cast<std::size_t>(*kind)].push_back({to, row.cost});
            }
        }
    }
}

std::vector<Decision> Process::decide(const std::vector<std::vector<Candidate>>& clauses) const {
    const std::size_t states = states_.size();
    std::vector<Decision> decisions(clauses.size());
    if (states == 0 || clauses.empty()) {
        return decisions;
    }
    struct Step {
        std::size_t from = 0;
        int candidate = -1; // -1: no step
    };
    std::vector<double> best(states, never);
    best[0] = 0.0; // the first state in data is where every method begins
    std::vector<std::vector<Step>> paths(clauses.size(), std::vector<Step>(states));
    for (std::size_t clause = 0; clause < clauses.size(); ++clause) {
        std::vector<double> next(states, never);
        double loss = 0.0;
        for (const Candidate& candidate : clauses[clause]) {
            loss = std::max(loss, candidate.loss);
        }
        std::vector<Step>& path = paths[clause];
        for (std::size_t state = 0; state < states; ++state) {
            if (best[state] == never) {
                continue;
            }
            const auto reach = [&](std::size_t to, double value, int candidate) {
                if (value > next[to] + 1e-12) {
                    next[to] = value;
                    path[to] = {state, candidate};
                }
            };
            reach(state, best[state] - loss, -1);
            for (std::size_t index = 0; index < clauses[clause].size(); ++index) {
                const Candidate& candidate = clauses[clause][index];
                const auto& moves = moves_[state][static_cast<std::size_t>(candidate.kind)];
                if (moves.empty()) {
                    reach(state, best[state] + candidate.score - unlisted, static_cast<int>(index));
                }
                for (const Move& move : moves) {
                    const bool elsewhere =
                        !candidate.leads_to.empty() &&
                        (candidate.leads_to == "sponge") != (states_[move.to] == "sponge");
                    reach(move.to,
                          best[state] + candidate.score - move.cost -
                              (elsewhere ? against_words : 0.0),
                          static_cast<int>(index));
                }
            }
        }
        best = std::move(next);
    }
    std::size_t state =
        static_cast<std::size_t>(std::max_element(best.begin(), best.end()) - best.begin());
    for (std::size_t clause = clauses.size(); clause > 0; --clause) {
        const Step& step = paths[clause - 1][state];
        if (step.candidate >= 0) {
            const Candidate& candidate =
                clauses[clause - 1][static_cast<std::size_t>(step.candidate)];
            decisions[clause - 1].kind = candidate.kind;
            decisions[clause - 1].score = candidate.score;
        }
        state = step.from;
    }
    return decisions;
}

} // namespace loafwright::reading

// SPDX-License-Identifier: Apache-2.0
//
// What covers a cell, line by line; sums larger than one become decision diagrams. Only cells in
// which the uses can be too many get any clause.
#include "engine/schedule/crowds.hpp"

#include "engine/schedule/diagrams.hpp"

#include <algorithm>
#include <utility>

namespace loafwright::schedule::sat {

void at_most_one(Clauses& clauses, const std::vector<Literal>& literals, Literal unless) {
    constexpr std::size_t most_pairwise = 6;
    if (literals.size() <= most_pairwise) {
        for (std::size_t a = 0; a < literals.size(); ++a) {
            for (std::size_t b = a + 1; b < literals.size(); ++b) {
                clauses.add({unless, -literals[a], -literals[b]});
            }
        }
        return;
    }
    // A ladder: `seen` holds once one of those before does.
    Literal seen = literals.front();
    for (std::size_t k = 1; k < literals.size(); ++k) {
        clauses.add({unless, -seen, -literals[k]});
        if (k + 1 < literals.size()) {
            const Literal next = clauses.fresh();
            clauses.add({-seen, next});
            clauses.add({-literals[k], next});
            seen = next;
        }
    }
}

void Crowds::add(const Moment& start,
                 const Moment& end,
                 int weight,
                 const std::vector<Literal>& unless) {
    if (weight > 0) {
        lines_.back().push_back({start, end, weight, unless});
    }
}

void Crowds::keep(int most, Literal rule) {
    for (std::int64_t cell = 0; cell < horizon_ && !clauses_.too_large(); ++cell) {
        keep_cell(cell, most, rule);
    }
}

void Crowds::keep_cell(std::int64_t cell, std::int64_t most, Literal rule) {
    const auto covers = [cell](const Use& use) {
        return use.start.earliest() <= cell && use.end.latest() > cell;
    };
    std::int64_t largest = 0;
    for (const std::vector<Use>& line : lines_) {
        int heaviest = 0;
        for (const Use& use : line) {
            heaviest = covers(use) ? std::max(heaviest, use.weight) : heaviest;
        }
        largest += heaviest;
    }
    if (largest <= most) {
        return;
    }
    std::vector<InCell> used;
    for (const std::vector<Use>& line : lines_) {
        InCell here;
        for (const Use& use : line) {
            if (!covers(use)) {
                continue;
            }
            Literal& literal = here[use.weight];
            literal = literal == 0 ? clauses_.fresh() : literal;
            std::vector<Literal> clause = use.unless;
            clause.push_back(use.start.at_least(cell + 1));
            clause.push_back(use.end.at_most(cell));
            clause.push_back(literal);
            clauses_.add(clause);
        }
        if (!here.empty()) {
            used.push_back(std::move(here));
        }
    }
    if (most == 1) {
        std::vector<Literal> literals;
        for (const InCell& line : used) {
            for (const auto& [weight, literal] : line) {
                if (weight > 1) {
                    clauses_.add({rule, -literal});
                } else {
                    literals.push_back(literal);
                }
            }
        }
        at_most_one(clauses_, literals, rule);
        return;
    }
    std::vector<Line> lines;
    for (const InCell& line : used) {
        lines.emplace_back();
        for (const auto& [weight, literal] : line) {
            lines.back().push_back({weight, literal});
        }
    }
    keep_sum(clauses_, std::move(lines), most, rule);
}

} // namespace loafwright::schedule::sat

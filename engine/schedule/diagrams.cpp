// SPDX-License-Identifier: Apache-2.0
//
// Reduced decision diagrams of sums whose parts come in lines, at most one of a line (Bofill, Coll,
// Suy, Villaret, "Compact MDDs for pseudo-Boolean constraints with at-most-one relations in
// resource-constrained scheduling problems", IJCAI 2017). A node says "what is left of the lines
// fits into this budget". Budgets between which nothing changes share a node, and since more budget
// never hurts one implication an edge is enough (Abío, Nieuwenhuis, Oliveras, Rodríguez-Carbonell,
// Mayer-Eichberger, "A new look at BDDs for pseudo-Boolean constraints", JAIR 45, 2012).
#include "engine/schedule/diagrams.hpp"

#include <algorithm>
#include <iterator>
#include <limits>
#include <map>

namespace loafwright::schedule::sat {

namespace {

constexpr std::int64_t unbounded = std::numeric_limits<std::int64_t>::max() / 4;

/// The same literal for every budget in [low, high].
struct Node {
    std::int64_t low = 0;
    std::int64_t high = 0;
    Literal literal = never;
};

class Diagram {
public:
    Diagram(Clauses& clauses, const std::vector<Line>& lines)
        : clauses_(clauses), lines_(lines), still_(lines.size() + 1, 0), known_(lines.size()) {
        for (std::size_t k = lines.size(); k-- > 0;) {
            std::int64_t heaviest = 0;
            for (const Choice& choice : lines[k]) {
                heaviest = std::max(heaviest, choice.weight);
            }
            still_[k] = still_[k + 1] + heaviest;
        }
    }

    Node node(std::size_t line, std::int64_t budget) {
        if (budget < 0) {
            return {-unbounded, -1, never};
        }
        if (budget >= still_[line]) {
            return {still_[line], unbounded, always};
        }
        auto& here = known_[line];
        const auto next = here.upper_bound(budget);
        if (next != here.begin() && std::prev(next)->second.high >= budget) {
            return std::prev(next)->second;
        }
        const Node made = make(line, budget);
        here[made.low] = made;
        return made;
    }

private:
    Node make(std::size_t line, std::int64_t budget) {
        const Node without = node(line + 1, budget);
        Node made = without;
        std::vector<std::vector<Literal>> edges;
        for (const Choice& choice : lines_[line]) {
            const Node with = node(line + 1, budget - choice.weight);
            made.low = std::max(made.low, with.low + choice.weight);
            made.high = std::min(made.high, with.high + choice.weight);
            if (with.literal != without.literal) {
                edges.push_back({-choice.literal, with.literal});
            }
        }
        if (edges.empty() || clauses_.too_large()) {
            return made;
        }
        made.literal = clauses_.fresh();
        if (without.literal != always) {
            clauses_.add({-made.literal, without.literal});
        }
        for (std::vector<Literal>& edge : edges) {
            edge.push_back(-made.literal);
            clauses_.add(edge);
        }
        return made;
    }

    Clauses& clauses_;
    const std::vector<Line>& lines_;
    std::vector<std::int64_t> still_; // the most that this line and those after it can add
    std::vector<std::map<std::int64_t, Node>> known_; // by line, then by `low`
};

} // namespace

void keep_sum(Clauses& clauses, std::vector<Line> lines, std::int64_t most, Literal unless) {
    const auto heaviest = [](const Line& line) {
        std::int64_t weight = 0;
        for (const Choice& choice : line) {
            weight = std::max(weight, choice.weight);
        }
        return weight;
    };
    // Heavy lines first: they leave few different budgets.
    std::stable_sort(lines.begin(), lines.end(), [&](const Line& a, const Line& b) {
        return heaviest(a) > heaviest(b);
    });
    const Node root = Diagram(clauses, lines).node(0, most);
    if (root.literal != always) {
        clauses.add({unless, root.literal});
    }
}

} // namespace loafwright::schedule::sat

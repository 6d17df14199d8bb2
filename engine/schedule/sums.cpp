// SPDX-License-Identifier: Apache-2.0
//
// The generalised totalizer (Joshi, Martins, Manquinho, "Generalized totalizer encoding for
// pseudo-Boolean constraints", CP 2015): a balanced tree of sums, each node with one literal for
// each value that its parts can reach, cut off at a cap.
#include "engine/schedule/sums.hpp"

#include <algorithm>

namespace loafwright::schedule::sat {

namespace {

Sum merged(Clauses& clauses, const Sum& a, const Sum& b, std::int64_t cap) {
    Sum sum;
    const auto reach = [&](std::int64_t value, const std::vector<Literal>& when) {
        Literal& literal = sum[std::min(value, cap)];
        literal = literal == 0 ? clauses.fresh() : literal;
        std::vector<Literal> clause = when;
        clause.push_back(literal);
        clauses.add(clause);
    };
    for (const auto& [value, literal] : a) {
        reach(value, {-literal});
    }
    for (const auto& [value, literal] : b) {
        reach(value, {-literal});
        for (const auto& [other, too] : a) {
            reach(value + other, {-literal, -too});
        }
    }
    Literal smaller = 0;
    for (const auto& [value, literal] : sum) {
        if (smaller != 0) {
            clauses.add({-literal, smaller});
        }
        smaller = literal;
    }
    return sum;
}

} // namespace

Sum total(Clauses& clauses, std::vector<Sum> parts, std::int64_t cap) {
    if (parts.empty()) {
        return {};
    }
    parts.emplace_back(); // so that one part alone is cut as well
    while (parts.size() > 1 && !clauses.too_large()) {
        std::vector<Sum> half;
        for (std::size_t k = 0; k + 1 < parts.size(); k += 2) {
            half.push_back(merged(clauses, parts[k], parts[k + 1], cap));
        }
        if (parts.size() % 2 == 1) {
            half.push_back(std::move(parts.back()));
        }
        parts = std::move(half);
    }
    return parts.front();
}

std::vector<Literal> at_most(const Sum& sum, std::int64_t bound) {
    std::vector<Literal> assumed;
    for (auto entry = sum.upper_bound(bound); entry != sum.end(); ++entry) {
        assumed.push_back(-entry->second);
    }
    return assumed;
}

} // namespace loafwright::schedule::sat

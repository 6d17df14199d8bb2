// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/schedule/clauses.hpp"
#include "engine/schedule/moments.hpp"

#include <cstdint>
#include <map>
#include <vector>

/// What is used in a cell stays within what is there. Other rooms use solve.hpp.
namespace loafwright::schedule::sat {

/// At most one of them holds, unless `unless` does.
void at_most_one(Clauses& clauses, const std::vector<Literal>& literals, Literal unless);

/// Uses of one thing, cell by cell. Uses on one line never meet.
class Crowds {
public:
    Crowds(Clauses& clauses, std::int64_t horizon) : clauses_(clauses), horizon_(horizon) {}

    void next_line() { lines_.emplace_back(); }
    /// [start, end) uses `weight`, unless one of `unless` holds.
    void
    add(const Moment& start, const Moment& end, int weight, const std::vector<Literal>& unless);
    /// In every cell the uses together stay within `most`, unless `rule` holds.
    void keep(int most, Literal rule);

private:
    struct Use {
        Moment start;
        Moment end;
        int weight = 0;
        std::vector<Literal> unless;
    };
    // The literals of one line in one cell, by weight.
    using InCell = std::map<int, Literal>;

    void keep_cell(std::int64_t cell, std::int64_t most, Literal rule);

    Clauses& clauses_;
    std::int64_t horizon_;
    std::vector<std::vector<Use>> lines_;
};

} // namespace loafwright::schedule::sat

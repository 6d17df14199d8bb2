// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/knowledge/knowledge.hpp"
#include "engine/recipe/recipe.hpp"

#include <array>
#include <cstddef>
#include <optional>
#include <string_view>
#include <vector>

namespace loafwright::reading {

/// One thing that a clause may mean, and how well its words speak for it (higher is better; 0 is
/// "as likely nothing").
struct Candidate {
    StepKind kind = StepKind::mix;
    double score = 0.0;
    /// "sponge" or "dough" where the words say which of the two is made ("to a batter"); else
    /// empty.
    std::string_view leads_to;
    /// What it costs to leave the clause without a step: a bake with its time is never passed over.
    double loss = 0.0;
};

/// What was decided for one clause.
struct Decision {
    std::optional<StepKind> kind; // none: it is no step
    double score = 0.0;           // words less order, for explaining
};

/// The order in which bread is made, as costs.
class Process {
public:
    explicit Process(const Knowledge& knowledge);

    /// Chooses a meaning for every clause, all together: the sum of scores less the costs of the
    /// order is greatest.
    ///
    /// Method:   Viterbi's shortest path over (clause, state of the dough); ties go to the earlier
    /// candidate and the
    ///           state that stands first in data, so that the same text is read alike everywhere.
    /// Promises: one decision a clause; time in proportion to clauses.
    [[nodiscard]] std::vector<Decision>
    decide(const std::vector<std::vector<Candidate>>& clauses) const;

private:
    struct Move {
        std::size_t to = 0;
        double cost = 0.0;
    };
    std::vector<std::string_view> states_;
    std::vector<std::array<std::vector<Move>, step_kind_count>> moves_; // by state
};

} // namespace loafwright::reading

// SPDX-License-Identifier: Apache-2.0
//
// The public door: one line of tasks goes to the sweep, which is hundreds of times faster there,
// everything else to the search.
#include "engine/schedule/chain.hpp"
#include "engine/schedule/search.hpp"
#include "engine/schedule/solve.hpp"

namespace loafwright::schedule {

Outcome solve(const Problem& problem, const Wish& wish, std::int64_t conflicts) {
    Diagnostics faults = faults_in(problem);
    if (!faults.empty()) {
        return OutOfReach{std::move(faults)};
    }
    if (chain::order_of(problem)) {
        Outcome outcome = solve_chain(problem, wish);
        if (!std::holds_alternative<OutOfReach>(outcome)) {
            return outcome;
        }
    }
    return sat::Search(problem, wish, conflicts).run();
}

} // namespace loafwright::schedule

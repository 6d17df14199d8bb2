// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/schedule/costs.hpp"
#include "engine/schedule/serial.hpp"
#include "engine/schedule/solve.hpp"

#include <cstdint>
#include <functional>
#include <optional>
#include <vector>

/// The best schedule, one objective after the other. Other rooms use solve.hpp.
namespace loafwright::schedule::sat {

/// Needs: `faults_in(problem)` is empty. Everything else, size included, is looked at here.
class Search {
public:
    Search(const Problem& problem, const Wish& wish, std::int64_t conflicts);

    Outcome run();

private:
    using Parts = std::function<std::vector<Sum>(std::int64_t cap)>;
    using Value = std::function<std::int64_t()>;

    // Each returns false when the limit came first; `best_` is then the best so far.
    std::optional<std::int64_t> least_sum(const Parts& parts, const Value& value);
    bool latest_first_start();
    bool earliest_first_start();
    bool earliest_end();
    bool settle_ties();
    bool settle_ways();
    bool settle(const Moment& moment, bool late);
    bool settle_people(const EncodedTask& task);

    void build();
    [[nodiscard]] cells::DayCells narrowed() const;
    void note_proven(const std::optional<LeastCost>& least);
    bool keep_narrow();
    bool begin_again(cells::DayCells narrower);
    bool keep_first_start();
    void keep_found();
    void prefer(const Schedule& schedule);
    Answer ask(const std::vector<Literal>& assumptions);
    void fix(const std::vector<Literal>& literals);
    [[nodiscard]] std::int64_t first_start() const;
    [[nodiscard]] std::int64_t last_end() const;
    [[nodiscard]] std::vector<Literal> all_from(std::int64_t first) const;
    [[nodiscard]] Literal some_by(std::int64_t last);
    [[nodiscard]] std::vector<Literal> all_over_by(std::int64_t end) const;

    const Problem& problem_;
    Wish wish_;
    cells::DayCells day_;
    std::optional<Clauses> clauses_;
    std::optional<Encoding> encoding_;
    std::vector<std::size_t> order_; // of the jobs, in which ties are settled
    Schedule best_;
    // What is known to be the best, in cells.
    std::optional<std::int64_t> violations_;
    std::optional<std::int64_t> tied_;
    std::optional<std::int64_t> first_from_;
    std::optional<std::int64_t> first_to_;
    std::optional<std::int64_t> last_end_;
    std::int64_t starts_ = 0; // left when the clauses were made
};

} // namespace loafwright::schedule::sat

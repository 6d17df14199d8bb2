// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/schedule/cells.hpp"
#include "engine/schedule/clauses.hpp"
#include "engine/schedule/moments.hpp"
#include "engine/schedule/problem.hpp"

#include <cstddef>
#include <map>
#include <optional>
#include <string>
#include <utility>
#include <vector>

/// The rules as clauses. Other rooms use solve.hpp.
namespace loafwright::schedule::sat {

/// Whether each rule can be left out by not assuming its guard.
enum class Guards { none, one_a_rule };

/// What may be guarded: a rule by its name, for one job or for all of them.
struct GuardedRule {
    std::string rule;
    std::optional<std::size_t> job;
    Literal guard = always;
};

struct EncodedTask {
    Moment start;
    Moment end;
    std::vector<Literal> person; // for hands tasks: who does it
};

struct EncodedJob {
    std::vector<Literal> ways; // which of JobCells::ways is chosen, exactly one
    std::vector<EncodedTask> tasks;
    std::vector<std::vector<bool>> precedes; // [a][b]: a is over when b starts, under every way
};

/// Every rule of README.md over the cells of one day.
///
/// Needs:    `day.impossible` is false; `day` outlives this.
/// Promises: the models of `clauses` (with every guard assumed) are the schedules that keep every
///           rule, on the grid.
class Encoding {
public:
    Encoding(Clauses& clauses, const cells::DayCells& day, Guards guards);

    [[nodiscard]] const std::vector<EncodedJob>& jobs() const { return jobs_; }
    [[nodiscard]] const std::vector<GuardedRule>& guarded() const { return guarded_; }
    /// In minutes.
    [[nodiscard]] Schedule in_model() const;

private:
    // One after the other: uses that can never meet, so that one literal a cell is enough.
    using Line = std::vector<std::size_t>;

    Literal unless(const char* rule, std::optional<std::size_t> job);
    // A task that starts so many cells after the start of another, under every way.
    struct Tow {
        std::size_t leader = 0;
        std::int64_t distance = 0;
    };

    [[nodiscard]] std::vector<Tow> tows_of(std::size_t j) const;
    [[nodiscard]] Moment led_start(std::size_t j, std::size_t leader, const std::vector<Tow>& tows);
    void make_job(std::size_t j);
    void keep_lags(std::size_t j);
    void keep_anchors(std::size_t j);
    void keep_calendars(std::size_t j);
    void keep_clear(std::vector<Literal> clause,
                    std::size_t j,
                    std::size_t i,
                    const std::vector<cells::Span>& spans,
                    std::int64_t heat);
    void keep_hands();
    void keep_oven_apart();
    void keep_pair_apart(std::pair<std::size_t, std::size_t> a,
                         std::pair<std::size_t, std::size_t> b);
    void keep_oven_space();
    void keep_fridge_space();

    [[nodiscard]] bool may_be_empty(std::size_t j, std::size_t i) const;
    [[nodiscard]] std::vector<Line> lines_of(std::size_t j, const std::vector<bool>& wanted) const;

    Clauses& clauses_;
    const cells::DayCells& day_;
    Guards guards_;
    std::vector<EncodedJob> jobs_;
    std::vector<GuardedRule> guarded_;
};

} // namespace loafwright::schedule::sat

// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/schedule/encode.hpp"
#include "engine/schedule/sittings.hpp"
#include "engine/schedule/sums.hpp"

#include <cstdint>
#include <optional>
#include <vector>

/// The two summed objectives as literals. Other rooms use solve.hpp.
namespace loafwright::schedule::sat {

/// `violations` in parts: one for each wish, one for the ways of each job.
std::vector<Sum>
violation_parts(Clauses& clauses, const cells::DayCells& day, const Encoding& encoding);

/// `tied`, in cells, beyond what no schedule can avoid.
class TiedParts {
public:
    /// Ways that are known to be impossible by now are left out.
    TiedParts(Clauses& clauses, const cells::DayCells& day, const Encoding& encoding);

    /// tied = base() + the sum of the parts.
    [[nodiscard]] std::int64_t base() const { return base_; }
    /// The parts, each exact up to `cap`. More is made only when more is asked for.
    std::vector<Sum> parts(std::int64_t cap);

private:
    // later − earlier − base, wherever one of some ways is chosen.
    struct Gap {
        Moment later;
        Moment earlier;
        std::int64_t base = 0;
        std::int64_t most = 0; // larger it cannot be
        std::vector<std::size_t> ways;
        std::vector<Literal> unless; // none where every way has it
        std::vector<Literal> levels;
    };

    void look_at_job(std::size_t j);
    void look_at_sitting(std::size_t j,
                         std::size_t w,
                         const cells::Sitting& sitting,
                         std::vector<Gap>& gaps);
    void look_at_path(std::size_t j,
                      std::size_t w,
                      const std::vector<cells::Piece>& path,
                      std::vector<Gap>& gaps);
    static void note(std::vector<Gap>& gaps, std::size_t way, const Gap& gap);
    void extend(Gap& gap, std::int64_t cap);

    Clauses& clauses_;
    const cells::DayCells& day_;
    const Encoding& encoding_;
    std::int64_t base_ = 0;
    std::vector<Gap> gaps_;
    std::vector<Sum> choices_; // what the choice of a way adds
};

} // namespace loafwright::schedule::sat

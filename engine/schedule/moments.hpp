// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/schedule/clauses.hpp"

#include <cstdint>
#include <memory>
#include <vector>

/// Points in time as literals: the order encoding. Other rooms use solve.hpp.
namespace loafwright::schedule::sat {

/// A moment among given values, one literal [moment >= v] for each value but the first.
///
/// A value between two that are possible shares the literal of the next one, so holes in a calendar
/// cost nothing. (Tamura, Taga, Kitagawa, Banbara, "Compiling finite linear CSP into SAT",
/// Constraints 14, 2009.)
class Moment {
public:
    Moment() = default;
    /// Needs: `values` ascending, not empty.
    Moment(Clauses& clauses, const std::vector<std::int64_t>& values);

    /// The same moment, later.
    [[nodiscard]] Moment plus(std::int64_t cells) const;

    [[nodiscard]] std::int64_t earliest() const { return from_ + offset_; }
    [[nodiscard]] std::int64_t latest() const { return earliest() + size() - 2; }
    [[nodiscard]] Literal at_least(std::int64_t time) const;
    [[nodiscard]] Literal at_most(std::int64_t time) const { return -at_least(time + 1); }
    /// Whether it can be this one; false for what lies in a hole.
    [[nodiscard]] bool is_value(std::int64_t time) const {
        return at_least(time) != at_least(time + 1);
    }
    /// Equal in every model because it is made of the same literals.
    [[nodiscard]] bool is_same(const Moment& other) const {
        return literals_ == other.literals_ && offset_ == other.offset_;
    }
    [[nodiscard]] std::int64_t in_model(const Clauses& clauses) const;

private:
    [[nodiscard]] std::int64_t size() const;

    std::int64_t from_ = 0;
    std::int64_t offset_ = 0;
    std::shared_ptr<const std::vector<Literal>> literals_; // [>= from_ + k], the last is `never`
};

/// `later` >= `earlier` + gap, unless one of `unless` holds.
void keep_apart(Clauses& clauses,
                const Moment& later,
                const Moment& earlier,
                std::int64_t gap,
                const std::vector<Literal>& unless);

/// later - earlier >= gap makes `then` true, unless one of `unless` holds.
void mark_apart(Clauses& clauses,
                const Moment& later,
                const Moment& earlier,
                std::int64_t gap,
                Literal then,
                const std::vector<Literal>& unless);

} // namespace loafwright::schedule::sat

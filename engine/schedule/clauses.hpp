// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstdint>
#include <memory>
#include <vector>

/// Yes-or-no questions with counted effort: the inner door to the SAT solver. Other rooms use
/// solve.hpp.
namespace loafwright::schedule::sat {

/// A statement that is true or false; minus says the opposite.
using Literal = int;
inline constexpr Literal always = 1;
inline constexpr Literal never = -1;

enum class Answer { yes, no, stopped };

/// Statements that must hold together, and a solver that is asked about them again and again.
///
/// Promises: the same calls give the same answers and the same model on every machine with the same
///           version of the solver; work is limited by counts, of conflicts and of literals.
/// Never:    prints, throws on input, or looks at a clock to decide anything.
class Clauses {
public:
    explicit Clauses(std::int64_t conflicts);
    ~Clauses();
    Clauses(const Clauses&) = delete;
    Clauses& operator=(const Clauses&) = delete;

    Literal fresh();
    /// At least one of them holds. `never` is left out; a clause with `always` adds nothing.
    void add(const std::vector<Literal>& clause);
    /// Can all clauses hold together with these?
    Answer solve(const std::vector<Literal>& assumptions = {});
    /// In the model of the last `yes`.
    [[nodiscard]] bool holds(Literal literal) const;
    /// Whether the last `no` needed this assumption.
    [[nodiscard]] bool failed(Literal assumption) const;
    /// Known to be false whatever is assumed.
    [[nodiscard]] bool impossible(Literal literal) const;
    /// Which side the next answers try first.
    void prefer(Literal literal);
    void forget_preferences();

    [[nodiscard]] std::int64_t conflicts_left() const;
    /// So many conflicts from here on.
    void limit(std::int64_t conflicts);
    /// More was added than is taken on; what came after is not there.
    [[nodiscard]] bool too_large() const { return literals_ > most_literals; }

    /// Of all clauses so far, one more for each clause.
    [[nodiscard]] std::int64_t literals() const { return literals_; }

    static constexpr std::int64_t most_literals = 8000000;

private:
    struct Inside;
    std::unique_ptr<Inside> inside_;
    std::vector<bool> model_;
    std::vector<Literal> preferred_;
    std::int64_t literals_ = 0;
    Literal last_ = 0;
};

} // namespace loafwright::schedule::sat

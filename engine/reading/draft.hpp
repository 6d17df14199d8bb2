// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/reading/clause.hpp"
#include "engine/recipe/recipe.hpp"

#include <cstddef>
#include <initializer_list>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace loafwright::reading {

/// A step in the making, with the clauses that it took.
struct Draft {
    Step step;
    std::vector<std::size_t> clauses;
    bool is_further = false;      // "then 20 minutes more": never one with the part before it
    bool turns_down = false;      // "turn the oven down": the next part of a bake
    bool at_night = false;        // the text goes on in the morning
    std::optional<Minutes> total; // "30 minutes in all", of this and the bakes before it
    double sureness = 0.0;        // of the decision, for explaining
};

/// What happened to a clause.
struct ClauseUse {
    std::optional<std::size_t> draft; // the step that it became or belongs to
    std::string_view why_not;         // else the reason, in words
};

struct Assembly {
    std::vector<Draft> drafts;
    std::vector<Reference> references;
    /// Two kinds of bread that the text gives different times for, as it calls them; empty when
    /// there is one.
    std::vector<std::string> kinds_of_bread;
    std::vector<ClauseUse> uses; // one a clause
};

/// A draft of this kind whose words are those of `range`, taken from one clause.
Draft draft_at(std::string_view text,
               const std::vector<Token>& tokens,
               TokenRange range,
               std::size_t clause,
               StepKind kind,
               Place place);

/// The part of the bread that a clause makes, none for the dough.
std::optional<std::string> part_of(const Clause& clause);

/// Does a step of this kind take a time worth stating?
bool takes_time(StepKind kind);

/// Is it a wait in which the dough rises?
bool is_rising(StepKind kind);

/// Does one of these words stand in the range?
bool any_word(const std::vector<Token>& tokens,
              TokenRange range,
              std::initializer_list<std::string_view> words);

/// A length of time as a band with its basis; "a side" counts twice.
TimedBand band_of(const DurationPhrase& duration);

/// Is it told as how long something takes (and not as a rhythm, an anchor or a shelf life)?
bool is_length(const DurationPhrase& duration);

/// "When they have stood half an hour, bake them": the length is of the wait before, not of the
/// clause's own step.
bool belongs_to_wait_before(const Clause& clause, const DurationPhrase& duration);

/// The last draft that is a wait, if any.
std::optional<std::size_t> last_wait_in(const Assembly& assembly);

} // namespace loafwright::reading

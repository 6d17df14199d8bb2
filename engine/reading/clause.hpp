// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/reading/clock.hpp"
#include "engine/reading/duration.hpp"
#include "engine/reading/layout.hpp"
#include "engine/reading/temperature.hpp"

#include <cstddef>
#include <optional>
#include <string_view>
#include <vector>

namespace loafwright::reading {

/// What a dependent part of a sentence says about its main part.
enum class SubKind { until, when, after, before, meanwhile, condition, relative };

struct SubClause {
    SubKind kind = SubKind::until;
    TokenRange range; // with its introducing word
};

/// A piece of a sentence with at most one action, and everything in it that may matter.
struct Clause {
    std::size_t block = 0;
    std::size_t sentence = 0;          // counted through the text
    const LexiconRow* label = nullptr; // what the block's label says is done
    std::string_view part; // of the block it stands in: "leaven", "soaker"…; empty for the dough
    TokenRange range;
    std::optional<Match> action; // none: it only says something about what stands before
    bool by_setting = false;     // the action is told by a place alone ("in the oven")
    double doubt = 0.0;          // how little the action looks like an order
    bool negated = false;
    bool optional = false;
    bool remedy = false;    // only if something goes wrong ("if it is too sticky, …")
    bool meanwhile = false; // runs beside the wait before it
    bool version = false;   // that other bread has a label of its own ("Day-before version: …")
    bool variant_of_block = false; // and fills its paragraph
    bool opens_variant = false;    // the clause that names it
    bool variant = false;          // another bread than the one being read ("for rolls…")
    std::vector<SubClause> subs;
    std::vector<DurationPhrase> durations;
    std::vector<ClockPhrase> clocks;
    std::vector<TemperaturePhrase> temperatures;
    std::vector<Match> cues;
    std::vector<Match> places;
    std::vector<Match> nouns;
    std::vector<Match> facts; // words whose loss would send the baker back to the book
};

/// Cuts the method's blocks into clauses.
///
/// Promises: the clauses of a block are in order, do not overlap and together cover every token of
/// the block.
std::vector<Clause> clauses_of(const Layout& layout, const Lexicon& lexicon);

} // namespace loafwright::reading

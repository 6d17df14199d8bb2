// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/knowledge/knowledge.hpp"

#include <cstddef>
#include <optional>
#include <string_view>

/// What the generator writes: the rows of data/ as constants. Only this room looks at them;
/// everybody else is handed a Knowledge.
namespace loafwright::knowledge {

/// Neighbouring entries in the list of words that goes with a table.
struct WordRange {
    std::size_t first = 0;
    std::size_t count = 0;
};

/// A row with lists of words cannot be a constant as it stands, so it is written without them and
/// they beside it.
template <typename Row>
struct ListedTable {
    const Row* rows = nullptr;
    std::size_t row_count = 0;
    const std::string_view* words = nullptr;
};

template <typename Row>
struct Table {
    const Row* rows = nullptr;
    std::size_t row_count = 0;
};

struct ListedIngredient {
    std::string_view item;
    WordRange aliases;
    std::optional<Band<Grams>> per_us_cup;
    std::optional<Grams> per_tablespoon;
    std::optional<Grams> per_teaspoon;
    std::optional<Band<Grams>> per_piece;
    std::string_view piece_name;
    std::optional<double> water_percent;
    std::optional<double> fat_percent;
    std::optional<double> sugar_percent;
    std::optional<double> salt_percent;
    std::optional<double> protein_percent;
    WordRange allergens;
    std::string_view role;
    std::string_view source;
    Trust trust = Trust::memory;
};

struct ListedUnit {
    std::string_view unit;
    WordRange written;
    Dimension dimension = Dimension::mass;
    WordRange regions;
    std::optional<Band<double>> value;
    std::string_view source;
    Trust trust = Trust::memory;
};

struct ListedCaution {
    std::string_view code;
    WordRange any_item;
    WordRange any_role;
    WordRange any_word;
    std::optional<StepKind> stage;
    std::optional<Place> place;
    std::optional<Minutes> longer_than;
    std::optional<Celsius> hotter_than;
    std::optional<Celsius> room_above;
    std::string_view text;
    int weight = 50;
    std::string_view source;
    Trust trust = Trust::memory;
};

struct ListedKit {
    std::string_view kit;
    WordRange words;
    std::string_view source;
};

struct ListedAhead {
    std::string_view what;
    WordRange any_item;
    WordRange any_role;
    WordRange any_word;
    WordRange unless_word;
    Minutes before;
    std::string_view source;
};

struct ListedSkill {
    std::string_view skill;
    std::optional<DoughFamily> family;
    std::optional<StepKind> kind;
    WordRange any_word;
    WordRange unless_word;
    int demand = 1;
    std::string_view says;
    std::string_view source;
    Trust trust = Trust::assumed;
};

struct ListedFaultSymptom {
    std::string_view key;
    std::string_view tells;
    WordRange says;
    double unexplained_share = 0.0;
    Proved proved = Proved::unsaid;
    std::string_view source;
    Trust trust = Trust::assumed;
};

struct ListedFormulaRange {
    std::string_view bread;
    WordRange any_word;
    std::optional<DoughFamily> family;
    std::optional<PercentRange> water;
    std::optional<PercentRange> salt;
    std::optional<PercentRange> yeast_as_fresh;
    std::optional<PercentRange> prefermented;
    std::optional<PercentRange> fat;
    std::optional<PercentRange> sugar;
    std::string_view source;
    Trust trust = Trust::assumed;
};

// One function for each generated file.
ListedTable<ListedIngredient> ingredients_table();
ListedTable<ListedUnit> units_table();
Table<OvenWordRow> oven_words_table();
Table<WarmthWordRow> warmth_words_table();
Table<StageDefaultRow> stage_defaults_table();
Table<CueRow> cues_table();
Table<NormalRow> normal_table();
ListedTable<ListedCaution> cautions_table();
ListedTable<ListedKit> kit_table();
ListedTable<ListedAhead> ahead_table();
Table<LexiconRow> lexicon_table();
Table<ProcessRow> process_table();
Table<RemedyRow> remedies_table();
ListedTable<ListedSkill> skills_table();
Table<LearningRow> learning_table();
Table<FaultCauseRow> fault_causes_table();
ListedTable<ListedFaultSymptom> fault_symptoms_table();
Table<FaultLinkRow> fault_links_table();
Table<FaultEvidenceRow> fault_evidence_table();
ListedTable<ListedFormulaRange> formula_ranges_table();
Table<TinFillRow> tin_fill_table();

} // namespace loafwright::knowledge

// SPDX-License-Identifier: Apache-2.0
//
// Makes the Knowledge that the program carries with it out of the generated constants. Most tables
// are copied as they stand; rows with lists of words get a vector for each list. Every vector is
// made in its final size, so that all of it costs well under a millisecond.

#include "engine/knowledge/knowledge.hpp"
#include "engine/knowledge/tables.hpp"

#include <cstddef>
#include <string_view>
#include <vector>

namespace loafwright {
namespace {

using knowledge::ListedTable;
using knowledge::Table;
using knowledge::WordRange;

using Words = std::vector<std::string_view>;

Words listed(const std::string_view* words, WordRange range) {
    if (range.count == 0) {
        return {};
    }
    return Words(words + range.first, words + range.first + range.count);
}

template <typename Row>
std::vector<Row> rows_of(const Table<Row>& table) {
    return std::vector<Row>(table.rows, table.rows + table.row_count);
}

template <typename Row, typename Listed, typename Convert>
std::vector<Row> rows_of(const ListedTable<Listed>& table, const Convert& convert) {
    std::vector<Row> rows;
    rows.reserve(table.row_count);
    for (std::size_t index = 0; index < table.row_count; ++index) {
        rows.push_back(convert(table.rows[index], table.words));
    }
    return rows;
}

IngredientRow ingredient(const knowledge::ListedIngredient& row, const std::string_view* words) {
    return IngredientRow{row.item,
                         listed(words, row.aliases),
                         row.per_us_cup,
                         row.per_tablespoon,
                         row.per_teaspoon,
                         row.per_piece,
                         row.piece_name,
                         row.water_percent,
                         row.fat_percent,
                         row.sugar_percent,
                         row.salt_percent,
                         row.protein_percent,
                         listed(words, row.allergens),
                         row.role,
                         row.source,
                         row.trust};
}

UnitRow unit(const knowledge::ListedUnit& row, const std::string_view* words) {
    return UnitRow{row.unit,
                   listed(words, row.written),
                   row.dimension,
                   listed(words, row.regions),
                   row.value,
                   row.source,
                   row.trust};
}

CautionRow caution(const knowledge::ListedCaution& row, const std::string_view* words) {
    return CautionRow{row.code,
                      listed(words, row.any_item),
                      listed(words, row.any_role),
                      listed(words, row.any_word),
                      row.stage,
                      row.place,
                      row.longer_than,
                      row.hotter_than,
                      row.room_above,
                      row.text,
                      row.weight,
                      row.source,
                      row.trust};
}

KitRow kit(const knowledge::ListedKit& row, const std::string_view* words) {
    return KitRow{row.kit, listed(words, row.words), row.source};
}

AheadRow ahead(const knowledge::ListedAhead& row, const std::string_view* words) {
    return AheadRow{row.what,
                    listed(words, row.any_item),
                    listed(words, row.any_role),
                    listed(words, row.any_word),
                    listed(words, row.unless_word),
                    row.before,
                    row.source};
}

SkillRow skill(const knowledge::ListedSkill& row, const std::string_view* words) {
    return SkillRow{row.skill,
                    row.family,
                    row.kind,
                    listed(words, row.any_word),
                    listed(words, row.unless_word),
                    row.demand,
                    row.says,
                    row.source,
                    row.trust};
}

FaultSymptomRow fault_symptom(const knowledge::ListedFaultSymptom& row,
                              const std::string_view* words) {
    return FaultSymptomRow{row.key,
                           row.tells,
                           listed(words, row.says),
                           row.unexplained_share,
                           row.proved,
                           row.source,
                           row.trust};
}

FormulaRangeRow formula_range(const knowledge::ListedFormulaRange& row,
                              const std::string_view* words) {
    return FormulaRangeRow{row.bread,
                           listed(words, row.any_word),
                           row.family,
                           row.water,
                           row.salt,
                           row.yeast_as_fresh,
                           row.prefermented,
                           row.fat,
                           row.sugar,
                           row.source,
                           row.trust};
}

} // namespace

Knowledge built_in_knowledge() {
    Knowledge all;
    all.ingredients = rows_of<IngredientRow>(knowledge::ingredients_table(), ingredient);
    all.units = rows_of<UnitRow>(knowledge::units_table(), unit);
    all.oven_words = rows_of(knowledge::oven_words_table());
    all.warmth_words = rows_of(knowledge::warmth_words_table());
    all.stage_defaults = rows_of(knowledge::stage_defaults_table());
    all.cues = rows_of(knowledge::cues_table());
    all.normal = rows_of(knowledge::normal_table());
    all.cautions = rows_of<CautionRow>(knowledge::cautions_table(), caution);
    all.kit = rows_of<KitRow>(knowledge::kit_table(), kit);
    all.ahead = rows_of<AheadRow>(knowledge::ahead_table(), ahead);
    all.lexicon = rows_of(knowledge::lexicon_table());
    all.process = rows_of(knowledge::process_table());
    all.remedies = rows_of(knowledge::remedies_table());
    all.skills = rows_of<SkillRow>(knowledge::skills_table(), skill);
    all.learning = rows_of(knowledge::learning_table());
    all.fault_causes = rows_of(knowledge::fault_causes_table());
    all.fault_symptoms = rows_of<FaultSymptomRow>(knowledge::fault_symptoms_table(), fault_symptom);
    all.fault_links = rows_of(knowledge::fault_links_table());
    all.fault_evidence = rows_of(knowledge::fault_evidence_table());
    all.formula_ranges = rows_of<FormulaRangeRow>(knowledge::formula_ranges_table(), formula_range);
    all.tin_fill = rows_of(knowledge::tin_fill_table());
    return all;
}

} // namespace loafwright

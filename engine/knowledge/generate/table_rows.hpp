// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/knowledge/generate/constants.hpp"
#include "engine/knowledge/generate/data_file.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

/// What the writers of the tables share, and the writers themselves: each goes through the rows of
/// its files and returns a source file.
namespace loafwright::generate {

using Names = std::vector<std::string_view>;

/// The words that a row may use, as the recipe room spells them.
const Names& kind_names();
const Names& place_names();
const Names& family_names();
/// What an ingredient can be in a dough.
const Names& role_names();

/// A whole source file; `rows` are the entries of the array, one a line, and `words` the lists that
/// go with them where the row type has any.
std::string source_file(std::string_view table,
                        std::string_view row_type,
                        const std::string& rows,
                        const WordPool* words);

/// "Trust::read".
std::string trust_of(const Origin& origin);
std::string lower(std::string_view text);
std::size_t word_count(std::string_view text);

/// Phrases are looked for in lower-case text, so they must be plain themselves.
void want_plain_phrases(const Row& row, std::string_view key, const std::vector<std::string>& all);
void want_within(const Row& row,
                 std::string_view key,
                 const std::optional<double>& value,
                 double most);

// About ingredients, amounts and heat: measure_tables.cpp.
std::string ingredients(std::vector<DataFile>& files);
std::string units(std::vector<DataFile>& files);
std::string oven_words(std::vector<DataFile>& files);
std::string warmth_words(std::vector<DataFile>& files);
// About steps: step_tables.cpp.
std::string stage_defaults(std::vector<DataFile>& files);
std::string cues(std::vector<DataFile>& files);
std::string normal(std::vector<DataFile>& files);
std::string cautions(std::vector<DataFile>& files);
std::string kit(std::vector<DataFile>& files);
std::string ahead(std::vector<DataFile>& files);
std::string remedies(std::vector<DataFile>& files);
std::string skills(std::vector<DataFile>& files);
// About what a kitchen teaches, and about faults: fault_tables.cpp.
std::string learning(std::vector<DataFile>& files);
std::string fault_causes(std::vector<DataFile>& files);
std::string fault_symptoms(std::vector<DataFile>& files);
std::string fault_links(std::vector<DataFile>& files);
std::string fault_evidence(std::vector<DataFile>& files);
// About how much of what: formula_tables.cpp.
std::string formula_ranges(std::vector<DataFile>& files);
std::string tin_fill(std::vector<DataFile>& files);
// About words: word_tables.cpp.
std::string lexicon(std::vector<DataFile>& files);
std::string process(std::vector<DataFile>& files);

} // namespace loafwright::generate

// SPDX-License-Identifier: Apache-2.0
//
// The tables about how much of what: usual percentages by kind of bread, and how full a tin is.

#include "engine/knowledge/generate/table_rows.hpp"

#include <fmt/format.h>

namespace loafwright::generate {

std::string formula_ranges(std::vector<DataFile>& files) {
    constexpr double most_percent = 150.0;
    std::string rows;
    WordPool words;
    SeenKeys breads;
    SeenKeys families;
    SeenKeys phrases;
    for (DataFile& file : files) {
        for (Row& row : file.rows()) {
            const std::string bread = row.text("bread");
            breads.add(row, "the bread", bread);
            const auto any_word = row.texts("any_word");
            want_plain_phrases(row, "any_word", any_word);
            for (const std::string& phrase : any_word) {
                phrases.add(row, "the word", phrase);
            }
            const auto family = row.word_if("family", family_names());
            if (any_word.empty() == !family.has_value()) {
                row.fault(fmt::format("{} needs any_word or a family, and not both", bread));
            }
            if (family) {
                families.add(row, "the family", *family);
            }
            std::string ranges;
            for (const std::string_view key : {"water_percent",
                                               "salt_percent",
                                               "yeast_fresh_percent",
                                               "prefermented_percent",
                                               "fat_percent",
                                               "sugar_percent"}) {
                const auto range = row.range_if(key);
                if (!range) {
                    ranges += "std::nullopt, ";
                    continue;
                }
                if (range->low < 0.0 || range->high > most_percent) {
                    row.fault_at(key, fmt::format("{} is outside 0 to {}", key, most_percent));
                }
                ranges += fmt::format(
                    "PercentRange{{{}, {}}}, ", literal(range->low), literal(range->high));
            }
            const Origin origin = row.origin();
            row.finish();
            const std::string word_range = words.range_of(any_word);
            rows += fmt::format("    {{{}, {}, {}, {}{}, {}}},\n",
                                quoted(bread),
                                word_range,
                                enumerator("DoughFamily", family),
                                ranges,
                                quoted(origin.cite),
                                trust_of(origin));
        }
    }
    return source_file("formula_ranges", "ListedFormulaRange", rows, &words);
}

std::string tin_fill(std::vector<DataFile>& files) {
    std::string rows;
    SeenKeys families;
    for (DataFile& file : files) {
        for (Row& row : file.rows()) {
            const std::string family = row.word("family", family_names());
            families.add(row, "the family", family);
            const auto fill = row.figures("litre_grams");
            // Raw dough weighs about 1100 g a litre.
            if (fill && (fill->low < 50.0 || fill->high > 1100.0)) {
                row.fault_at("litre_grams", "litre_grams is outside 50 to 1100");
            }
            const Origin origin = row.origin();
            row.finish();
            rows += fmt::format("    {{DoughFamily::{}, {}, {}, {}}},\n",
                                family,
                                band("Grams", fill),
                                quoted(origin.cite),
                                trust_of(origin));
        }
    }
    return source_file("tin_fill", "TinFillRow", rows, nullptr);
}

} // namespace loafwright::generate

// SPDX-License-Identifier: Apache-2.0
//
// The tables about what goes in and how warm: ingredients, units, words for ovens and for warmth.

#include "engine/knowledge/generate/table_rows.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

namespace loafwright::generate {
namespace {

const Names dimensions{"mass", "volume", "count", "factor", "ratio"};

} // namespace

std::string ingredients(std::vector<DataFile>& files) {
    std::string rows;
    WordPool words;
    SeenKeys items;
    SeenKeys names;
    for (DataFile& file : files) {
        for (Row& row : file.rows()) {
            const std::string item = row.text("item");
            items.add(row, "the item", item);
            std::vector<std::string> aliases = row.texts("aliases");
            for (const std::string& ours : row.texts("our_aliases")) {
                aliases.push_back(ours);
            }
            names.add(row, "the name", lower(item));
            for (const std::string& alias : aliases) {
                names.add(row, "the name", lower(alias));
            }
            const auto cup = row.figures_if("us_cup_grams");
            const auto tablespoon = row.number_if("tablespoon_grams");
            const auto teaspoon = row.number_if("teaspoon_grams");
            const auto piece = row.figures_if("piece_grams");
            const std::string piece_name = row.text_if("piece").value_or("");
            if (piece.has_value() == piece_name.empty()) {
                row.fault("piece and piece_grams come together");
            }
            std::string composition;
            double sum = 0.0;
            for (const std::string_view part : {"water_percent",
                                                "fat_percent",
                                                "sugar_percent",
                                                "salt_percent",
                                                "protein_percent"}) {
                const auto value = row.number_if(part);
                want_within(row, part, value, 100.0);
                sum += value.value_or(0.0);
                composition += literal(value) + ", ";
            }
            if (sum > 101.0) {
                row.fault(fmt::format("the parts of {} come to {} percent", item, sum));
            }
            const auto allergens = row.texts("allergens");
            const std::string role = row.word("role", role_names());
            const Origin origin = row.origin();
            row.finish();
            // Named one by one: the order in which arguments are worked out is not fixed.
            const std::string alias_range = words.range_of(aliases);
            const std::string allergen_range = words.range_of(allergens);
            rows += fmt::format("    {{{}, {}, {}, {}, {}, {}, {}, {}{}, {}, {}, {}}},\n",
                                quoted(item),
                                alias_range,
                                band("Grams", cup),
                                tagged("Grams", tablespoon),
                                tagged("Grams", teaspoon),
                                band("Grams", piece),
                                quoted(piece_name),
                                composition,
                                allergen_range,
                                quoted(role),
                                quoted(origin.cite),
                                trust_of(origin));
        }
    }
    return source_file("ingredients", "ListedIngredient", rows, &words);
}

std::string units(std::vector<DataFile>& files) {
    std::string rows;
    WordPool words;
    SeenKeys names;
    for (DataFile& file : files) {
        for (Row& row : file.rows()) {
            const std::string unit = row.text("unit");
            names.add(row, "the unit", unit);
            const auto written = row.texts("written");
            if (written.empty()) {
                row.fault(fmt::format("{} is written in no way, expected written = [\"…\"]", unit));
            }
            const std::string dimension = row.word("dimension", dimensions);
            std::optional<Figures> value;
            for (const auto& [key, belongs] :
                 {std::pair<std::string_view, std::string_view>{"size_grams", "mass"},
                  {"size_ml", "volume"},
                  {"size_count", "count"},
                  {"size_factor", "factor"}}) {
                const auto found = row.figures_if(key);
                if (!found) {
                    continue;
                }
                // A clove is counted and weighed: a count may be given in grams.
                if (belongs != dimension && !(dimension == "count" && belongs == "mass")) {
                    row.fault_at(key, fmt::format("{} does not go with {}", key, dimension));
                }
                if (value) {
                    row.fault_at(key, "this row has two sizes, expected one");
                }
                if (found->low <= 0.0) {
                    row.fault_at(
                        key, fmt::format("{} starts at {}, expected more than 0", key, found->low));
                }
                value = found;
            }
            const auto regions = row.texts("regions");
            const Origin origin = row.origin();
            row.finish();
            const std::string written_range = words.range_of(written);
            const std::string region_range = words.range_of(regions);
            rows += fmt::format("    {{{}, {}, Dimension::{}, {}, {}, {}, {}}},\n",
                                quoted(unit),
                                written_range,
                                dimension,
                                region_range,
                                value ? fmt::format("Band<double>{{{}, {}, {}}}",
                                                    literal(value->low),
                                                    literal(value->likely),
                                                    literal(value->high))
                                      : "std::nullopt",
                                quoted(origin.cite),
                                trust_of(origin));
        }
    }
    return source_file("units", "ListedUnit", rows, &words);
}

std::string oven_words(std::vector<DataFile>& files) {
    std::string rows;
    SeenKeys names;
    for (DataFile& file : files) {
        for (Row& row : file.rows()) {
            const auto all = row.texts("words");
            want_plain_phrases(row, "words", all);
            const auto oven = row.range("oven_c");
            if (oven && (oven->low < 40.0 || oven->high > 400.0)) {
                row.fault_at("oven_c", "oven_c is outside 40 to 400");
            }
            const Origin origin = row.origin();
            row.finish();
            for (const std::string& phrase : all) {
                names.add(row, "the words", phrase);
                rows += fmt::format("    {{{}, {{Celsius{{{}}}, Celsius{{{}}}}}, {}, {}}},\n",
                                    quoted(phrase),
                                    literal(oven ? oven->low : 0.0),
                                    literal(oven ? oven->high : 0.0),
                                    quoted(origin.cite),
                                    trust_of(origin));
            }
        }
    }
    return source_file("oven_words", "OvenWordRow", rows, nullptr);
}

std::string warmth_words(std::vector<DataFile>& files) {
    std::string rows;
    SeenKeys liquids;
    SeenKeys spots;
    for (DataFile& file : files) {
        for (Row& row : file.rows()) {
            const auto all = row.texts("words");
            want_plain_phrases(row, "words", all);
            const bool of_liquid = row.yes("of_liquid");
            const auto warmth = row.figures("temperature_c");
            if (warmth && (warmth->low < -40.0 || warmth->high > 110.0)) {
                row.fault_at("temperature_c", "temperature_c is outside -40 to 110");
            }
            const Origin origin = row.origin();
            row.finish();
            for (const std::string& phrase : all) {
                (of_liquid ? liquids : spots).add(row, "the words", phrase);
                rows += fmt::format("    {{{}, {}, {}, {}, {}}},\n",
                                    quoted(phrase),
                                    of_liquid,
                                    band("Celsius", warmth),
                                    quoted(origin.cite),
                                    trust_of(origin));
            }
        }
    }
    return source_file("warmth_words", "WarmthWordRow", rows, nullptr);
}

} // namespace loafwright::generate

// SPDX-License-Identifier: Apache-2.0
//
// Amounts: number, unit, and what they weigh. Units of one name differ by region (a British pint is
// a fifth larger than an American one), so the region is told from the words of the whole text
// first. Volumes are weighed by the ingredient's own figure per cup, with its band; small spoons by
// the figure per spoon where there is one.
#include "engine/reading/measure.hpp"

#include "engine/quantity/conversion.hpp"
#include "engine/reading/number.hpp"
#include "engine/recipe/words.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <string_view>

namespace loafwright::reading {
namespace {

std::string_view region_name(Region region) {
    return region == Region::uk ? "UK" : region == Region::au ? "AU" : "US";
}

bool lists(const UnitRow& row, std::string_view region) {
    return std::find(row.regions.begin(), row.regions.end(), region) != row.regions.end();
}

// "heaped", "scant", "rounded" before a unit.
struct Fill {
    std::string_view word;
    double factor_spoon;
    double factor_cup;
};

// Cups: level plus or less two tablespoons; rounded spoon 1.6 (SR28 pair, read); heaped spoon 2
// (from memory).
constexpr std::array<Fill, 8> fills = {{{"heaped", 2.0, 1.125},
                                        {"heaping", 2.0, 1.125},
                                        {"rounded", 1.6, 1.06},
                                        {"scant", 0.9, 0.94},
                                        {"generous", 1.1, 1.1},
                                        {"level", 1.0, 1.0},
                                        {"large", 1.2, 1.1},
                                        {"small", 0.85, 0.9}}};

const Fill* fill_at(const std::vector<Token>& tokens, std::size_t at, std::size_t end) {
    if (at >= end || tokens[at].kind != TokenKind::word) {
        return nullptr;
    }
    for (const Fill& fill : fills) {
        if (tokens[at].text == fill.word) {
            return &fill;
        }
    }
    return nullptr;
}

// "cm3", "cm³".
bool is_cubic(const std::vector<Token>& tokens, std::size_t at, std::size_t end) {
    return at + 1 < end && is_word(tokens[at], "cm") && tokens[at + 1].glued &&
           (tokens[at + 1].text == "3" || tokens[at + 1].text == "\xC2\xB3");
}

bool is_time_or_heat(const std::vector<Token>& tokens, std::size_t at, std::size_t end) {
    if (at >= end || is_cubic(tokens, at, end)) {
        return false;
    }
    static constexpr std::array<std::string_view, 24> words = {
        "minute", "minutes", "min",    "mins", "hour",  "hours", "hr",     "hrs",
        "h",      "day",     "days",   "week", "weeks", "month", "months", "degrees",
        "degree", "inch",    "inches", "cm",   "mm",    "in",    "times",  "o'clock"};
    if (tokens[at].kind == TokenKind::mark) {
        return tokens[at].text == "\xC2\xB0" || tokens[at].text == "%" || tokens[at].text == "\"";
    }
    for (const std::string_view word : words) {
        if (is_word(tokens[at], word)) {
            return !(word == "in" && !tokens[at].glued);
        }
    }
    return is_word(tokens[at], "c") && tokens[at].glued && tokens[at].capital && at > 0 &&
           tokens[at - 1].value >= 20;
}

} // namespace

Units::Units(const Knowledge& knowledge) : knowledge_(knowledge) {
    for (const UnitRow& row : knowledge.units) {
        for (const std::string_view written : row.written) {
            std::string plain;
            for (const char c : lower_case(written)) {
                if (c == '-') {
                    plain += ' ';
                } else if (c != '.') {
                    plain += c;
                }
            }
            auto& rows = written_[plain];
            if (std::find(rows.begin(), rows.end(), &row) == rows.end()) {
                rows.push_back(&row);
            }
        }
    }
}

const UnitRow* Units::named(std::string_view unit) const {
    const auto row = std::find_if(knowledge_.units.begin(),
                                  knowledge_.units.end(),
                                  [unit](const UnitRow& one) { return one.unit == unit; });
    return row == knowledge_.units.end() ? nullptr : &*row;
}

const UnitRow* Units::at(const std::vector<Token>& tokens,
                         std::size_t at,
                         std::size_t end,
                         Region region,
                         std::size_t& next,
                         bool& by_region) const {
    std::string joined;
    const std::vector<const UnitRow*>* found = nullptr;
    std::size_t words = 0;
    for (std::size_t token = at; token < end && words < 3; ++token) {
        if (is_mark(tokens[token], '.') && words > 0 && tokens[token].glued) {
            continue;
        }
        if (tokens[token].kind == TokenKind::mark && words == 0 &&
            written_.count(tokens[token].text) != 0) {
            joined = tokens[token].text; // #, ℔, ℓ
        } else if (tokens[token].kind == TokenKind::word) {
            if (words > 0) {
                joined += ' ';
            }
            joined += tokens[token].text;
        } else if (words == 1 && is_cubic(tokens, token - 1, end)) {
            joined += tokens[token].text; // cm3
        } else {
            break;
        }
        ++words;
        auto rows = written_.find(joined);
        if (rows == written_.end() && words == 1 && joined.size() > 4) { // teaspoonful, cupfuls
            for (const std::string_view tail : {"fuls", "ful"}) {
                if (joined.size() > tail.size() + 2 &&
                    joined.compare(joined.size() - tail.size(), tail.size(), tail) == 0) {
                    rows = written_.find(joined.substr(0, joined.size() - tail.size()));
                    break;
                }
            }
        }
        if (rows != written_.end()) {
            found = &rows->second;
            next = token + 1;
            if (next < end && is_mark(tokens[next], '.') && tokens[next].glued && next + 1 < end &&
                !tokens[next + 1].capital) {
                ++next; // "tsp."
            }
        }
    }
    if (found == nullptr) {
        return nullptr;
    }
    // T is a tablespoon, t a teaspoon.
    if (tokens[at].kind == TokenKind::word && tokens[at].text == "t") {
        for (const UnitRow* row : *found) {
            const bool table = row->unit.find("tablespoon") != std::string_view::npos;
            if (table == tokens[at].capital) {
                return row;
            }
        }
    }
    by_region = false;
    const UnitRow* best = nullptr;
    int best_rank = -1;
    const std::string_view wanted = region_name(region);
    for (const UnitRow* row : *found) {
        if (row->dimension == Dimension::factor) {
            continue;
        }
        const int rank = lists(*row, wanted)  ? 3
                         : lists(*row, "any") ? 2
                         : lists(*row, "old") ? 1
                                              : 0;
        if (rank > best_rank) {
            best = row;
            best_rank = rank;
        }
    }
    if (best != nullptr && best->value) {
        for (const UnitRow* row : *found) {
            const bool common = lists(*row, "US") || lists(*row, "UK");
            if (row != best && common && row->dimension == best->dimension && row->value &&
                std::abs(row->value->likely / best->value->likely - 1.0) > 0.1) {
                by_region = true;
            }
        }
    }
    return best;
}

bool is_package(const UnitRow& unit) {
    if (unit.dimension != Dimension::mass) {
        return false;
    }
    const auto says = [&unit](std::string_view word) {
        return unit.unit.find(word) != std::string_view::npos;
    };
    return !unit.value || says("yeast") || says("sachet") || says("stick");
}

namespace {

// The end of "42 g" in "one 42 g cube", a size with the package that has it behind; `at` when there
// is none.
std::size_t size_of_package(const std::vector<Token>& tokens,
                            std::size_t at,
                            std::size_t end,
                            const Units& units,
                            Region region) {
    if (at >= end || tokens[at].kind != TokenKind::number) {
        return at;
    }
    const auto size = number_phrase(tokens, at, end);
    std::size_t next = size ? size->range.end : at;
    bool ignored = false;
    if (next < end && is_mark(tokens[next], '-')) {
        ++next; // 14-oz
    }
    const UnitRow* unit = units.at(tokens, next, end, region, next, ignored);
    if (unit == nullptr || is_package(*unit) || !unit->value) {
        return at;
    }
    std::size_t behind = next;
    const UnitRow* package = units.at(tokens, next, end, region, behind, ignored);
    return package != nullptr && is_package(*package) ? next : at;
}

} // namespace

std::optional<Measure> measure_at(const std::vector<Token>& tokens,
                                  std::size_t at,
                                  std::size_t end,
                                  const Units& units,
                                  Region region) {
    double factor_spoon = 1.0;
    double factor_cup = 1.0;
    const auto take_fill = [&](std::size_t& token) {
        while (const Fill* fill = fill_at(tokens, token, end)) {
            std::size_t behind = token;
            bool ignored = false;
            if (units.at(tokens, token, end, region, behind, ignored) != nullptr) {
                return; // "large cake", "generous pinch" are units of their own
            }
            factor_spoon *= fill->factor_spoon;
            factor_cup *= fill->factor_cup;
            ++token;
        }
    };
    auto number = number_phrase(tokens, at, end);
    if (!number) {
        return std::nullopt;
    }
    double low = number->low;
    double high = number->high;
    std::size_t next = number->range.end;
    // 2 x 7 g sachets; 2 (7 g) packets
    if (next + 1 < end && (is_word(tokens[next], "x") || tokens[next].text == "\xC3\x97") &&
        tokens[next + 1].kind == TokenKind::number) {
        const auto each = number_phrase(tokens, next + 1, end);
        if (each) {
            low *= each->low;
            high *= each->high;
            next = each->range.end;
        }
    } else if (const std::size_t sized = size_of_package(tokens, next, end, units, region);
               sized != next) { // "one 42 g cube", "2 7g sachets"
        const auto each = number_phrase(tokens, next, end);
        low *= each->low;
        high *= each->high;
        next = each->range.end;
    }
    // "2 1/4-ounce packages": a hyphen ties the fraction to the ounces of each.
    const std::size_t last = next - 1;
    if (number->range.end == next && last > at && tokens[last].fraction && !tokens[last].glued &&
        low == high && next < end && is_mark(tokens[next], '-') && tokens[next].glued &&
        tokens[last - 1].kind == TokenKind::number &&
        size_of_package(tokens, last, end, units, region) != last) {
        low = high = std::floor(low) * tokens[last].value;
    }
    if (is_time_or_heat(tokens, next, end)) {
        return std::nullopt;
    }
    const std::size_t number_end = next; // "2 large eggs": the size belongs to the eggs
    take_fill(next);
    // "a large half of a yeast cake", "half of the milk"
    if (next + 1 < end && is_word(tokens[next], "of") &&
        (is_word(tokens[next + 1], "a") || is_word(tokens[next + 1], "an"))) {
        next += 2;
    } else if (next < end && number->low < 1.0 && is_word(tokens[next], "a")) {
        ++next;
    }
    take_fill(next);
    if (next < end && is_mark(tokens[next], '-') && tokens[next].glued) {
        ++next; // 14-oz
    }
    Measure measure;
    measure.about = number->about;
    std::size_t after = next;
    const UnitRow* unit = units.at(tokens, next, end, region, after, measure.by_region);
    measure.range = TokenRange{at, number_end};
    if (unit == nullptr || !unit->value) {
        measure.amount = between(low, high);
        measure.dimension = Dimension::count;
        return measure;
    }
    const bool spoon = unit->unit.find("spoon") != std::string_view::npos;
    const double factor = spoon ? factor_spoon : factor_cup;
    measure.unit = unit;
    measure.dimension = unit->dimension;
    measure.amount.low = low * unit->value->low * factor;
    measure.amount.high = high * unit->value->high * factor;
    measure.amount.likely = (low + high) / 2.0 * unit->value->likely * factor;
    measure.range.end = after;
    // "two gills and a half", "two pounds and a half"
    if (after + 2 < end && is_word(tokens[after], "and") &&
        (is_word(tokens[after + 1], "a") || is_word(tokens[after + 1], "one"))) {
        const auto part = single_number(tokens, after + 1, end);
        if (part && part->low < 1.0 && !part->article) {
            const double extra = part->low * factor;
            measure.amount.low += extra * unit->value->low;
            measure.amount.likely += extra * unit->value->likely;
            measure.amount.high += extra * unit->value->high;
            measure.range.end = part->range.end;
            after = part->range.end;
        }
    }
    // 1 lb 2 oz; 1 tbsp plus 1 tsp
    std::size_t from = after;
    const bool plus = from < end && (is_word(tokens[from], "plus") || is_mark(tokens[from], '+') ||
                                     is_word(tokens[from], "and"));
    if (plus) {
        ++from;
    }
    if (from < end && tokens[from].kind == TokenKind::number) {
        const auto further = number_phrase(tokens, from, end);
        std::size_t further_end = further ? further->range.end : from;
        bool ignored = false;
        const UnitRow* second =
            further ? units.at(tokens, further_end, end, region, further_end, ignored) : nullptr;
        const bool smaller = second != nullptr && second->value &&
                             second->dimension == unit->dimension &&
                             second->value->likely < unit->value->likely * 0.999;
        if (smaller) {
            measure.amount.low += further->low * second->value->low;
            measure.amount.likely += further->middle() * second->value->likely;
            measure.amount.high += further->high * second->value->high;
            measure.range.end = further_end;
        }
    }
    return measure;
}

std::optional<Band<Grams>>
weigh(const Measure& measure, const IngredientRow* row, Filling filling) {
    const Band<double>& amount = measure.amount;
    switch (measure.dimension) {
    case Dimension::mass:
        return Band<Grams>{Grams(amount.low), Grams(amount.likely), Grams(amount.high)};
    case Dimension::volume: {
        if (row == nullptr) {
            return std::nullopt;
        }
        const double cup = millilitres_per_us_cup.count();
        const bool spoon =
            measure.unit != nullptr && measure.unit->unit.find("spoon") != std::string_view::npos;
        double low = 0.0;
        double likely = 0.0;
        double high = 0.0;
        if (row->per_us_cup) {
            low = row->per_us_cup->low.count() / cup;
            likely = row->per_us_cup->likely.count() / cup;
            high = row->per_us_cup->high.count() / cup;
        }
        if (spoon && row->per_teaspoon && amount.likely < 60.0) {
            const double by_spoon = row->per_tablespoon && amount.likely >= 12.0
                                        ? row->per_tablespoon->count() / (cup / 16.0)
                                        : row->per_teaspoon->count() / (cup / 48.0);
            low = likely > 0.0 ? by_spoon * low / likely : by_spoon * 0.85;
            high = likely > 0.0 ? by_spoon * high / likely : by_spoon * 1.15;
            likely = by_spoon;
        }
        if (filling == Filling::sifted) {
            high = (low + likely) / 2.0;
            likely = low;
        } else if (filling == Filling::spooned) {
            high = likely;
            likely = (low + high) / 2.0;
        } else if (filling == Filling::scooped) {
            low = likely;
            likely = (low + high) / 2.0;
        }
        // A millilitre of water is a gram to anybody with a scale (0.998 g at 20 °C).
        const bool metric =
            measure.unit != nullptr && measure.unit->unit.find("litre") != std::string_view::npos;
        if (metric && row->item == "water") {
            low = likely = high = 1.0;
        }
        if (likely <= 0.0) {
            return std::nullopt;
        }
        return Band<Grams>{
            Grams(amount.low * low), Grams(amount.likely * likely), Grams(amount.high * high)};
    }
    case Dimension::count:
        if (row == nullptr || !row->per_piece) {
            return std::nullopt;
        }
        return Band<Grams>{amount.low * row->per_piece->low,
                           amount.likely * row->per_piece->likely,
                           amount.high * row->per_piece->high};
    case Dimension::factor:
    case Dimension::ratio:
        break;
    }
    return std::nullopt;
}

Region region_of(const std::vector<Token>& tokens,
                 const std::vector<WordIds>& ids,
                 const Lexicon& lexicon) {
    double us = 0.0;
    double uk = 0.0;
    double au = 0.0;
    for (const Match& match : lexicon.find("region", tokens, ids, TokenRange{0, tokens.size()})) {
        (match.row->means == "us" ? us : match.row->means == "uk" ? uk : au) += match.weight;
    }
    bool celsius = false;
    bool fahrenheit = false;
    for (std::size_t at = 1; at < tokens.size(); ++at) {
        if (tokens[at].kind == TokenKind::word && tokens[at - 1].kind == TokenKind::number &&
            tokens[at].glued) {
            uk += (tokens[at].text == "g" || tokens[at].text == "ml") ? 0.3 : 0.0;
            celsius = celsius || tokens[at].text == "c";
        }
        fahrenheit = fahrenheit || (tokens[at].text == "f" && tokens[at].capital) ||
                     tokens[at].text == "fahrenheit";
    }
    if (fahrenheit && !celsius) {
        us += 1.0;
    }
    if (us == 0.0 && uk == 0.0 && au == 0.0) {
        return Region::unknown;
    }
    if (au > us && au > uk) {
        return Region::au;
    }
    return uk > us ? Region::uk : Region::us;
}

} // namespace loafwright::reading

// SPDX-License-Identifier: Apache-2.0
//
// One amount of an ingredient, or several for the same thing, and what they weigh together: "600g
// or 5 cups", "1 packet (appr. 2 1/4 tsp or 7g)", "350ml/12fl oz", "2 (14-oz) cans". When the text
// gives the same amount twice, grams outrank other weights, these outrank metric volumes, cups and
// spoons, packets and handfuls, and pieces, in that order; a difference of more than a tenth,
// beyond what the way of measuring explains, is kept and asked about.
#include "engine/reading/ingredient.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace loafwright::reading {
namespace {

bool is_joiner(const Token& token) {
    return is_mark(token, '(') || is_mark(token, '/') || is_mark(token, ')') ||
           is_mark(token, '=') || is_mark(token, '[') || is_mark(token, ',') ||
           is_any_word(token, {"or", "about", "appr", "approx", "ie"});
}

bool is_metric(const UnitRow& unit) {
    return unit.unit.find("litre") != std::string_view::npos ||
           unit.unit.find("gram") != std::string_view::npos;
}

// Handfuls and knobs: a weight that nobody has weighed.
bool is_vague(const Measure& measure) {
    return measure.unit != nullptr && measure.unit->value &&
           measure.unit->value->low != measure.unit->value->high;
}

int rank_of(const Measure& measure) {
    if (measure.dimension == Dimension::mass) {
        const bool packed = measure.unit != nullptr && is_package(*measure.unit);
        if (packed || is_vague(measure)) {
            return 1;
        }
        return measure.unit != nullptr && is_metric(*measure.unit) ? 5 : 4;
    }
    if (measure.dimension == Dimension::volume) {
        return measure.unit != nullptr && is_metric(*measure.unit) ? 3 : 2;
    }
    return 0;
}

// Units that are made for one thing: a stick is of butter, a clove of garlic, a peck of flour.
bool is_for(const UnitRow& unit, const IngredientRow* row) {
    struct Use {
        std::string_view unit;
        std::string_view role;
        std::string_view item;
    };
    static constexpr std::array<Use, 6> uses = {{{"yeast ", "yeast", ""},
                                                 {"stick ", "fat", ""},
                                                 {"pat ", "fat", ""},
                                                 {"clove ", "", "garlic"},
                                                 {"quartern", "flour", ""},
                                                 {"peck", "flour", ""}}};
    for (const Use& use : uses) {
        if (unit.unit.substr(0, use.unit.size()) == use.unit) {
            return row != nullptr && (row->role == use.role || row->item == use.item);
        }
    }
    // A piece of butter is no stick.
    return unit.unit != "each" || row == nullptr || row->role != "fat";
}

void multiply(Measure& measure, double times) {
    measure.amount.low *= times;
    measure.amount.likely *= times;
    measure.amount.high *= times;
}

// How often the size in brackets is meant: "2 tins (400 g)" and "2 bananas (120 g each)" twice, "2
// sticks (226 g)" once.
double times_of(const Measure& first, const Measure& size, bool each, bool of_package) {
    const bool sized = first.unit != nullptr && first.unit->value;
    const double number =
        sized ? first.amount.likely / first.unit->value->likely : first.amount.likely;
    if (each || (of_package && !sized)) {
        return number;
    }
    if (of_package && first.dimension == size.dimension) {
        const double own = first.amount.likely;
        const bool nearer = std::abs(std::log(number * size.amount.likely / own)) <
                            std::abs(std::log(size.amount.likely / own));
        return nearer ? number : 1.0;
    }
    return 1.0;
}

} // namespace

const UnitRow*
IngredientReader::package_at(std::size_t at, std::size_t end, std::size_t& next) const {
    // "cake flour", "block yeast": the word belongs to the name.
    if (lexicon_.at("ingredient", layout_.tokens, layout_.ids, at, end).row != nullptr) {
        return nullptr;
    }
    bool ignored = false;
    const UnitRow* unit = units_.at(layout_.tokens, at, end, region_, next, ignored);
    return unit != nullptr && is_package(*unit) ? unit : nullptr;
}

IngredientReader::Amounts IngredientReader::amounts_at(std::size_t at, std::size_t end) const {
    const auto& tokens = layout_.tokens;
    Amounts amounts;
    amounts.range = TokenRange{at, at};
    std::size_t from = at;
    bool in_tins = false;           // "2 tins (": a package whose size stands behind it
    constexpr std::size_t most = 6; // nobody says it oftener; keeps the work on a line bounded
    while (from < end && amounts.measures.size() < most) {
        auto measure = measure_at(tokens, from, end, units_, region_);
        if (!measure) {
            break;
        }
        if (!amounts.measures.empty() && measure->unit == nullptr) {
            break; // "1 cup or two eggs" is no second amount of the cup
        }
        from = measure->range.end;
        if (amounts.measures.size() == 1) {
            const bool each = from < end && is_word(tokens[from], "each");
            std::size_t next = from + 1;
            const bool packed_behind = from + 1 < end && is_mark(tokens[from], ')') &&
                                       is_mark(tokens[measure->range.begin - 1], '(') &&
                                       amounts.measures.front().unit == nullptr &&
                                       package_at(from + 1, end, next) != nullptr;
            const Measure& first = amounts.measures.front();
            const bool packed =
                in_tins || packed_behind || (first.unit != nullptr && is_package(*first.unit));
            multiply(*measure, times_of(first, *measure, each, packed));
            from = packed_behind ? next : each ? from + 1 : from;
        }
        amounts.measures.push_back(*measure);
        amounts.range.end = from;
        std::size_t probe = from;
        while (probe < end && probe < from + 4 && is_joiner(tokens[probe])) {
            ++probe;
        }
        // "2 1/4 tsp or 7g) active dry yeast", "1 packet (appr. 2 1/4 tsp": a further amount
        // directly behind joining marks.
        if (probe == from) { // "7 g sachet": the second unit is the packet of the first
            std::size_t next = from;
            const UnitRow* packet = package_at(from, end, next);
            const bool weighed = packet != nullptr && measure->unit != nullptr &&
                                 packet != measure->unit && rank_of(*measure) >= 3;
            in_tins = packet != nullptr && !packet->value && measure->unit == nullptr &&
                      next < end && is_mark(tokens[next], '(');
            if (weighed || in_tins) {
                amounts.range.end = weighed ? next : amounts.range.end;
                from = next;
                probe = from;
                while (probe < end && probe < from + 3 && is_joiner(tokens[probe])) {
                    ++probe;
                }
            }
            if (probe == from) {
                break;
            }
        }
        const bool comma_only = probe == from + 1 && is_mark(tokens[from], ',');
        const auto further = measure_at(tokens, probe, end, units_, region_);
        if (!further || further->unit == nullptr || comma_only) {
            break;
        }
        from = probe;
    }
    while (amounts.range.end < end && !amounts.measures.empty() &&
           is_mark(tokens[amounts.range.end], ')')) {
        ++amounts.range.end;
    }
    return amounts;
}

std::optional<Band<Grams>> IngredientReader::grams_of(const Amounts& amounts,
                                                      const IngredientRow* row,
                                                      FoundIngredient& found) const {
    std::optional<Band<Grams>> best;
    int best_rank = -1;
    std::vector<Band<Grams>> told;
    for (Measure measure : amounts.measures) {
        if (measure.unit != nullptr && !is_for(*measure.unit, row)) {
            // A sachet of baking powder is no sachet of yeast; of other things nobody knows.
            const UnitRow* other = row != nullptr && row->item == "baking powder" &&
                                           measure.unit->unit.find("yeast") == 0
                                       ? units_.named("baking powder sachet (EU)")
                                       : nullptr;
            if (other == nullptr) {
                continue;
            }
            const double number = measure.amount.likely / measure.unit->value->likely;
            measure.unit = other;
            measure.amount = *other->value;
            multiply(measure, number);
        }
        const auto grams = weigh(measure, row, amounts.filling);
        if (!grams) {
            continue;
        }
        if (!is_vague(measure) && measure.dimension != Dimension::count) {
            told.push_back(*grams);
        }
        const int rank = rank_of(measure);
        if (rank > best_rank) {
            best = grams;
            best_rank = rank;
            found.regional = measure.by_region;
            found.by_region = measure.by_region && region_ == Region::unknown;
        }
    }
    // What the way of measuring explains is no difference: a spoon of yeast may weigh 2.7 or 4 g.
    for (const Band<Grams>& less : told) {
        for (const Band<Grams>& more : told) {
            const double ratio = more.likely.count() / less.likely.count();
            const bool apart = more.low.count() > less.high.count() * 1.02;
            if (less.likely.count() > 0 && ratio > 1.1 && apart) {
                found.disagreement = std::max(ratio, found.disagreement.value_or(ratio));
            }
        }
    }
    return best;
}

} // namespace loafwright::reading

// SPDX-License-Identifier: Apache-2.0
//
// Finding the amount as the baker wrote it, for those who measure with spoons and cups. What the
// amount weighs was settled when the text was read; here only its words matter, so a number is
// anything that starts like one.

#include "engine/provisions/amounts.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <vector>

namespace loafwright::provisions {
namespace {

constexpr std::array<std::string_view, 16> number_words{"a",
                                                        "an",
                                                        "one",
                                                        "two",
                                                        "three",
                                                        "four",
                                                        "five",
                                                        "six",
                                                        "seven",
                                                        "eight",
                                                        "ten",
                                                        "twelve",
                                                        "half",
                                                        "quarter",
                                                        "dozen",
                                                        "several"};
constexpr std::array<std::string_view, 19> fractions{
    "¼", "½", "¾", "⅐", "⅑", "⅒", "⅓", "⅔", "⅕", "⅖", "⅗", "⅘", "⅙", "⅚", "⅛", "⅜", "⅝", "⅞", "⁄"};

bool is_digit(char letter) {
    return letter >= '0' && letter <= '9';
}
bool is_blank(char letter) {
    return letter == ' ' || letter == '\t';
}

bool is_letter(char letter) {
    const auto byte = static_cast<unsigned char>(letter);
    return (byte >= 'a' && byte <= 'z') || (byte >= 'A' && byte <= 'Z') || byte >= 0x80;
}

std::size_t fraction_at(std::string_view line, std::size_t at) {
    for (const std::string_view glyph : fractions) {
        if (line.compare(at, glyph.size(), glyph) == 0) {
            return glyph.size();
        }
    }
    return 0;
}

std::size_t skip_blanks(std::string_view line, std::size_t at) {
    while (at < line.size() && is_blank(line[at])) {
        ++at;
    }
    return at;
}

bool starts_number(std::string_view line, std::size_t at) {
    return is_digit(line[at]) || fraction_at(line, at) != 0;
}

// The end of a number that starts at `at`: digits, fractions, ranges and sums such as "1 1/2".
std::size_t number_end(std::string_view line, std::size_t at) {
    std::size_t end = at;
    while (at < line.size()) {
        const std::size_t glyph = fraction_at(line, at);
        if (glyph != 0) {
            at += glyph;
            end = at;
        } else if (is_digit(line[at])) {
            ++at;
            end = at;
        } else if ((line[at] == '.' || line[at] == ',' || line[at] == '/' || line[at] == '-' ||
                    is_blank(line[at])) &&
                   at + 1 < line.size() && starts_number(line, at + 1)) {
            ++at;
        } else {
            break;
        }
    }
    return end;
}

char lower(char letter) {
    return letter >= 'A' && letter <= 'Z' ? static_cast<char>(letter - 'A' + 'a') : letter;
}

std::string lower(std::string_view text) {
    std::string result(text);
    std::transform(
        result.begin(), result.end(), result.begin(), [](char letter) { return lower(letter); });
    return result;
}

bool same_letters(std::string_view a, std::string_view b) {
    return std::equal(a.begin(), a.end(), b.begin(), b.end(), [](char left, char right) {
        return lower(left) == lower(right);
    });
}

struct FoundUnit {
    const UnitRow* row = nullptr;
    std::size_t end = 0;
};

// The longest way of writing a unit that starts at `at` and ends with a word. A single letter is
// taken as it stands, because T and t differ.
FoundUnit unit_at(std::string_view line, std::size_t at, const Knowledge& knowledge) {
    FoundUnit best;
    std::size_t best_length = 0;
    for (const UnitRow& unit : knowledge.units) {
        for (const std::string_view written : unit.written) {
            const std::size_t end = at + written.size();
            if (written.size() <= best_length || end > line.size()) {
                continue;
            }
            const std::string_view said = line.substr(at, written.size());
            const bool same = written.size() == 1 ? said == written : same_letters(said, written);
            const bool whole = end == line.size() || !is_letter(line[end]);
            if (same && whole) {
                best = {&unit, end};
                best_length = written.size();
            }
        }
    }
    return best;
}

bool named(const UnitRow& unit, std::string_view part) {
    return unit.unit.find(part) != std::string_view::npos;
}

Measure measure_of(const UnitRow& unit) {
    switch (unit.dimension) {
    case Dimension::mass:
        return unit.unit == "gram" || unit.unit == "kilogram" ? Measure::grams
                                                              : Measure::other_weight;
    case Dimension::volume:
        if (named(unit, "spoon") || unit.unit == "pinch" || unit.unit == "dash") {
            return Measure::spoon;
        }
        return named(unit, "cup") ? Measure::cup : Measure::volume;
    case Dimension::count:
    case Dimension::factor:
    case Dimension::ratio:
        break;
    }
    return Measure::pieces;
}

struct Start {
    std::size_t begin = 0;
    std::size_t end = 0; // of the number
};

// Where numbers stand in the line, in figures or, at its very beginning, in a word.
std::vector<Start> numbers_in(std::string_view line) {
    std::vector<Start> starts;
    std::size_t at = skip_blanks(line, 0);
    std::size_t word_end = at;
    while (word_end < line.size() && is_letter(line[word_end])) {
        ++word_end;
    }
    const std::string first = lower(line.substr(at, word_end - at));
    if (std::find(number_words.begin(), number_words.end(), first) != number_words.end()) {
        starts.push_back({at, word_end});
    }
    while (at < line.size()) {
        if (starts_number(line, at)) {
            const std::size_t end = number_end(line, at);
            starts.push_back({at, end});
            at = end;
        } else {
            ++at;
        }
    }
    return starts;
}

} // namespace

WrittenAmount amount_in(std::string_view line, const Knowledge& knowledge) {
    WrittenAmount first;
    for (const Start& start : numbers_in(line)) {
        std::size_t at = skip_blanks(line, start.end);
        FoundUnit unit = at < line.size() ? unit_at(line, at, knowledge) : FoundUnit{};
        // "2 heaped tsp", "half a teaspoon": the unit stands behind one more word.
        while (unit.row != nullptr && unit.row->dimension == Dimension::factor) {
            at = skip_blanks(line, unit.end);
            const FoundUnit behind = at < line.size() ? unit_at(line, at, knowledge) : FoundUnit{};
            if (behind.row == nullptr) {
                break;
            }
            unit = behind;
        }
        if (unit.row == nullptr && at < line.size() && lower(line.substr(at, 2)) == "a ") {
            unit = unit_at(line, skip_blanks(line, at + 2), knowledge);
        }
        const bool has_unit = unit.row != nullptr && unit.row->dimension != Dimension::factor;
        const std::size_t end = has_unit ? unit.end : start.end;
        WrittenAmount amount{std::string(line.substr(start.begin, end - start.begin)),
                             has_unit ? measure_of(*unit.row) : Measure::pieces};
        if (amount.measure == Measure::grams) {
            return amount;
        }
        if (first.measure == Measure::none) {
            first = std::move(amount);
        }
    }
    return first;
}

} // namespace loafwright::provisions

// SPDX-License-Identifier: Apache-2.0
//
// Temperatures by recursive descent over tokens. A number is a temperature with a degree sign, the
// word, or a scale letter right behind it; beside an oven a bare number from 100 up is one too. A
// cup is also written "C": below 20 a lone capital C is a cup. Figures that stand together tell one
// heat in several scales and are read as one.
#include "engine/reading/temperature.hpp"

#include "engine/quantity/conversion.hpp"
#include "engine/reading/number.hpp"

#include <algorithm>
#include <cmath>

namespace loafwright::reading {
namespace {

enum class Scale { celsius, fahrenheit, gas, unknown };

struct Figure {
    double low = 0.0;
    double high = 0.0;
    Scale scale = Scale::unknown;
    bool fan = false;
    std::size_t next = 0;
};

bool word_at(const std::vector<Token>& tokens,
             std::size_t at,
             std::size_t end,
             std::string_view word) {
    return at < end && is_word(tokens[at], word);
}

bool degree_sign(const Token& token) {
    return token.kind == TokenKind::mark && token.text == "\xC2\xB0";
}

bool fan_word(const Token& token) {
    return is_word(token, "fan") || is_word(token, "convection");
}

// "°C", "degrees C", "C", "deg. F", "Celsius", "oC" as a scanner has it. Says where it ends and
// whether anything stood there.
struct ScaleWord {
    Scale scale = Scale::unknown;
    bool degrees = false;
    std::size_t next = 0;
};

ScaleWord
scale_at(const std::vector<Token>& tokens, std::size_t at, std::size_t end, double value) {
    ScaleWord found;
    found.next = at;
    while (found.next < end &&
           (degree_sign(tokens[found.next]) || is_word(tokens[found.next], "degrees") ||
            is_word(tokens[found.next], "degree") || is_word(tokens[found.next], "deg") ||
            (found.degrees && is_mark(tokens[found.next], '.')))) {
        found.degrees = true;
        ++found.next;
    }
    if (found.next >= end || tokens[found.next].kind != TokenKind::word) {
        return found;
    }
    const Token& token = tokens[found.next];
    const bool letter_ok =
        found.degrees || (token.glued && value >= 20) || (token.capital && value >= 30);
    if (token.text == "celsius" || token.text == "centigrade" || (token.text == "c" && letter_ok) ||
        (token.text == "oc" && value >= 20)) {
        found.scale = Scale::celsius;
        ++found.next;
    } else if (token.text == "fahrenheit" || (token.text == "f" && letter_ok) ||
               (token.text == "of" && token.glued && token.capital)) {
        found.scale = Scale::fahrenheit;
        ++found.next;
    }
    return found;
}

std::optional<Figure> gas_at(const std::vector<Token>& tokens, std::size_t at, std::size_t end) {
    if (!word_at(tokens, at, end, "gas") && !word_at(tokens, at, end, "mark") &&
        !word_at(tokens, at, end, "regulo")) {
        return std::nullopt;
    }
    std::size_t from = at + 1;
    while (from < end && (is_word(tokens[from], "mark") || is_word(tokens[from], "no") ||
                          is_mark(tokens[from], '.') || is_word(tokens[from], "number"))) {
        ++from;
    }
    const auto number = number_phrase(tokens, from, end);
    if (!number || number->article || number->high > 10 || !celsius_from_gas_mark(number->low)) {
        return std::nullopt;
    }
    const auto high = celsius_from_gas_mark(number->high);
    Figure figure;
    figure.low = celsius_from_gas_mark(number->low)->degrees();
    figure.high = high ? high->degrees() : figure.low;
    figure.scale = Scale::gas;
    figure.next = number->range.end;
    return figure;
}

std::optional<Figure> figure_at(const std::vector<Token>& tokens, std::size_t at, std::size_t end) {
    if (auto gas = gas_at(tokens, at, end)) {
        return gas;
    }
    std::size_t from = at;
    bool fan = false;
    if (from < end && fan_word(tokens[from])) {
        fan = true;
        ++from;
    }
    while (from < end && (is_hedge(tokens[from]) || word_at(tokens, from, end, "to"))) {
        if (is_word(tokens[from], "to") && !fan) {
            break;
        }
        ++from;
    }
    if (from >= end ||
        (tokens[from].kind != TokenKind::number && tokens[from].kind != TokenKind::word)) {
        return std::nullopt;
    }
    const auto first = single_number(tokens, from, end);
    if (!first || first->article || first->low < 0 || first->low > 600 || tokens[from].fraction) {
        return std::nullopt;
    }
    Figure figure;
    figure.low = figure.high = first->low;
    figure.fan = fan;
    std::size_t next = first->range.end;
    ScaleWord scale = scale_at(tokens, next, end, first->low);
    // 475 - 500 degrees F; 220 to 230 °C; 24–26°C; 230°C-240°C
    if (scale.next < end && (is_dash(tokens[scale.next]) || is_word(tokens[scale.next], "to") ||
                             is_word(tokens[scale.next], "or"))) {
        const auto second = single_number(tokens, scale.next + 1, end);
        if (second && !second->article && second->low > first->low && second->low <= 600 &&
            second->low < first->low * 1.6) {
            const ScaleWord second_scale = scale_at(tokens, second->range.end, end, second->low);
            const bool same = second_scale.scale == scale.scale || scale.scale == Scale::unknown;
            if ((second_scale.scale != Scale::unknown || second_scale.degrees || scale.degrees) &&
                same) {
                figure.high = second->low;
                scale = second_scale;
            }
        }
    }
    figure.scale = scale.scale;
    figure.next = scale.next;
    const bool lone = scale.scale == Scale::unknown && !scale.degrees;
    if (lone && !fan &&
        !(figure.next < end && fan_word(tokens[figure.next]) && figure.low >= 100)) {
        return std::nullopt;
    }
    if (figure.next < end && fan_word(tokens[figure.next])) {
        figure.fan = true;
        ++figure.next;
        if (word_at(tokens, figure.next, end, "oven")) {
            ++figure.next;
        }
    } else if (figure.next + 1 < end && is_mark(tokens[figure.next], '(') &&
               fan_word(tokens[figure.next + 1]) && figure.next + 2 < end &&
               is_mark(tokens[figure.next + 2], ')')) {
        figure.fan = true;
        figure.next += 3;
    }
    return figure;
}

bool joins_figures(const Token& token) {
    return is_mark(token, '/') || is_mark(token, '(') || is_mark(token, ',') ||
           is_mark(token, ')') || is_mark(token, '*') || is_word(token, "or") ||
           is_mark(token, '|') || is_mark(token, '[') || is_mark(token, ';');
}

double celsius(double value, Scale scale) {
    if (scale == Scale::fahrenheit || (scale == Scale::unknown && value > 300)) {
        return celsius_from_fahrenheit(value).degrees();
    }
    return value;
}

TemperaturePhrase merged(const std::vector<Figure>& figures, TokenRange range) {
    // Celsius for conventional heat, then Fahrenheit, then fan, then a gas mark.
    const auto rank = [](const Figure& figure) {
        if (figure.fan) {
            return 2;
        }
        return figure.scale == Scale::celsius ? 0 : figure.scale == Scale::gas ? 3 : 1;
    };
    const Figure* best = &figures.front();
    for (const Figure& figure : figures) {
        if (rank(figure) < rank(*best)) {
            best = &figure;
        }
    }
    TemperaturePhrase phrase;
    const double fan = best->fan ? fan_allowance.count() : 0.0;
    double low = celsius(best->low, best->scale) + fan;
    double high = celsius(best->high, best->scale) + fan;
    phrase.low = Celsius(std::round(std::min(low, high)));
    phrase.high = Celsius(std::round(std::max(low, high)));
    phrase.fan_only = best->fan;
    phrase.scale_guessed = best->scale == Scale::unknown;
    phrase.range = range;
    return phrase;
}

} // namespace

std::vector<TemperaturePhrase> temperatures_in(const std::vector<Token>& tokens, TokenRange range) {
    std::vector<TemperaturePhrase> phrases;
    std::size_t at = range.begin;
    while (at < range.end) {
        auto first = figure_at(tokens, at, range.end);
        if (!first) {
            // "set the oven to 220": a bare number that an oven would understand.
            const Token& token = tokens[at];
            const bool oven_number =
                token.kind == TokenKind::number && !token.fraction && token.value >= 120 &&
                token.value <= 550 && at > range.begin &&
                (is_word(tokens[at - 1], "to") || is_word(tokens[at - 1], "at") ||
                 is_hedge(tokens[at - 1]) || is_word(tokens[at - 1], "oven") ||
                 is_mark(tokens[at - 1], '@'));
            bool oven_near = false;
            for (std::size_t before = at > range.begin + 7 ? at - 7 : range.begin;
                 oven_number && before < at;
                 ++before) {
                oven_near = oven_near || is_word(tokens[before], "oven") ||
                            is_word(tokens[before], "heat") || is_word(tokens[before], "bake") ||
                            is_word(tokens[before], "preheat") ||
                            is_word(tokens[before], "baked") || is_word(tokens[before], "down") ||
                            is_word(tokens[before], "temperature") ||
                            is_word(tokens[before], "lower") || is_word(tokens[before], "drop") ||
                            is_word(tokens[before], "reduce");
            }
            const bool measured =
                at + 1 < range.end &&
                (is_word(tokens[at + 1], "g") || is_word(tokens[at + 1], "ml") ||
                 is_word(tokens[at + 1], "grams") || is_word(tokens[at + 1], "minutes"));
            if (!oven_number || !oven_near || measured) {
                ++at;
                continue;
            }
            Figure figure;
            figure.low = figure.high = token.value;
            figure.next = at + 1;
            first = figure;
        }
        std::vector<Figure> figures{*first};
        const std::size_t begin = at;
        std::size_t next = first->next;
        while (next < range.end && joins_figures(tokens[next])) {
            std::size_t from = next + 1;
            while (from < range.end && joins_figures(tokens[from])) {
                ++from;
            }
            const auto further = figure_at(tokens, from, range.end);
            if (!further) {
                break;
            }
            // Another heat, not the same one in another scale: "230 C, 200 C" are two.
            const double here = celsius(further->low, further->scale) +
                                (further->fan ? fan_allowance.count() : 0.0);
            const double there =
                celsius(first->low, first->scale) + (first->fan ? fan_allowance.count() : 0.0);
            if (std::fabs(here - there) > 16.0 ||
                (further->scale == first->scale && further->fan == first->fan)) {
                break;
            }
            figures.push_back(*further);
            next = further->next;
        }
        if (next < range.end && is_mark(tokens[next], ')') && begin < next) {
            ++next;
        }
        phrases.push_back(merged(figures, TokenRange{begin, next}));
        at = std::max(next, at + 1);
    }
    return phrases;
}

} // namespace loafwright::reading

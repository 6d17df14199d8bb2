// SPDX-License-Identifier: Apache-2.0
#include "engine/reading/told.hpp"

#include "engine/reading/duration.hpp"
#include "engine/reading/number.hpp"
#include "engine/reading/temperature.hpp"

namespace loafwright::reading {
namespace {

std::optional<TemperatureRange> heat_in(const std::string& words, double least, double most) {
    const std::vector<Token> tokens = tokenise(words);
    const auto found = temperatures_in(tokens, TokenRange{0, tokens.size()});
    if (!found.empty() && found.front().middle() >= least && found.front().middle() <= most) {
        return TemperatureRange{found.front().low, found.front().high};
    }
    return std::nullopt;
}

} // namespace

std::optional<Band<Minutes>> minutes_told(const std::string& words) {
    std::vector<Token> tokens = tokenise(words);
    auto found = durations_in(tokens, TokenRange{0, tokens.size()});
    if (found.empty()) {
        tokens = tokenise(words + " minutes");
        found = durations_in(tokens, TokenRange{0, tokens.size()});
    }
    if (!found.empty() && found.front().high.count() > 0 &&
        found.front().high.count() <= 4 * 24 * 60) {
        return Band<Minutes>{found.front().low, found.front().likely, found.front().high};
    }
    return std::nullopt;
}

std::optional<TemperatureRange> oven_told(const std::string& words) {
    return heat_in("oven to " + words, 50, 350);
}

std::optional<TemperatureRange> warmth_told(const std::string& words) {
    const auto told = heat_in(words, -5, 60);
    return told ? told : heat_in(words + " °C", -5, 60);
}

std::optional<Grams> grams_told(const std::string& words) {
    const std::vector<Token> tokens = tokenise(words);
    for (std::size_t at = 0; at < tokens.size(); ++at) {
        const auto number = number_phrase(tokens, at, tokens.size());
        if (!number || number->article) {
            continue;
        }
        const std::size_t next = number->range.end;
        const bool kilos =
            next < tokens.size() && (is_word(tokens[next], "kg") || is_word(tokens[next], "kilo"));
        const bool grams = next >= tokens.size() || is_word(tokens[next], "g") ||
                           is_word(tokens[next], "grams") || is_word(tokens[next], "gram");
        const double amount = number->middle() * (kilos ? 1000.0 : 1.0);
        if ((kilos || grams) && amount > 0.0 && amount <= 100000.0) {
            return Grams(amount);
        }
        return std::nullopt;
    }
    return std::nullopt;
}

} // namespace loafwright::reading

// SPDX-License-Identifier: Apache-2.0
#include "shell/web_page/duration.hpp"

#include <array>
#include <cmath>
#include <cstddef>

namespace loafwright::web_page {
namespace {

constexpr double most_minutes = 30.0 * 24 * 60;

struct Unit {
    char letter;
    bool is_of_clock; // stands behind the T
    double minutes;
};

// In the order they stand in.
constexpr std::array<Unit, 5> units{Unit{'W', false, 7.0 * 24 * 60},
                                    Unit{'D', false, 24.0 * 60},
                                    Unit{'H', true, 60.0},
                                    Unit{'M', true, 1.0},
                                    Unit{'S', true, 1.0 / 60}};

char capital(char c) {
    return c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c;
}

bool is_digit(char c) {
    return c >= '0' && c <= '9';
}

std::string_view trimmed(std::string_view text) {
    constexpr std::string_view blanks = " \t\n";
    const std::size_t begin = text.find_first_not_of(blanks);
    if (begin == std::string_view::npos) {
        return {};
    }
    return text.substr(begin, text.find_last_not_of(blanks) - begin + 1);
}

} // namespace

std::optional<Minutes> minutes_of_duration(std::string_view text) {
    text = trimmed(text);
    if (text.size() < 3 || text.size() > 64 || capital(text[0]) != 'P') {
        return std::nullopt;
    }
    double minutes = 0.0;
    bool is_clock = false;
    bool has_any = false;
    std::size_t next_unit = 0;
    for (std::size_t i = 1; i < text.size();) {
        if (capital(text[i]) == 'T') {
            if (is_clock) {
                return std::nullopt;
            }
            is_clock = true;
            ++i;
            continue;
        }
        double number = 0.0;
        const std::size_t begin = i;
        for (; i < text.size() && is_digit(text[i]); ++i) {
            number = number * 10 + (text[i] - '0');
        }
        if (i == begin) {
            return std::nullopt;
        }
        if (i < text.size() && (text[i] == '.' || text[i] == ',')) {
            double place = 0.1;
            for (++i; i < text.size() && is_digit(text[i]); ++i, place /= 10) {
                number += place * (text[i] - '0');
            }
        }
        const char letter = i < text.size() ? capital(text[i]) : '\0';
        while (next_unit < units.size() &&
               (units[next_unit].letter != letter || units[next_unit].is_of_clock != is_clock)) {
            ++next_unit;
        }
        if (next_unit == units.size()) {
            // "P0Y0M0DT1H" counts nothing that has no fixed length.
            if (is_clock || number != 0.0 || (letter != 'Y' && letter != 'M')) {
                return std::nullopt;
            }
            next_unit = 0;
        } else {
            minutes += number * units[next_unit].minutes;
            ++next_unit;
            has_any = true;
        }
        ++i;
    }
    minutes = std::round(minutes);
    if (!has_any || !(minutes >= 1.0) || minutes > most_minutes) {
        return std::nullopt;
    }
    return Minutes(minutes);
}

} // namespace loafwright::web_page

// SPDX-License-Identifier: Apache-2.0
//
// Conversions that are exact by definition, and the British gas marks. The Fahrenheit scale has 180
// degrees where the Celsius scale has 100, and calls the freezing point 32. The gas scale steps by
// 25 °F a mark from mark 1 at 275 °F; below it stand only a half (250 °F) and a quarter (225 °F).
// Sources stand beside the constants in the header.
#include "engine/quantity/conversion.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>
#include <utility>

namespace loafwright {

namespace {

struct GasMark {
    double mark;
    double fahrenheit;
    // The round figure in °C that books print beside the mark (several published tables, read; 260
    // for mark 10 assumed).
    double in_books;
    const char* text;
};

constexpr std::array<GasMark, 12> gas_marks = {{
    {0.25, 225.0, 110.0, "1/4"},
    {0.5, 250.0, 120.0, "1/2"},
    {1.0, 275.0, 140.0, "1"},
    {2.0, 300.0, 150.0, "2"},
    {3.0, 325.0, 170.0, "3"},
    {4.0, 350.0, 180.0, "4"},
    {5.0, 375.0, 190.0, "5"},
    {6.0, 400.0, 200.0, "6"},
    {7.0, 425.0, 220.0, "7"},
    {8.0, 450.0, 230.0, "8"},
    {9.0, 475.0, 240.0, "9"},
    {10.0, 500.0, 260.0, "10"},
}};

} // namespace

Celsius celsius_from_fahrenheit(double fahrenheit) {
    return Celsius((fahrenheit - 32.0) * 5.0 / 9.0);
}

double fahrenheit_from_celsius(Celsius celsius) {
    return celsius.degrees() * 9.0 / 5.0 + 32.0;
}

std::optional<Celsius> celsius_from_gas_mark(double mark) {
    for (const GasMark& row : gas_marks) {
        if (row.mark == mark) {
            return celsius_from_fahrenheit(row.fahrenheit);
        }
    }
    return std::nullopt;
}

double gas_mark_from_celsius(Celsius celsius) {
    // A knob at 170 °C goes with mark 3 in every kitchen, though mark 4 is half a degree nearer by
    // definition. So the figures of the books decide, and the definition only between two of them.
    const auto distance = [celsius](const GasMark& row) {
        const Celsius exact = celsius_from_fahrenheit(row.fahrenheit);
        return std::pair(std::abs(row.in_books - celsius.degrees()),
                         std::abs((exact - celsius).count()));
    };
    const GasMark& nearest = *std::min_element(
        gas_marks.begin(), gas_marks.end(), [&](const GasMark& a, const GasMark& b) {
            return distance(a) < distance(b);
        });
    return nearest.mark;
}

std::string gas_mark_text(double mark) {
    for (const GasMark& row : gas_marks) {
        if (row.mark == mark) {
            return row.text;
        }
    }
    return fmt::format("{:g}", mark);
}

Minutes rounded_to(Minutes minutes, double step) {
    assert(step > 0.0);
    return Minutes(std::floor(minutes.count() / step + 0.5) * step);
}

Minutes rounded_up_to(Minutes minutes, double step) {
    assert(step > 0.0);
    return Minutes(std::ceil(minutes.count() / step) * step);
}

} // namespace loafwright

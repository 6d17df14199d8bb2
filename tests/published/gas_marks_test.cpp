// SPDX-License-Identifier: Apache-2.0
//
// Gas marks and the Fahrenheit scale against published tables.
#include "engine/quantity/conversion.hpp"
#include "tests/published/units_program.hpp"

#include <gtest/gtest.h>

#include <array>
#include <string>

namespace loafwright::published {
namespace {

struct Mark {
    double mark;
    const char* text;
    double fahrenheit;
};

// Debian units 2.22, definitions, table gasmark; several published tables agree (read).
constexpr std::array<Mark, 11> marks = {{
    {0.25, "1/4", 225.0},
    {0.5, "1/2", 250.0},
    {1.0, "1", 275.0},
    {2.0, "2", 300.0},
    {3.0, "3", 325.0},
    {4.0, "4", 350.0},
    {5.0, "5", 375.0},
    {6.0, "6", 400.0},
    {7.0, "7", 425.0},
    {8.0, "8", 450.0},
    {9.0, "9", 475.0},
}};

TEST(gas_marks, have_their_published_temperatures) {
    for (const Mark& row : marks) {
        const auto celsius = celsius_from_gas_mark(row.mark);
        ASSERT_TRUE(celsius.has_value()) << row.text;
        EXPECT_NEAR(fahrenheit_from_celsius(*celsius), row.fahrenheit, 0.5) << row.text;
        EXPECT_EQ(gas_mark_text(row.mark), row.text);
    }
}

// The same table in °C (read): marks 4 and 7 to two places.
TEST(gas_marks, are_right_in_celsius_too) {
    EXPECT_NEAR(celsius_from_gas_mark(4.0)->degrees(), 176.67, 0.01);
    EXPECT_NEAR(celsius_from_gas_mark(7.0)->degrees(), 218.33, 0.01);
}

// Books round the marks so (read in the published tables); each rounded figure must lead back to
// its mark.
TEST(gas_marks, are_found_again_from_the_rounded_figures_of_books) {
    struct Rounded {
        double celsius;
        const char* text;
    };
    const std::array<Rounded, 11> rounded = {{{110.0, "1/4"},
                                              {120.0, "1/2"},
                                              {140.0, "1"},
                                              {150.0, "2"},
                                              {170.0, "3"},
                                              {180.0, "4"},
                                              {190.0, "5"},
                                              {200.0, "6"},
                                              {220.0, "7"},
                                              {230.0, "8"},
                                              {240.0, "9"}}};
    for (const Rounded& row : rounded) {
        EXPECT_EQ(gas_mark_text(gas_mark_from_celsius(Celsius(row.celsius))), row.text);
    }
}

// From memory, by the definition of the scale: water freezes at 32 °F and boils at 212 °F, 180
// degrees apart.
TEST(fahrenheit, follows_from_the_definition_of_the_scale) {
    EXPECT_NEAR(celsius_from_fahrenheit(32.0).degrees(), 0.0, 1e-4);
    EXPECT_NEAR(celsius_from_fahrenheit(105.0).degrees(), 40.5556, 1e-4);
    EXPECT_NEAR(celsius_from_fahrenheit(115.0).degrees(), 46.1111, 1e-4);
    EXPECT_NEAR(celsius_from_fahrenheit(212.0).degrees(), 100.0, 1e-4);
    EXPECT_NEAR(celsius_from_fahrenheit(350.0).degrees(), 176.6667, 1e-4);
    EXPECT_NEAR(celsius_from_fahrenheit(425.0).degrees(), 218.3333, 1e-4);
    EXPECT_NEAR(celsius_from_fahrenheit(450.0).degrees(), 232.2222, 1e-4);
    EXPECT_NEAR(celsius_from_fahrenheit(500.0).degrees(), 260.0, 1e-4);
    EXPECT_NEAR(celsius_from_fahrenheit(-40.0).degrees(), -40.0, 1e-9);
}

TEST(fahrenheit, and_gas_marks_agree_with_the_program_units) {
    if (!units_is_installed()) {
        GTEST_SKIP() << "the program units is not installed";
    }
    for (const Mark& row : marks) {
        // The program writes a fraction with a bar.
        std::string number = row.text;
        if (number.size() == 3) {
            number[1] = '|';
        }
        const auto says = units_says("gasmark(" + number + ")", "tempC");
        ASSERT_TRUE(says.has_value()) << number;
        EXPECT_NEAR(celsius_from_gas_mark(row.mark)->degrees(), *says, 1e-6) << number;
    }
    for (int fahrenheit = 30; fahrenheit <= 550; fahrenheit += 65) {
        const auto says = units_says("tempF(" + std::to_string(fahrenheit) + ")", "tempC");
        ASSERT_TRUE(says.has_value()) << fahrenheit;
        EXPECT_NEAR(celsius_from_fahrenheit(fahrenheit).degrees(), *says, 1e-6) << fahrenheit;
    }
}

// NSW Health, conversion chart (read): a fan oven is set about 20 °C lower.
TEST(fan_allowance, is_twenty_degrees) {
    EXPECT_EQ(fan_allowance, CelsiusDifference(20.0));
}

} // namespace
} // namespace loafwright::published

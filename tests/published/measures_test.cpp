// SPDX-License-Identifier: Apache-2.0
//
// The constants of engine/quantity/conversion.hpp against their published values and the program
// `units`.
#include "engine/quantity/conversion.hpp"
#include "tests/published/units_program.hpp"

#include <gtest/gtest.h>

#include <string>
#include <vector>

namespace loafwright::published {
namespace {

struct Constant {
    std::string name;
    double ours;
    double published;
    std::string have; // for the program
    std::string want;
};

std::vector<Constant> constants() {
    return {
        // UK Weights and Measures Act 1985, Schedule 1; Unicode CLDR 41, supplemental units.
        {"pound", grams_per_pound.count(), 453.59237, "pound", "g"},
        {"ounce", grams_per_ounce.count(), 28.349523125, "ounce", "g"},
        // Unicode CLDR 41: US gallon 231 cubic inches, imperial gallon 4.54609 litres.
        {"US cup", millilitres_per_us_cup.count(), 236.5882365, "uscup", "ml"},
        {"US pint", millilitres_per_us_pint.count(), 473.176473, "uspint", "ml"},
        {"imperial pint", millilitres_per_imperial_pint.count(), 568.26125, "brpint", "ml"},
    };
}

TEST(measures, constants_have_their_published_values) {
    for (const Constant& constant : constants()) {
        EXPECT_NEAR(constant.ours, constant.published, constant.published * 1e-9) << constant.name;
    }
}

// The same sums as in a recipe: pounds and ounces add (Unicode CLDR 41).
TEST(measures, pounds_and_ounces_add) {
    EXPECT_NEAR((grams_per_pound + grams_per_ounce * 2.0).count(), 510.29141625, 1e-6);
    EXPECT_NEAR((grams_per_pound * 2.0 + grams_per_ounce * 4.0).count(), 1020.5828325, 1e-6);
    EXPECT_NEAR((grams_per_ounce * 8.0).count(), 226.796185, 1e-6);
    EXPECT_NEAR((grams_per_ounce / 4.0).count(), 7.08738078125, 1e-9);
    EXPECT_NEAR((millilitres_per_us_cup / 3.0).count(), 78.8627455, 1e-9);
}

TEST(measures, constants_agree_with_the_program_units) {
    if (!units_is_installed()) {
        GTEST_SKIP() << "the program units is not installed";
    }
    for (const Constant& constant : constants()) {
        const auto says = units_says(constant.have, constant.want);
        ASSERT_TRUE(says.has_value()) << constant.have;
        EXPECT_NEAR(constant.ours, *says, *says * 1e-9) << constant.name;
    }
}

} // namespace
} // namespace loafwright::published

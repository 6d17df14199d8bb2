// SPDX-License-Identifier: Apache-2.0
//
// The unit table against the sizes that its sources publish, and against the program `units`.
#include "engine/knowledge/knowledge.hpp"
#include "tests/published/measures_file.hpp"
#include "tests/published/units_program.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <vector>

namespace loafwright::published {
namespace {

// A definition is met to the last digit that a double keeps through a multiplication or two.
constexpr double exact = 1e-12;
// What the program prints.
constexpr double printed = 1e-9;

const UnitRow* unit_named(const std::vector<UnitRow>& units, const std::string& name) {
    const auto row = std::find_if(
        units.begin(), units.end(), [&](const UnitRow& unit) { return unit.unit == name; });
    return row == units.end() ? nullptr : &*row;
}

class Published : public testing::Test {
protected:
    void SetUp() override { ASSERT_GE(measures.size(), 25u) << "measures.tsv was not read whole"; }

    std::vector<PublishedMeasure> measures = published_measures();
    Knowledge knowledge = built_in_knowledge();
};

TEST_F(Published, units_have_the_sizes_that_their_sources_give) {
    for (const PublishedMeasure& measure : measures) {
        SCOPED_TRACE(measure.unit + ", " + measure.source);
        const UnitRow* row = unit_named(knowledge.units, measure.unit);
        ASSERT_NE(row, nullptr);
        ASSERT_TRUE(row->value.has_value());
        const bool mass = measure.size_unit == "g";
        EXPECT_EQ(row->dimension, mass ? Dimension::mass : Dimension::volume);
        EXPECT_NEAR(row->value->likely, measure.size, measure.tolerance + measure.size * exact);
        EXPECT_EQ(row->value->low, row->value->high) << "an exact unit has no width";
    }
}

// NIST, Metric Household page: 3 teaspoons to the tablespoon, 16 tablespoons to the cup, 4 cups to
// the quart. NIST Handbook 44, Appendix C (read second-hand): 160 fluid ounces to the imperial
// gallon, so 20 to the pint.
TEST_F(Published, units_stand_in_the_proportions_that_their_sources_give) {
    const auto size = [&](const std::string& name) {
        const UnitRow* row = unit_named(knowledge.units, name);
        return row != nullptr && row->value ? row->value->likely : 0.0;
    };
    EXPECT_NEAR(size("US tablespoon") / size("US teaspoon"), 3.0, exact);
    EXPECT_NEAR(size("US cup") / size("US tablespoon"), 16.0, exact * 16.0);
    EXPECT_NEAR(size("US quart") / size("US cup"), 4.0, exact * 4.0);
    EXPECT_NEAR(size("imperial pint") / size("imperial fluid ounce"), 20.0, exact * 20.0);
}

TEST_F(Published, units_agree_with_the_program_units) {
    if (!units_is_installed()) {
        GTEST_SKIP() << "the program units is not installed";
    }
    int asked = 0;
    for (const PublishedMeasure& measure : measures) {
        if (measure.program_unit == "-") {
            continue;
        }
        SCOPED_TRACE(measure.unit);
        const auto says = units_says(measure.program_unit, measure.size_unit == "g" ? "g" : "ml");
        ASSERT_TRUE(says.has_value()) << measure.program_unit;
        const UnitRow* row = unit_named(knowledge.units, measure.unit);
        ASSERT_TRUE(row != nullptr && row->value.has_value());
        EXPECT_NEAR(row->value->likely, *says, measure.tolerance + *says * printed);
        ++asked;
    }
    EXPECT_GE(asked, 20);
}

} // namespace
} // namespace loafwright::published

// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <vector>

namespace loafwright::dough {

/// A row of tests/published/heat.tsv; the head of that file says what its inputs are.
struct HeatRow {
    std::string name;
    std::string what;
    std::vector<std::string> inputs;
    double value = 0.0;
    double tolerance = 0.0;

    [[nodiscard]] double number(std::size_t index) const { return std::stod(inputs.at(index)); }
};

/// All rows, in order. Throws when the file cannot be read or a row has not seven cells.
std::vector<HeatRow> heat_rows();

} // namespace loafwright::dough

// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <vector>

namespace loafwright::published {

/// One line of measures.tsv.
struct PublishedMeasure {
    std::string unit;
    double size = 0.0;
    double tolerance = 0.0; // 0: exact
    std::string size_unit;  // "g" or "mL"
    std::string program_unit;
    std::string source;
};

/// All lines of measures.tsv; empty when the file is not there or a line is not whole.
std::vector<PublishedMeasure> published_measures();

} // namespace loafwright::published

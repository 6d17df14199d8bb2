// SPDX-License-Identifier: Apache-2.0
//
// Reads measures.tsv: six columns parted by tabs, lines beginning with # left out.
#include "tests/published/measures_file.hpp"

#include <cstdlib>
#include <fstream>
#include <sstream>

namespace loafwright::published {

std::vector<PublishedMeasure> published_measures() {
    std::vector<PublishedMeasure> measures;
    std::ifstream file(LOAFWRIGHT_ROOT "/tests/published/measures.tsv");
    std::string line;
    while (std::getline(file, line)) {
        if (line.empty() || line.front() == '#') {
            continue;
        }
        PublishedMeasure measure;
        std::istringstream columns(line);
        std::string size;
        std::string tolerance;
        std::getline(columns, measure.unit, '\t');
        std::getline(columns, size, '\t');
        std::getline(columns, tolerance, '\t');
        std::getline(columns, measure.size_unit, '\t');
        std::getline(columns, measure.program_unit, '\t');
        std::getline(columns, measure.source, '\t');
        measure.size = std::strtod(size.c_str(), nullptr);
        measure.tolerance = std::strtod(tolerance.c_str(), nullptr);
        if (measure.source.empty() || measure.size <= 0.0) {
            return {};
        }
        measures.push_back(measure);
    }
    return measures;
}

} // namespace loafwright::published

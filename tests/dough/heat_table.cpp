// SPDX-License-Identifier: Apache-2.0
#include "tests/dough/heat_table.hpp"

#include <fstream>
#include <sstream>
#include <stdexcept>

namespace loafwright::dough {

namespace {

std::vector<std::string> parts_of(const std::string& text, char border) {
    std::vector<std::string> parts;
    std::istringstream stream(text);
    for (std::string part; std::getline(stream, part, border);) {
        parts.push_back(part);
    }
    return parts;
}

} // namespace

std::vector<HeatRow> heat_rows() {
    std::ifstream file(LOAFWRIGHT_ROOT "/tests/published/heat.tsv");
    if (!file) {
        throw std::runtime_error("tests/published/heat.tsv cannot be read");
    }
    std::vector<HeatRow> rows;
    for (std::string line; std::getline(file, line);) {
        if (line.empty() || line.front() == '#' || line.rfind("name\t", 0) == 0) {
            continue;
        }
        const std::vector<std::string> cells = parts_of(line, '\t');
        if (cells.size() != 7) {
            throw std::runtime_error("expected seven cells: " + line);
        }
        rows.push_back({cells[0],
                        cells[1],
                        parts_of(cells[2], ' '),
                        std::stod(cells[3]),
                        std::stod(cells[4])});
    }
    return rows;
}

} // namespace loafwright::dough

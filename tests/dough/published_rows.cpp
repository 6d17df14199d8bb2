// SPDX-License-Identifier: Apache-2.0
#include "tests/dough/published_rows.hpp"

#include <fstream>
#include <sstream>
#include <stdexcept>

namespace loafwright::dough {

namespace {

std::vector<std::string> parts_of(const std::string& text, char by) {
    std::vector<std::string> parts;
    std::istringstream stream(text);
    for (std::string part; std::getline(stream, part, by);) {
        parts.push_back(part);
    }
    return parts;
}

std::map<std::string, std::string> inputs_of(const std::string& text) {
    std::map<std::string, std::string> inputs;
    for (const std::string& part : parts_of(text, ';')) {
        const std::size_t begin = part.find_first_not_of(' ');
        const std::size_t equals = part.find('=');
        if (begin != std::string::npos && equals != std::string::npos) {
            inputs[part.substr(begin, equals - begin)] = part.substr(equals + 1);
        }
    }
    return inputs;
}

} // namespace

void PrintTo(const PublishedRow& row, std::ostream* stream) {
    *stream << row.name;
}

std::string PublishedRow::word(const std::string& key) const {
    const auto found = inputs.find(key);
    if (found == inputs.end()) {
        throw std::runtime_error(name + ": no input '" + key + "'");
    }
    return found->second;
}

double PublishedRow::number(const std::string& key) const {
    return std::stod(word(key));
}

std::vector<double> PublishedRow::numbers(const std::string& key) const {
    std::vector<double> values;
    for (const std::string& part : parts_of(word(key), ' ')) {
        values.push_back(std::stod(part));
    }
    return values;
}

std::vector<PublishedRow> published_rows() {
    std::vector<PublishedRow> rows;
    std::ifstream file(LOAFWRIGHT_ROOT "/tests/published/fermentation.tsv");
    for (std::string line; std::getline(file, line);) {
        if (line.empty() || line.front() == '#' || line.starts_with("name\t")) {
            continue;
        }
        const std::vector<std::string> cells = parts_of(line, '\t');
        if (cells.size() != 7) {
            return {};
        }
        rows.push_back({cells[0],
                        cells[1],
                        inputs_of(cells[2]),
                        std::stod(cells[3]),
                        std::stod(cells[4]),
                        cells[5],
                        cells[6]});
    }
    return rows;
}

} // namespace loafwright::dough

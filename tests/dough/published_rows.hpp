// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <map>
#include <ostream>
#include <string>
#include <vector>

namespace loafwright::dough {

/// One line of tests/published/fermentation.tsv.
struct PublishedRow {
    std::string name;
    std::string what;
    std::map<std::string, std::string> inputs;
    double value = 0.0;
    double tolerance = 0.0;
    std::string trust;
    std::string source;

    [[nodiscard]] double number(const std::string& key) const;
    [[nodiscard]] std::vector<double> numbers(const std::string& key) const; // parted by blanks
    [[nodiscard]] std::string word(const std::string& key) const;
};

/// The name that GoogleTest prints; found by argument-dependent lookup.
void PrintTo(const PublishedRow& row, std::ostream* stream);

/// All rows; empty when the file is not there or a line is not whole.
std::vector<PublishedRow> published_rows();

} // namespace loafwright::dough

// SPDX-License-Identifier: Apache-2.0
//
// The layout that the pages before a bake share: a label in the margin, words beside it, figures in
// columns that line up.
#include "shell/cli/labelled_page.hpp"

#include "shell/output/text_lines.hpp"

#include <algorithm>

namespace loafwright::cli {

namespace {

using output::columns_of;
using output::padded;
using output::padded_left;
using output::printable;
using output::wrapped;

constexpr std::size_t narrowest = 40;
constexpr std::size_t label_columns = 13; // as on the page of a plan

} // namespace

LabelledPage::LabelledPage(std::size_t columns, output::Weight weight)
    : columns_(std::max(columns, narrowest)), weight_(weight) {}

void LabelledPage::line(std::string words) {
    words.erase(words.find_last_not_of(' ') + 1);
    if (wants_gap_ && !text_.empty()) {
        text_ += '\n';
    }
    wants_gap_ = false;
    text_ += words + '\n';
}

void LabelledPage::heading(std::string_view words) {
    for (const std::string& part : wrapped(printable(words), columns_)) {
        line(weight_ == output::Weight::bold ? "\033[1m" + part + "\033[0m" : part);
    }
}

void LabelledPage::gap() {
    wants_gap_ = true;
    last_label_.clear();
}

void LabelledPage::labelled(std::string_view label, std::string_view words) {
    const std::string shown = label == last_label_ ? std::string() : std::string(label);
    last_label_ = label;
    bool first = true;
    for (const std::string& part : wrapped(printable(words), columns_ - label_columns)) {
        line(padded(first ? shown : std::string(), label_columns) + part);
        first = false;
    }
}

void LabelledPage::figures(const std::vector<std::string>& cells, std::string_view words) {
    std::string row;
    for (const std::string& cell : cells) {
        row += padded_left(cell, cell_columns_);
    }
    row += "   ";
    const std::size_t margin = columns_of(row);
    bool first = true;
    for (const std::string& part : wrapped(printable(words), columns_ - margin)) {
        line((first ? row : std::string(margin, ' ')) + part);
        first = false;
    }
}

void LabelledPage::sentence(std::string_view words) {
    for (const std::string& part : wrapped(printable(words), columns_)) {
        line(part);
    }
}

} // namespace loafwright::cli

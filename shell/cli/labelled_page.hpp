// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "shell/output/text_page.hpp"

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace loafwright::cli {

/// A page of labelled paragraphs and rows of figures, in letters.
///
/// Promises: no line wider than the page (40 columns at least); a recipe's own control characters
/// do
///           not reach the terminal; no blanks at line ends, one empty line at most between lines.
class LabelledPage {
public:
    LabelledPage(std::size_t columns, output::Weight weight);

    void heading(std::string_view words);
    /// One empty line before what follows.
    void gap();
    /// The words beside their label; the label is left out where it is that of the line before.
    void labelled(std::string_view label, std::string_view words);
    /// Figures right-aligned in columns, then the words. A narrow page keeps the columns.
    void figures(const std::vector<std::string>& cells, std::string_view words);
    /// How wide each of those columns is; nine unless told.
    void cell_columns(std::size_t columns) { cell_columns_ = columns; }
    void sentence(std::string_view words);

    [[nodiscard]] std::string text() const { return text_; }

private:
    void line(std::string words);

    std::size_t columns_;
    std::size_t cell_columns_ = 9;
    output::Weight weight_;
    std::string last_label_;
    bool wants_gap_ = false;
    std::string text_;
};

} // namespace loafwright::cli

// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <vector>

namespace loafwright::paper {

/// A place on a page, y downwards, in points of a PDF or pixels of a picture.
struct Box {
    double left = 0.0;
    double top = 0.0;
    double right = 0.0;
    double bottom = 0.0;

    [[nodiscard]] double width() const { return right - left; }
    [[nodiscard]] double height() const { return bottom - top; }
    [[nodiscard]] double middle() const { return (top + bottom) / 2; }
};

/// The smallest box around both.
Box around(const Box& a, const Box& b);

/// A word as it was seen on a page.
struct SeenWord {
    std::string text; // UTF-8
    Box box;
    double confidence = 1.0;        // 0 to 1; a PDF's own text is certain
    std::vector<std::string> maybe; // other readings
    bool doubted = false;           // worth a question
    bool fraction = false;          // cast in one piece and told by its shape
};

/// Neighbouring words on one line.
struct SeenLine {
    std::vector<SeenWord> words; // not empty, from left to right
    Box box;
    double size = 0.0;       // of the letters, in the page's units
    bool ends_block = false; // followed by more than the usual space
};

struct SeenPage {
    double width = 0.0;
    double height = 0.0;
    bool picture = false; // read from one, so boxes are clippings
    std::vector<SeenLine> lines;
};

/// Letters in a line, spaces left out.
std::size_t letters_in(const SeenLine& line);

/// The words with a space between.
std::string words_of(const SeenLine& line);

} // namespace loafwright::paper

// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "shell/paper/pix.hpp"
#include "shell/paper/seen.hpp"

#include <functional>
#include <string>
#include <vector>

namespace loafwright::paper {

/// A fraction cast in one piece, such as ¾.
struct FractionSign {
    Box box;
    std::string text; // "¾"; empty: some fraction, but which one could not be told
};

/// Reads one figure, of some digits, by itself.
using ReadFigure = std::function<std::string(const Picture& figure)>;

/// The fractions on a straightened page, found by their shape. Tesseract knows no such letter and
/// reads percent signs, letters or nothing.
///
/// Promises: percent signs are none of them.
std::vector<FractionSign> fractions_on(const Picture& page, const ReadFigure& read);

/// Is a letter that was read there in truth this fraction, or a piece of it?
bool covers(const FractionSign& fraction, const Box& letter_box);

/// What else may stand there, behind the same figures.
std::vector<std::string> other_fractions(const std::string& before, const FractionSign& fraction);

/// "2 ½" with next to no gap is one number.
void glue_fractions(SeenLine& line);

} // namespace loafwright::paper

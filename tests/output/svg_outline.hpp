// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <vector>

namespace loafwright::output {

/// Something an SVG shows: a line of text from where it begins, or a drawn shape as the box around
/// it. In points.
struct Shown {
    std::string words; // "drawn" for a shape
    double x = 0.0;
    double y = 0.0; // the baseline of words
    double to_x = 0.0;
    double to_y = 0.0;
};

/// What Cairo's SVG shows, in its order.
///
/// The letters of such a file are shapes that are used again and again under numbers. Which letter
/// a number stands for is learned from `text`, the letters in their order, and has to be the same
/// each time: where it is not, words hold U+FFFD.
std::vector<Shown> outline_of(const std::string& svg, const std::string& text);

std::string written(const std::vector<Shown>& outline);

/// Empty where both show the same, each thing within `points`; else the first difference.
std::string difference(const std::string& golden, const std::string& now, double points);

} // namespace loafwright::output

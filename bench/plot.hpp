// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <utility>
#include <vector>

namespace loafwright::bench {

/// A line of a plot, or single points where `points_only`. Lines with `dashed` are for comparison.
struct Trace {
    std::string name;
    std::vector<std::pair<double, double>> points;
    bool points_only = false;
    bool dashed = false;
};

/// One diagram with straight axes; ranges must not be empty.
struct Plot {
    std::string title;
    std::string x_name;
    std::string y_name;
    double x_from = 0.0, x_to = 1.0, x_tick = 1.0;
    double y_from = 0.0, y_to = 1.0, y_tick = 1.0;
    std::vector<Trace> traces;
};

/// The plot as an SVG file's text: black and grey readable, no script, no outside font.
std::string svg(const Plot& plot);

} // namespace loafwright::bench

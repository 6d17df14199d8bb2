// SPDX-License-Identifier: Apache-2.0
#include "bench/plot.hpp"

#include <cstdio>
#include <iterator>

namespace loafwright::bench {

namespace {

constexpr double width = 640.0;
constexpr double height = 400.0;
constexpr double left = 60.0;
constexpr double right = 450.0;
constexpr double top = 34.0;
constexpr double bottom = 350.0;
const char* const colours[] = {"#1b4f8a", "#b3472a", "#2f7d4f", "#7a4f9c", "#8a6d1b", "#333333"};

std::string number(double value) {
    char text[32];
    std::snprintf(text, sizeof text, "%.4g", value);
    return text;
}

std::string pixel(double value) {
    char text[32];
    std::snprintf(text, sizeof text, "%.1f", value);
    return text;
}

std::string words(double x, double y, const std::string& text, const char* anchor) {
    return "<text x=\"" + pixel(x) + "\" y=\"" + pixel(y) + "\" text-anchor=\"" + anchor + "\">" +
           text + "</text>\n";
}

class Frame {
public:
    explicit Frame(const Plot& plot) : plot_(plot) {}
    [[nodiscard]] double x(double value) const {
        return left + (right - left) * (value - plot_.x_from) / (plot_.x_to - plot_.x_from);
    }
    [[nodiscard]] double y(double value) const {
        return bottom - (bottom - top) * (value - plot_.y_from) / (plot_.y_to - plot_.y_from);
    }

private:
    const Plot& plot_;
};

std::string grid(const Plot& plot, const Frame& frame) {
    std::string out = "<g stroke=\"#ccc\" stroke-width=\"0.6\">\n";
    std::string labels;
    const double slack = 1e-9;
    for (double x = plot.x_from; x <= plot.x_to + slack; x += plot.x_tick) {
        out +=
            "<path d=\"M" + pixel(frame.x(x)) + ' ' + pixel(top) + "V" + pixel(bottom) + "\"/>\n";
        labels += words(frame.x(x), bottom + 16.0, number(x), "middle");
    }
    for (double y = plot.y_from; y <= plot.y_to + slack; y += plot.y_tick) {
        out +=
            "<path d=\"M" + pixel(left) + ' ' + pixel(frame.y(y)) + "H" + pixel(right) + "\"/>\n";
        labels += words(left - 6.0, frame.y(y) + 4.0, number(y), "end");
    }
    return out + "</g>\n" + labels;
}

std::string drawn(const Trace& trace, const Frame& frame, const char* colour) {
    std::string out;
    if (trace.points_only) {
        for (const auto& [x, y] : trace.points) {
            out += "<circle cx=\"" + pixel(frame.x(x)) + "\" cy=\"" + pixel(frame.y(y)) +
                   "\" r=\"4\" fill=\"none\" stroke-width=\"1.6\" stroke=\"" + colour + "\"/>\n";
        }
        return out;
    }
    out = "<path fill=\"none\" stroke-width=\"1.6\" stroke=\"" + std::string(colour) + "\"" +
          (trace.dashed ? " stroke-dasharray=\"5 4\"" : "") + " d=\"";
    char command = 'M';
    for (const auto& [x, y] : trace.points) {
        out += command + pixel(frame.x(x)) + ' ' + pixel(frame.y(y));
        command = 'L';
    }
    return out + "\"/>\n";
}

} // namespace

std::string svg(const Plot& plot) {
    const Frame frame(plot);
    std::string out = "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 " + number(width) +
                      ' ' + number(height) +
                      "\" font-family=\"sans-serif\" font-size=\"11\" fill=\"#222\">\n"
                      "<title>" +
                      plot.title +
                      "</title>\n<rect width=\"100%\" height=\"100%\" fill=\"#fff\"/>\n";
    out += words(left, 20.0, plot.title, "start");
    out += grid(plot, frame);
    out += words((left + right) / 2.0, bottom + 36.0, plot.x_name, "middle");
    out += "<g transform=\"rotate(-90 16 " + pixel((top + bottom) / 2.0) + ")\">" +
           words(16.0, (top + bottom) / 2.0, plot.y_name, "middle") + "</g>\n";
    double line = top + 10.0;
    std::size_t index = 0;
    for (const Trace& trace : plot.traces) {
        const char* const colour = colours[index % std::size(colours)];
        out += drawn(trace, frame, colour);
        out += trace.points_only
                   ? "<circle cx=\"" + pixel(right + 20.0) + "\" cy=\"" + pixel(line - 4.0) +
                         "\" r=\"4\" fill=\"none\" stroke-width=\"1.6\" stroke=\"" + colour +
                         "\"/>\n"
                   : "<path d=\"M" + pixel(right + 10.0) + ' ' + pixel(line - 4.0) +
                         "h20\" stroke-width=\"1.6\" stroke=\"" + colour + "\"" +
                         (trace.dashed ? " stroke-dasharray=\"5 4\"" : "") + "/>\n";
        out += words(right + 36.0, line, trace.name, "start");
        line += 17.0;
        ++index;
    }
    return out + "</svg>\n";
}

} // namespace loafwright::bench

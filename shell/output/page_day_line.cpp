// SPDX-License-Identifier: Apache-2.0
//
// The day as a clock laid out straight, from begin to eat, beside the stages. Work is black, time
// near the oven hatched, waiting empty; a key says so in words. Each stretch carries its number.
#include "shell/output/page_block.hpp"

#include <algorithm>
#include <array>
#include <cstdint>
#include <string_view>
#include <utility>

namespace loafwright::output {

namespace {

constexpr double bar_width = 15.0;
constexpr double gap = 5.0;
constexpr double least_bar = 2.5;
constexpr double least_step = 22.0; // between hours that are named

struct Kind {
    Attention attention;
    Fill fill;
    std::string_view word;
};
constexpr std::array<Kind, 3> kinds = {{{Attention::hands, Fill::solid, "hands"},
                                        {Attention::near, Fill::hatched, "near oven"},
                                        {Attention::wait, Fill::open, "waiting"}}};

Fill fill_of(Attention attention) {
    for (const Kind& kind : kinds) {
        if (kind.attention == attention) {
            return kind.fill;
        }
    }
    return Fill::open;
}

// Every hour, every other, every third …, so that names do not touch.
std::int64_t hours_a_name(double points_a_minute) {
    constexpr std::array<std::int64_t, 7> steps = {1, 2, 3, 4, 6, 12, 24};
    for (const std::int64_t step : steps) {
        if (static_cast<double>(60 * step) * points_a_minute >= least_step) {
            return step;
        }
    }
    return steps.back();
}

double hours_width(const DayLine& line, const Galley& galley) {
    double widest = 0.0;
    for (const DayLineHour& hour : line.hours) {
        widest = std::max(widest, galley.width_of(Role::day_line, for_paper(hour.text)));
    }
    return widest;
}

bool has(const DayLine& line, Attention attention) {
    return std::any_of(line.spans.begin(), line.spans.end(), [attention](const DayLineSpan& span) {
        return span.attention == attention;
    });
}

void add_key(Part& part, const DayLine& line, const Galley& galley, double x, double bottom) {
    const double row = galley.words(Role::day_line, "0", 0.0, 0.0, -1.0).extent.height + 1.0;
    double y = bottom;
    for (const Kind& kind : kinds) {
        y -= has(line, kind.attention) ? row : 0.0;
    }
    for (const Kind& kind : kinds) {
        if (!has(line, kind.attention)) {
            continue;
        }
        const Words word =
            galley.words(Role::day_line, std::string(kind.word), x + bar_width + gap, y, -1.0);
        const double side = 0.7 * word.face.points;
        part.marks.emplace_back(
            Bar{x, y + word.extent.baseline - side, bar_width, side, kind.fill});
        part.marks.emplace_back(word);
        y += row;
    }
}

} // namespace

double day_line_width(const DayLine& line, const Galley& galley) {
    const double numbers = galley.width_of(Role::day_line, "eat");
    const double key = bar_width + gap + galley.width_of(Role::day_line, "near oven");
    return std::max(hours_width(line, galley) + gap + bar_width + gap + numbers, key);
}

Part day_line_part(const DayLine& line, const Galley& galley, double x, double height) {
    Part part;
    part.kind = PartKind::drawing;
    const double text_height = galley.words(Role::day_line, "0", 0.0, 0.0, -1.0).extent.height;
    const double key_height = 3.0 * (text_height + 1.0) + 10.0;
    const double top = 0.5 * text_height;
    const double length = height - key_height - text_height;
    if (line.minutes <= 0 || length <= 0.0) {
        return part;
    }
    const double points_a_minute = length / static_cast<double>(line.minutes);
    const auto y_of = [&](std::int64_t minutes) {
        return top + points_a_minute * static_cast<double>(minutes);
    };
    const double bar_at = x + hours_width(line, galley) + gap;

    const std::int64_t step = hours_a_name(points_a_minute);
    for (const DayLineHour& hour : line.hours) {
        if (hour.hour % step != 0) {
            continue;
        }
        Words name = galley.words(Role::day_line, for_paper(hour.text), 0.0, 0.0, -1.0);
        name.x = bar_at - gap - name.extent.width;
        name.y = y_of(hour.minutes) - 0.5 * text_height;
        part.marks.emplace_back(std::move(name));
        part.marks.emplace_back(Stroke{
            bar_at - 3.5, y_of(hour.minutes), bar_at, y_of(hour.minutes), galley.measures.rule});
    }
    part.marks.emplace_back(Stroke{bar_at, top, bar_at, top + length, galley.measures.rule});

    // Numbers stand beside the middle of their stretch, moved down where they would touch.
    double free_from = top - 0.5 * text_height;
    for (const DayLineSpan& span : line.spans) {
        const double from = y_of(span.from_minutes);
        const double tall = std::max(least_bar, y_of(span.to_minutes) - from);
        part.marks.emplace_back(Bar{bar_at, from, bar_width, tall, fill_of(span.attention)});
        Words number = galley.words(
            Role::day_line, std::to_string(span.number), bar_at + bar_width + gap, 0.0, -1.0);
        number.y = std::max(free_from, from + 0.5 * (tall - text_height));
        free_from = number.y + 0.85 * text_height;
        part.marks.emplace_back(std::move(number));
    }
    Words eat = galley.words(Role::day_line, "eat", bar_at + bar_width + gap, 0.0, -1.0);
    eat.y = std::max(free_from, top + length - 0.5 * text_height);
    part.marks.emplace_back(
        Stroke{bar_at, top + length, bar_at + bar_width, top + length, galley.measures.rule});
    part.marks.emplace_back(std::move(eat));
    add_key(part, line, galley, x, height);
    return part;
}

} // namespace loafwright::output

// SPDX-License-Identifier: Apache-2.0
//
// Sizes. Times and titles are read from a metre and a half, signs from arm's length, the rest in
// the hand. Each role has a least size and a comfortable one; one number between them, the ease,
// sets the whole page, so that it keeps its proportions.
#include "shell/output/page_measures.hpp"

#include <array>

namespace loafwright::output {

namespace {

constexpr double close_leading = 0.92; // Lato's lines, 1.2 of its size, at 1.1

struct Row {
    Role role;
    int weight;
    double least, most;             // usual print
    double large_least, large_most; // large print
};

constexpr std::array<Row, 16> rows = {{
    {Role::eat_time, 900, 42.0, 60.0, 46.0, 60.0},
    {Role::title, 700, 20.0, 27.0, 24.0, 28.0},
    {Role::lead, 400, 20.0, 22.0, 22.0, 24.0},
    {Role::begin_time, 900, 24.0, 30.0, 28.0, 34.0},
    {Role::stage_number, 400, 20.0, 24.0, 24.0, 27.0},
    {Role::stage_time, 900, 20.0, 24.0, 24.0, 27.0},
    {Role::stage_title, 700, 20.0, 24.0, 24.0, 27.0},
    {Role::act_time, 400, 20.0, 21.0, 22.0, 24.0},
    {Role::act, 600, 13.0, 15.5, 19.0, 21.0},
    {Role::day, 700, 13.0, 15.5, 19.0, 21.0},
    {Role::length, 400, 13.0, 15.5, 19.0, 21.0},
    {Role::cue, 600, 13.0, 15.5, 19.0, 21.0},
    {Role::label, 700, 11.0, 14.0, 18.5, 20.0},
    {Role::body, 400, 10.5, 13.0, 18.0, 19.0},
    {Role::column_head, 400, 10.0, 11.0, 18.0, 18.0},
    {Role::day_line, 400, 10.0, 11.0, 18.0, 18.0},
}};

double between(double least, double most, double ease) {
    return least + ease * (most - least);
}

} // namespace

Face Measures::face(Role role) const {
    for (const Row& row : rows) {
        if (row.role == role) {
            return {print == Print::large ? between(row.large_least, row.large_most, ease)
                                          : between(row.least, row.most, ease),
                    row.weight,
                    role == Role::eat_time ? 1.0 : leading};
        }
    }
    return {};
}

Measures measures_for(Paper paper, Print print, double ease, Lines lines) {
    Measures measures;
    measures.print = print;
    measures.ease = ease;
    measures.width = paper == Paper::a4 ? 210.0 / 25.4 * 72.0 : 612.0;
    measures.height = paper == Paper::a4 ? 297.0 / 25.4 * 72.0 : 792.0;
    measures.margin = between(29.0, 36.0, ease);
    measures.block_gap = between(8.0, 18.0, ease);
    measures.stage_gap = between(4.0, 13.0, ease);
    measures.line_gap = between(1.0, 3.0, ease);
    measures.column_gap = between(8.0, 10.0, ease);
    const double stage = measures.face(Role::stage_time).points;
    measures.box = 0.72 * stage;
    measures.act_box = 0.62 * stage;
    measures.blank = 2.1 * stage;
    if (lines == Lines::close) {
        measures.leading = close_leading;
        measures.stage_gap *= 0.5;
        measures.block_gap *= 0.75;
    }
    if (print == Print::large) {
        measures.note_line = 30.0;
        measures.rule = 1.0;
    }
    return measures;
}

std::size_t most_lines(Role role) {
    switch (role) {
    case Role::title:
    case Role::cue:
        return 6;
    case Role::stage_title:
        return 4;
    case Role::body:
        return 8;
    case Role::act:
    case Role::length:
        return 3;
    default:
        return 1;
    }
}

} // namespace loafwright::output

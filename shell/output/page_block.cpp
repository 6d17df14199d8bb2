// SPDX-License-Identifier: Apache-2.0
//
// Words set with the measures of one attempt, and parts moved to where they belong.
#include "shell/output/page_block.hpp"

#include <algorithm>
#include <utility>

namespace loafwright::output {

namespace {

template <typename... Kinds>
struct Each : Kinds... {
    using Kinds::operator()...;
};
template <typename... Kinds>
Each(Kinds...) -> Each<Kinds...>;

struct Reach {
    double top = 0.0;
    double bottom = 0.0;
};

Reach reach_of(const Mark& mark) {
    return std::visit(
        Each{[](const Words& words) {
                 return Reach{words.y, words.y + words.extent.height};
             },
             [](const Stroke& stroke) {
                 return Reach{std::min(stroke.y, stroke.to_y), std::max(stroke.y, stroke.to_y)};
             },
             [](const Square& square) {
                 return Reach{square.y, square.y + square.side};
             },
             [](const Bar& bar) {
                 return Reach{bar.y, bar.y + bar.height};
             },
             [](const CodeMark& mark_of_code) {
                 const auto side = static_cast<double>(mark_of_code.code.side);
                 return Reach{mark_of_code.y, mark_of_code.y + side * mark_of_code.module_points};
             }},
        mark);
}

} // namespace

Words Galley::words(
    Face face, Role role, const std::string& text, double x, double y, double width) const {
    Words set;
    set.role = role;
    set.x = x;
    set.y = y;
    set.width = width;
    set.most_lines = most_lines(role);
    set.text = text;
    set.face = face;
    set.extent = setter.extent(set.text, set.face, width, set.most_lines);
    return set;
}

Words Galley::words(Role role, const std::string& text, double x, double y, double width) const {
    return words(measures.face(role), role, text, x, y, width);
}

double Galley::width_of(Role role, const std::string& text) const {
    return setter.extent(text, measures.face(role), -1.0, 1).width;
}

void add(Block& block, PartKind kind, std::vector<Mark> marks) {
    Part part;
    part.kind = kind;
    part.marks = std::move(marks);
    block.parts.push_back(std::move(part));
    block.height = std::max(block.height, bottom_of(block.parts.back()));
}

void shift(Part& part, double right, double down) {
    for (Mark& mark : part.marks) {
        std::visit(
            [right, down](auto& moved) {
                moved.x += right;
                moved.y += down;
            },
            mark);
        if (auto* stroke = std::get_if<Stroke>(&mark)) {
            stroke->to_x += right;
            stroke->to_y += down;
        }
    }
}

double bottom_of(const Part& part) {
    double bottom = 0.0;
    for (const Mark& mark : part.marks) {
        bottom = std::max(bottom, reach_of(mark).bottom);
    }
    return bottom;
}

double top_of(const Part& part) {
    double top = part.marks.empty() ? 0.0 : reach_of(part.marks.front()).top;
    for (const Mark& mark : part.marks) {
        top = std::min(top, reach_of(mark).top);
    }
    return top;
}

} // namespace loafwright::output

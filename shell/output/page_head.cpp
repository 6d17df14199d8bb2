// SPDX-License-Identifier: Apache-2.0
//
// The top of the page: which bread, when it is eaten, when to begin. "Eat at" and "Begin" stand
// under each other, and so do their times.
#include "engine/recipe/words.hpp"
#include "shell/output/page_block.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace loafwright::output {

namespace {

constexpr double narrowest_beside = 120.0;
constexpr double under_figures = 6.0; // figures have no descenders, so less than a line's

// From the top of the words to the baseline of their last line.
double last_baseline(const Words& words) {
    const double line = 1.2 * words.face.leading * words.face.points;
    const double lines = std::max(1.0, std::round(words.extent.height / line));
    return words.extent.baseline + (lines - 1.0) / lines * words.extent.height;
}

class HeadSetter {
public:
    HeadSetter(const Sheet& sheet, const PageOptions& options, const Galley& galley)
        : sheet_(sheet), options_(options), galley_(galley), width_(galley.measures.room()) {}

    Block set() {
        Part code = code_part();
        add_title();
        const SaidTime eat{capitalised(sheet_.eat.words), sheet_.eat.time};
        const SaidTime& begin = sheet_.begin;
        words_width_ = std::max(galley_.width_of(Role::lead, for_paper(eat.words)),
                                galley_.width_of(Role::lead, for_paper(begin.words)));
        add_time(eat, Role::eat_time);
        add_time(begin, Role::begin_time);
        add_rest(for_paper(sheet_.free));
        if (!code.marks.empty()) {
            add_under(for_paper("On a screen: " + options_.address));
            block_.parts.back().link = options_.address;
            block_.height = std::max(block_.height, code_height_);
            block_.parts.push_back(std::move(code));
        }
        return std::move(block_);
    }

private:
    // In the corner; what else stands at the top keeps out of its quiet zone.
    Part code_part() {
        Part part;
        auto code = short_code(options_.address);
        if (code) {
            CodeMark mark;
            mark.module_points = galley_.measures.module_points;
            const double side = static_cast<double>(code->side) * mark.module_points;
            const double quiet = static_cast<double>(quiet_modules) * mark.module_points;
            mark.x = width_ - side;
            mark.code = std::move(*code);
            width_ = mark.x - quiet;
            code_height_ = side + quiet;
            part.kind = PartKind::drawing;
            part.link = options_.address;
            part.marks.emplace_back(std::move(mark));
        }
        return part;
    }

    void add_title() {
        std::string title = for_paper(sheet_.title);
        if (title.empty()) {
            title = "Bread";
        }
        Words words = galley_.words(Role::title, title, 0.0, 0.0, width_);
        // A title of many lines is set as small as a title may be.
        if (words.extent.height > 2.5 * words.face.points) {
            const Measures least = measures_for(options_.paper, options_.print, 0.0);
            words = galley_.words(least.face(Role::title), Role::title, title, 0.0, 0.0, width_);
        }
        y_ = words.extent.height;
        add(block_, PartKind::title, {std::move(words)});
        block_.parts.back().bookmark = title;
    }

    void add_time(const SaidTime& told, Role role) {
        if (told.time.empty()) {
            return;
        }
        const double x =
            words_width_ > 0.0 ? words_width_ + 0.8 * galley_.measures.column_gap : 0.0;
        Words time = galley_.words(role, for_paper(told.time), x, y_, width_ - x);
        time.y -= 0.05 * time.face.points;
        const double baseline = time.y + time.extent.baseline;
        std::vector<Mark> marks;
        if (!told.words.empty()) {
            Words lead = galley_.words(Role::lead, for_paper(told.words), 0.0, 0.0, -1.0);
            lead.y = baseline - lead.extent.baseline;
            marks.emplace_back(std::move(lead));
        }
        times_end_ = std::max(times_end_, x + time.extent.width);
        marks.emplace_back(std::move(time));
        add(block_, PartKind::paragraph, std::move(marks));
        last_baseline_ = baseline;
        y_ = baseline + under_figures;
        block_.height = y_;
    }

    // Beside the times where there is room, its last line on theirs; else under them.
    void add_rest(const std::string& rest) {
        if (rest.empty()) {
            return;
        }
        const Measures& measures = galley_.measures;
        const double x = std::max(measures.second_column(), times_end_ + 2.0 * measures.column_gap);
        if (width_ - x >= narrowest_beside) {
            Words words = galley_.words(Role::length, rest, x, 0.0, width_ - x);
            words.y = last_baseline_ - last_baseline(words);
            if (words.y >= bottom_of(block_.parts.front()) && !words.extent.is_cut) {
                add(block_, PartKind::paragraph, {std::move(words)});
                return;
            }
        }
        add_under(rest);
    }

    void add_under(const std::string& words) {
        y_ += galley_.measures.line_gap;
        add(block_, PartKind::paragraph, {galley_.words(Role::length, words, 0.0, y_, width_)});
        y_ = bottom_of(block_.parts.back());
    }

    const Sheet& sheet_;
    const PageOptions& options_;
    const Galley& galley_;
    Block block_;
    double width_ = 0.0;
    double y_ = 0.0;
    double words_width_ = 0.0;
    double times_end_ = 0.0;
    double last_baseline_ = 0.0;
    double code_height_ = 0.0;
};

} // namespace

Block head_block(const Sheet& sheet, const PageOptions& options, const Galley& galley) {
    return HeadSetter(sheet, options, galley).set();
}

} // namespace loafwright::output

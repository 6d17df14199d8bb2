// SPDX-License-Identifier: Apache-2.0
//
// Blocks put on pages, one under the other. A block is parted only when it is longer than a page.
#include "shell/output/page_paging.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <optional>
#include <string>
#include <utility>

namespace loafwright::output {

namespace {

constexpr std::size_t fewest_note_lines = 3;
constexpr double most_stretch = 8.0; // of a gap on a page that is not quite full

/// The pages of one bread.
class Pages {
public:
    /// `foot` stays free at the foot of each page.
    Pages(const Measures& measures, double foot) : measures_(measures), foot_(foot), pages_(1) {}

    void place(Block block) {
        const double gap = is_empty_ ? 0.0 : block.gap_before;
        if (y_ + gap + block.height <= limit()) {
            put(std::move(block), y_ + gap);
            return;
        }
        if (block.height <= limit() && !is_empty_) {
            turn();
            put(std::move(block), y_);
            return;
        }
        // Longer than a page: part by part.
        double moved = y_ + gap;
        double cut = 0.0;
        for (Part& part : block.parts) {
            if (moved + bottom_of(part) - cut > limit() && !is_empty_) {
                turn();
                moved = y_;
                cut = top_of(part);
            }
            Block single;
            single.height = bottom_of(part) - cut;
            shift(part, 0.0, -cut);
            single.parts.push_back(std::move(part));
            const double next = std::max(y_, moved + single.height);
            put(std::move(single), moved);
            y_ = next;
        }
    }

    [[nodiscard]] double y() const { return y_; }
    [[nodiscard]] double left_over() const { return limit() - y_; }
    [[nodiscard]] std::size_t count() const { return pages_.size(); }
    [[nodiscard]] std::vector<LaidPage>& pages() { return pages_; }

    void put(Block block, double y) {
        for (Part& part : block.parts) {
            shift(part, measures_.margin, measures_.margin + y);
            pages_.back().parts.push_back(std::move(part));
        }
        y_ = y + block.height;
        is_empty_ = false;
    }

private:
    [[nodiscard]] double limit() const { return measures_.depth() - foot_; }
    void turn() {
        pages_.emplace_back();
        y_ = 0.0;
        is_empty_ = true;
    }

    const Measures& measures_;
    double foot_ = 0.0;
    std::vector<LaidPage> pages_;
    double y_ = 0.0;
    bool is_empty_ = true;
};

// "Page 1 of 2: Plain tin loaf" at the foot, so that sheets are not mixed up.
void number_pages(std::vector<LaidPage>& pages, const Sheet& sheet, const Galley& galley) {
    const Measures& measures = galley.measures;
    for (std::size_t i = 0; pages.size() > 1 && i < pages.size(); ++i) {
        Words words = galley.words(
            Role::column_head,
            for_paper(fmt::format("Page {} of {}: {}", i + 1, pages.size(), sheet.title)),
            measures.margin,
            0.0,
            measures.room());
        words.y = measures.height - measures.margin - words.extent.height;
        Part part;
        part.marks.emplace_back(std::move(words));
        pages[i].parts.push_back(std::move(part));
    }
}

double notes_depth(const Measures& measures) {
    return measures.note_line * static_cast<double>(fewest_note_lines + 1);
}

// A single page with room to spare, but not for lines to write on, spreads out a little.
void stretch(Column& column, double depth) {
    const double spare = depth - column.height();
    if (spare <= 0.0 || column.blocks.size() < 2 ||
        spare - column.measures.block_gap >= notes_depth(column.measures)) {
        return;
    }
    const double each =
        std::min(most_stretch, spare / static_cast<double>(column.blocks.size() - 1));
    for (std::size_t i = 1; i < column.blocks.size(); ++i) {
        // The heads of the columns stay close to the first stage.
        if (i != column.first_stage + 1) {
            column.blocks[i].gap_before += each;
        }
    }
}

} // namespace

std::vector<LaidPage>
paged(Column column, const Sheet& sheet, const TypeSetter& setter, Overleaf overleaf) {
    const Galley galley{column.measures, setter};
    const double foot =
        overleaf == Overleaf::yes ? 1.8 * column.measures.face(Role::column_head).points : 0.0;
    stretch(column, column.measures.depth() - foot);
    Pages pages(column.measures, foot);
    std::optional<Part> line;
    double stages_from = 0.0;
    for (std::size_t i = 0; i < column.blocks.size(); ++i) {
        const double gap = column.blocks[i].gap_before;
        if (i == column.first_stage) {
            stages_from = pages.y() + gap;
        }
        pages.place(std::move(column.blocks[i]));
        if (column.day_line && i + 1 == column.after_stages) {
            line =
                day_line_part(sheet.day_line, galley, column.day_line_at, pages.y() - stages_from);
        }
    }
    const double room = pages.left_over() - column.measures.block_gap;
    if (room >= notes_depth(column.measures)) {
        pages.put(note_lines(galley, room), pages.y() + column.measures.block_gap);
    }
    if (line && !line->marks.empty()) {
        Block block;
        block.parts.push_back(std::move(*line));
        pages.put(std::move(block), stages_from);
    }
    number_pages(pages.pages(), sheet, galley);
    return std::move(pages.pages());
}

} // namespace loafwright::output

// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "shell/output/page_block.hpp"

#include <cstddef>
#include <vector>

namespace loafwright::output {

/// A bread in blocks, and where its day line would stand.
struct Column {
    Measures measures;
    std::vector<Block> blocks;
    std::size_t first_stage = 0; // the block of the column heads
    std::size_t after_stages = 0;
    double day_line_at = 0.0;
    bool day_line = false;

    [[nodiscard]] double height() const {
        double sum = 0.0;
        for (std::size_t i = 0; i < blocks.size(); ++i) {
            sum += blocks[i].height + (i > 0 ? blocks[i].gap_before : 0.0);
        }
        return sum;
    }
};

/// Whether a bread may go on overleaf.
enum class Overleaf { no, yes };

/// Puts the blocks of a column on pages, with lines to write on where there is room.
std::vector<LaidPage>
paged(Column column, const Sheet& sheet, const TypeSetter& setter, Overleaf overleaf);

} // namespace loafwright::output

// SPDX-License-Identifier: Apache-2.0
//
// Letters smeared sideways grow together into pieces of lines; where those stand says where the
// columns are, before a word has been read.
#include "shell/paper/regions.hpp"

#include "shell/paper/columns.hpp"
#include "shell/paper/straighten.hpp"

#include <allheaders.h>

#include <algorithm>
#include <cmath>
#include <utility>

namespace loafwright::paper {

namespace {

constexpr double letter = letter_pixels;
constexpr double least_height = 0.5 * letter;
constexpr double most_height = 5.0 * letter;
constexpr double room = 0.6 * letter;

std::vector<SeenLine> pieces_of(const Picture& page) {
    const Picture dark(pixThresholdToBinary(page.get(), ink_below));
    // Grains and specks, smeared, would fill the gutters.
    constexpr auto speck = static_cast<l_int32>(0.4 * letter);
    const Picture black(
        dark ? pixSelectBySize(
                   dark.get(), speck, speck, 8, L_SELECT_IF_EITHER, L_SELECT_IF_GTE, nullptr)
             : nullptr);
    const auto smear = static_cast<l_int32>(std::lround(1.3 * letter));
    const Picture grown(black ? pixCloseSafeBrick(nullptr, black.get(), smear, 1) : nullptr);
    Boxa* boxes = grown ? pixConnCompBB(grown.get(), 8) : nullptr;
    std::vector<SeenLine> pieces;
    for (l_int32 i = 0; boxes != nullptr && i < boxaGetCount(boxes); ++i) {
        l_int32 x = 0;
        l_int32 y = 0;
        l_int32 width = 0;
        l_int32 height = 0;
        boxaGetBoxGeometry(boxes, i, &x, &y, &width, &height);
        if (height < least_height || height > most_height || width < least_height) {
            continue;
        }
        SeenLine piece;
        piece.box = {static_cast<double>(x),
                     static_cast<double>(y),
                     static_cast<double>(x + width),
                     static_cast<double>(y + height)};
        // How many letters that width holds; which, nobody knows yet.
        const auto letters = static_cast<std::size_t>(std::max(1.0, width / (0.95 * letter)));
        SeenWord unread;
        unread.text.assign(letters, 'x');
        unread.box = piece.box;
        piece.words.push_back(std::move(unread));
        pieces.push_back(std::move(piece));
    }
    boxaDestroy(&boxes);
    return pieces;
}

} // namespace

std::vector<Box> regions_of(const Picture& page) {
    const double width = width_of(page);
    const double height = height_of(page);
    std::vector<Box> regions;
    for (const Column& column : columns_of(pieces_of(page))) {
        const Box& box = column.box;
        regions.push_back({std::max(0.0, box.left - room),
                           std::max(0.0, box.top - room),
                           std::min(width, box.right + room),
                           std::min(height, box.bottom + room)});
    }
    return regions;
}

} // namespace loafwright::paper

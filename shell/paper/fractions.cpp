// SPDX-License-Identifier: Apache-2.0
//
// The shape of a fraction: a slanted stroke as high as a capital, a small figure at its upper left
// and one at its lower right. A percent sign has the same three parts, but a hole in the upper one,
// which no figure above a stroke has in a kitchen (1, 2, 3, 5, 7).
#include "shell/paper/fractions.hpp"

#include "shell/paper/straighten.hpp"

#include <allheaders.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <iterator>
#include <optional>
#include <string_view>
#include <utility>

namespace loafwright::paper {

namespace {

constexpr double letter = letter_pixels;

struct Part {
    Box box;
    double filled = 0.0;  // share of its box that is black
    double slanted = 0.0; // share of its ink that leans like a stroke of division
};

Picture clipped(const Picture& picture, const Box& box) {
    ::Box* place = boxCreate(static_cast<l_int32>(box.left),
                             static_cast<l_int32>(box.top),
                             static_cast<l_int32>(box.width()),
                             static_cast<l_int32>(box.height()));
    Picture cut(pixClipRectangle(picture.get(), place, nullptr));
    boxDestroy(&place);
    return cut;
}

// Is there ink from top to bottom in one place, as in a one?
bool has_stem(const Picture& black, const Box& box) {
    const Picture cut = clipped(black, box);
    Numa* columns = cut ? pixCountPixelsByColumn(cut.get()) : nullptr;
    l_float32 most = 0.0F;
    if (columns != nullptr) {
        numaGetMax(columns, &most, nullptr);
        numaDestroy(&columns);
    }
    return most > 0.88 * box.height();
}

int holes_in(const Picture& black, const Box& box) {
    const Picture cut = clipped(black, box);
    if (!cut) {
        return 0;
    }
    // A white border, so that all the outside is one piece; what is left is holes.
    const Picture framed(pixAddBorder(cut.get(), 2, 0));
    const Picture white(pixInvert(nullptr, framed.get()));
    // Specks are no holes.
    const Picture large(
        pixSelectBySize(white.get(), 3, 3, 4, L_SELECT_IF_BOTH, L_SELECT_IF_GTE, nullptr));
    if (!large) {
        return 0;
    }
    l_int32 pieces = 0;
    pixCountConnComp(large.get(), 4, &pieces);
    return std::max(0, pieces - 1);
}

std::vector<Part> parts_of(const Picture& black) {
    std::vector<Part> parts;
    Pixa* pieces = nullptr;
    Boxa* boxes = pixConnComp(black.get(), &pieces, 8);
    for (l_int32 i = 0; boxes != nullptr && i < boxaGetCount(boxes); ++i) {
        l_int32 x = 0;
        l_int32 y = 0;
        l_int32 width = 0;
        l_int32 height = 0;
        boxaGetBoxGeometry(boxes, i, &x, &y, &width, &height);
        if (height < 0.3 * letter || height > 2.2 * letter || width > 2.0 * letter || width < 3) {
            continue;
        }
        Picture piece(pixaGetPix(pieces, i, L_CLONE));
        l_int32 ink = 0;
        pixCountPixels(piece.get(), &ink, nullptr);
        // Upper left and lower right of such a stroke are empty.
        double beside = 0.0;
        for (const bool upper : {true, false}) {
            ::Box* corner = boxCreate(upper ? 0 : width - width / 2,
                                      upper ? 0 : height - height / 2,
                                      width / 2,
                                      height / 2);
            l_int32 there = 0;
            pixCountPixelsInRect(piece.get(), corner, &there, nullptr);
            boxDestroy(&corner);
            beside += there;
        }
        parts.push_back({{static_cast<double>(x),
                          static_cast<double>(y),
                          static_cast<double>(x + width),
                          static_cast<double>(y + height)},
                         ink / (static_cast<double>(width) * height),
                         1.0 - beside / std::max(ink, 1)});
    }
    boxaDestroy(&boxes);
    pixaDestroy(&pieces);
    return parts;
}

// As high as a capital, slanted: much white in its box.
bool is_stroke(const Part& part) {
    const double slant = part.box.width() / part.box.height();
    return part.box.height() > 0.95 * letter && part.box.height() < 2.0 * letter && slant > 0.35 &&
           slant < 1.15 && part.filled < 0.42 && part.slanted > 0.72;
}

bool is_figure_of(const Part& part, const Part& stroke) {
    const double share = part.box.height() / stroke.box.height();
    return share > 0.34 && share < 0.75 && part.box.width() < 0.75 * stroke.box.height();
}

double across(const Box& box) {
    return (box.left + box.right) / 2;
}

struct Found {
    Box box;
    Box above;
    Box below;
};

std::optional<Found> fraction_at(const Part& stroke, const std::vector<Part>& parts) {
    const Part* above = nullptr;
    const Part* below = nullptr;
    const double height = stroke.box.height();
    const double middle = across(stroke.box);
    for (const Part& part : parts) {
        if (&part == &stroke || !is_figure_of(part, stroke)) {
            continue;
        }
        const double side = across(part.box) - middle;
        if (std::abs(part.box.top - stroke.box.top) < 0.22 * height && side < -0.1 * height &&
            side > -0.95 * height && (above == nullptr || across(part.box) > across(above->box))) {
            above = &part;
        }
        if (std::abs(part.box.bottom - stroke.box.bottom) < 0.22 * height && side > 0.1 * height &&
            side < 0.95 * height && (below == nullptr || across(part.box) < across(below->box))) {
            below = &part;
        }
    }
    if (above == nullptr || below == nullptr) {
        return std::nullopt;
    }
    return Found{around(around(stroke.box, above->box), below->box), above->box, below->box};
}

Picture cut_out(const Picture& page, const Box& box) {
    constexpr int frame = 14;
    const Picture cut = clipped(page, box);
    if (!cut) {
        return {};
    }
    const auto factor = static_cast<float>(1.4 * letter / box.height());
    const Picture large(pixScaleGrayLI(cut.get(), factor, factor));
    return Picture(large ? pixAddBorder(large.get(), frame, 255) : nullptr);
}

struct Known {
    std::string_view above;
    std::string_view below;
    std::string_view text;
};

// Unicode, Number Forms: those that are measured with.
constexpr std::array<Known, 9> known = {{{"1", "2", "½"},
                                         {"1", "4", "¼"},
                                         {"3", "4", "¾"},
                                         {"1", "3", "⅓"},
                                         {"2", "3", "⅔"},
                                         {"1", "8", "⅛"},
                                         {"3", "8", "⅜"},
                                         {"5", "8", "⅝"},
                                         {"7", "8", "⅞"}}};

std::string text_of(const std::string& above, const std::string& below) {
    for (const Known& row : known) {
        if (row.above == above && row.below == below) {
            return std::string(row.text);
        }
    }
    return {};
}

// Of the figures below a stroke only a four has one hole, and only an eight has two: so it is told
// also where the recogniser has no name for a figure so small.
std::string figure_below(const std::string& read, int holes) {
    if (holes == 2 || read == "8") {
        return "8";
    }
    return holes == 1 ? "4" : read;
}

bool is_number_end(char c) {
    return c >= '0' && c <= '9';
}

} // namespace

std::vector<FractionSign> fractions_on(const Picture& page, const ReadFigure& read) {
    std::vector<FractionSign> fractions;
    const Picture black(pixThresholdToBinary(page.get(), ink_below - 20));
    if (!black) {
        return fractions;
    }
    const std::vector<Part> parts = parts_of(black);
    for (const Part& part : parts) {
        if (!is_stroke(part)) {
            continue;
        }
        const auto found = fraction_at(part, parts);
        if (!found || holes_in(black, found->above) > 0) {
            continue;
        }
        // A one is narrow; recognisers take it for a stroke. With a foot it is wider, and they say
        // nothing.
        const bool narrow = found->above.width() < 0.62 * found->above.height();
        std::string above = narrow ? "1" : read(cut_out(page, found->above));
        if (above.empty() && has_stem(black, found->above)) {
            above = "1";
        }
        const std::string below =
            figure_below(read(cut_out(page, found->below)), holes_in(black, found->below));
        fractions.push_back({found->box, text_of(above, below)});
    }
    return fractions;
}

bool covers(const FractionSign& fraction, const Box& letter_box) {
    const double shared = std::min(fraction.box.right, letter_box.right) -
                          std::max(fraction.box.left, letter_box.left);
    const double middle = letter_box.middle();
    return shared > 0.5 * std::min(letter_box.width(), fraction.box.width()) &&
           middle > fraction.box.top - 0.5 * fraction.box.height() &&
           middle < fraction.box.bottom + 0.5 * fraction.box.height();
}

std::vector<std::string> other_fractions(const std::string& before, const FractionSign& fraction) {
    std::vector<std::string> others;
    for (const char* other : {"½", "¼", "¾", "⅓", "⅔"}) {
        if (fraction.text != other) {
            others.push_back(before + other);
        }
    }
    return others;
}

void glue_fractions(SeenLine& line) {
    auto& words = line.words;
    for (std::size_t i = 1; i < words.size(); ++i) {
        SeenWord& before = words[i - 1];
        SeenWord& word = words[i];
        if (!word.fraction || before.text.size() > 3 ||
            !std::all_of(before.text.begin(), before.text.end(), is_number_end) ||
            word.box.left - before.box.right > 0.45 * letter) {
            continue;
        }
        for (std::string& other : word.maybe) {
            other.insert(0, before.text);
        }
        word.text.insert(0, before.text);
        word.confidence = std::min(before.confidence, word.confidence);
        word.box = around(before.box, word.box);
        words.erase(words.begin() + static_cast<std::ptrdiff_t>(i) - 1);
        --i;
    }
}

} // namespace loafwright::paper

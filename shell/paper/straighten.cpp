// SPDX-License-Identifier: Apache-2.0
//
// In this order, since each step needs the one before: the paper found on the table and stretched
// to a rectangle; shadows evened out (background by morphology); letters scaled to one size; lines
// made level (Postl's sweep of the differential square sum, as Leptonica has it); the right way up
// (ascenders against descenders, as Leptonica has it); curl taken out (Leptonica's dewarp).
#include "shell/paper/straighten.hpp"

#include "shell/paper/paper_edge.hpp"

#include <allheaders.h>

#include <algorithm>
#include <cmath>
#include <utility>
#include <vector>

namespace loafwright::paper {

namespace {

// Measured with scripts/score-intake; see shell/paper/README.md.
constexpr float most_enlarged = 3.0F;
constexpr float most_pixels = 16e6F; // a page of tiny print at the wanted size
constexpr float widest_skew_degrees = 15.0F;
constexpr float much_surer = 1.5F;
constexpr float sure_skew = 2.5F;  // Leptonica's own: below 3 is doubtful
constexpr int least_lines = 15;    // Leptonica's own, for a model of curl
constexpr float least_bend = 0.4F; // in letter heights
constexpr float most_bend = 4.0F;
constexpr float most_bend_alike = 15.0F;
constexpr float alike_bend = 2.0F;  // the steepest line's curvature over the shallowest one's
constexpr float least_grain = 2.0F; // in 255ths
constexpr float level_degrees = 0.15F;

// The grains of a sensor in low light: most pixels then differ from their neighbours' mean.
Picture without_grain(Picture photo) {
    Picture smooth(pixBlockconv(photo.get(), 1, 1));
    const Picture grain(smooth ? pixAbsDifference(photo.get(), smooth.get()) : nullptr);
    l_float32 usual = 0.0F;
    if (!grain ||
        pixGetRankValueMasked(grain.get(), nullptr, 0, 0, 16, 0.5F, &usual, nullptr) != 0) {
        return photo;
    }
    return usual >= least_grain ? std::move(smooth) : std::move(photo);
}

Picture even_light(const Picture& photo) {
    const int longer = std::max(width_of(photo), height_of(photo));
    const int reduction = longer > 1600 ? 8 : 4;
    Picture even;
    if (std::min(width_of(photo), height_of(photo)) > 20 * reduction) {
        even.reset(pixBackgroundNormMorph(photo.get(), nullptr, reduction, 9, 215));
    }
    if (!even) {
        even.reset(pixClone(photo.get()));
    }
    // What little contrast low light leaves is stretched over the whole scale.
    Picture wide(pixGammaTRC(nullptr, even.get(), 1.0F, 40, 215));
    return wide ? std::move(wide) : std::move(even);
}

Picture black_on_white(const Picture& even) {
    return Picture(pixThresholdToBinary(even.get(), ink_below));
}

// The middle height of what stands alone in black: nearly all of it small letters.
float letter_height(const Picture& black) {
    Boxa* boxes = pixConnCompBB(black.get(), 8);
    std::vector<int> heights; // each as often as it is high, so that grains of noise weigh little
    std::size_t count = 0;
    for (l_int32 i = 0; boxes != nullptr && i < boxaGetCount(boxes); ++i) {
        l_int32 width = 0;
        l_int32 height = 0;
        boxaGetBoxGeometry(boxes, i, nullptr, nullptr, &width, &height);
        if (height >= 7 && height <= 200 && width >= 3 && width <= 4 * height) {
            heights.insert(heights.end(), static_cast<std::size_t>(height), height);
            ++count;
        }
    }
    boxaDestroy(&boxes);
    if (count < 30) {
        return 0.0F;
    }
    const auto middle = heights.begin() + static_cast<std::ptrdiff_t>(heights.size() / 2);
    std::nth_element(heights.begin(), middle, heights.end());
    return static_cast<float>(*middle);
}

Picture letters_of_one_size(Picture even) {
    const float height = letter_height(black_on_white(even));
    if (height <= 0.0F) {
        return even;
    }
    const float roomy = std::sqrt(most_pixels / static_cast<float>(width_of(even)) /
                                  static_cast<float>(height_of(even)));
    const float factor =
        std::min(static_cast<float>(letter_pixels) / height, std::min(most_enlarged, roomy));
    if (factor > 0.85F && factor < 1.15F) {
        return even;
    }
    Picture scaled(factor < 0.7F ? pixScaleAreaMap(even.get(), factor, factor)
                                 : pixScaleGrayLI(even.get(), factor, factor));
    return scaled ? std::move(scaled) : std::move(even);
}

struct Skew {
    float degrees = 0.0F;
    float confidence = 0.0F;
};

Skew skew_of(const Picture& black) {
    Skew skew;
    pixFindSkewSweepAndSearch(
        black.get(), &skew.degrees, &skew.confidence, 4, 2, widest_skew_degrees, 1.0F, 0.02F);
    return skew;
}

Picture rotated(const Picture& picture, float degrees) {
    constexpr float radians = 3.14159265F / 180.0F;
    return Picture(pixRotate(picture.get(),
                             degrees * radians,
                             L_ROTATE_AREA_MAP,
                             L_BRING_IN_WHITE,
                             width_of(picture),
                             height_of(picture)));
}

// Lines level, whether they run across the picture or along it.
Picture levelled(Picture even) {
    const Picture black = black_on_white(even);
    Skew across = skew_of(black);
    const Skew along = skew_of(quarter_turned(black, 1));
    // Most pages are held upright, and the edges of a table are lines too.
    if (along.confidence > much_surer * across.confidence) {
        even = quarter_turned(even, 1);
        across = along;
    }
    if (across.confidence < sure_skew || std::abs(across.degrees) < level_degrees) {
        return even;
    }
    Picture level = rotated(even, across.degrees);
    return level ? std::move(level) : std::move(even);
}

Picture right_way_up(Picture level) {
    l_float32 up = 0.0F;
    l_float32 left = 0.0F;
    if (pixOrientDetect(black_on_white(level).get(), &up, &left, 0, 0) != 0) {
        return level;
    }
    // Lines are level already, so only two ways are left.
    return up < -1.0F ? quarter_turned(level, 2) : std::move(level);
}

// A model made of few lines runs wild where there are none: what is hardly curled is left alone,
// and so is what would be torn.
bool is_curl(const L_DEWARP* page) {
    l_float32 least = 0.0F;
    l_float32 most = 0.0F;
    fpixGetMin(page->sampvdispar, &least, nullptr, nullptr);
    fpixGetMax(page->sampvdispar, &most, nullptr, nullptr);
    const float bend = most - least;
    // Lines that all bend one way, and about alike, are the page's own bend, however deep.
    const auto shallow =
        static_cast<float>(std::min(std::abs(page->mincurv), std::abs(page->maxcurv)));
    const auto steep =
        static_cast<float>(std::max(std::abs(page->mincurv), std::abs(page->maxcurv)));
    const bool alike = (page->mincurv > 0) == (page->maxcurv > 0) && steep <= alike_bend * shallow;
    return bend > least_bend * letter_pixels &&
           bend < (alike ? most_bend_alike : most_bend) * letter_pixels;
}

Picture uncurled(Picture upright) {
    const Picture black = black_on_white(upright);
    L_DEWARPA* all = dewarpaCreate(1, 30, 1, least_lines, 100);
    if (all == nullptr) {
        return upright;
    }
    dewarpaUseBothArrays(all, 0);
    Picture flat;
    L_DEWARP* page = dewarpCreate(black.get(), 0);
    if (page != nullptr) {
        dewarpaInsertDewarp(all, page);
        Pix* made = nullptr;
        if (dewarpBuildPageModel(page, nullptr) == 0 && is_curl(page) &&
            dewarpaApplyDisparity(all, 0, upright.get(), 255, 0, 0, &made, nullptr) == 0) {
            flat.reset(made);
        }
    }
    dewarpaDestroy(&all);
    return flat ? std::move(flat) : std::move(upright);
}

} // namespace

Picture quarter_turned(const Picture& picture, int quarters) {
    return Picture(pixRotateOrth(picture.get(), quarters));
}

Picture turned_to_its_side(const Picture& page) {
    return uncurled(right_way_up(quarter_turned(page, 1)));
}

Picture straightened(Picture photo) {
    Picture even = even_light(without_grain(paper_alone(std::move(photo))));
    return uncurled(right_way_up(levelled(letters_of_one_size(std::move(even)))));
}

} // namespace loafwright::paper

// SPDX-License-Identifier: Apache-2.0
//
// The sheet is the largest light patch on something darker. It counts only when it fills the four
// corners that its outermost points span: a page that fills the picture, or a shadow across it,
// does not look like that and is left alone.
#include "shell/paper/paper_edge.hpp"

#include <allheaders.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdlib>
#include <memory>
#include <optional>
#include <utility>

namespace loafwright::paper {

namespace {

constexpr int looked_at_side = 500; // enough to find edges
constexpr double least_share = 0.2;
constexpr double most_share = 0.97;
constexpr double least_filled = 0.95;
constexpr double most_filled = 1.05;
constexpr double most_change = 0.05;    // of its area over two steps of grey
constexpr double beside_edge = 5.0;     // pixels, to either side
constexpr double least_contrast = 0.08; // of the faintest edge
constexpr double cut_off_contrast = 0.1;
constexpr int ink_contrast = 40; // between a letter and the paper around it
constexpr double margin = 0.02;  // of the longer side: a sheet has words nowhere so near its edge
constexpr double most_ink_there = 0.004;

struct Point {
    double x = 0.0;
    double y = 0.0;
};
using Corners = std::array<Point, 4>; // clockwise from the upper left

double area_of(const Corners& c) {
    double twice = 0.0;
    for (std::size_t i = 0; i < c.size(); ++i) {
        const Point& a = c[i];
        const Point& b = c[(i + 1) % c.size()];
        twice += a.x * b.y - b.x * a.y;
    }
    return std::abs(twice) / 2;
}

double distance(const Point& a, const Point& b) {
    return std::hypot(a.x - b.x, a.y - b.y);
}

// A closing wipes the letters out. The picture goes on a little over its edges first: a narrow
// strip of table between the sheet and the edge is no letter.
Picture without_letters(const Picture& small) {
    constexpr l_int32 letter = 15;
    const Picture wide(pixAddContinuedBorder(small.get(), letter, letter, letter, letter));
    const Picture closed(wide ? pixCloseGray(wide.get(), letter, letter) : nullptr);
    return Picture(closed ? pixRemoveBorder(closed.get(), letter) : nullptr);
}

// The largest patch lighter than this, in one bit.
Picture light_patch(const Picture& blank, int lighter_than) {
    const Picture dark(pixThresholdToBinary(blank.get(), lighter_than));
    const Picture light(pixInvert(nullptr, dark.get()));
    Pixa* parts = nullptr;
    Boxa* boxes = pixConnComp(light.get(), &parts, 4);
    Picture patch;
    l_int32 most = 0;
    for (l_int32 i = 0; boxes != nullptr && i < boxaGetCount(boxes); ++i) {
        Picture part(pixaGetPix(parts, i, L_CLONE));
        l_int32 count = 0;
        pixCountPixels(part.get(), &count, nullptr);
        if (count > most) {
            most = count;
            l_int32 x = 0;
            l_int32 y = 0;
            boxaGetBoxGeometry(boxes, i, &x, &y, nullptr, nullptr);
            patch.reset(pixCreate(width_of(blank), height_of(blank), 1));
            pixRasterop(
                patch.get(), x, y, width_of(part), height_of(part), PIX_SRC, part.get(), 0, 0);
        }
    }
    boxaDestroy(&boxes);
    pixaDestroy(&parts);
    return patch;
}

Corners corners_of(const Picture& patch) {
    Corners corners{};
    std::array<double, 4> best = {1e9, -1e9, -1e9, 1e9};
    for (l_int32 y = 0; y < height_of(patch); ++y) {
        for (l_int32 x = 0; x < width_of(patch); ++x) {
            l_uint32 value = 0;
            pixGetPixel(patch.get(), x, y, &value);
            if (value == 0) {
                continue;
            }
            const double sum = x + y;
            const double difference = x - y;
            const Point here{static_cast<double>(x), static_cast<double>(y)};
            if (sum < best[0]) {
                best[0] = sum;
                corners[0] = here;
            }
            if (difference > best[1]) {
                best[1] = difference;
                corners[1] = here;
            }
            if (sum > best[2]) {
                best[2] = sum;
                corners[2] = here;
            }
            if (difference < best[3]) {
                best[3] = difference;
                corners[3] = here;
            }
        }
    }
    return corners;
}

double distance_to_line(const Point& here, const Point& a, const Point& b) {
    const double length = distance(a, b);
    return length <= 0.0 ? distance(here, a)
                         : ((b.x - a.x) * (here.y - a.y) - (b.y - a.y) * (here.x - a.x)) / length;
}

// Words that run up to the edge, or over it: then it is the edge of a shadow, and behind it the
// page goes on.
bool cuts_words(const Picture& small, const Corners& corners) {
    const Picture blank = without_letters(small);
    const Picture ink(blank ? pixSubtractGray(nullptr, blank.get(), small.get()) : nullptr);
    if (!ink) {
        return true;
    }
    const double strip = margin * std::max(width_of(small), height_of(small));
    double all = 0.0;
    double near = 0.0;
    for (l_int32 y = 0; y < height_of(ink); ++y) {
        for (l_int32 x = 0; x < width_of(ink); ++x) {
            l_uint32 contrast = 0;
            pixGetPixel(ink.get(), x, y, &contrast);
            if (contrast < ink_contrast) {
                continue;
            }
            const Point here{static_cast<double>(x), static_cast<double>(y)};
            double inside = 1e9;
            for (std::size_t i = 0; i < corners.size(); ++i) {
                inside = std::min(
                    inside, distance_to_line(here, corners[i], corners[(i + 1) % corners.size()]));
            }
            // The sheet's own outline is in the first pixels.
            constexpr double outline = 3.0;
            all += inside > outline ? 1.0 : 0.0;
            near += inside > outline && inside < outline + strip ? 1.0 : 0.0;
        }
    }
    return near > most_ink_there * all;
}

struct Patch {
    double area = 0.0; // spanned by its corners; 0 when it has not four of them
    Corners corners{};
};

Patch patch_at(const Picture& blank, int lighter_than) {
    const Picture light = light_patch(blank, lighter_than);
    if (!light) {
        return {};
    }
    Patch patch;
    patch.corners = corners_of(light);
    const double area = area_of(patch.corners);
    const double all = static_cast<double>(width_of(blank)) * height_of(blank);
    l_int32 count = 0;
    pixCountPixels(light.get(), &count, nullptr);
    if (area > least_share * all && area < most_share * all && count > least_filled * area &&
        count < most_filled * area) {
        patch.area = area;
    }
    return patch;
}

int grey_at(const Picture& picture, const Point& at) {
    l_uint32 value = 0;
    pixGetPixel(picture.get(),
                static_cast<l_int32>(std::lround(at.x)),
                static_cast<l_int32>(std::lround(at.y)),
                &value);
    return static_cast<int>(value);
}

bool is_inside(const Picture& picture, const Point& at) {
    return at.x >= 0 && at.y >= 0 && at.x < width_of(picture) && at.y < height_of(picture);
}

// How much lighter it is within the faintest of the four edges than beyond it, as a share. The edge
// of the picture is no edge of a sheet, but a sheet may be cut off there.
double contrast_of(const Picture& blank, const Corners& corners) {
    Point middle;
    for (const Point& corner : corners) {
        middle.x += corner.x / 4;
        middle.y += corner.y / 4;
    }
    double faintest = 1.0;
    for (std::size_t side = 0; side < corners.size(); ++side) {
        const Point& a = corners[side];
        const Point& b = corners[(side + 1) % corners.size()];
        double contrast = 0.0;
        constexpr int looks = 20;
        for (int look = 0; look < looks; ++look) {
            const double share = 0.1 + 0.8 * look / (looks - 1);
            const Point on{a.x + share * (b.x - a.x), a.y + share * (b.y - a.y)};
            const double far = std::max(distance(on, middle), 1.0);
            const Point step{beside_edge * (middle.x - on.x) / far,
                             beside_edge * (middle.y - on.y) / far};
            const Point within{on.x + step.x, on.y + step.y};
            const Point beyond{on.x - step.x, on.y - step.y};
            contrast += !is_inside(blank, beyond)
                            ? cut_off_contrast
                            : (grey_at(blank, within) - grey_at(blank, beyond)) /
                                  std::max(1.0, static_cast<double>(grey_at(blank, within)));
        }
        faintest = std::min(faintest, contrast / looks);
    }
    return faintest;
}

// How light paper is, nobody knows: a shadow parts it in two, a table is light itself. Its edge is
// where the patch stays about the same over several steps of grey (after Matas and others 2002,
// maximally stable regions): the edge of a shadow wanders with every step. Of several such patches
// that one is the sheet whose faintest edge is clearest.
std::optional<Corners> sheet_on(const Picture& small) {
    const Picture blank = without_letters(small);
    std::optional<Corners> sheet;
    double clearest = least_contrast;
    Patch before;
    Patch here;
    for (int lighter_than = 30; blank && lighter_than < 240; lighter_than += 5) {
        Patch next = patch_at(blank, lighter_than);
        if (before.area > 0 && here.area > 0 && next.area > 0 &&
            std::abs(before.area - next.area) < most_change * here.area) {
            const double contrast = contrast_of(blank, here.corners);
            if (contrast > clearest) {
                clearest = contrast;
                sheet = here.corners;
            }
        }
        before = here;
        here = next;
    }
    return sheet;
}

struct PtaEnd {
    void operator()(Pta* points) const { ptaDestroy(&points); }
};

std::unique_ptr<Pta, PtaEnd> points_of(const Corners& corners, double factor) {
    std::unique_ptr<Pta, PtaEnd> points(ptaCreate(4));
    for (const Point& corner : corners) {
        ptaAddPt(points.get(),
                 static_cast<float>(corner.x * factor),
                 static_cast<float>(corner.y * factor));
    }
    return points;
}

} // namespace

Picture paper_alone(Picture photo) {
    const int longer = std::max(width_of(photo), height_of(photo));
    if (longer < 2 * looked_at_side) {
        return photo;
    }
    const double factor = static_cast<double>(longer) / looked_at_side;
    const auto down = static_cast<float>(1.0 / factor);
    const Picture small(pixScaleAreaMap(photo.get(), down, down));
    const auto sheet = small ? sheet_on(small) : std::nullopt;
    if (!sheet || cuts_words(small, *sheet)) {
        return photo;
    }
    const Corners& corners = *sheet;
    const double across =
        std::max(distance(corners[0], corners[1]), distance(corners[3], corners[2]));
    const double down_side =
        std::max(distance(corners[0], corners[3]), distance(corners[1], corners[2]));
    const Corners flat = {
        Point{0, 0}, Point{across, 0}, Point{across, down_side}, Point{0, down_side}};
    const auto from = points_of(corners, factor);
    const auto to = points_of(flat, factor);
    // Leptonica keeps the size of the picture: the page goes to its upper left and is cut out
    // there.
    const Picture wide(pixProjectivePtaGray(photo.get(), to.get(), from.get(), 255));
    Box* part = boxCreate(
        0, 0, static_cast<l_int32>(across * factor), static_cast<l_int32>(down_side * factor));
    Picture cut(wide ? pixClipRectangle(wide.get(), part, nullptr) : nullptr);
    boxDestroy(&part);
    if (!cut) {
        return photo;
    }
    // What is left of the table along the edges.
    const l_int32 edge = std::min(width_of(cut), height_of(cut)) / 80;
    pixSetOrClearBorder(cut.get(), edge, edge, edge, edge, PIX_SET);
    return cut;
}

} // namespace loafwright::paper

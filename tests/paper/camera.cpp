// SPDX-License-Identifier: Apache-2.0
#include "tests/paper/camera.hpp"

#include <allheaders.h>

#include <algorithm>
#include <memory>
#include <random>

namespace loafwright::press {

namespace {

struct PixEnd {
    void operator()(Pix* pix) const { pixDestroy(&pix); }
};
using Picture = std::unique_ptr<Pix, PixEnd>;

constexpr l_uint8 table_grey = 70;

Picture picture_of(const Grey& page) {
    Picture made(pixCreate(page.width, page.height, 8));
    for (int y = 0; y < page.height; ++y) {
        l_uint32* line =
            pixGetData(made.get()) + static_cast<std::ptrdiff_t>(y) * pixGetWpl(made.get());
        for (int x = 0; x < page.width; ++x) {
            SET_DATA_BYTE(
                line,
                x,
                page.pixels[static_cast<std::size_t>(y) * static_cast<std::size_t>(page.width) +
                            static_cast<std::size_t>(x)]);
        }
    }
    return made;
}

Pta* corners(float left, float top, float right, float bottom) {
    Pta* points = ptaCreate(4);
    ptaAddPt(points, left, top);
    ptaAddPt(points, right, top);
    ptaAddPt(points, right, bottom);
    ptaAddPt(points, left, bottom);
    return points;
}

Picture leaned(Picture page, const Shot& shot, std::mt19937& chance) {
    const auto width = static_cast<float>(pixGetWidth(page.get()));
    const auto height = static_cast<float>(pixGetHeight(page.get()));
    const float most = static_cast<float>(shot.perspective) * width;
    std::uniform_real_distribution<float> off(0.0F, std::max(most, 0.001F));
    Pta* from = corners(0, 0, width, height);
    Pta* to = ptaCreate(4);
    ptaAddPt(to, off(chance), off(chance));
    ptaAddPt(to, width - off(chance), off(chance));
    ptaAddPt(to, width - off(chance), height - off(chance));
    ptaAddPt(to, off(chance), height - off(chance));
    Picture made(pixProjectivePtaGray(page.get(), to, from, table_grey));
    ptaDestroy(&from);
    ptaDestroy(&to);
    return made;
}

// Light falls off towards one corner; the sensor adds grains.
void dim(Pix* picture, const Shot& shot, std::mt19937& chance) {
    std::normal_distribution<double> grain(0.0, std::max(shot.noise, 0.001));
    const double width = pixGetWidth(picture);
    const double height = pixGetHeight(picture);
    const double lean = std::uniform_real_distribution<double>(0.2, 0.8)(chance);
    for (int y = 0; y < pixGetHeight(picture); ++y) {
        l_uint32* line = pixGetData(picture) + static_cast<std::ptrdiff_t>(y) * pixGetWpl(picture);
        for (int x = 0; x < pixGetWidth(picture); ++x) {
            const double far = lean * x / width + (1 - lean) * y / height;
            // A hand's shadow has an edge, if a soft one.
            const double depth = std::clamp((far - 0.35) * 4.0, 0.0, 1.0);
            const double lit = shot.light * (1.0 - shot.shadow * (0.6 * depth + 0.4 * far));
            const double value =
                GET_DATA_BYTE(line, x) * lit + (shot.noise > 0 ? grain(chance) : 0.0);
            SET_DATA_BYTE(line, x, static_cast<l_uint8>(std::clamp(value, 0.0, 255.0)));
        }
    }
}

// What the sensor sees of an upright page, by the table of Exif 2.3 (CIPA DC-008), tag 0x0112:
// which side of the page the first row and the first column are.
Picture as_held(Picture page, int held) {
    const auto turned = [](const Picture& p, int quarters) {
        return Picture(pixRotateOrth(p.get(), quarters));
    };
    const auto mirrored = [](const Picture& p) { return Picture(pixFlipLR(nullptr, p.get())); };
    switch (held) {
    case 2: // top, right
        return mirrored(page);
    case 3: // bottom, right
        return turned(page, 2);
    case 4: // bottom, left
        return turned(mirrored(page), 2);
    case 5: // left, top
        return turned(mirrored(page), 3);
    case 6: // right, top
        return turned(page, 3);
    case 7: // right, bottom
        return turned(mirrored(page), 1);
    case 8: // left, bottom
        return turned(page, 1);
    default:
        return page;
    }
}

// The same file with an APP1 segment of one tag behind its first two bytes.
std::string told_how_held(const std::string& jpeg, int held) {
    const std::string tiff{'I',  'I',  '*', 0, 8, 0, 0, 0, // header
                           1,    0,                        // one tag
                           0x12, 0x01, 3,   0, 1, 0, 0, 0, static_cast<char>(held),
                           0,    0,    0, // 0x0112
                           0,    0,    0,   0};
    const std::string body = std::string("Exif\0\0", 6) + tiff;
    const std::size_t length = body.size() + 2;
    return jpeg.substr(0, 2) + "\xFF\xE1" + static_cast<char>(length >> 8U) +
           static_cast<char>(length & 0xFFU) + body + jpeg.substr(2);
}

using Write = l_ok (*)(l_uint8**, size_t*, Pix*);

std::string written(Pix* picture, Write write) {
    l_uint8* bytes = nullptr;
    size_t size = 0;
    write(&bytes, &size, picture);
    std::string made(reinterpret_cast<const char*>(bytes), size);
    lept_free(bytes);
    return made;
}

} // namespace

Shot usual_bad_shot(unsigned seed) {
    std::mt19937 chance(seed);
    const auto between = [&chance](double low, double high) {
        return std::uniform_real_distribution<double>(low, high)(chance);
    };
    Shot shot;
    shot.turned_degrees = between(-7.0, 7.0);
    shot.perspective = between(0.02, 0.06);
    shot.shadow = between(0.3, 0.6);
    shot.light = between(0.6, 1.0);
    shot.blurred = 1;
    shot.noise = between(4.0, 10.0);
    shot.table = 150;
    shot.quality = 40;
    shot.seed = seed;
    return shot;
}

std::string jpeg_of(const Grey& page, const Shot& shot) {
    std::mt19937 chance(shot.seed);
    Picture picture = picture_of(page);
    if (shot.curl > 0) {
        // A page of a thick book: flat where it is held, falling away at the spine.
        const auto most = static_cast<l_int32>(shot.curl);
        picture.reset(pixQuadraticVShear(
            picture.get(), L_WARP_TO_LEFT, most, most, L_INTERPOLATED, L_BRING_IN_WHITE));
    }
    if (shot.table > 0) {
        picture.reset(pixAddBorder(picture.get(), shot.table, table_grey));
    }
    if (shot.perspective > 0) {
        picture = leaned(std::move(picture), shot, chance);
    }
    if (shot.turned_degrees != 0.0) {
        constexpr double radians = 3.14159265 / 180.0;
        picture.reset(pixRotateAMGray(
            picture.get(), static_cast<float>(shot.turned_degrees * radians), table_grey));
    }
    if (shot.blurred > 0) {
        picture.reset(pixBlockconv(picture.get(), shot.blurred, shot.blurred));
    }
    if (shot.shadow > 0 || shot.noise > 0 || shot.light < 1.0) {
        picture.reset(pixCopy(nullptr, picture.get()));
        dim(picture.get(), shot, chance);
    }
    if (shot.quarter_turns != 0) {
        picture.reset(pixRotateOrth(picture.get(), shot.quarter_turns));
    }
    picture = as_held(std::move(picture), shot.held);
    l_uint8* bytes = nullptr;
    size_t size = 0;
    pixWriteMemJpeg(&bytes, &size, picture.get(), shot.quality, 0);
    std::string made(reinterpret_cast<const char*>(bytes), size);
    lept_free(bytes);
    return shot.held == 1 ? made : told_how_held(made, shot.held);
}

std::string png_of(const Grey& page) {
    return written(picture_of(page).get(), [](l_uint8** bytes, size_t* size, Pix* picture) {
        return pixWriteMemPng(bytes, size, picture, 0.0F);
    });
}

std::string webp_of(const Grey& page) {
    return written(picture_of(page).get(), [](l_uint8** bytes, size_t* size, Pix* picture) {
        const Picture colour(pixConvertTo32(picture));
        return pixWriteMemWebP(bytes, size, colour.get(), 80, 0);
    });
}

std::string tiff_of(const Grey& page) {
    return written(picture_of(page).get(), [](l_uint8** bytes, size_t* size, Pix* picture) {
        return pixWriteMemTiff(bytes, size, picture, IFF_TIFF_LZW);
    });
}

std::string scanned_pdf(const Grey& page) {
    return written(picture_of(page).get(), [](l_uint8** bytes, size_t* size, Pix* picture) {
        return pixConvertToPdfData(
            picture, L_FLATE_ENCODE, 0, bytes, size, 0, 0, 300, nullptr, nullptr, 0);
    });
}

} // namespace loafwright::press

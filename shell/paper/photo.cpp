// SPDX-License-Identifier: Apache-2.0
//
// From the bytes of a picture file to grey pixels. Headers first: a few bytes can promise billions
// of pixels. A JPEG is decoded smaller where it has more pixels than a page needs, which its
// transform does for nothing.
#include "shell/paper/photo.hpp"

#include <allheaders.h>
#include <fmt/format.h>
#include <libexif/exif-data.h>

#include <algorithm>
#include <string>
#include <utility>

namespace loafwright::paper {

namespace {

constexpr int longest_side = 4400; // a page at 370 dots an inch; measured with scripts/score-intake
constexpr std::uint64_t plainest_side = 8; // less holds no word
constexpr std::uint64_t most_decoded_bytes = 256 * intake::one_mebibyte;

struct Header {
    int format = 0;
    std::uint64_t width = 0;
    std::uint64_t height = 0;
    std::uint64_t bytes_each = 1;
};

Diagnostic trouble(std::string code, std::string what, std::string do_this) {
    return {std::move(code), Severity::error, std::move(what), "", std::move(do_this)};
}

Diagnostic damaged() {
    return trouble(
        "file_damaged", "the picture is damaged or breaks off", "Save or photograph it again.");
}

const unsigned char* data_of(std::string_view bytes) {
    return reinterpret_cast<const unsigned char*>(bytes.data());
}

std::optional<Header> header_of(std::string_view bytes) {
    l_int32 format = 0;
    l_int32 width = 0;
    l_int32 height = 0;
    l_int32 bits = 0;
    l_int32 samples = 0;
    if (pixReadHeaderMem(
            data_of(bytes), bytes.size(), &format, &width, &height, &bits, &samples, nullptr) !=
            0 ||
        width <= 0 || height <= 0) {
        return std::nullopt;
    }
    // Leptonica keeps anything with colour in four bytes.
    const bool grey = samples == 1 && bits <= 8;
    return Header{format,
                  static_cast<std::uint64_t>(width),
                  static_cast<std::uint64_t>(height),
                  grey ? 1U : 4U};
}

std::optional<Diagnostic>
too_large(const Header& header, const intake::Limits& limits, std::uint64_t decoded_bytes) {
    const std::uint64_t pixels = header.width * header.height;
    if (pixels > limits.most_pixels || decoded_bytes > most_decoded_bytes) {
        return trouble("picture_too_large",
                       fmt::format("the picture has {} by {} pixels, more than can be read",
                                   header.width,
                                   header.height),
                       "Save it smaller: 4000 pixels along the longer side are plenty.");
    }
    if (std::min(header.width, header.height) < plainest_side) {
        return trouble("no_words_found",
                       fmt::format("the picture has {} by {} pixels, too few for a word",
                                   header.width,
                                   header.height),
                       "Photograph the page from nearer.");
    }
    return std::nullopt;
}

// How the camera was held, by Exif 2.3 (CIPA DC-008), tag 0x0112: 1 to 8.
int held(std::string_view jpeg) {
    ExifData* data = exif_data_new_from_data(data_of(jpeg), static_cast<unsigned>(jpeg.size()));
    if (data == nullptr) {
        return 1;
    }
    int way = 1;
    const ExifEntry* entry = exif_content_get_entry(data->ifd[EXIF_IFD_0], EXIF_TAG_ORIENTATION);
    if (entry != nullptr && entry->format == EXIF_FORMAT_SHORT && entry->components == 1) {
        way = exif_get_short(entry->data, exif_data_get_byte_order(data));
    }
    exif_data_unref(data);
    return way;
}

Picture turned(Picture picture, int way) {
    const auto mirrored = [](Picture p) { return Picture(pixFlipLR(nullptr, p.get())); };
    const auto quarter_turns = [](const Picture& p, int count) {
        return Picture(pixRotateOrth(p.get(), count));
    };
    switch (way) {
    case 2:
        return mirrored(std::move(picture));
    case 3:
        return quarter_turns(picture, 2);
    case 4:
        return quarter_turns(mirrored(std::move(picture)), 2);
    case 5:
        return quarter_turns(mirrored(std::move(picture)), 3);
    case 6:
        return quarter_turns(picture, 1);
    case 7:
        return quarter_turns(mirrored(std::move(picture)), 1);
    case 8:
        return quarter_turns(picture, 3);
    default:
        return picture;
    }
}

// 8 bits of grey on white paper, not longer than need be.
Picture grey(Picture picture) {
    if (picture && pixGetDepth(picture.get()) == 32 && pixGetSpp(picture.get()) == 4) {
        picture.reset(pixAlphaBlendUniform(picture.get(), 0xFFFFFF00));
    }
    if (picture && (pixGetDepth(picture.get()) != 8 || pixGetColormap(picture.get()) != nullptr)) {
        picture.reset(pixConvertTo8(picture.get(), 0));
    }
    if (picture) {
        const int longer = std::max(width_of(picture), height_of(picture));
        if (longer > longest_side) {
            const auto factor = static_cast<float>(longest_side) / static_cast<float>(longer);
            picture.reset(pixScale(picture.get(), factor, factor));
        }
    }
    return picture;
}

tl::expected<Picture, Diagnostic>
jpeg(std::string_view bytes, const Header& header, const intake::Limits& limits) {
    int reduction = 1;
    while (reduction < 8 &&
           std::max(header.width, header.height) >= static_cast<std::uint64_t>(longest_side) * 2U *
                                                        static_cast<std::uint64_t>(reduction)) {
        reduction *= 2;
    }
    const auto square =
        static_cast<std::uint64_t>(reduction) * static_cast<std::uint64_t>(reduction);
    if (auto no = too_large(header, limits, header.width * header.height / square)) {
        return tl::make_unexpected(std::move(*no));
    }
    l_int32 warnings = 0;
    Picture picture(pixReadMemJpeg(
        data_of(bytes), bytes.size(), 0, reduction, &warnings, L_JPEG_READ_LUMINANCE));
    if (!picture) { // four inks have no luminance of their own
        picture.reset(pixReadMemJpeg(data_of(bytes), bytes.size(), 0, reduction, &warnings, 0));
    }
    if (!picture || warnings > 0) {
        return tl::make_unexpected(damaged());
    }
    return turned(grey(std::move(picture)), held(bytes));
}

tl::expected<std::vector<Picture>, Diagnostic> tiff(std::string_view bytes,
                                                    const intake::Limits& limits) {
    std::vector<Picture> pictures;
    for (int page = 0;; ++page) {
        l_int32 width = 0;
        l_int32 height = 0;
        l_int32 bits = 0;
        l_int32 samples = 0;
        if (readHeaderMemTiff(data_of(bytes),
                              bytes.size(),
                              page,
                              &width,
                              &height,
                              &bits,
                              &samples,
                              nullptr,
                              nullptr,
                              nullptr) != 0) {
            break;
        }
        if (static_cast<unsigned>(page) >= limits.most_pages) {
            return tl::make_unexpected(
                trouble("too_many_pages",
                        fmt::format("there are more than {} pages", limits.most_pages),
                        "Name the pages of one recipe."));
        }
        const Header header{IFF_TIFF,
                            static_cast<std::uint64_t>(std::max(width, 0)),
                            static_cast<std::uint64_t>(std::max(height, 0)),
                            samples == 1 && bits <= 8 ? 1U : 4U};
        if (auto no = too_large(header, limits, header.width * header.height * header.bytes_each)) {
            return tl::make_unexpected(std::move(*no));
        }
        Picture picture = grey(Picture(pixReadMemTiff(data_of(bytes), bytes.size(), page)));
        if (!picture) {
            return tl::make_unexpected(damaged());
        }
        pictures.push_back(std::move(picture));
    }
    if (pictures.empty()) {
        return tl::make_unexpected(damaged());
    }
    return pictures;
}

} // namespace

tl::expected<std::vector<Picture>, Diagnostic> pictures_of(std::string_view bytes,
                                                           const intake::Limits& limits) {
    setMsgSeverity(L_SEVERITY_NONE);
    const auto header = header_of(bytes);
    if (!header) {
        return tl::make_unexpected(damaged());
    }
    if (L_FORMAT_IS_TIFF(header->format)) {
        return tiff(bytes, limits);
    }
    std::vector<Picture> pictures;
    if (header->format == IFF_JFIF_JPEG) {
        auto picture = jpeg(bytes, *header, limits);
        if (!picture) {
            return tl::make_unexpected(std::move(picture.error()));
        }
        pictures.push_back(std::move(*picture));
    } else {
        const std::uint64_t decoded = header->width * header->height * header->bytes_each;
        if (auto no = too_large(*header, limits, decoded)) {
            return tl::make_unexpected(std::move(*no));
        }
        pictures.push_back(grey(Picture(pixReadMem(data_of(bytes), bytes.size()))));
    }
    if (!pictures.front()) {
        return tl::make_unexpected(damaged());
    }
    return pictures;
}

} // namespace loafwright::paper

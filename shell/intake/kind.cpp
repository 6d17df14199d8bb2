// SPDX-License-Identifier: Apache-2.0
//
// The first bytes of a file: ISO 32000 (PDF), ITU-T T.81 (JPEG), ISO 15948 (PNG), TIFF 6.0 and
// BigTIFF, RFC 9649 (WebP), ISO/IEC 14496-12 (HEIF, AVIF), PKWARE's appnote (ZIP).
#include "shell/intake/kind.hpp"

#include "shell/web_page/web_page.hpp"

#include <algorithm>
#include <array>

namespace loafwright::intake {

namespace {

using namespace std::string_view_literals;

bool begins(std::string_view bytes, std::string_view with) {
    return bytes.substr(0, with.size()) == with;
}

// What stands at a place, as far as the file reaches there.
std::string_view part(std::string_view bytes, std::size_t at, std::size_t count) {
    return bytes.substr(std::min(at, bytes.size()), count);
}

bool is_picture(std::string_view bytes) {
    return begins(bytes, "\xFF\xD8\xFF"sv) || begins(bytes, "\x89PNG\r\n\x1A\n"sv) ||
           begins(bytes, "II*\0"sv) || begins(bytes, "MM\0*"sv) || begins(bytes, "II+\0"sv) ||
           begins(bytes, "MM\0+"sv) || (begins(bytes, "RIFF"sv) && part(bytes, 8, 4) == "WEBP"sv);
}

bool can_be_text(std::string_view bytes) {
    return std::none_of(bytes.begin(), bytes.end(), [](char c) {
        return (c >= 0 && c < ' ' && c != '\t' && c != '\n' && c != '\r' && c != '\f' &&
                c != '\v' && c != '\x1B') ||
               c == '\x7F';
    });
}

constexpr std::string_view as_pdf = "Save it as PDF or as text.";
constexpr std::string_view as_jpeg = "Save it as JPEG.";

} // namespace

std::optional<Kind> kind_of(std::string_view bytes) {
    bytes = bytes.substr(0, telling_bytes);
    if (is_picture(bytes)) {
        return Kind::image;
    }
    // Readers look for the mark in the first kilobyte (ISO 32000-1, implementation notes).
    if (begins(bytes, "%PDF-"sv) ||
        (!can_be_text(bytes) && bytes.substr(0, 1024).find("%PDF-"sv) != std::string_view::npos)) {
        return Kind::pdf;
    }
    if (web_page::looks_like_html(bytes)) { // in UTF-16 too, which has bytes that text has not
        return Kind::html;
    }
    if (!foreign_kind(bytes).name.empty()) {
        return std::nullopt;
    }
    return Kind::text;
}

std::string_view name_of(Kind kind) {
    switch (kind) {
    case Kind::html:
        return "web page";
    case Kind::pdf:
        return "PDF";
    case Kind::image:
        return "picture";
    case Kind::text:
        break;
    }
    return "text";
}

Foreign foreign_kind(std::string_view bytes) {
    bytes = bytes.substr(0, telling_bytes);
    if (begins(bytes, "PK\x03\x04"sv)) {
        if (bytes.find("word/"sv) != std::string_view::npos) {
            return {"a Word document", as_pdf};
        }
        return bytes.find("opendocument"sv) != std::string_view::npos
                   ? Foreign{"an OpenDocument file", as_pdf}
                   : Foreign{"a ZIP archive", "Unpack it first."};
    }
    if (part(bytes, 4, 4) == "ftyp"sv) {
        const std::string_view brand = part(bytes, 8, 4);
        const bool photo = brand == "heic"sv || brand == "heix"sv || brand == "mif1"sv ||
                           brand == "msf1"sv || brand == "avif"sv;
        return photo ? Foreign{"a photo in HEIF", as_jpeg}
                     : Foreign{"a film", "Take a photo of the page."};
    }
    if (begins(bytes, "GIF8"sv)) {
        return {"a GIF picture", as_jpeg};
    }
    if (begins(bytes, "BM"sv)) {
        return {"a BMP picture", as_jpeg};
    }
    if (begins(bytes, "{\\rtf"sv)) {
        return {"a rich text file", as_pdf};
    }
    if (begins(bytes, "\xD0\xCF\x11\xE0"sv)) {
        return {"an old Office document", as_pdf};
    }
    if (begins(bytes, "\x1F\x8B"sv) || begins(bytes, "BZh"sv) || begins(bytes, "\xFD\x37zXZ"sv)) {
        return {"a packed file", "Unpack it first."};
    }
    if (begins(bytes, "RIFF"sv)) {
        return {"a sound or a film", "Take a photo of the page."};
    }
    return {};
}

} // namespace loafwright::intake

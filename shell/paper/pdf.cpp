// SPDX-License-Identifier: Apache-2.0
//
// The one door to poppler. Its boxes are words; columns.cpp puts them in order.
#include "shell/paper/pdf.hpp"

#include <allheaders.h>
#include <fmt/format.h>
#include <iconv.h>
#include <poppler-document.h>
#include <poppler-global.h>
#include <poppler-image.h>
#include <poppler-page-renderer.h>
#include <poppler-page.h>
#include <utf8cpp/utf8.h>

#include <algorithm>
#include <cstring>
#include <iterator>
#include <memory>
#include <string>
#include <utility>

namespace loafwright::paper {

namespace {

constexpr std::size_t least_letters = 25;  // fewer are a stamp on a scanned page
constexpr std::size_t most_words = 20'000; // a page of small print has two thousand
constexpr double drawn_dots_per_inch = 300.0;
constexpr double points_per_inch = 72.0;
constexpr double most_drawn_pixels = 12e6;

Diagnostic trouble(std::string code, std::string what, std::string do_this) {
    return {std::move(code), Severity::error, std::move(what), "", std::move(do_this)};
}

Diagnostic damaged() {
    return trouble("file_damaged", "the PDF is damaged or breaks off", "Save it again.");
}

// Letters that were cast in one piece, spaces of every width and marks that are not shown, in plain
// letters.
std::string plain(const poppler::ustring& text) {
    std::u16string units(text.begin(), text.end());
    std::string bytes;
    for (std::size_t i = 0; i < units.size(); ++i) {
        const char16_t unit = units[i];
        if (unit >= 0xD800 && unit <= 0xDBFF && i + 1 < units.size() && units[i + 1] >= 0xDC00 &&
            units[i + 1] <= 0xDFFF) {
            const auto high = static_cast<std::uint32_t>(unit - 0xD800);
            const auto low = static_cast<std::uint32_t>(units[++i] - 0xDC00);
            utf8::append(0x10000U + (high << 10U) + low, std::back_inserter(bytes));
        } else if (unit >= 0xFB00 && unit <= 0xFB06) {
            static constexpr const char* cast[] = {"ff", "fi", "fl", "ffi", "ffl", "st", "st"};
            bytes += cast[unit - 0xFB00];
        } else if (unit == 0xAD && i + 1 == units.size()) {
            bytes += '-'; // a soft hyphen that was used
        } else if (unit == 0xA0 || unit == 0x2007 || unit == 0x2009 || unit == 0x202F) {
            bytes += ' ';
        } else if (unit >= 0x20 && unit != 0x7F && unit != 0xAD && unit != 0xFEFF &&
                   !(unit >= 0x80 && unit < 0xA0) && !(unit >= 0xD800 && unit <= 0xDFFF)) {
            utf8::append(unit, std::back_inserter(bytes));
        }
    }
    return bytes;
}

// Neighbouring words of poppler's order on one line.
void put(SeenWord word, double size, SeenPage& page) {
    if (!page.lines.empty()) {
        SeenLine& line = page.lines.back();
        const Box& before = line.words.back().box;
        const double shared =
            std::min(before.bottom, word.box.bottom) - std::max(before.top, word.box.top);
        const double gap = word.box.left - before.right;
        if (shared > 0.5 * std::min(before.height(), word.box.height()) && gap > -0.2 * size &&
            gap < 1.2 * size) {
            line.box = around(line.box, word.box);
            line.size = std::max(line.size, size);
            line.words.push_back(std::move(word));
            return;
        }
    }
    SeenLine line;
    line.box = word.box;
    line.size = size;
    line.words.push_back(std::move(word));
    page.lines.push_back(std::move(line));
}

SeenPage words_of(const poppler::page& page) {
    SeenPage seen;
    const poppler::rectf area = page.page_rect();
    seen.width = area.width();
    seen.height = area.height();
    std::size_t count = 0;
    bool glued = false;
    for (const poppler::text_box& box : page.text_list(poppler::page::text_list_include_font)) {
        SeenWord word;
        word.text = plain(box.text());
        const poppler::rectf place = box.bbox();
        word.box = {place.left(), place.top(), place.right(), place.bottom()};
        const bool flat = box.rotation() == 0 && word.box.height() > 0;
        if (word.text.find_first_not_of(' ') == std::string::npos || !flat ||
            ++count > most_words) {
            continue;
        }
        const double size = box.has_font_info() ? box.get_font_size() : word.box.height();
        // A change of typeface inside a word makes two boxes of it.
        if (glued && !seen.lines.empty() &&
            std::abs(word.box.left - seen.lines.back().box.right) < 0.1 * size) {
            SeenLine& line = seen.lines.back();
            line.words.back().text += word.text;
            line.words.back().box = around(line.words.back().box, word.box);
            line.box = around(line.box, word.box);
        } else {
            put(std::move(word), size, seen);
        }
        glued = !box.has_space_after();
    }
    return seen;
}

std::size_t letters_on(const SeenPage& page) {
    std::size_t letters = 0;
    for (const SeenLine& line : page.lines) {
        letters += letters_in(line);
    }
    return letters;
}

Picture drawn(const poppler::page& page) {
    const poppler::rectf area = page.page_rect();
    const double square_inches =
        std::max(1e-6, area.width() * area.height() / (points_per_inch * points_per_inch));
    const double dots = std::min(drawn_dots_per_inch, std::sqrt(most_drawn_pixels / square_inches));
    poppler::page_renderer renderer;
    renderer.set_image_format(poppler::image::format_gray8);
    renderer.set_paper_color(0xFFFFFFFF);
    poppler::image image = renderer.render_page(&page, dots, dots);
    if (!image.is_valid()) {
        return {};
    }
    Picture picture(pixCreate(image.width(), image.height(), 8));
    if (!picture) {
        return {};
    }
    for (int y = 0; y < image.height(); ++y) {
        const auto* row = reinterpret_cast<const unsigned char*>(image.const_data()) +
                          static_cast<std::ptrdiff_t>(y) * image.bytes_per_row();
        l_uint32* line =
            pixGetData(picture.get()) + static_cast<std::ptrdiff_t>(y) * pixGetWpl(picture.get());
        for (int x = 0; x < image.width(); ++x) {
            SET_DATA_BYTE(line, x, row[x]);
        }
    }
    return picture;
}

} // namespace

void make_pdf_ready() {
    poppler::set_debug_error_function([](const std::string&, void*) {}, nullptr);
    // Its strings are turned by iconv, whose tables for UTF-16 are a file each; held open, they
    // stay.
    static const iconv_t there = ::iconv_open("UTF-16", "UTF-8");
    static const iconv_t back = ::iconv_open("UTF-8", "UTF-16");
    static_cast<void>(there);
    static_cast<void>(back);
    static_cast<void>(poppler::ustring::from_utf8("words").to_utf8());
}

tl::expected<std::vector<PdfPage>, Diagnostic> pages_of(std::string_view bytes,
                                                        const intake::Limits& limits) {
    const std::unique_ptr<poppler::document> document(
        poppler::document::load_from_raw_data(bytes.data(), static_cast<int>(bytes.size())));
    if (document == nullptr) {
        return tl::make_unexpected(damaged());
    }
    if (document->is_locked()) {
        return tl::make_unexpected(trouble("file_locked",
                                           "the PDF opens with a password only",
                                           "Open it, then print it to a new PDF without one."));
    }
    const int count = document->pages();
    if (count < 1) {
        return tl::make_unexpected(damaged());
    }
    if (static_cast<unsigned>(count) > limits.most_pages) {
        return tl::make_unexpected(trouble(
            "too_many_pages",
            fmt::format("the PDF has {} pages, expected at most {}", count, limits.most_pages),
            "Print the pages of the recipe to a PDF of their own."));
    }
    std::vector<PdfPage> pages;
    for (int i = 0; i < count; ++i) {
        const std::unique_ptr<poppler::page> page(document->create_page(i));
        if (page == nullptr) {
            return tl::make_unexpected(damaged());
        }
        SeenPage seen = words_of(*page);
        if (letters_on(seen) >= least_letters) {
            pages.emplace_back(std::move(seen));
        } else if (Picture picture = drawn(*page)) {
            pages.emplace_back(std::move(picture));
        }
    }
    return pages;
}

} // namespace loafwright::paper

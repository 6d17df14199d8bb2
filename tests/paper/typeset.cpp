// SPDX-License-Identifier: Apache-2.0
#include "tests/paper/typeset.hpp"

#include <cairo-pdf.h>
#include <cairo.h>
#include <pango/pangocairo.h>

#include <functional>
#include <memory>
#include <random>
#include <sstream>

namespace loafwright::press {

namespace {

constexpr double page_width = 595.0; // A4 in points
constexpr double page_height = 842.0;
constexpr double margin = 56.0;
constexpr double gap = 24.0;

struct Block {
    std::string text;
    std::string mark; // "•" or "1."
    double scale = 1.0;
    bool bold = false;
};

void erase_all(std::string& text, const std::string& what) {
    for (std::size_t at = text.find(what); at != std::string::npos; at = text.find(what, at)) {
        text.erase(at, what.size());
    }
}

// A printer's case has no pictures in it: letters beyond U+FFFF and dingbats stay out.
std::string without_pictures(const std::string& text) {
    std::string out;
    for (std::size_t at = 0; at < text.size(); ++at) {
        const auto byte = static_cast<unsigned char>(text[at]);
        const bool four = byte >= 0xF0;
        const bool selector = text.compare(at, 3, "\xEF\xB8\x8F") == 0;
        if (four || selector) {
            at += four ? 3 : 2;
        } else {
            out += text[at];
        }
    }
    return out;
}

std::vector<Block> blocks_of(const std::string& markdown) {
    std::string text = without_pictures(markdown);
    for (std::size_t at = text.find("<!--"); at != std::string::npos; at = text.find("<!--")) {
        const std::size_t end = text.find("-->", at);
        text.erase(at, end == std::string::npos ? end : end + 3 - at);
    }
    if (text.rfind("---\n", 0) == 0) {
        const std::size_t end = text.find("\n---", 4);
        text.erase(0, end == std::string::npos ? 0 : end + 4);
    }
    std::vector<Block> blocks;
    std::istringstream lines(text);
    bool open = false; // a paragraph that the next line goes on with
    // A line that ends long before a page's edge was ended on purpose, as on a card.
    constexpr std::size_t shortest_full = 50;
    std::size_t before = 0;
    for (std::string line; std::getline(lines, line);) {
        while (!line.empty() && (line.back() == ' ' || line.back() == '\r')) {
            line.pop_back();
        }
        const std::size_t first = line.find_first_not_of(" \t");
        if (first == std::string::npos || line.compare(first, 2, "![") == 0) {
            open = false;
            continue;
        }
        line.erase(0, first);
        erase_all(line, "**");
        Block block;
        const std::size_t digits = line.find_first_not_of("0123456789");
        if (line[0] == '#') {
            const std::size_t level = line.find_first_not_of('#');
            block = {line.substr(line.find_first_not_of("# ")), "", level == 1 ? 1.7 : 1.25, true};
        } else if (line.rfind("- ", 0) == 0 || line.rfind("* ", 0) == 0) {
            block = {line.substr(2), "•"};
        } else if (digits > 0 && digits < 3 && line.compare(digits, 2, ". ") == 0) {
            block = {line.substr(digits + 2), line.substr(0, digits + 1)};
        } else if (open && before + std::min(line.find(' '), line.size()) >= shortest_full) {
            blocks.back().text += " " + line;
            before = line.size();
            continue;
        } else {
            block = {line, ""};
        }
        open = !block.bold;
        before = line.size();
        blocks.push_back(std::move(block));
    }
    return blocks;
}

// Places where English printers break words.
std::string with_soft_hyphens(const std::string& text) {
    std::string out;
    for (std::size_t at = 0; at < text.size(); ++at) {
        for (const char* ending : {"ing", "tion", "ment", "ture"}) {
            const bool inside = at > 2 && text[at - 1] >= 'a' && text[at - 1] <= 'z' &&
                                text[at - 2] >= 'a' && text[at - 2] <= 'z' && text[at - 3] >= 'a' &&
                                text[at - 3] <= 'z';
            if (inside && text.compare(at, std::string(ending).size(), ending) == 0) {
                out += "\xC2\xAD";
                break;
            }
        }
        out += text[at];
    }
    return out;
}

using Layout = std::unique_ptr<PangoLayout, decltype(&g_object_unref)>;

class Press {
public:
    Press(cairo_t* paper, const Style& style, std::function<void()> next_page)
        : paper_(paper), style_(style), next_page_(std::move(next_page)) {}

    void print(const std::vector<Block>& blocks) {
        begin_page();
        for (std::size_t i = 0; i < blocks.size(); ++i) {
            // The title runs across both columns.
            across_ = i == 0 && blocks[i].bold;
            print(blocks[i]);
            if (across_) {
                top_ = y_ + 6;
                y_ = top_;
                across_ = false;
            }
        }
        foot();
    }

private:
    [[nodiscard]] double column_width() const {
        const double all = page_width - 2 * margin;
        return across_ ? all : (all - gap * (style_.columns - 1)) / style_.columns;
    }

    Layout layout(const std::string& text, const Block& block, double width) {
        Layout made(pango_cairo_create_layout(paper_), &g_object_unref);
        PangoFontDescription* font = pango_font_description_new();
        pango_font_description_set_family(font, style_.family.c_str());
        pango_font_description_set_absolute_size(font, style_.points * block.scale * PANGO_SCALE);
        pango_font_description_set_weight(font,
                                          block.bold ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_NORMAL);
        pango_layout_set_font_description(made.get(), font);
        pango_font_description_free(font);
        pango_layout_set_width(made.get(), static_cast<int>(width * PANGO_SCALE));
        pango_layout_set_text(made.get(), text.c_str(), -1);
        return made;
    }

    void print(const Block& block) {
        const double in = block.mark.empty() ? 0.0 : 1.8 * style_.points;
        const std::string words =
            style_.broken_words && !block.bold ? with_soft_hyphens(block.text) : block.text;
        const Layout body = layout(words, block, column_width() - in);
        y_ += block.bold ? 0.9 * style_.points : 0.25 * style_.points;
        for (int i = 0; i < pango_layout_get_line_count(body.get()); ++i) {
            PangoLayoutLine* line = pango_layout_get_line_readonly(body.get(), i);
            PangoRectangle box;
            pango_layout_line_get_extents(line, nullptr, &box);
            const double height = box.height / static_cast<double>(PANGO_SCALE) * 1.08;
            if (y_ + height > page_height - margin) {
                next_column();
            }
            const double base = y_ - box.y / static_cast<double>(PANGO_SCALE);
            if (i == 0 && !block.mark.empty()) {
                const Layout mark = layout(block.mark, block, 100);
                cairo_move_to(paper_, x_, base);
                pango_cairo_show_layout_line(paper_, pango_layout_get_line_readonly(mark.get(), 0));
            }
            cairo_move_to(paper_, x_ + in, base);
            pango_cairo_show_layout_line(paper_, line);
            y_ += height;
        }
        y_ += block.mark.empty() ? 0.5 * style_.points : 0.15 * style_.points;
    }

    void next_column() {
        ++column_;
        if (column_ == style_.columns) {
            foot();
            next_page_();
            begin_page();
            return;
        }
        x_ += column_width() + gap;
        y_ = top_;
    }

    void begin_page() {
        ++page_;
        column_ = 0;
        x_ = margin;
        top_ = margin + 10;
        if (page_ > 1) {
            small("Breads for a hall", margin - 24);
        }
        y_ = top_;
    }

    void foot() { small(std::to_string(40 + page_), page_height - margin + 18); }

    void small(const std::string& text, double y) {
        Block block;
        block.scale = 0.8;
        const Layout made = layout(text, block, 300);
        cairo_move_to(paper_, margin, y);
        pango_cairo_show_layout(paper_, made.get());
    }

    cairo_t* paper_;
    const Style& style_;
    std::function<void()> next_page_;
    double x_ = margin;
    double y_ = margin;
    double top_ = margin;
    int column_ = 0;
    int page_ = 0;
    bool across_ = false;
};

} // namespace

std::string printed_words(const std::string& markdown) {
    std::string words;
    for (const Block& block : blocks_of(markdown)) {
        words += block.mark + (block.mark.empty() ? "" : " ") + block.text + "\n";
        words += block.mark.empty() ? "\n" : "";
    }
    return words;
}

std::vector<Grey> printed_pages(const std::string& markdown, const Style& style) {
    const double scale = style.dots_per_inch / 72.0;
    Grey blank;
    blank.width = static_cast<int>(page_width * scale);
    blank.height = static_cast<int>(page_height * scale);
    cairo_surface_t* surface =
        cairo_image_surface_create(CAIRO_FORMAT_RGB24, blank.width, blank.height);
    cairo_t* paper = cairo_create(surface);
    const auto clean = [&] {
        cairo_set_source_rgb(paper, 1, 1, 1);
        cairo_paint(paper);
        cairo_set_source_rgb(paper, 0.08, 0.08, 0.08);
    };
    std::vector<Grey> pages;
    const auto take = [&] {
        cairo_surface_flush(surface);
        Grey page = blank;
        const unsigned char* rows = cairo_image_surface_get_data(surface);
        const int stride = cairo_image_surface_get_stride(surface);
        for (int y = 0; y < page.height; ++y) {
            for (int x = 0; x < page.width; ++x) {
                page.pixels.push_back(rows[static_cast<std::ptrdiff_t>(y) * stride + 4 * x + 1]);
            }
        }
        pages.push_back(std::move(page));
        clean();
    };
    clean();
    cairo_scale(paper, scale, scale);
    Press(paper, style, take).print(blocks_of(markdown));
    take();
    cairo_destroy(paper);
    cairo_surface_destroy(surface);
    return pages;
}

std::string printed_pdf(const std::string& markdown, const Style& style) {
    std::string bytes;
    const auto keep = [](void* to, const unsigned char* data, unsigned int size) {
        static_cast<std::string*>(to)->append(reinterpret_cast<const char*>(data), size);
        return CAIRO_STATUS_SUCCESS;
    };
    cairo_surface_t* surface =
        cairo_pdf_surface_create_for_stream(keep, &bytes, page_width, page_height);
    cairo_t* paper = cairo_create(surface);
    Press(paper, style, [paper] { cairo_show_page(paper); }).print(blocks_of(markdown));
    cairo_show_page(paper);
    cairo_destroy(paper);
    cairo_surface_finish(surface);
    cairo_surface_destroy(surface);
    return bytes;
}

Grey scrawled_page(unsigned seed) {
    std::mt19937 chance(seed);
    const auto between = [&chance](double low, double high) {
        return std::uniform_real_distribution<double>(low, high)(chance);
    };
    Grey page;
    page.width = 1654;
    page.height = 2339;
    cairo_surface_t* surface =
        cairo_image_surface_create(CAIRO_FORMAT_RGB24, page.width, page.height);
    cairo_t* paper = cairo_create(surface);
    cairo_set_source_rgb(paper, 1, 1, 1);
    cairo_paint(paper);
    cairo_set_source_rgb(paper, 0.1, 0.1, 0.1);
    cairo_set_line_width(paper, 4);
    for (double y = 200; y < 2100; y += 90) {
        for (double x = 150; x < 1400; x += between(40, 70)) {
            cairo_move_to(paper, x, y);
            for (int stroke = 0; stroke < 4; ++stroke, x += between(18, 34)) {
                cairo_curve_to(paper,
                               x + between(-20, 30),
                               y - between(10, 70),
                               x + between(-10, 50),
                               y + between(-10, 40),
                               x + between(18, 34),
                               y + between(-8, 8));
            }
            cairo_stroke(paper);
        }
    }
    cairo_surface_flush(surface);
    const unsigned char* rows = cairo_image_surface_get_data(surface);
    const int stride = cairo_image_surface_get_stride(surface);
    for (int y = 0; y < page.height; ++y) {
        for (int x = 0; x < page.width; ++x) {
            page.pixels.push_back(rows[static_cast<std::ptrdiff_t>(y) * stride + 4 * x + 1]);
        }
    }
    cairo_destroy(paper);
    cairo_surface_destroy(surface);
    return page;
}

bool has_family(const std::string& family) {
    PangoFontFamily** families = nullptr;
    int count = 0;
    pango_font_map_list_families(pango_cairo_font_map_get_default(), &families, &count);
    bool found = false;
    for (int i = 0; i < count; ++i) {
        found = found || family == pango_font_family_get_name(families[i]);
    }
    g_free(families);
    return found;
}

} // namespace loafwright::press

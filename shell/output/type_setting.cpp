// SPDX-License-Identifier: Apache-2.0
//
// Pango finds the letters and breaks the lines, Cairo draws them. One point of ours is one unit of
// Cairo's; hinting and rounding are off, so that a page breaks its lines in the same places on
// paper, as SVG and at any resolution.
#include "shell/output/type_setting.hpp"

#include "shell/output/text_lines.hpp"

#include <fmt/format.h>
#include <pango/pangocairo.h>

#include <algorithm>
#include <cmath>
#include <string_view>
#include <unordered_map>
#include <utility>
#include <vector>

namespace loafwright::output {

namespace {

constexpr std::string_view no_break = "\xC2\xA0";
constexpr std::size_t longest_lonely = 9;

// Everything is set at this size and scaled: finding a font takes milliseconds for each new size,
// and unhinted letters are the same at all of them.
constexpr double set_points = 20.0;

struct Unref {
    void operator()(void* object) const { g_object_unref(object); }
};
using Layout = std::unique_ptr<PangoLayout, Unref>;
using Context = std::unique_ptr<PangoContext, Unref>;

std::string key_of(const std::string& text, Face face, double width, std::size_t most_lines) {
    return fmt::format(
        "{}/{}/{}/{}/{}/{}", face.points, face.weight, face.leading, width, most_lines, text);
}

struct FreeFont {
    void operator()(PangoFontDescription* font) const { pango_font_description_free(font); }
};
using Font = std::unique_ptr<PangoFontDescription, FreeFont>;

struct UnrefAttributes {
    void operator()(PangoAttrList* list) const { pango_attr_list_unref(list); }
};
using Attributes = std::unique_ptr<PangoAttrList, UnrefAttributes>;

// Figures of one width; no ligatures, which make two letters one shape that is harder to make out
// from afar; and no line end at a no-break space. That is told in an attribute and not by the
// letter U+00A0, because it shares its glyph with the blank, and a PDF then has to say beside the
// text what the text is, which readers of the structure stumble over.
Attributes attributes_for(const std::string& text, const std::string& plain) {
    Attributes list(pango_attr_list_new());
    pango_attr_list_insert(list.get(), pango_attr_font_features_new("tnum=1, liga=0, clig=0"));
    std::size_t before = 0; // no-break spaces so far; each is one byte longer than a blank
    for (std::size_t at = text.find(no_break); at != std::string::npos;
         at = text.find(no_break, at + no_break.size())) {
        const std::size_t blank = at - before;
        const char* next = g_utf8_find_next_char(plain.c_str() + blank + 1, nullptr);
        PangoAttribute* together = pango_attr_allow_breaks_new(FALSE);
        together->start_index = static_cast<guint>(blank);
        together->end_index = static_cast<guint>(next - plain.c_str());
        pango_attr_list_insert(list.get(), together);
        ++before;
    }
    return list;
}

bool leads_to_a_time(const std::string& word) {
    return word == "by" || word == "at" || word == "to";
}

bool has_a_time(const std::string& block) {
    const std::size_t colon = block.find(':');
    return colon != std::string::npos && colon > 0 && block[colon - 1] >= '0' &&
           block[colon - 1] <= '9';
}

Context plain_context() {
    Context context(pango_font_map_create_context(pango_cairo_font_map_get_default()));
    pango_cairo_context_set_resolution(context.get(), 72.0);
    pango_context_set_round_glyph_positions(context.get(), FALSE);
    cairo_font_options_t* options = cairo_font_options_create();
    cairo_font_options_set_hint_style(options, CAIRO_HINT_STYLE_NONE);
    cairo_font_options_set_hint_metrics(options, CAIRO_HINT_METRICS_OFF);
    cairo_font_options_set_antialias(options, CAIRO_ANTIALIAS_GRAY);
    pango_cairo_context_set_font_options(context.get(), options);
    cairo_font_options_destroy(options);
    return context;
}

struct Line {
    std::string text;
    double x = 0.0;
    double baseline = 0.0;
};

// A text that is cut is set by Pango alone, which knows no leading below one.
double leading_of(PangoLayout* layout, Face face) {
    return pango_layout_is_ellipsized(layout) != FALSE ? 1.0 : face.leading;
}

// What leading takes from above the first line.
double taken_off(PangoLayout* layout, Face face) {
    PangoRectangle logical{};
    pango_layout_line_get_extents(pango_layout_get_line_readonly(layout, 0), nullptr, &logical);
    return (1.0 - leading_of(layout, face)) * static_cast<double>(logical.height);
}

// The lines of a layout, from its top left corner.
std::vector<Line> lines_of(PangoLayout* layout, double leading) {
    std::vector<Line> lines;
    const std::string text = pango_layout_get_text(layout);
    PangoLayoutIter* iter = pango_layout_get_iter(layout);
    do {
        const PangoLayoutLine* line = pango_layout_iter_get_line_readonly(iter);
        PangoRectangle logical{};
        pango_layout_iter_get_line_extents(iter, nullptr, &logical);
        Line found;
        found.text = text.substr(static_cast<std::size_t>(line->start_index),
                                 static_cast<std::size_t>(line->length));
        found.text.erase(found.text.find_last_not_of(' ') + 1);
        // From right to left a blank at the end would push the line out of place.
        found.text += line->resolved_dir == PANGO_DIRECTION_RTL ? "" : " ";
        found.x = static_cast<double>(logical.x) / PANGO_SCALE;
        const double off = (1.0 - leading) * static_cast<double>(logical.y + logical.height);
        found.baseline =
            (static_cast<double>(pango_layout_iter_get_baseline(iter)) - off) / PANGO_SCALE;
        lines.push_back(std::move(found));
    } while (pango_layout_iter_next_line(iter) != FALSE);
    pango_layout_iter_free(iter);
    return lines;
}

} // namespace

struct TypeSetter::Inside {
    Context context = plain_context();
    Font font{pango_font_description_new()};

    Layout layout;

    // What was measured is measured again at every attempt to fill a page.
    std::unordered_map<std::string, Extent> measured;

    // One layout serves every text: setting it anew costs less than making one.
    PangoLayout*
    set(const std::string& text, Face face, double width, std::size_t most_lines) const {
        PangoLayout* into = layout.get();
        pango_font_description_set_weight(font.get(), static_cast<PangoWeight>(face.weight));
        pango_font_description_set_absolute_size(font.get(), set_points * PANGO_SCALE);
        pango_layout_set_font_description(into, font.get());
        const double units = PANGO_SCALE * set_points / face.points;
        pango_layout_set_width(into, width < 0.0 ? -1 : static_cast<int>(std::ceil(width * units)));
        pango_layout_set_ellipsize(into, PANGO_ELLIPSIZE_NONE);
        const std::string plain = with_plain_blanks(text);
        pango_layout_set_attributes(into, attributes_for(text, plain).get());
        pango_layout_set_text(into, plain.data(), static_cast<int>(plain.size()));
        // Looking for the place to cut takes long, and hardly any text has to be cut.
        if (width >= 0.0 && pango_layout_get_line_count(into) > static_cast<int>(most_lines)) {
            // Below zero Pango counts lines.
            pango_layout_set_height(into, -static_cast<int>(most_lines));
            pango_layout_set_ellipsize(into, PANGO_ELLIPSIZE_END);
        }
        return into;
    }

    // Line by line, each with its blank at the end: Pango leaves that out, and a PDF would have to
    // say it beside the text.
    void draw_lines(cairo_t* onto, const std::vector<Line>& lines, Face face) const {
        double x = 0.0;
        double y = 0.0;
        cairo_get_current_point(onto, &x, &y);
        for (const Line& line : lines) {
            PangoLayout* single = set(line.text, face, -1.0, 1);
            const double own = static_cast<double>(pango_layout_get_baseline(single)) / PANGO_SCALE;
            cairo_move_to(onto, x + line.x, y + line.baseline - own);
            pango_cairo_show_layout(onto, single);
        }
    }
};

TypeSetter::TypeSetter(const std::string& family) : inside_(std::make_unique<Inside>()) {
    pango_font_description_set_family(inside_->font.get(), family.c_str());
    inside_->layout.reset(pango_layout_new(inside_->context.get()));
    PangoLayout* layout = inside_->layout.get();
    pango_layout_set_wrap(layout, PANGO_WRAP_WORD_CHAR);
    // A paragraph separator inside a text is no line of its own.
    pango_layout_set_single_paragraph_mode(layout, TRUE);
}

TypeSetter::~TypeSetter() = default;

Extent
TypeSetter::extent(const std::string& text, Face face, double width, std::size_t most_lines) const {
    std::string key = key_of(text, face, width, most_lines);
    const auto known = inside_->measured.find(key);
    if (known != inside_->measured.end()) {
        return known->second;
    }
    PangoLayout* layout = inside_->set(text, face, width, most_lines);
    PangoRectangle logical{};
    pango_layout_get_extents(layout, nullptr, &logical);
    Extent extent;
    const double unit = face.points / (set_points * PANGO_SCALE);
    extent.width = static_cast<double>(logical.width) * unit;
    extent.height = static_cast<double>(logical.height) * leading_of(layout, face) * unit;
    extent.baseline =
        (static_cast<double>(pango_layout_get_baseline(layout)) - taken_off(layout, face)) * unit;
    extent.unknown_letters =
        static_cast<std::size_t>(std::max(0, pango_layout_get_unknown_glyphs_count(layout)));
    extent.is_cut = pango_layout_is_ellipsized(layout) != FALSE;
    inside_->measured.emplace(std::move(key), extent);
    return extent;
}

void TypeSetter::draw(
    cairo_t* onto, const std::string& text, Face face, double width, std::size_t most_lines) const {
    cairo_save(onto);
    cairo_scale(onto, face.points / set_points, face.points / set_points);
    PangoLayout* layout = inside_->set(text, face, width, most_lines);
    if (pango_layout_get_line_count(layout) == 1 || pango_layout_is_ellipsized(layout) != FALSE) {
        cairo_rel_move_to(onto, 0.0, -taken_off(layout, face) / PANGO_SCALE);
        pango_cairo_show_layout(onto, layout);
    } else {
        inside_->draw_lines(onto, lines_of(layout, face.leading), face);
    }
    cairo_restore(onto);
}

std::string with_plain_blanks(const std::string& text) {
    std::string plain;
    for (std::size_t i = 0; i < text.size(); ++i) {
        const bool blank = text.compare(i, no_break.size(), no_break) == 0;
        plain += blank ? ' ' : text[i];
        i += blank ? no_break.size() - 1 : 0;
    }
    return plain;
}

bool family_is_there(const std::string& family) {
    PangoFontFamily** families = nullptr;
    int count = 0;
    pango_font_map_list_families(pango_cairo_font_map_get_default(), &families, &count);
    bool found = false;
    for (int i = 0; i < count && !found; ++i) {
        const std::string_view name = pango_font_family_get_name(families[i]);
        found = g_ascii_strcasecmp(name.data(), family.c_str()) == 0;
    }
    g_free(static_cast<void*>(families));
    return found;
}

std::string for_paper(const std::string& text) {
    const std::unique_ptr<char, void (*)(void*)> valid(
        g_utf8_make_valid(text.data(), static_cast<gssize>(text.size())), g_free);
    std::vector<std::string> blocks;
    for (std::string& block : unbreakable(printable(valid.get()))) {
        // "by 15:15", "at Fri 06:40": a line is wide enough for these here.
        if (!blocks.empty() && leads_to_a_time(blocks.back()) && has_a_time(block)) {
            blocks.back() += " " + block;
        } else {
            blocks.push_back(std::move(block));
        }
    }
    // One short word does not stand alone in a last line.
    if (blocks.size() > 2 && blocks.back().size() < longest_lonely &&
        blocks[blocks.size() - 2].size() < longest_lonely) {
        blocks[blocks.size() - 2] += " " + blocks.back();
        blocks.pop_back();
    }
    std::string set;
    for (const std::string& block : blocks) {
        set += set.empty() ? "" : " ";
        for (const char c : block) {
            if (c == ' ') {
                set += no_break;
            } else {
                set += c;
            }
        }
    }
    return set;
}
} // namespace loafwright::output

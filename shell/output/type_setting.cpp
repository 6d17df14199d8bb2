// SPDX-License-Identifier: Apache-2.0
//
// Pango finds the letters and breaks the lines, Cairo draws them. One point of ours is one unit of
// Cairo's; hinting and rounding are off, so that a page breaks its lines in the same places on
// paper, as SVG and at any resolution.
#include "shell/output/type_setting.hpp"

#include "shell/output/text_lines.hpp"

#include <pango/pangocairo.h>

#include <algorithm>
#include <cmath>
#include <string_view>
#include <vector>

namespace loafwright::output {

namespace {

constexpr std::size_t longest_lonely = 9;

struct Unref {
    void operator()(void* object) const { g_object_unref(object); }
};
using Layout = std::unique_ptr<PangoLayout, Unref>;
using Context = std::unique_ptr<PangoContext, Unref>;

struct FreeFont {
    void operator()(PangoFontDescription* font) const { pango_font_description_free(font); }
};
using Font = std::unique_ptr<PangoFontDescription, FreeFont>;

struct UnrefAttributes {
    void operator()(PangoAttrList* list) const { pango_attr_list_unref(list); }
};
using Attributes = std::unique_ptr<PangoAttrList, UnrefAttributes>;

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

} // namespace

struct TypeSetter::Inside {
    Context context = plain_context();
    Font font{pango_font_description_new()};
    Attributes attributes{pango_attr_list_new()};
    Layout layout;

    // One layout serves every text: setting it anew costs less than making one.
    PangoLayout* set(const std::string& text, Face face, double width, std::size_t most_lines) {
        pango_font_description_set_weight(font.get(), static_cast<PangoWeight>(face.weight));
        pango_font_description_set_absolute_size(font.get(), face.points * PANGO_SCALE);
        pango_layout_set_font_description(layout.get(), font.get());
        pango_layout_set_width(layout.get(),
                               width < 0.0 ? -1 : static_cast<int>(std::ceil(width * PANGO_SCALE)));
        // Below zero Pango counts lines.
        pango_layout_set_height(layout.get(), -static_cast<int>(most_lines));
        pango_layout_set_text(layout.get(), text.data(), static_cast<int>(text.size()));
        return layout.get();
    }
};

TypeSetter::TypeSetter(const std::string& family) : inside_(std::make_unique<Inside>()) {
    pango_font_description_set_family(inside_->font.get(), family.c_str());
    // Ligatures make two letters one shape, which is harder to make out from afar.
    pango_attr_list_insert(inside_->attributes.get(),
                           pango_attr_font_features_new("tnum=1, liga=0, clig=0"));
    inside_->layout.reset(pango_layout_new(inside_->context.get()));
    PangoLayout* layout = inside_->layout.get();
    pango_layout_set_attributes(layout, inside_->attributes.get());
    pango_layout_set_ellipsize(layout, PANGO_ELLIPSIZE_END);
    pango_layout_set_wrap(layout, PANGO_WRAP_WORD_CHAR);
    // A paragraph separator inside a text is no line of its own.
    pango_layout_set_single_paragraph_mode(layout, TRUE);
}

TypeSetter::~TypeSetter() = default;

Extent
TypeSetter::extent(const std::string& text, Face face, double width, std::size_t most_lines) const {
    PangoLayout* layout = inside_->set(text, face, width, most_lines);
    PangoRectangle logical{};
    pango_layout_get_extents(layout, nullptr, &logical);
    Extent extent;
    extent.width = static_cast<double>(logical.width) / PANGO_SCALE;
    extent.height = static_cast<double>(logical.height) / PANGO_SCALE;
    extent.baseline = static_cast<double>(pango_layout_get_baseline(layout)) / PANGO_SCALE;
    extent.unknown_letters =
        static_cast<std::size_t>(std::max(0, pango_layout_get_unknown_glyphs_count(layout)));
    extent.is_cut = pango_layout_is_ellipsized(layout) != FALSE;
    return extent;
}

void TypeSetter::draw(
    cairo_t* onto, const std::string& text, Face face, double width, std::size_t most_lines) const {
    pango_cairo_show_layout(onto, inside_->set(text, face, width, most_lines));
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
                set += "\xC2\xA0";
            } else {
                set += c;
            }
        }
    }
    return set;
}
} // namespace loafwright::output

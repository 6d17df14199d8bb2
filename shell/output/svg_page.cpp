// SPDX-License-Identifier: Apache-2.0
//
// SVG by Cairo. Its letters are outlines, so that it looks the same where our typeface is not
// installed; for those who do not see them, title and description hold the words (SVG 1.1, 5.4).
#include "shell/output/drawn.hpp"
#include "shell/output/page_drawing.hpp"
#include "shell/output/text_page.hpp"
#include "shell/output/type_setting.hpp"

#include <cairo-svg.h>

#include <algorithm>
#include <string>
#include <string_view>
#include <vector>

namespace loafwright::output {

namespace {

constexpr std::size_t described_columns = 80;

// Character data of XML 1.0.
std::string escaped(std::string_view text) {
    std::string out;
    for (const char c : text) {
        if (c == '&') {
            out += "&amp;";
        } else if (c == '<') {
            out += "&lt;";
        } else if (c == '>') {
            out += "&gt;";
        } else {
            out += c;
        }
    }
    return out;
}

// Cairo counts its surfaces for as long as the process lives; here they count from one.
void renumber(std::string& svg) {
    constexpr std::string_view name = "surface";
    std::vector<std::string> seen;
    for (std::size_t at = svg.find(name); at != std::string::npos; at = svg.find(name, at)) {
        const bool is_name = at > 0 && (svg[at - 1] == '"' || svg[at - 1] == '#');
        at += name.size();
        const std::size_t end = std::min(svg.find_first_not_of("0123456789", at), svg.size());
        if (!is_name || end == at) {
            continue;
        }
        const std::string number = svg.substr(at, end - at);
        auto found = std::find(seen.begin(), seen.end(), number);
        if (found == seen.end()) {
            found = seen.insert(seen.end(), number);
        }
        svg.replace(at, end - at, std::to_string(found - seen.begin() + 1));
    }
}

void describe(std::string& svg, const std::vector<Sheet>& sheets, const std::string& title) {
    const std::size_t root = svg.find("<svg");
    const std::size_t end = root == std::string::npos ? root : svg.find('>', root);
    if (end == std::string::npos) {
        return;
    }
    std::string words = "\n<title>" + escaped(title) + "</title>\n<desc>";
    for (const Sheet& sheet : sheets) {
        words += escaped(text_page(sheet, described_columns, Weight::plain));
    }
    svg.insert(end + 1, words + "</desc>");
    svg.insert(root + 4, " role=\"img\"");
}

} // namespace

tl::expected<Drawn, Diagnostic> svg_page(const std::vector<Sheet>& sheets,
                                         const PageOptions& options) {
    const TypeSetter setter(options.family);
    const PageLayout layout = lay_out(sheets, options, setter);
    Drawn drawn;
    drawn.messages = remarks_on(layout, options);
    const auto pages = static_cast<double>(layout.pages.size());
    const Surface surface(cairo_svg_surface_create_for_stream(
        collect, &drawn.bytes, layout.width, layout.height * pages));
    cairo_svg_surface_set_document_unit(surface.get(), CAIRO_SVG_UNIT_PT);
    {
        const Context context(cairo_create(surface.get()));
        // Without a ground a dark reader would show black on black.
        cairo_set_source_rgb(context.get(), 1.0, 1.0, 1.0);
        cairo_paint(context.get());
        for (const LaidPage& page : layout.pages) {
            draw_page(context.get(), page, setter);
            cairo_translate(context.get(), 0.0, layout.height);
        }
    }
    cairo_surface_finish(surface.get());
    if (const cairo_status_t status = cairo_surface_status(surface.get());
        status != CAIRO_STATUS_SUCCESS) {
        return tl::make_unexpected(could_not_draw("SVG", status));
    }
    renumber(drawn.bytes);
    describe(drawn.bytes, sheets, layout.title);
    return drawn;
}

} // namespace loafwright::output

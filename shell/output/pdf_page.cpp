// SPDX-License-Identifier: Apache-2.0
//
// PDF by Cairo: fonts embedded, the structure tagged, bookmarks to every stage. The date in the
// file is told, never the clock's, so that the same page is the same file.
#include "shell/output/drawn.hpp"
#include "shell/output/page_drawing.hpp"
#include "shell/output/type_setting.hpp"

#include <cairo-pdf.h>
#include <fmt/format.h>

namespace loafwright::output {

namespace {

// Bookmarks: the title of a bread, and its stages under it.
void add_bookmarks(cairo_surface_t* surface, const PageLayout& layout) {
    int bread = CAIRO_PDF_OUTLINE_ROOT;
    for (std::size_t i = 0; i < layout.pages.size(); ++i) {
        for (const Part& part : layout.pages[i].parts) {
            if (part.bookmark.empty()) {
                continue;
            }
            const auto* words = std::get_if<Words>(&part.marks.front());
            const double y = words != nullptr ? words->y : 0.0;
            const bool is_title = part.kind == PartKind::title;
            const int added = cairo_pdf_surface_add_outline(
                surface,
                is_title ? CAIRO_PDF_OUTLINE_ROOT : bread,
                with_plain_blanks(part.bookmark).c_str(),
                fmt::format("page={} pos=[0 {:.1f}]", i + 1, y).c_str(),
                is_title ? CAIRO_PDF_OUTLINE_FLAG_OPEN : static_cast<cairo_pdf_outline_flags_t>(0));
            bread = is_title ? added : bread;
        }
    }
}

} // namespace

tl::expected<Drawn, Diagnostic> pdf_page(const std::vector<Sheet>& sheets,
                                         const PageOptions& options) {
    const TypeSetter setter(options.family);
    const PageLayout layout = lay_out(sheets, options, setter);
    Drawn drawn;
    drawn.messages = remarks_on(layout, options);
    const Surface surface(
        cairo_pdf_surface_create_for_stream(collect, &drawn.bytes, layout.width, layout.height));
    cairo_pdf_surface_restrict_to_version(surface.get(), CAIRO_PDF_VERSION_1_5);
    cairo_pdf_surface_set_metadata(surface.get(), CAIRO_PDF_METADATA_TITLE, layout.title.c_str());
    cairo_pdf_surface_set_metadata(surface.get(), CAIRO_PDF_METADATA_CREATOR, "Loafwright");
    cairo_pdf_surface_set_metadata(
        surface.get(), CAIRO_PDF_METADATA_CREATE_DATE, rfc3339(Zone{}, options.dated).c_str());
    {
        const Context context(cairo_create(surface.get()));
        cairo_tag_begin(context.get(), "Document", nullptr);
        for (const LaidPage& page : layout.pages) {
            draw_page(context.get(), page, setter);
            cairo_show_page(context.get());
        }
        cairo_tag_end(context.get(), "Document");
        add_bookmarks(surface.get(), layout);
    }
    cairo_surface_finish(surface.get());
    if (const cairo_status_t status = cairo_surface_status(surface.get());
        status != CAIRO_STATUS_SUCCESS) {
        return tl::make_unexpected(could_not_draw("PDF", status));
    }
    return drawn;
}

} // namespace loafwright::output

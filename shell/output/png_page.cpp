// SPDX-License-Identifier: Apache-2.0
//
// PNG by Cairo. The page is drawn in full colour, since pictures among the letters may have some,
// and kept in grey: a quarter of the bytes, and a proof that nothing hangs on colour.
#include "shell/output/drawn.hpp"
#include "shell/output/page_drawing.hpp"
#include "shell/output/type_setting.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <cstring>

namespace loafwright::output {

namespace {

// Relative luminance of ITU-R BT.709, in 1/1024.
constexpr std::uint32_t red_share = 218;
constexpr std::uint32_t green_share = 732;
constexpr std::uint32_t blue_share = 74;

// Cairo writes a surface of alpha alone as a PNG in grey.
Surface in_grey(cairo_surface_t* colours) {
    const int width = cairo_image_surface_get_width(colours);
    const int height = cairo_image_surface_get_height(colours);
    Surface grey(cairo_image_surface_create(CAIRO_FORMAT_A8, width, height));
    if (cairo_surface_status(grey.get()) != CAIRO_STATUS_SUCCESS) {
        return grey;
    }
    cairo_surface_flush(colours);
    cairo_surface_flush(grey.get());
    const unsigned char* from = cairo_image_surface_get_data(colours);
    unsigned char* to = cairo_image_surface_get_data(grey.get());
    for (int row = 0; row < height; ++row) {
        for (int column = 0; column < width; ++column) {
            std::uint32_t pixel = 0;
            std::memcpy(&pixel, from + std::ptrdiff_t{column} * 4, sizeof pixel);
            to[column] = static_cast<unsigned char>((((pixel >> 16U) & 0xFFU) * red_share +
                                                     ((pixel >> 8U) & 0xFFU) * green_share +
                                                     (pixel & 0xFFU) * blue_share) >>
                                                    10U);
        }
        from += cairo_image_surface_get_stride(colours);
        to += cairo_image_surface_get_stride(grey.get());
    }
    cairo_surface_mark_dirty(grey.get());
    return grey;
}

} // namespace

tl::expected<Drawn, Diagnostic> png_page(const std::vector<Sheet>& sheets,
                                         const PageOptions& options) {
    const TypeSetter setter(options.family);
    const PageLayout layout = lay_out(sheets, options, setter);
    Drawn drawn;
    drawn.messages = remarks_on(layout, options);
    const double scale = std::clamp(options.dots_per_inch, 20.0, 600.0) / 72.0;
    const auto dots = [scale](double points) {
        return static_cast<int>(std::lround(points * scale));
    };
    const auto pages = static_cast<double>(layout.pages.size());
    const Surface surface(cairo_image_surface_create(
        CAIRO_FORMAT_RGB24, dots(layout.width), dots(layout.height * pages)));
    const Context context(cairo_create(surface.get()));
    cairo_set_source_rgb(context.get(), 1.0, 1.0, 1.0);
    cairo_paint(context.get());
    cairo_scale(context.get(), scale, scale);
    for (const LaidPage& page : layout.pages) {
        draw_page(context.get(), page, setter);
        cairo_translate(context.get(), 0.0, layout.height);
    }
    cairo_status_t status = cairo_status(context.get());
    if (status == CAIRO_STATUS_SUCCESS) {
        const Surface grey = in_grey(surface.get());
        status = cairo_surface_write_to_png_stream(grey.get(), collect, &drawn.bytes);
    }
    if (status != CAIRO_STATUS_SUCCESS) {
        return tl::make_unexpected(could_not_draw("PNG", status));
    }
    return drawn;
}

} // namespace loafwright::output

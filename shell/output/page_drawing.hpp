// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/diagnostic/diagnostic.hpp"
#include "shell/output/page_layout.hpp"
#include "shell/output/type_setting.hpp"

#include <cairo.h>

#include <memory>
#include <string>
#include <string_view>

namespace loafwright::output {

struct DestroySurface {
    void operator()(cairo_surface_t* surface) const { cairo_surface_destroy(surface); }
};
struct DestroyContext {
    void operator()(cairo_t* context) const { cairo_destroy(context); }
};
using Surface = std::unique_ptr<cairo_surface_t, DestroySurface>;
using Context = std::unique_ptr<cairo_t, DestroyContext>;

/// Draws one page of a layout, in black, with one unit of `onto` a point. Structure and links are
/// told in the tags of Cairo, which only a PDF keeps.
void draw_page(cairo_t* onto, const LaidPage& page, const TypeSetter& setter);

/// Gathers what Cairo writes: give `collect` and the string's address to a stream function.
cairo_status_t collect(void* bytes, const unsigned char* data, unsigned int length);

/// Our fault, in Cairo's words.
Diagnostic could_not_draw(std::string_view what, cairo_status_t status);

} // namespace loafwright::output

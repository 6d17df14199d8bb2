// SPDX-License-Identifier: Apache-2.0
//
// Marks on a Cairo context. Everything is black: a grey photocopy loses nothing.
#include "shell/output/page_drawing.hpp"

#include <cmath>
#include <string>

namespace loafwright::output {

namespace {

constexpr double hatch_step = 3.2;

class Pen {
public:
    Pen(cairo_t* onto, const TypeSetter& setter) : onto_(onto), setter_(setter) {}

    void operator()(const Words& words) const {
        cairo_move_to(onto_, words.x, words.y);
        // The blank parts it from what follows for those who have it read out.
        setter_.draw(onto_, words.text + " ", words.face, words.width, words.most_lines);
    }

    void operator()(const Stroke& stroke) const {
        cairo_set_line_width(onto_, stroke.points);
        cairo_move_to(onto_, stroke.x, stroke.y);
        cairo_line_to(onto_, stroke.to_x, stroke.to_y);
        cairo_stroke(onto_);
    }

    void operator()(const Square& square) const {
        cairo_set_line_width(onto_, line_);
        cairo_rectangle(onto_,
                        square.x + 0.5 * line_,
                        square.y + 0.5 * line_,
                        square.side - line_,
                        square.side - line_);
        cairo_stroke(onto_);
    }

    void operator()(const Bar& bar) const {
        cairo_set_line_width(onto_, 0.8);
        cairo_rectangle(onto_, bar.x, bar.y, bar.width, bar.height);
        if (bar.fill == Fill::solid) {
            cairo_fill(onto_);
            return;
        }
        if (bar.fill == Fill::hatched) {
            hatch(bar);
            cairo_rectangle(onto_, bar.x, bar.y, bar.width, bar.height);
        }
        cairo_stroke(onto_);
    }

    void operator()(const CodeMark& mark) const {
        // One path, so that no hairline of white shows between modules.
        for (std::size_t row = 0; row < mark.code.side; ++row) {
            for (std::size_t column = 0; column < mark.code.side; ++column) {
                if (mark.code.is_dark(row, column)) {
                    cairo_rectangle(onto_,
                                    mark.x + static_cast<double>(column) * mark.module_points,
                                    mark.y + static_cast<double>(row) * mark.module_points,
                                    mark.module_points,
                                    mark.module_points);
                }
            }
        }
        cairo_fill(onto_);
    }

private:
    // Slanting lines, cut off by the bar.
    void hatch(const Bar& bar) const {
        cairo_save(onto_);
        cairo_clip(onto_);
        cairo_set_line_width(onto_, 1.1);
        const auto lines = static_cast<int>(std::ceil((bar.height + bar.width) / hatch_step));
        for (int i = 0; i <= lines; ++i) {
            const double y = bar.y + hatch_step * i;
            cairo_move_to(onto_, bar.x, y);
            cairo_line_to(onto_, bar.x + bar.width, y - bar.width);
        }
        cairo_stroke(onto_);
        cairo_restore(onto_);
    }

    cairo_t* onto_;
    const TypeSetter& setter_;
    double line_ = 1.1;
};

// The structure types of ISO 32000-1, 14.8.4; none for what only shows again what words say.
const char* tag_of(PartKind kind) {
    switch (kind) {
    case PartKind::title:
        return "H1";
    case PartKind::heading:
        return "H2";
    case PartKind::paragraph:
        return "P";
    case PartKind::item:
        return "LI";
    case PartKind::drawing:
        return nullptr;
    }
    return nullptr;
}

// Cairo's attributes are quoted with ' and escape it and \ with \.
std::string quoted(const std::string& text) {
    std::string out = "'";
    for (const char c : text) {
        if (c == '\'' || c == '\\') {
            out += '\\';
        }
        out += c;
    }
    return out + "'";
}

} // namespace

void draw_page(cairo_t* onto, const LaidPage& page, const TypeSetter& setter) {
    cairo_set_source_rgb(onto, 0.0, 0.0, 0.0);
    const Pen pen(onto, setter);
    bool in_list = false;
    for (const Part& part : page.parts) {
        const bool item = part.kind == PartKind::item;
        if (in_list && !item) {
            cairo_tag_end(onto, "L");
        }
        if (!in_list && item) {
            cairo_tag_begin(onto, "L", nullptr);
        }
        in_list = item;
        const char* tag = tag_of(part.kind);
        if (tag != nullptr) {
            cairo_tag_begin(onto, tag, nullptr);
        }
        if (!part.link.empty()) {
            cairo_tag_begin(onto, CAIRO_TAG_LINK, ("uri=" + quoted(part.link)).c_str());
        }
        for (const Mark& mark : part.marks) {
            std::visit(pen, mark);
        }
        if (!part.link.empty()) {
            cairo_tag_end(onto, CAIRO_TAG_LINK);
        }
        if (tag != nullptr) {
            cairo_tag_end(onto, tag);
        }
    }
    if (in_list) {
        cairo_tag_end(onto, "L");
    }
}

cairo_status_t collect(void* bytes, const unsigned char* data, unsigned int length) {
    static_cast<std::string*>(bytes)->append(data, data + length);
    return CAIRO_STATUS_SUCCESS;
}

Diagnostic could_not_draw(std::string_view what, cairo_status_t status) {
    return {"internal",
            Severity::error,
            std::string("the ") + std::string(what) +
                " could not be drawn: " + cairo_status_to_string(status),
            "",
            "Write another kind of file, and tell us."};
}

} // namespace loafwright::output

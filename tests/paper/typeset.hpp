// SPDX-License-Identifier: Apache-2.0
//
// A small printer's shop: a recipe in Markdown becomes pages of a book, with Pango and Cairo.
#pragma once

#include <string>
#include <vector>

namespace loafwright::press {

struct Style {
    std::string family = "Lato";
    double points = 11.0;
    int columns = 1;
    bool broken_words = true; // hyphens at the ends of lines
    double dots_per_inch = 300.0;
};

/// Eight bits of grey, row by row.
struct Grey {
    int width = 0;
    int height = 0;
    std::vector<unsigned char> pixels;
};

/// The words of a Markdown recipe as they are printed: no front matter, comments or pictures, no
/// marks of bold type; headings, list items and paragraphs on a line each.
std::string printed_words(const std::string& markdown);

std::vector<Grey> printed_pages(const std::string& markdown, const Style& style);
std::string printed_pdf(const std::string& markdown, const Style& style);

/// A page of loops and waves in lines, as a hurried pen leaves them; no letter among them.
Grey scrawled_page(unsigned seed);

/// Is the typeface on this machine?
bool has_family(const std::string& family);

} // namespace loafwright::press

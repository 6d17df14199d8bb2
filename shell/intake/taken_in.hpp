// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/diagnostic/diagnostic.hpp"
#include "engine/recipe/recipe.hpp"
#include "shell/intake/kind.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace loafwright::intake {

/// A file as it came. The name is for messages only.
struct NamedBytes {
    std::string name;
    std::string bytes;
};

/// A place on a page, in pixels of that page's own straightened picture.
struct Clipping {
    std::size_t page = 0; // from 0
    int x = 0;
    int y = 0;
    int width = 0;
    int height = 0;
};

/// A word that may have been read wrongly.
struct UnsureWord {
    Span span;                        // in TakenIn::text
    double confidence = 0.0;          // 0 to 1
    std::optional<Clipping> clipping; // where it came from a picture
    std::vector<std::string> maybe;   // other readings, the likeliest first; may be empty
};

/// The page as the words were read from it: upright, flat, grey.
struct PagePicture {
    int width = 0;
    int height = 0;
    std::string png;
};

struct TakenIn {
    Kind kind = Kind::text;
    std::string text;               // UTF-8 unless kind is text, which passes as it came
    std::vector<UnsureWord> unsure; // by span, none overlapping
    bool handwriting = false;       // then the text is empty and `remarks` says what to do
    std::vector<PagePicture> pages; // only when asked for
    Diagnostics remarks;            // notes and warnings
};

} // namespace loafwright::intake

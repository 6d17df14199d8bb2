// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cairo.h>

#include <cstddef>
#include <memory>
#include <string>

namespace loafwright::output {

/// A size and a weight of the page's one family.
struct Face {
    double points = 10.0;
    int weight = 400;     // as in OpenType's usWeightClass
    double leading = 1.0; // of the usual height of a line; less takes it from above the letters

    friend bool operator==(const Face& a, const Face& b) {
        return a.points == b.points && a.weight == b.weight && a.leading == b.leading;
    }
};

/// How much room a text takes, in points.
struct Extent {
    double width = 0.0; // of its widest line
    double height = 0.0;
    double baseline = 0.0; // of its first line, from the top
    std::size_t unknown_letters = 0;
    bool is_cut = false; // ends in "…"
};

/// Sets text in one family, with figures of one width, unhinted: what is measured holds at every
/// resolution.
///
/// Needs:    UTF-8; other bytes are shown as U+FFFD. Used by one thread.
/// Promises: lines end at blanks, or inside a word that is longer than a line; U+00A0 never ends
///           one. A script the family lacks is set in another one.
class TypeSetter {
public:
    explicit TypeSetter(const std::string& family);
    ~TypeSetter();
    TypeSetter(const TypeSetter&) = delete;
    TypeSetter& operator=(const TypeSetter&) = delete;

    /// A width below zero means one line, as long as it takes; more lines than `most_lines` end in
    /// "…".
    [[nodiscard]] Extent
    extent(const std::string& text, Face face, double width, std::size_t most_lines) const;
    /// With its top left corner at the current point.
    void draw(cairo_t* onto,
              const std::string& text,
              Face face,
              double width,
              std::size_t most_lines) const;

private:
    struct Inside;
    std::unique_ptr<Inside> inside_;
};

/// True when the system has the family, and not only something like it.
bool family_is_there(const std::string& family);

/// U+00A0 as a blank: the text as it is searched and read out.
std::string with_plain_blanks(const std::string& text);

/// The text as it stands on paper: no control characters, single blanks, and U+00A0 where a line
/// may not end ("220 °C", "1 h 35", "gas 8", "Sun 07:30").
std::string for_paper(const std::string& text);

} // namespace loafwright::output

// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>

namespace loafwright::web_page {

/// What is done with an element, by its name.
enum class TagUse : std::uint8_t {
    inside,   // part of a line of text: a span when an attribute of it matters, else nothing
    link,     // a span that is known as a link
    block,    // kept as it is
    once,     // html, head, body: kept where it comes first
    lone,     // br, hr, meta: has no end
    nothing,  // without an end and without words: img, input
    with_all, // goes with all that stands in it: style, svg, select
    raw,      // as with_all, and nothing but its own end tag ends it
    script,   // raw; JSON-LD is kept aside
    title     // raw text with entities
};

struct KnownTag {
    std::string_view name; // lives as long as the program; empty for names not known
    TagUse use = TagUse::inside;
};

/// The element of this name; names that HTML does not have are `inside`.
///
/// Needs: small letters.
KnownTag known_tag(std::string_view name);

/// A piece of `html` that begins with "<" and a letter, or "</" and a letter, cut into its parts.
struct Tag {
    std::string_view name;       // as written
    std::string_view attributes; // all between the name and ">"
    std::size_t end = 0;         // behind ">", or the end of the page
    bool is_closed = false;      // false when the page ends first
};

/// Needs: `at` is the place of the first letter of the name.
Tag tag_at(std::string_view html, std::size_t at);

/// One attribute after the other.
///
/// Promises: `next` is false when there is none left; values are without quotation marks, entities
///           as written.
class Attributes {
public:
    explicit Attributes(std::string_view text) : text_(text) {}

    bool next();
    [[nodiscard]] std::string_view name() const { return name_; }
    [[nodiscard]] std::string_view value() const { return value_; }

private:
    std::string_view text_;
    std::string_view name_;
    std::string_view value_;
    std::size_t at_ = 0;
};

bool is_html_space(char c);
bool is_ascii_letter(char c);
/// The text with A to Z made small.
std::string small_letters(std::string_view text);
/// True when both are the same but for the size of the letters A to Z.
///
/// Needs: `small` in small letters.
bool is_same_name(std::string_view text, std::string_view small);

} // namespace loafwright::web_page

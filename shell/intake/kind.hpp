// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <optional>
#include <string_view>

namespace loafwright::intake {

/// The kinds of files that words are taken from. A picture is JPEG, PNG, TIFF or WebP.
enum class Kind { text, html, pdf, image };

/// How many bytes of a file tell its kind.
inline constexpr std::size_t telling_bytes = 65536;

/// What kind of file these bytes begin, by what stands in them and never by a name.
///
/// Promises: looks at the first `telling_bytes` only; what is no other known kind is text, and
///           check_text says where it is not. Empty: a kind that nothing is taken from.
std::optional<Kind> kind_of(std::string_view bytes);

/// "text", "web page", "PDF" or "picture".
std::string_view name_of(Kind kind);

/// What a file is that nothing is taken from, and what to do with it; no name: none of those.
struct Foreign {
    std::string_view name;    // "a Word document"
    std::string_view do_this; // "Save it as PDF."
};
Foreign foreign_kind(std::string_view bytes);

} // namespace loafwright::intake

// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace loafwright::web_page {

/// The deepest nesting that a lean page keeps. Pages of words have 20 to 40.
inline constexpr std::size_t deepest_tags = 200;

/// A page without what never becomes words: scripts, styles, comments, pictures, controls, and
/// attributes that say nothing about the words.
struct LeanPage {
    /// HTML with few kinds of tags, each closed in its turn, none deeper than `deepest_tags`. A
    /// link is a span with the attribute href, which is empty.
    std::string html;
    /// What stands in scripts of JSON-LD, in page order.
    std::vector<std::string> data;
};

/// Makes a page lean, so that the parser behind it meets nothing that could cost it more than time
/// in proportion to the page: no deep nesting, no elements that come back by themselves, no long
/// lists of attributes.
///
/// Needs:    valid UTF-8.
/// Promises: loses no words; takes time in proportion to the page.
///
/// Source: WHATWG HTML, section 13.2.5 (tokenization), as far as it decides where a tag ends.
LeanPage lean_page(std::string_view html);

} // namespace loafwright::web_page

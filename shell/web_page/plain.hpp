// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <string_view>

namespace loafwright::web_page {

/// Words as somebody types them: every run of white space is one blank (no-break and thin spaces
/// too), none at the ends; soft hyphens, zero-width characters, marks of direction and control
/// characters are gone; the bar of a fraction is a slash.
///
/// Needs:    valid UTF-8.
/// Promises: valid UTF-8; the same again when it is done again.
std::string plain_words(std::string_view text);

/// True when something in the text reads as a tag or an entity of HTML.
bool has_markup(std::string_view text);

/// The text without what still reads as a tag or an entity, after all that could be read as such
/// was.
///
/// Promises: has_markup is false.
std::string without_markup(std::string_view text);

} // namespace loafwright::web_page

// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace loafwright::web_page {

/// The bytes of a page as UTF-8.
///
/// Promises: valid UTF-8; no control characters but the tab and the line feed. A byte order mark
///           decides; then UTF-8 wherever the bytes are UTF-8 or nearly so; else windows-1252,
///           which is also what a page means by latin-1 (WHATWG Encoding, section 4.2).
/// Errors:   nothing when the bytes are no text (NUL bytes).
std::optional<std::string> utf8_of(std::string_view bytes);

/// The character that byte 0x80 to 0x9F of windows-1252 means (WHATWG Encoding,
/// index-windows-1252); U+FFFD for the five it leaves open.
///
/// Needs: 0x80 <= byte <= 0x9F.
char32_t windows_1252(std::uint8_t byte);

/// Puts the character behind the text, as UTF-8; U+FFFD where it is no character.
void append_character(std::string& text, char32_t character);

} // namespace loafwright::web_page

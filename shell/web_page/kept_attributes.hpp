// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

namespace loafwright::web_page {

/// What class, id and role say matters on blocks only.
enum class On : std::uint8_t { block, inside };

/// The attributes of a tag that say something about its words, each once, as they are written
/// behind its name; what hides the element, by a style too, as the attribute hidden.
///
/// Needs: `attributes` as in Tag.
std::string kept_attributes(std::string_view attributes, On element);

} // namespace loafwright::web_page

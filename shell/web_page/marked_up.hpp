// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "shell/web_page/tree.hpp"

#include <nlohmann/json_fwd.hpp>

#include <cstdint>
#include <vector>

namespace loafwright::web_page {

/// The two ways of saying in the tags of a page what its words are. They differ in the names of
/// their attributes.
enum class Vocabulary : std::uint8_t { microdata, rdfa };

/// The recipes (and things that tell how to make something) that the tags of a page describe, each
/// as an object in the manner of JSON-LD.
///
/// Promises: no deeper than the data that is read from scripts; takes time in proportion to the
///           page, also where elements refer to one another in a ring.
///
/// Source: WHATWG HTML, section 5.2; W3C RDFa Lite 1.1.
std::vector<nlohmann::json> marked_up(const Tree& tree, Vocabulary vocabulary);

} // namespace loafwright::web_page

// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "shell/web_page/tree.hpp"

#include <string_view>
#include <vector>

namespace loafwright::web_page {

/// Which nodes of a page stand around its main text by what they are (nav, footer), what they are
/// called (class, id, role) or what their data says (a review). One entry for each node; what
/// stands inside such a node is not marked itself.
///
/// Promises: never marks a node with more than a third of the words of the page, for then the name
///           means something else.
std::vector<bool> surroundings(const Tree& tree);

/// True for a heading under which pages put what is no longer their text: "Related recipes",
/// "12 comments".
bool heads_an_appendix(std::string_view heading);

} // namespace loafwright::web_page

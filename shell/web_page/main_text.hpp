// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "shell/web_page/lines.hpp"
#include "shell/web_page/tree.hpp"

#include <string>
#include <vector>

namespace loafwright::web_page {

/// What a page without data is about.
struct MainText {
    std::string title;       // empty when the page has none
    std::vector<Line> lines; // without the title
};

/// The part of a page where most of its words stand, without what stands around them: menus,
/// adverts, readers' comments, links to other pages.
///
/// Promises: lines are told apart by their elements, their names and by how much of them is links;
///           a page of prose and nothing else comes out whole.
MainText main_text(const Tree& tree);

} // namespace loafwright::web_page

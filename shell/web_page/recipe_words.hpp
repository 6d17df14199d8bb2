// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "shell/web_page/main_text.hpp"
#include "shell/web_page/recipe_data.hpp"

#include <string>

namespace loafwright::web_page {

/// What the data says, as a person would type it. Empty when it has neither ingredients nor method.
std::string typed(const RecipeData& data);

/// The main text of a page, as a person would type it. Empty when there is none.
std::string typed(const MainText& main);

/// Title, yield and ingredients of the data and the main text of the page as the method.
std::string typed(const RecipeData& data, const MainText& main);

/// True when the data has no method of its own, or hardly more than a word of where it is.
bool needs_prose(const RecipeData& data, const MainText& main);

/// Puts the ingredients of the data under the names under which the page lists them. Does nothing
/// when the data has such names, or when the page does not list the same lines.
void name_parts(RecipeData& data, const MainText& main);

} // namespace loafwright::web_page

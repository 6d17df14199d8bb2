// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace loafwright::web_page {

/// A line of a method, or the heading over the next ones.
struct TypedLine {
    std::string words;
    bool is_heading = false;
};

/// A typed recipe, cut into what a page says of it.
struct TypedRecipe {
    std::string title;
    std::vector<std::string> intro;
    std::vector<std::string> ingredients;
    std::vector<TypedLine> method;
};

/// Cuts a text in simple Markdown: what stands in a list under a heading of ingredients, what
/// stands under other headings or under none.
TypedRecipe cut(std::string_view text);

/// The recipe as a page whose data says it all (JSON-LD, HowToSection and HowToStep).
std::string as_data_page(const TypedRecipe& recipe);

/// The recipe as an article with menus, adverts and comments around it and no data.
std::string as_article_page(const TypedRecipe& recipe);

/// The text with what HTML has a use for written as entities.
std::string escaped(std::string_view text);

} // namespace loafwright::web_page

// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "shell/web_page/linked_data.hpp"
#include "shell/web_page/web_page.hpp"

#include <nlohmann/json_fwd.hpp>

#include <cstddef>
#include <string>
#include <vector>

namespace loafwright::web_page {

/// Lines under one name of the page ("For the sponge"), or under none.
struct NamedLines {
    std::string name;
    std::vector<std::string> lines;
};

/// What the data of a page says of one recipe. All of it plain words.
struct RecipeData {
    std::string title;
    std::string makes; // "2 loaves", "Serves 4"
    std::vector<NamedLines> ingredients;
    std::vector<NamedLines> method;
    StatedTimes times;

    /// Bytes of the method; of both.
    [[nodiscard]] std::size_t method_bytes() const;
    [[nodiscard]] std::size_t bytes() const;
};

/// Reads a thing of type Recipe or HowTo.
///
/// Promises: never goes deeper than `deepest_data`, also where things refer to one another in a
///           ring.
///
/// Source: schema.org Recipe, HowTo, HowToSection, HowToStep, HowToDirection, HowToTip,
/// HowToSupply, ItemList, ListItem, QuantitativeValue, PropertyValue.
RecipeData recipe_data(const nlohmann::json& thing, const LinkedData& all);

} // namespace loafwright::web_page

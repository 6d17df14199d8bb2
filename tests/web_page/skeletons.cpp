// SPDX-License-Identifier: Apache-2.0
#include "tests/web_page/skeletons.hpp"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <utility>

namespace loafwright::web_page {
namespace {

using nlohmann::json;

std::vector<std::string> lines(std::string_view text) {
    std::vector<std::string> all;
    std::string line;
    for (const char c : text) {
        if (c == '\n') {
            all.push_back(std::move(line));
            line.clear();
        } else {
            line += c;
        }
    }
    all.push_back(std::move(line));
    return all;
}

bool begins(const std::string& line, const char* with) {
    return line.rfind(with, 0) == 0;
}

std::size_t number_length(const std::string& line) {
    std::size_t i = 0;
    while (i < line.size() && line[i] >= '0' && line[i] <= '9') {
        ++i;
    }
    return i > 0 && i + 1 < line.size() && line[i] == '.' && line[i + 1] == ' ' ? i + 2 : 0;
}

} // namespace

TypedRecipe cut(std::string_view text) {
    TypedRecipe recipe;
    bool in_front_matter = false;
    bool in_ingredients = false;
    bool goes_on = false; // the line before is part of the same paragraph
    for (const std::string& line : lines(text)) {
        if (line == "---") {
            in_front_matter = !in_front_matter;
        } else if (in_front_matter) {
            if (begins(line, "title: ")) {
                recipe.title = line.substr(8, line.size() - 9);
            }
        } else if (line.empty() || begins(line, "<!--") || begins(line, "![")) {
            goes_on = false;
        } else if (line[0] == '#') {
            const std::string words = line.substr(line.find_first_not_of("# "));
            if (recipe.title.empty()) {
                recipe.title = words;
            } else {
                in_ingredients = words.find("ngredient") != std::string::npos;
                if (!in_ingredients) {
                    recipe.method.push_back({words, true});
                }
            }
            goes_on = false;
        } else if (in_ingredients && (begins(line, "- ") || begins(line, "* "))) {
            recipe.ingredients.push_back(line.substr(2));
        } else if (recipe.title.empty()) {
            recipe.title = line;
        } else if (begins(line, "- ") || number_length(line) > 0) {
            recipe.method.push_back({line.substr(line[0] == '-' ? 2 : number_length(line)), false});
            goes_on = true;
        } else if (goes_on) {
            recipe.method.back().words += " " + line;
        } else {
            recipe.method.push_back({line, false});
            goes_on = true;
        }
    }
    // What stands in front of the first heading of a text with headings leads up to it.
    const auto heading = std::find_if(recipe.method.begin(),
                                      recipe.method.end(),
                                      [](const TypedLine& line) { return line.is_heading; });
    if (!recipe.ingredients.empty() && heading != recipe.method.end()) {
        for (auto line = recipe.method.begin(); line != heading; ++line) {
            recipe.intro.push_back(line->words);
        }
        recipe.method.erase(recipe.method.begin(), heading);
    }
    return recipe;
}

std::string escaped(std::string_view text) {
    std::string made;
    for (const char c : text) {
        if (c == '<') {
            made += "&lt;";
        } else if (c == '>') {
            made += "&gt;";
        } else if (c == '&') {
            made += "&amp;";
        } else {
            made += c;
        }
    }
    return made;
}

std::string as_data_page(const TypedRecipe& recipe) {
    json method = json::array();
    for (const TypedLine& line : recipe.method) {
        if (line.is_heading) {
            method.push_back({{"@type", "HowToSection"},
                              {"name", line.words},
                              {"itemListElement", json::array()}});
            continue;
        }
        json step = {{"@type", "HowToStep"}, {"text", escaped(line.words)}};
        if (!method.empty() && method.back()["@type"] == "HowToSection") {
            method.back()["itemListElement"].push_back(std::move(step));
        } else {
            method.push_back(std::move(step));
        }
    }
    std::string intro;
    for (const std::string& each : recipe.intro) {
        intro += escaped(each) + " ";
    }
    json ingredients = json::array();
    for (const std::string& each : recipe.ingredients) {
        ingredients.push_back(escaped(each));
    }
    const json data = {{"@context", "https://schema.org"},
                       {"@graph",
                        {{{"@type", "WebPage"}, {"name", "A page"}},
                         {{"@type", "Recipe"},
                          {"name", escaped(recipe.title)},
                          {"description", intro},
                          {"recipeIngredient", ingredients},
                          {"recipeInstructions", method}}}}};
    return "<!DOCTYPE html><html><head><title>A page</title><script type=\"application/ld+json\">" +
           data.dump() + "</script></head><body><h1>" + escaped(recipe.title) +
           "</h1><p>Scroll down for more.</p></body></html>";
}

std::string as_article_page(const TypedRecipe& recipe) {
    std::string page = "<!DOCTYPE html><html><head><title>A page</title></head><body>"
                       "<nav><ul><li><a href='/'>Home</a></li><li><a href='/l'>Loaves</a></li>"
                       "</ul></nav><article><h1>" +
                       escaped(recipe.title) + "</h1>";
    for (const std::string& each : recipe.intro) {
        page += "<p>" + escaped(each) + "</p>";
    }
    if (!recipe.ingredients.empty()) {
        page += "<h2>Ingredients</h2><ul>";
        for (const std::string& each : recipe.ingredients) {
            page += "<li>" + escaped(each) + "</li>";
        }
        page += "</ul><h2>Method</h2>";
    }
    for (const TypedLine& line : recipe.method) {
        page += line.is_heading ? "<h2>" + escaped(line.words) + "</h2>"
                                : "<p>" + escaped(line.words) + "</p>";
    }
    return page + "</article><div class='advert'><p>The best flour that money buys, to your door"
                  "!</p></div><div id='comments'><p>We let it rise for 9 hours, lovely!</p></div>"
                  "<footer>All words are ours</footer></body></html>";
}

} // namespace loafwright::web_page

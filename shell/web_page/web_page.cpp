// SPDX-License-Identifier: Apache-2.0
#include "shell/web_page/web_page.hpp"

#include "shell/web_page/charset.hpp"
#include "shell/web_page/json_ld.hpp"
#include "shell/web_page/lean_page.hpp"
#include "shell/web_page/linked_data.hpp"
#include "shell/web_page/main_text.hpp"
#include "shell/web_page/marked_up.hpp"
#include "shell/web_page/recipe_data.hpp"
#include "shell/web_page/recipe_words.hpp"
#include "shell/web_page/tree.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <utility>

namespace loafwright::web_page {
namespace {

using nlohmann::json;

// Several in one page are a collection; more than this is a list of another kind.
constexpr std::size_t most_recipes = 50;

tl::unexpected<Diagnostics>
refused(std::string_view code, std::string what, std::string_view do_this) {
    return tl::unexpected(Diagnostics{
        Diagnostic{std::string(code), Severity::error, std::move(what), "", std::string(do_this)}});
}

// Of two with one name the fuller one stands, in the place of the first.
void add(std::vector<RecipeData>& recipes, RecipeData data) {
    const auto same = std::find_if(recipes.begin(), recipes.end(), [&](const RecipeData& other) {
        return !data.title.empty() && other.title == data.title;
    });
    if (same == recipes.end()) {
        recipes.push_back(std::move(data));
    } else if (data.bytes() > same->bytes()) {
        *same = std::move(data);
    }
}

std::vector<RecipeData> recipes_in(const std::vector<json>& documents) {
    const LinkedData all(documents);
    std::vector<RecipeData> recipes;
    for (const json* thing : all.recipes()) {
        if (recipes.size() == most_recipes) {
            break;
        }
        add(recipes, recipe_data(*thing, all));
    }
    // Names without words only point at other pages, unless there is nothing else.
    const auto is_bare = [](const RecipeData& data) { return data.bytes() == 0; };
    if (!std::all_of(recipes.begin(), recipes.end(), is_bare)) {
        recipes.erase(std::remove_if(recipes.begin(), recipes.end(), is_bare), recipes.end());
    }
    return recipes;
}

void fill_in(StatedTimes& times, const StatedTimes& more) {
    times.prep = times.prep ? times.prep : more.prep;
    times.cook = times.cook ? times.cook : more.cook;
    times.total = times.total ? times.total : more.total;
}

// What the first way of saying it leaves open, the next may say.
void fill_in(RecipeData& data, RecipeData more) {
    const auto take = [](auto& own, auto& other) {
        if (own.empty()) {
            own = std::move(other);
        }
    };
    take(data.title, more.title);
    take(data.makes, more.makes);
    take(data.ingredients, more.ingredients);
    take(data.method, more.method);
    fill_in(data.times, more.times);
}

std::vector<RecipeData> recipes_of(const LeanPage& page, const Tree& tree) {
    std::vector<json> documents;
    std::size_t bytes = 0;
    for (const std::string& script : page.data) {
        bytes += script.size();
        if (bytes > 2 * longest_data) {
            break;
        }
        if (auto data = data_of_script(script)) {
            documents.push_back(std::move(*data));
        }
    }
    std::vector<RecipeData> recipes = recipes_in(documents);
    for (const Vocabulary vocabulary : {Vocabulary::microdata, Vocabulary::rdfa}) {
        const bool is_whole = !recipes.empty() && !recipes.front().method.empty() &&
                              !recipes.front().ingredients.empty();
        if (recipes.size() > 1 || is_whole) {
            break;
        }
        std::vector<RecipeData> more = recipes_in(marked_up(tree, vocabulary));
        if (recipes.empty()) {
            recipes = std::move(more);
        } else if (more.size() == 1) {
            fill_in(recipes.front(), std::move(more.front()));
        }
    }
    return recipes;
}

RecipeWords words_of_one(RecipeData data, const MainText& main) {
    RecipeWords words;
    words.times = data.times;
    words.from_markup = data.bytes() > 0;
    if (data.title.empty()) {
        data.title = main.title;
    }
    if (needs_prose(data, main)) {
        words.text =
            data.ingredients.empty() && data.makes.empty() ? typed(main) : typed(data, main);
    } else {
        name_parts(data, main);
        words.text = typed(data);
    }
    return words;
}

} // namespace

tl::expected<std::vector<RecipeWords>, Diagnostics> words_of(std::string_view html) {
    if (html.size() > longest_page_bytes) {
        return refused("page_too_long",
                       fmt::format("the page is longer than {} MiB, the most that is read",
                                   longest_page_bytes >> 20U),
                       "Copy the words of the recipe and give those.");
    }
    const auto text = utf8_of(html);
    if (!text) {
        return refused("page_not_text",
                       "these bytes are no web page, expected words and tags",
                       "Save the page again as a web page, or copy the words of the recipe.");
    }
    const LeanPage page = lean_page(*text);
    const auto tree = Tree::of(page.html);
    if (!tree) {
        return refused("page_too_tangled",
                       "the page has more parts than a page of words has",
                       "Copy the words of the recipe and give those.");
    }
    std::vector<RecipeData> recipes = recipes_of(page, *tree);
    std::vector<RecipeWords> all;
    if (recipes.size() > 1) {
        for (const RecipeData& data : recipes) {
            if (std::string typed_words = typed(data); !typed_words.empty()) {
                all.push_back({std::move(typed_words), data.times, true});
            }
        }
    }
    if (all.empty()) {
        // Several without words are what the page leads to.
        RecipeWords one = words_of_one(
            recipes.size() == 1 ? std::move(recipes.front()) : RecipeData(), main_text(*tree));
        if (!one.text.empty()) {
            all.push_back(std::move(one));
        }
    }
    if (all.empty()) {
        return refused("page_no_words",
                       "there are no words of a recipe on this page",
                       "Open the page, wait until it is whole, and save or copy it again.");
    }
    return all;
}

} // namespace loafwright::web_page

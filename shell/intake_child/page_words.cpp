// SPDX-License-Identifier: Apache-2.0
#include "shell/intake_child/page_words.hpp"

#include "shell/web_page/web_page.hpp"

#include <fmt/format.h>

#include <cmath>
#include <cstdint>
#include <optional>
#include <utility>

namespace loafwright::intake_child {
namespace {

std::string title_of(const web_page::RecipeWords& recipe) {
    return recipe.text.substr(0, recipe.text.find('\n'));
}

std::string line(std::string_view what, const std::optional<Minutes>& time) {
    if (!time || !(time->count() >= 1.0)) {
        return "";
    }
    const auto minutes = static_cast<std::int64_t>(std::llround(time->count()));
    return minutes < 60
               ? fmt::format("{} time: {} minutes\n", what, minutes)
               : fmt::format("{} time: {} hours {} minutes\n", what, minutes / 60, minutes % 60);
}

std::string with_times(const web_page::RecipeWords& recipe) {
    const std::string times = line("Prep", recipe.times.prep) + line("Cook", recipe.times.cook) +
                              line("Total", recipe.times.total);
    if (times.empty()) {
        return recipe.text;
    }
    const std::size_t head = recipe.text.find('\n');
    return head == std::string::npos
               ? recipe.text + "\n\n" + times
               : recipe.text.substr(0, head) + "\n\n" + times + recipe.text.substr(head);
}

} // namespace

tl::expected<intake::TakenIn, Diagnostics> page_words(std::string_view html,
                                                      const std::string& name) {
    auto recipes = web_page::words_of(html);
    if (!recipes) {
        for (Diagnostic& wrong : recipes.error()) {
            wrong.where = name;
        }
        return tl::make_unexpected(std::move(recipes.error()));
    }
    intake::TakenIn taken;
    taken.kind = intake::Kind::html;
    taken.text = with_times(recipes->front());
    if (recipes->size() > 1) {
        std::string others;
        for (std::size_t index = 1; index < recipes->size(); ++index) {
            others += (others.empty() ? "" : ", ") + title_of((*recipes)[index]);
        }
        taken.remarks.push_back(
            {"page_several",
             Severity::note,
             fmt::format("the page has several recipes, and \"{}\" was taken; left out: {}",
                         title_of(recipes->front()),
                         others),
             name,
             "For another one, copy its words and paste them."});
    }
    return taken;
}

} // namespace loafwright::intake_child

// SPDX-License-Identifier: Apache-2.0
//
// What the commands have in common that begin with a recipe: files and answers.
#include "shell/cli/recipe_arguments.hpp"

#include "engine/breads/known_breads.hpp"
#include "shell/settings/settings.hpp"

#include <fmt/format.h>

#include <optional>
#include <utility>

namespace loafwright::cli {

namespace {

std::optional<Answer> answer_from(const std::string& words) {
    const std::size_t equals = words.find('=');
    if (equals == std::string::npos || equals == 0) {
        return std::nullopt;
    }
    return Answer{words.substr(0, equals), words.substr(equals + 1)};
}

// The recipes among the files named.
std::vector<std::string> recipe_files(const std::vector<std::string>& files, Diagnostics& found) {
    std::vector<std::string> breads;
    for (const std::string& file : files) {
        if (settings::looks_like_a_time(file)) {
            found.push_back(quote_it(file));
        } else {
            breads.push_back(file);
        }
    }
    return breads;
}

} // namespace

Diagnostic usage(std::string what, std::string do_this) {
    return {"usage", Severity::error, std::move(what), "", std::move(do_this)};
}

Answers answers_from(const std::vector<std::string>& words, Diagnostics& found) {
    Answers answers;
    for (const std::string& word : words) {
        if (auto answer = answer_from(word)) {
            answers.push_back(std::move(*answer));
        } else {
            found.push_back(
                usage(fmt::format("--answer was given '{}', expected KEY=VALUE", word),
                      "Take the key from the list of questions, as in --answer oven-c=220."));
        }
    }
    return answers;
}

Diagnostic quote_it(const std::string& word) {
    return usage(fmt::format("'{}' looks like a time and stands where a file was expected", word),
                 R"(Quote it together with its day, as in --start "tomorrow 07:30".)");
}

std::string one_file(const std::vector<std::string>& files, Diagnostics& found) {
    const std::vector<std::string> breads = recipe_files(files, found);
    if (breads.size() > 1) {
        found.push_back(
            {"one_bread_at_a_time",
             Severity::error,
             fmt::format("found {} files, expected one recipe", breads.size()),
             "",
             fmt::format("Name one recipe at a time, for example {}.", breads.front())});
    }
    return breads.empty() ? std::string() : breads.front();
}

std::vector<std::string> files_of_a_day(const std::vector<std::string>& files, Diagnostics& found) {
    std::vector<std::string> recipes = recipe_files(files, found);
    if (recipes.size() > breads::most_breads) {
        found.push_back({"too_many_breads",
                         Severity::error,
                         fmt::format("found {} recipes, expected at most {}",
                                     recipes.size(),
                                     breads::most_breads),
                         "",
                         "Plan some of them on another day."});
    }
    return recipes;
}

} // namespace loafwright::cli

// SPDX-License-Identifier: Apache-2.0
#include "shell/cli/answers_file.hpp"

#include "shell/cli/files.hpp"
#include "shell/settings/settings.hpp"

#include <algorithm>
#include <filesystem>
#include <utility>

namespace loafwright::cli {

std::string answers_file_of(const std::string& recipe) {
    if (recipe == "-") {
        return "";
    }
    return std::filesystem::path(recipe).replace_extension(".answers.toml").string();
}

tl::expected<Answers, Diagnostics> all_answers(const std::string& recipe, const Answers& given) {
    const std::string path = answers_file_of(recipe);
    std::error_code unknown;
    if (path.empty() || !std::filesystem::is_regular_file(path, unknown)) {
        return given;
    }
    auto bytes = file_bytes(path);
    if (!bytes) {
        return tl::make_unexpected(std::move(bytes.error()));
    }
    auto kept = settings::answers_from_toml(*bytes, path);
    if (!kept) {
        return tl::make_unexpected(std::move(kept.error()));
    }
    Answers all = given;
    for (Answer& answer : *kept) {
        const bool repeated = std::any_of(given.begin(), given.end(), [&](const Answer& other) {
            return other.key == answer.key;
        });
        if (!repeated) {
            all.push_back(std::move(answer));
        }
    }
    return all;
}

} // namespace loafwright::cli

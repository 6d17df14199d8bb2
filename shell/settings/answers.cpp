// SPDX-License-Identifier: Apache-2.0
//
// Answers that a baker has given once and keeps beside the recipe, so that the text itself stays as
// it is.
#include "shell/settings/fields.hpp"
#include "shell/settings/settings.hpp"
#include "shell/settings/tree.hpp"

#include <fmt/format.h>

namespace loafwright::settings {

tl::expected<Answers, Diagnostics> answers_from_toml(std::string_view text, std::string_view name) {
    auto tree = parse_toml(text, name);
    if (!tree) {
        return tl::make_unexpected(Diagnostics{std::move(tree.error())});
    }
    Answers answers;
    Diagnostics wrong;
    for (const TreeEntry& entry : tree->entries) {
        const bool is_number = entry.value.kind == TreeValue::Kind::whole ||
                               entry.value.kind == TreeValue::Kind::number;
        if (entry.value.kind == TreeValue::Kind::text) {
            answers.push_back({entry.key, entry.value.text});
        } else if (is_number) {
            answers.push_back({entry.key, fmt::format("{}", entry.value.number)});
        } else {
            wrong.push_back({"value_wrong_kind",
                             Severity::error,
                             fmt::format("{} is {}, expected text or a number",
                                         entry.key,
                                         kind_words(entry.value.kind)),
                             fmt::format("{}:{} {}", name, entry.line, entry.key),
                             fmt::format("Write it as in {} = \"220 °C\".", entry.key)});
        }
    }
    if (!wrong.empty()) {
        sort_by_line(wrong, name);
        return tl::make_unexpected(std::move(wrong));
    }
    return answers;
}

} // namespace loafwright::settings

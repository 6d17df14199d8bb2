// SPDX-License-Identifier: Apache-2.0
#include "shell/web_page/json_ld.hpp"

#include "shell/web_page/json_repair.hpp"

#include <nlohmann/json.hpp>

#include <utility>

namespace loafwright::web_page {
namespace {

using nlohmann::json;

std::optional<json> parsed(std::string_view text) {
    if (json_depth(text) > deepest_data) {
        return std::nullopt;
    }
    json data = json::parse(text, nullptr, false);
    if (data.is_discarded() || !data.is_structured()) {
        return std::nullopt;
    }
    return data;
}

void replace_all(std::string& text, std::string_view what, std::string_view with) {
    std::string made;
    made.reserve(text.size());
    std::size_t at = 0;
    for (std::size_t found = text.find(what); found != std::string::npos;
         found = text.find(what, at)) {
        made.append(text, at, found - at);
        made += with;
        at = found + what.size();
    }
    made.append(text, at);
    text = std::move(made);
}

} // namespace

std::optional<json> data_of_script(std::string_view script) {
    if (script.size() > longest_data) {
        return std::nullopt;
    }
    if (auto data = parsed(script)) {
        return data;
    }
    std::string text(script);
    if (text.find('"') == std::string::npos) {
        replace_all(text, "&quot;", "\"");
        replace_all(text, "&#34;", "\"");
    }
    if (auto data = parsed(repaired_json(text, Quotes::as_they_stand))) {
        return data;
    }
    return parsed(repaired_json(text, Quotes::by_what_follows));
}

} // namespace loafwright::web_page

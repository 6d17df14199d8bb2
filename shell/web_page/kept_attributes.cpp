// SPDX-License-Identifier: Apache-2.0
#include "shell/web_page/kept_attributes.hpp"

#include "shell/web_page/tags.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <cstdint>

namespace loafwright::web_page {
namespace {

constexpr std::size_t longest_value = 64U << 10U;

// What microdata and RDFa Lite are made of, what hides an element, and what it is for.
constexpr std::array<std::string_view, 12> names{"itemprop",
                                                 "itemscope",
                                                 "itemtype",
                                                 "itemref",
                                                 "content",
                                                 "datetime",
                                                 "property",
                                                 "typeof",
                                                 "hidden",
                                                 "class",
                                                 "id",
                                                 "role"};
constexpr std::size_t of_any_element = 9; // the others matter on blocks only

// A style that takes an element away, and class names by which pages keep words for the ear only.
bool is_hiding(std::string_view name, std::string_view value) {
    std::string plain = small_letters(value.substr(0, 1024));
    if (name == "class") {
        return plain.find("screen-reader") != std::string::npos ||
               plain.find("sr-only") != std::string::npos ||
               plain.find("visually-hidden") != std::string::npos;
    }
    plain.erase(std::remove_if(plain.begin(), plain.end(), is_html_space), plain.end());
    return plain.find("display:none") != std::string::npos ||
           plain.find("visibility:hidden") != std::string::npos;
}

void keep(std::string& kept, std::uint32_t& had, std::string_view name, std::string_view value) {
    const auto at =
        static_cast<std::size_t>(std::find(names.begin(), names.end(), name) - names.begin());
    const std::uint32_t bit = 1U << at;
    if ((had & bit) != 0) {
        return;
    }
    had |= bit;
    kept += ' ';
    kept += name;
    kept += "=\"";
    for (const char c : value.substr(0, longest_value)) {
        if (c == '"') {
            kept += "&quot;";
        } else {
            kept += c;
        }
    }
    kept += '"';
}

} // namespace

std::string kept_attributes(std::string_view text, On element) {
    std::string kept;
    std::uint32_t had = 0;
    for (Attributes each(text); each.next();) {
        const bool may_hide = is_same_name(each.name(), "style") ||
                              is_same_name(each.name(), "class") ||
                              is_same_name(each.name(), "aria-hidden");
        if (may_hide && (is_same_name(each.name(), "aria-hidden")
                             ? is_same_name(each.value(), "true")
                             : is_hiding(is_same_name(each.name(), "class") ? "class" : "style",
                                         each.value()))) {
            keep(kept, had, "hidden", {});
        }
        const std::size_t last = element == On::block ? names.size() : of_any_element;
        for (std::size_t i = 0; i < last; ++i) {
            if (is_same_name(each.name(), names[i])) {
                keep(kept, had, names[i], each.value());
            }
        }
    }
    return kept;
}

} // namespace loafwright::web_page

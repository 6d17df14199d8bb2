// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "shell/web_page/line_marks.hpp"
#include "shell/web_page/recipe_data.hpp"

#include <algorithm>
#include <cstddef>
#include <string>
#include <utility>
#include <vector>

namespace loafwright::web_page {

// Recipe, section, list, step, direction, with a wrapping around each.
inline constexpr int deepest_list = 12;
// A ring of references repeats itself; no recipe has so many things and lines.
inline constexpr std::size_t most_things = 20000;
inline constexpr std::size_t most_lines = 2000;

/// Lines that gather under the name said last.
class GatheredLines {
public:
    void name(std::string words) {
        words = without_colon(std::move(words));
        if (sections_.empty() || !sections_.back().lines.empty()) {
            sections_.emplace_back();
        }
        sections_.back().name = std::move(words);
    }

    void line(std::string words) {
        if (words.empty() || count_ >= most_lines) {
            return;
        }
        if (sections_.empty()) {
            sections_.emplace_back();
        }
        sections_.back().lines.push_back(std::move(words));
        ++count_;
    }

    [[nodiscard]] bool has_name() const {
        return !sections_.empty() && !sections_.back().name.empty();
    }
    [[nodiscard]] bool is_full() const { return count_ >= most_lines; }

    std::vector<NamedLines> take() {
        sections_.erase(std::remove_if(sections_.begin(),
                                       sections_.end(),
                                       [](const NamedLines& each) { return each.lines.empty(); }),
                        sections_.end());
        return std::move(sections_);
    }

private:
    std::vector<NamedLines> sections_;
    std::size_t count_ = 0;
};

} // namespace loafwright::web_page

// SPDX-License-Identifier: Apache-2.0
#include "tests/output/laid_page.hpp"

#include "tests/output/readers.hpp"
#include "tests/sheet/tin_loaf_plan.hpp"

#include <gtest/gtest.h>

#include <algorithm>

namespace loafwright::output {

namespace {

bool is_time_or_title(Role role) {
    return role == Role::eat_time || role == Role::title || role == Role::lead ||
           role == Role::begin_time || role == Role::stage_time || role == Role::stage_number ||
           role == Role::stage_title || role == Role::act_time;
}

} // namespace

Sheet tin_loaf_sheet() {
    const BakeDay bake = tin_loaf_day();
    return compose(bake.plan, bake.recipe, bake.provisions, bake.day, SheetOptions{});
}

const TypeSetter& lato() {
    static const TypeSetter setter("Lato");
    return setter;
}

PageLayout laid(const Sheet& sheet, const PageOptions& options) {
    return lay_out({sheet}, options, lato());
}

std::vector<Words> words_of(const PageLayout& layout) {
    std::vector<Words> all;
    for (const LaidPage& page : layout.pages) {
        for (const Part& part : page.parts) {
            for (const Mark& mark : part.marks) {
                if (const auto* words = std::get_if<Words>(&mark)) {
                    all.push_back(*words);
                }
            }
        }
    }
    return all;
}

std::string text_of(const PageLayout& layout) {
    std::string text;
    for (const Words& words : words_of(layout)) {
        text += words.text + "\n";
    }
    return as_read(text);
}

std::size_t boxes_in(const PageLayout& layout) {
    std::size_t count = 0;
    for (const LaidPage& page : layout.pages) {
        for (const Part& part : page.parts) {
            count += static_cast<std::size_t>(
                std::count_if(part.marks.begin(), part.marks.end(), [](const Mark& mark) {
                    return std::holds_alternative<Square>(mark);
                }));
        }
    }
    return count;
}

void expect_sizes(const PageLayout& layout, Print print, const std::string& name) {
    for (const Words& words : words_of(layout)) {
        const double least = is_time_or_title(words.role)                         ? 20.0
                             : words.role == Role::cue || words.role == Role::act ? 13.0
                                                                                  : 10.0;
        EXPECT_GE(words.face.points, print == Print::large ? std::max(18.0, least) : least)
            << name << ": " << words.text;
    }
}

bool all_inside(const PageLayout& layout) {
    const auto all = words_of(layout);
    return std::all_of(all.begin(), all.end(), [&layout](const Words& words) {
        // Half a point for letters that lean over their box.
        return words.x >= 0.0 && words.y >= 0.0 &&
               words.x + words.extent.width <= layout.width + 0.5 &&
               words.y + words.extent.height <= layout.height + 0.5;
    });
}

bool none_overlap(const PageLayout& layout) {
    for (const LaidPage& page : layout.pages) {
        PageLayout one;
        one.pages.push_back(page);
        const auto all = words_of(one);
        for (std::size_t i = 0; i < all.size(); ++i) {
            for (std::size_t j = i + 1; j < all.size(); ++j) {
                const Words& a = all[i];
                const Words& b = all[j];
                // Ascenders and descenders of the face reach a quarter into the gap.
                const double a_top = a.y + 0.25 * a.face.points;
                const double b_top = b.y + 0.25 * b.face.points;
                const double a_end = a.y + a.extent.height - 0.2 * a.face.points;
                const double b_end = b.y + b.extent.height - 0.2 * b.face.points;
                if (a_top < b_end && b_top < a_end && a.x < b.x + b.extent.width - 0.5 &&
                    b.x < a.x + a.extent.width - 0.5) {
                    ADD_FAILURE() << "'" << a.text << "' lies on '" << b.text << "'";
                    return false;
                }
            }
        }
    }
    return true;
}

} // namespace loafwright::output

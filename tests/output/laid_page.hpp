// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "shell/output/page_layout.hpp"
#include "shell/output/type_setting.hpp"

#include <cstddef>
#include <string>
#include <vector>

namespace loafwright::output {

/// The page that page.md shows.
Sheet tin_loaf_sheet();

const TypeSetter& lato();
PageLayout laid(const Sheet& sheet, const PageOptions& options = {});

std::vector<Words> words_of(const PageLayout& layout);
/// A text a line, in reading order, with plain blanks.
std::string text_of(const PageLayout& layout);
std::size_t boxes_in(const PageLayout& layout);

/// The sizes that were asked for: times and titles 20 pt, signs 13 pt, nothing under 10 pt, and 18
/// pt in large print.
void expect_sizes(const PageLayout& layout, Print print, const std::string& name);
bool all_inside(const PageLayout& layout);
/// No two texts share a place.
bool none_overlap(const PageLayout& layout);

} // namespace loafwright::output

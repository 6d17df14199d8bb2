// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/breads/bake.hpp"
#include "shell/output/page_options.hpp"
#include "shell/server/exchange.hpp"

#include <cstdint>
#include <string>
#include <string_view>

namespace loafwright::server {

/// What is drawn: a plan and its pages, and what the calendar knows it by.
struct PageOf {
    const Plan& plan;
    const std::vector<Sheet>& pages;
    const Day& day;
    std::string identity;
    std::int64_t revision = 0;
};

/// The page in one of the forms pdf, svg, png, ics, txt, as a file to keep.
///
/// Errors: 400 for any other form, 500 where it cannot be drawn.
Response page_bytes(const PageOf& page, std::string_view form, const output::PageOptions& options);

} // namespace loafwright::server

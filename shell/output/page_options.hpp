// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/quantity/time.hpp"

#include <string>

namespace loafwright::output {

/// Sheets of paper, upright. A4 is ISO 216, 210 by 297 mm; US Letter is ANSI/ASME Y14.1 size A,
/// 8.5 by 11 in.
enum class Paper { a4, letter };

/// `large` has nothing under 18 pt and may take two pages for a bread.
enum class Print { usual, large };

/// How a page is drawn.
struct PageOptions {
    Paper paper = Paper::a4;
    Print print = Print::usual;
    std::string address;          // where the page can be opened; empty for none
    Instant dated;                // stands in the file as its date, so that no clock is asked
    std::string family = "Lato";  // docs/decisions/0008
    double dots_per_inch = 150.0; // of a PNG
};

} // namespace loafwright::output

// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/formula/analyse.hpp"
#include "engine/provisions/gather.hpp"
#include "shell/output/text_page.hpp"

#include <cstddef>
#include <string>
#include <vector>

namespace loafwright::cli {

/// Each ingredient with its weight and its percentage; then what the dough is as a whole; then what
/// is unusual.
///
/// Promises: no line wider than `columns` (40 at least); the same for the pages below.
std::string formula_page(const std::string& title,
                         const Formula& formula,
                         std::size_t columns,
                         output::Weight weight);

/// What to buy and have ready for the breads of these titles, what to see to ahead, allergens and
/// cautions.
std::string gather_page(const std::vector<std::string>& titles,
                        const Provisions& provisions,
                        std::size_t columns,
                        output::Weight weight);

} // namespace loafwright::cli

// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/quantity/tagged.hpp"

#include <optional>
#include <string_view>

namespace loafwright::web_page {

/// The minutes of an ISO 8601 duration ("PT1H30M", "P0DT35M", "P1DT2H", "PT1.5H", "P1W").
///
/// Promises: seconds are rounded to the nearest minute; small letters are taken too.
/// Errors:   nothing for what is no duration, for one of no length, for more than thirty days, and
///           for years and months, which have no fixed length.
///
/// Source: ISO 8601-1:2019, 5.5.2.
std::optional<Minutes> minutes_of_duration(std::string_view text);

} // namespace loafwright::web_page

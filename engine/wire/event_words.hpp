// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/following/event.hpp"
#include "engine/wire/json_fields.hpp"
#include "engine/wire/json_values.hpp"

#include <string_view>
#include <vector>

/// The words that events and logs share, each list in the order of its enumeration.
namespace loafwright::wire {

const std::vector<std::string_view>& growth_words();
const std::vector<std::string_view>& measured_words();
const std::vector<std::string_view>& trouble_words();

/// More than anybody has to say of one bread.
inline constexpr std::size_t most_told = 20;
inline constexpr std::size_t longest_told = 200; // bytes

/// {"crust", "crumb", "again": or null, "symptoms": [], "changed": []}
Json told_value(const Told& told);
/// The same keys out of `fields`, each of which may be left out.
Told told_from(JsonFields& fields);

} // namespace loafwright::wire

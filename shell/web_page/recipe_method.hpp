// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "shell/web_page/linked_data.hpp"
#include "shell/web_page/recipe_data.hpp"

#include <nlohmann/json_fwd.hpp>

#include <vector>

namespace loafwright::web_page {

/// The steps of a method, under the names of its sections: one string or many, things for steps,
/// sections, lists and directions in any order, or references to them.
///
/// Promises: as recipe_data.
std::vector<NamedLines> method_of(const nlohmann::json& value, const LinkedData& all);

} // namespace loafwright::web_page

// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "shell/settings/settings.hpp"
#include "shell/settings/tree.hpp"

#include <string>
#include <string_view>

/// The readers of settings.hpp behind the file's form: for the parts of this room that find a
/// kitchen or a day inside something larger. `heading` is where the keys stand, "" at the top.
namespace loafwright::settings {

tl::expected<Kitchen, Diagnostics>
kitchen_from_tree(const TreeValue& tree, std::string heading, std::string_view name);

tl::expected<DayFile, Diagnostics> day_from_tree(const TreeValue& tree,
                                                 std::string heading,
                                                 std::string_view name,
                                                 const Zone& zone,
                                                 bool zone_is_told,
                                                 Instant now);

/// What a kitchen has taught, as engine/wire/factors_json.hpp writes it. What is wrong is added to
/// `wrong`.
KitchenFactors factors_from_tree(const TreeValue& tree,
                                 const std::string& heading,
                                 std::string_view name,
                                 Diagnostics& wrong);

} // namespace loafwright::settings

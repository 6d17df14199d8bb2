// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/asking/rise.hpp"
#include "engine/asking/water.hpp"
#include "engine/choosing/choose.hpp"
#include "engine/diagnostic/diagnostic.hpp"
#include "engine/formula/analyse.hpp"
#include "engine/planning/plan.hpp"
#include "engine/provisions/gather.hpp"
#include "engine/recipe/recipe.hpp"
#include "engine/sheet/compose.hpp"

#include <cstddef>
#include <string>
#include <vector>

namespace loafwright::wire {

/// JSON text (RFC 8259), version 1, keys in a fixed order, indented by two, one newline at the end.
std::string reading_json(const Reading& reading);
std::string formula_json(const Formula& formula);
/// `normal`, which goes with one recipe's steps, is left out.
std::string provisions_json(const Provisions& provisions);
std::string plan_json(const Plan& plan,
                      const Provisions& provisions,
                      const std::vector<Question>& questions,
                      const Zone& zone);
std::string impossible_json(const Impossible& impossible,
                            const std::vector<Question>& questions,
                            const Zone& zone);
/// Everything that stands on one page, ready to be drawn; its moments are in UTC.
std::string sheet_json(const Sheet& sheet);
/// An honest no carries `impossible` as a plan's does, beside what is known all the same.
std::string water_json(const asking::WaterAnswer& answer);
std::string how_long_json(const asking::RiseAnswer& answer);
/// Breads that were chosen among.
struct Shelf {
    std::vector<Choice> choices;
    std::vector<std::size_t> places;   // where a choice's bread stood in the call
    std::vector<std::size_t> left_out; // places of texts that are no recipe
};
/// Needs: `places` has one entry for each choice's `bread`.
std::string choices_json(const Shelf& shelf, const Zone& zone);
std::string error_json(const Diagnostics& diagnostics);

} // namespace loafwright::wire

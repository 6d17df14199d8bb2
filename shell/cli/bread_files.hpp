// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/breads/known_breads.hpp"
#include "engine/diagnostic/diagnostic.hpp"

#include <string>
#include <vector>

namespace loafwright::cli {

/// Those files that can be read; what is wrong with the others is added to `wrong`.
std::vector<breads::BreadText>
bread_texts(const std::vector<std::string>& files, const Answers& answers, Diagnostics& wrong);

} // namespace loafwright::cli

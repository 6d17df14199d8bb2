// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/reading/pieces.hpp"
#include "engine/reading/token.hpp"

#include <string_view>
#include <vector>

namespace loafwright::reading {

/// What the head of a table says of its figures.
///
/// Promises: in a column of per cents no token is a number any more; behind a figure in a column of
///           grams stands that unit; beside such a column no other figure is a number.
void read_table_heads(std::string_view text,
                      const std::vector<Piece>& pieces,
                      std::vector<Token>& tokens);

} // namespace loafwright::reading

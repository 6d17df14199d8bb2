// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/reading/layout.hpp"
#include "engine/reading/pieces.hpp"

#include <string_view>
#include <vector>

namespace loafwright::reading {

/// Says what each block is for, from the heading it stands under and, where there is none, from
/// what it looks like; names the title and the parts.
///
/// Needs:    one block for each piece, with its tokens; `layout.ids` of the tokens.
void give_roles(std::string_view text,
                const std::vector<Piece>& pieces,
                const Lexicon& lexicon,
                Layout& layout);

} // namespace loafwright::reading

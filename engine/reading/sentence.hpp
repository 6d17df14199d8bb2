// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/reading/lexicon.hpp"
#include "engine/reading/token.hpp"

#include <cstddef>
#include <vector>

namespace loafwright::reading {

/// Longer runs without a full stop are cut, so that no text takes more than linear time.
inline constexpr std::size_t longest_sentence = 300;

/// Does the token at `at` end the sentence that begins at `begin`, in a block that ends at `end`?
bool ends_sentence(const std::vector<Token>& tokens,
                   std::size_t begin,
                   std::size_t at,
                   std::size_t end);

/// Does the token at `at`, which is not the block's first, begin a sentence although none has ended
/// before it: with the order or the time of day that a line of a card begins with?
bool begins_sentence(const std::vector<Token>& tokens,
                     const std::vector<WordIds>& ids,
                     const Lexicon& lexicon,
                     std::size_t at,
                     std::size_t end);

} // namespace loafwright::reading

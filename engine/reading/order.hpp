// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/reading/lexicon.hpp"
#include "engine/reading/token.hpp"

#include <vector>

namespace loafwright::reading {

/// Is a verb used as an order to the baker?
struct Order {
    bool is_order = false;
    double doubt = 0.0;   // how little it looks like one
    bool negated = false; // "do not knead"
    bool only_purpose =
        false; // "to activate the yeast": an order only where the sentence has no other
};

/// Judges a verb by where it stands in its sentence.
///
/// Needs:    `opens` tells whether a mark, a dependent part or the sentence's beginning stands
/// right before it. Promises: looks at a bounded number of words around it.
Order judge_order(const std::vector<Token>& tokens,
                  TokenRange sentence,
                  const Match& verb,
                  bool opens);

} // namespace loafwright::reading

// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/reading/draft.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace loafwright::reading {

/// Other ways of making the bread, met one after another in the order of the text.
class Variants {
public:
    /// "For rolls, bake 15 minutes": another length for the last step of that kind. "For rolls 12,
    /// for one big loaf 40": the first is kept until the second says which is the rule, and both
    /// become one new step. A clause that gives no length changes nothing.
    void keep(std::string_view text,
              const std::vector<Token>& tokens,
              const Clause& clause,
              std::size_t index,
              Assembly& assembly);

private:
    struct Pending {
        Alternative other;
        std::size_t sentence = 0;
        std::string bread;
    };
    std::optional<Pending> pending_; // a variant whose rule has not been told yet
};

} // namespace loafwright::reading

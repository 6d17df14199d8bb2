// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/knowledge/knowledge.hpp"

#include <optional>
#include <string>
#include <string_view>

namespace loafwright::provisions {

/// How an ingredient line measures.
enum class Measure { none, grams, other_weight, spoon, cup, volume, pieces };

struct WrittenAmount {
    /// The amount in the words of the line, such as "2 tsp"; empty when the line has none.
    std::string text;
    Measure measure = Measure::none;
};

/// The first amount of an ingredient line; grams or kilograms anywhere in it go before others.
WrittenAmount amount_in(std::string_view line, const Knowledge& knowledge);

} // namespace loafwright::provisions

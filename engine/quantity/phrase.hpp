// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/quantity/tagged.hpp"

#include <initializer_list>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace loafwright {

/// Words whose measures are still numbers, so that whoever shows them chooses the units.
struct Phrase {
    using Part = std::variant<std::string, Celsius, CelsiusDifference, Grams>;
    std::vector<Part> parts;

    friend bool operator==(const Phrase& a, const Phrase& b) { return a.parts == b.parts; }
};

/// The words of `pattern` with `parts` in the place of each "{}", in order; more places than parts
/// stay empty, more parts than places are left out.
Phrase phrase(std::string_view pattern, std::initializer_list<Phrase::Part> parts = {});

/// Puts one phrase behind another.
Phrase& operator+=(Phrase& phrase, const Phrase& more);

/// The phrase with a capital in front, where it begins with a letter from a to z.
Phrase with_capital(Phrase phrase);

} // namespace loafwright

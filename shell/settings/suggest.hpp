// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace loafwright::settings {

/// How many letters must be put in, taken out, replaced or swapped with their neighbour to turn one
/// word into the other; upper and lower case of a to z count as the same.
std::size_t letters_apart(std::string_view left, std::string_view right);

/// The candidate that somebody who wrote `word` most likely meant, or nothing when none is near.
///
/// Promises: a candidate that goes on after the whole of `word` counts as near ("fridge" for
/// "fridge_c"), as does one whose
///           difference is at most a third of the letters; of equally near ones the first.
std::optional<std::string> nearest(std::string_view word,
                                   const std::vector<std::string>& candidates);

/// `text` in double quotes for a message: at most 40 bytes of it, control characters as blanks, cut
/// between characters.
std::string in_quotes(std::string_view text);

} // namespace loafwright::settings

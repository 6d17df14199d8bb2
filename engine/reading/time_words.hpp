// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/reading/token.hpp"

#include <cstddef>
#include <initializer_list>
#include <optional>
#include <string_view>
#include <vector>

namespace loafwright::reading {

inline constexpr double minutes_an_hour = 60.0;
inline constexpr double minutes_a_day = 24.0 * minutes_an_hour;

/// How many minutes a unit of time has; nothing for other words. A lone "m" counts only right
/// behind its number.
std::optional<double> unit_minutes(const Token& token);

/// Does this word stand at `at`, before `end`?
bool word_at(const std::vector<Token>& tokens,
             std::size_t at,
             std::size_t end,
             std::string_view word);

/// Do these words stand one after the other at `at`?
bool words_at(const std::vector<Token>& tokens,
              std::size_t at,
              std::size_t end,
              std::initializer_list<std::string_view> words);

} // namespace loafwright::reading

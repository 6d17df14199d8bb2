// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/reading/draft.hpp"

#include <string_view>
#include <vector>

namespace loafwright::reading {

/// At most this many words in a reminder.
inline constexpr std::size_t longest_reminder_words = 9;

/// The few words of each clause whose loss would send the baker back to the book: numbers, cues,
/// which way up, warnings.
///
/// Promises: each is a piece of the text as it stands, with its span; heaviest first; none twice.
void add_reminders(std::string_view text,
                   const Layout& layout,
                   const std::vector<Clause>& clauses,
                   Draft& draft);

} // namespace loafwright::reading

// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/reading/token.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace loafwright::reading {

/// A figure that a scanner took for letters: "l0 minutes", "3O min", "S00 g", "I hour", "2200C"; or
/// a unit that it took for figures: "20z", "21b", "320m1"; or a half that became "%".
struct LookAlike {
    std::size_t end = 0;      // the first byte behind the figures
    std::string figures;      // "10", "30", "500", "1", "220"; "2", "2", "320"
    std::string unit;         // "oz", "lb", "ml", where that was mistaken; else empty
    std::size_t unit_end = 0; // the first byte behind the unit, which begins at `end`
};

/// What stands at a byte of the text, when letters there must be figures or figures letters.
///
/// Needs:    `at` is where a word or a number begins; `opens`, whether no word stands before it on
///           its line, as in a list of ingredients.
/// Promises: something only where a unit or the second half of a range follows, so that no word of
///           English and no litre ("1l") is taken; `figures` is a number as people write it.
std::optional<LookAlike> look_alike(std::string_view text, std::size_t at, bool opens = false);

/// "12", "1.5", "3/4", "1½", and nothing else: its value.
std::optional<Token> one_number(std::string_view words);

/// Puts the baker's word in the place of figures that were taken for letters: an answer with the
/// key "word-at-" and the first byte.
///
/// Gives:    the answers about something else.
Answers settle_look_alikes(std::vector<Token>& tokens, const Answers& answers);

/// The words of a span as `tidy` gives them, with figures where letters were taken for them.
///
/// Needs:    `tokens` are those of `text`, in its order.
std::string tidy_figures(std::string_view text, const std::vector<Token>& tokens, Span span);

/// Asks about the figures that were taken for letters and that nobody has settled.
///
/// Needs:    `reading` is of `text`, `tokens` are its tokens.
/// Promises: such questions stand first, in the order of the text; only about those on which a step
///           or an amount hangs.
void ask_about_look_alikes(std::string_view text,
                           const std::vector<Token>& tokens,
                           Reading& reading);

} // namespace loafwright::reading

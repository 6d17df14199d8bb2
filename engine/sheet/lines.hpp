// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/provisions/gather.hpp"
#include "engine/quantity/time.hpp"
#include "engine/sheet/options.hpp"

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace loafwright::sheet {

/// A moment on the page: "18:30", or "Sun 07:30" where the day differs from that of `beside`.
std::string moment_text(const Zone& zone, Instant moment, Instant beside, ClockForm form);

/// "500 g strong white flour", "about 7 g (2 tsp) instant yeast", "2 tsp fennel seeds". A bare
/// count stands behind what can be counted, "about 100 g eggs (2)", and is left out beside anything
/// else. Where the bread has parts, "480 g water: 100 g for the leaven, 120 g boiling for the
/// soaker, 260 g at 24 °C for the dough"; `of_dough`, here " at 24 °C", is said of what the dough
/// takes.
std::string
weigh_line(const ToBuy& bought, WeightUnit unit, const std::string& of_dough = std::string());

/// "13:30 to 14:35 and 15:00 to 15:40"; commas before the last pair.
std::string joined(const std::vector<std::string>& parts);

/// A cue without the words that lead it in: "until it has doubled" becomes "it has doubled".
std::string bare_cue(std::string_view cue);

/// The heart of a sign, in lower case: "it has doubled" and "should be doubled" are both "doubled".
std::string bare_sign(std::string_view words);

/// True for words torn from the middle of a sentence: "of warm water", "been dissolved in milk".
bool is_torn_off(std::string_view words);

/// Without small words at the end that lead on to what is not there: "half doubled its".
std::string without_loose_end(std::string text);

/// Without a bracket whose other half was cut off: "43 degrees C)".
std::string without_lone_bracket(std::string text);

/// At most `most` words: cut at a comma or semicolon when one comes early enough, else after the
/// last word that fits.
std::string at_most_words(const std::string& text, std::size_t most);

} // namespace loafwright::sheet

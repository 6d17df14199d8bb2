// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/reading/lexicon.hpp"
#include "engine/reading/token.hpp"

#include <vector>

namespace loafwright::reading {

/// Mends words that a scanner or a hasty hand has damaged: "rninutes", "kncad", "mintues".
///
/// Promises: a word that the lexicon or the grammars know is left alone; an unknown one is changed
/// only when one slip of the pen away
///           from exactly one kind of known word; spans stay, so whatever is quoted from the text
///           is quoted as it stands.
void repair_words(std::vector<Token>& tokens, const Lexicon& lexicon);

/// Parts what ran together when a gap was lost: "hourina warm place", "2 cupsof flour".
///
/// Promises: only a word that nobody knows, that begins with a unit and goes on in one or two of
/// the shortest words;
///           the pieces' spans lie side by side in its own.
void part_runs(std::vector<Token>& tokens, const Lexicon& lexicon);

} // namespace loafwright::reading

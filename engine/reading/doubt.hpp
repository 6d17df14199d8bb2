// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/recipe/recipe.hpp"

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace loafwright {

/// A word that was taken from a picture and may be another one.
struct Doubt {
    Span span;
    std::vector<std::string> maybe; // what else it may be
};

/// A doubt that nobody has settled, where it stands now.
struct OpenDoubt {
    std::string key; // "word-at-187": the first byte in the text as it was taken in
    Doubt doubt;
};

struct Settled {
    std::string text;
    std::vector<OpenDoubt> open;
    Answers others; // what is about something else
};

/// Puts in what the baker says of doubtful words.
///
/// Needs:    doubts in the order of the text, none inside another, between characters.
/// Promises: an answer with a doubt's key stands in the text instead of its word; without answers
///           the text stays.
Settled settle(const std::string& text, const std::vector<Doubt>& doubts, const Answers& answers);

/// The key of a question about one word: "word-at-" and its first byte in the text.
std::string word_key(std::size_t begin);

/// Does a step or an ingredient stand or fall with these words?
bool hangs_on(Span words, const Recipe& recipe);

/// Asks about the words in doubt on which something hangs: those with a figure inside what became
/// a step or an ingredient. What the word looks like is the default.
///
/// Needs:    `reading` and `doubts` are of `text`.
/// Promises: such questions stand first, in the order of the text; what the reader itself asked of
///           the same words goes, and its answer is the default.
void ask_about_doubts(std::string_view text,
                      const std::vector<OpenDoubt>& doubts,
                      Reading& reading);

} // namespace loafwright

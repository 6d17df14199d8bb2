// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/reading/lexicon.hpp"
#include "engine/reading/token.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace loafwright::reading {

enum class BlockRole {
    title,
    heading,
    ingredients, // a line of the ingredient list
    method,      // a step or a paragraph of the method
    intro,       // before the method of a text that has one under a heading
    note,        // tips and variants under a heading of their own
    meta,        // "Prep time", "Serves 4"
    mark_up      // front matter, comments, pictures, rules
};

/// A line of a list or a paragraph.
struct Block {
    BlockRole role = BlockRole::method;
    Span span;
    TokenRange tokens;
    std::optional<int> number;       // of a numbered step
    std::optional<std::string> part; // "filling", from the heading above
    /// What a label says is done here: "**Second rise.** 45 minutes", or the heading above the
    /// block.
    const LexiconRow* label = nullptr;
    bool list_item = false;
};

struct Layout {
    std::vector<Token> tokens;
    std::vector<WordIds> ids;
    std::vector<Block> blocks; // in order; together they cover every line that is not blank
    std::string title;
    bool has_ingredient_list = false;
};

/// Cuts a text into blocks and says what each is for, from its mark-up, its headings and, where
/// there are none, from what its lines look like.
Layout lay_out(std::string_view text, const Lexicon& lexicon);

} // namespace loafwright::reading

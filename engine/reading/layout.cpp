// SPDX-License-Identifier: Apache-2.0
//
// The text is cut into pieces, its tokens are mended and laid into them, and each piece gets its
// role.
#include "engine/reading/layout.hpp"

#include "engine/reading/number.hpp"
#include "engine/reading/pieces.hpp"
#include "engine/reading/repair.hpp"
#include "engine/reading/roles.hpp"
#include "engine/reading/table_head.hpp"

#include <algorithm>
#include <cstddef>
#include <utility>

namespace loafwright::reading {

namespace {

class Layouter {
public:
    Layouter(std::string_view text, const Lexicon& lexicon) : text_(text), lexicon_(lexicon) {}

    Layout run() {
        layout_.tokens = tokenise(text_);
        drop_link_targets();
        CutText cut = cut_text(text_, lexicon_);
        pieces_ = std::move(cut.pieces);
        layout_.title = std::move(cut.title);
        part_words_over_blocks();
        part_runs(layout_.tokens, lexicon_);
        repair_words(layout_.tokens, lexicon_);
        read_table_heads(text_, pieces_, layout_.tokens);
        layout_.ids = lexicon_.identify(layout_.tokens);
        assign_tokens();
        give_roles(text_, pieces_, lexicon_, layout_);
        return std::move(layout_);
    }

private:
    // A word broken at a line end is one word; over the border of two blocks it was two after all.
    void part_words_over_blocks() {
        std::vector<Token> parted;
        std::size_t piece = 0;
        bool any = false;
        for (std::size_t at = 0; at < layout_.tokens.size(); ++at) {
            Token& token = layout_.tokens[at];
            while (piece < pieces_.size() && pieces_[piece].span.end <= token.span.begin) {
                ++piece;
            }
            const bool over = piece < pieces_.size() &&
                              pieces_[piece].span.begin <= token.span.begin &&
                              token.span.end > pieces_[piece].span.end;
            if (!over) {
                if (any) {
                    parted.push_back(std::move(token));
                }
                continue;
            }
            if (!any) {
                parted.assign(layout_.tokens.begin(),
                              layout_.tokens.begin() + static_cast<std::ptrdiff_t>(at));
                any = true;
            }
            const std::size_t border = pieces_[piece].span.end;
            for (const Span part : {Span{token.span.begin, border}, Span{border, token.span.end}}) {
                for (Token& half : tokenise(text_.substr(part.begin, part.end - part.begin))) {
                    half.span = Span{half.span.begin + part.begin, half.span.end + part.begin};
                    parted.push_back(std::move(half));
                }
            }
        }
        if (any) {
            layout_.tokens = std::move(parted);
        }
    }

    // "[sourdough starter](/sourdough-starter)": the address is nobody's words.
    void drop_link_targets() {
        std::vector<Token>& tokens = layout_.tokens;
        std::size_t kept = 0;
        std::size_t skip_until = 0;
        for (std::size_t at = 0; at < tokens.size(); ++at) {
            if (at >= skip_until && at + 1 < tokens.size() && is_mark(tokens[at], ']') &&
                is_mark(tokens[at + 1], '(') && tokens[at + 1].glued) {
                std::size_t close = at + 2;
                while (close < tokens.size() && close < at + 60 && !is_mark(tokens[close], ')') &&
                       !tokens[close].first_on_line && !over_a_line_end(tokens[close])) {
                    ++close;
                }
                if (close < tokens.size() && is_mark(tokens[close], ')') &&
                    !tokens[close].first_on_line) {
                    skip_until = close + 1;
                }
            }
            if (at < skip_until) {
                continue;
            }
            if (kept != at) {
                tokens[kept] = std::move(tokens[at]);
            }
            ++kept;
        }
        tokens.resize(kept);
    }

    // A word that was broken at a line end.
    [[nodiscard]] bool over_a_line_end(const Token& token) const {
        return text_.substr(token.span.begin, token.span.end - token.span.begin).find('\n') !=
               std::string_view::npos;
    }

    void assign_tokens() {
        std::size_t token = 0;
        for (const Piece& piece : pieces_) {
            Block block;
            block.span = piece.span;
            block.number = piece.number;
            block.list_item = piece.shape == Shape::item;
            while (token < layout_.tokens.size() &&
                   layout_.tokens[token].span.begin < piece.span.begin) {
                ++token;
            }
            block.tokens.begin = token;
            while (token < layout_.tokens.size() &&
                   layout_.tokens[token].span.end <= piece.span.end) {
                ++token;
            }
            block.tokens.end = token;
            // The list's own mark is no word of the step: "- ", "1." .
            std::size_t& begin = block.tokens.begin;
            if (piece.shape == Shape::item && begin < block.tokens.end) {
                if (piece.number) {
                    const bool dot = begin + 1 < block.tokens.end &&
                                     layout_.tokens[begin + 1].kind == TokenKind::mark;
                    begin = std::min(begin + (dot ? 2U : 1U), block.tokens.end);
                } else if (layout_.tokens[begin].kind == TokenKind::mark &&
                           (is_dash(layout_.tokens[begin]) ||
                            (is_mark(layout_.tokens[begin], '*') &&
                             !(begin + 1 < block.tokens.end && layout_.tokens[begin + 1].glued)) ||
                            is_mark(layout_.tokens[begin], '+') ||
                            layout_.tokens[begin].text.size() > 1)) {
                    ++begin;
                }
            }
            layout_.blocks.push_back(block);
        }
    }

    std::string_view text_;
    const Lexicon& lexicon_;
    Layout layout_;
    std::vector<Piece> pieces_;
};

} // namespace

Layout lay_out(std::string_view text, const Lexicon& lexicon) {
    return Layouter(text, lexicon).run();
}

} // namespace loafwright::reading

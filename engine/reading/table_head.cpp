// SPDX-License-Identifier: Apache-2.0
#include "engine/reading/table_head.hpp"

#include <algorithm>
#include <cstddef>

namespace loafwright::reading {

namespace {

class TableReader {
public:
    TableReader(std::string_view text, const std::vector<Piece>& pieces, std::vector<Token>& tokens)
        : text_(text), pieces_(pieces), tokens_(tokens) {}

    // The head of a table says what its figures are. A baker's formula has its per cents beside the
    // weights: only the weights are amounts, and the unit stands over them.
    void run() {
        for (std::size_t rule = 1; rule < pieces_.size(); ++rule) {
            if (pieces_[rule].shape != Shape::mark_up || !is_table_row(rule) ||
                !is_table_row(rule - 1)) {
                continue;
            }
            std::vector<std::size_t> shares;
            std::vector<std::size_t> grams;
            for_each_cell(rule - 1, [&](std::size_t column, std::size_t at) {
                const Token& token = tokens_[at];
                if (is_mark(token, '%') || is_any_word(token, {"percent", "percentage"})) {
                    shares.push_back(column);
                } else if (is_any_word(token, {"g", "gram", "grams", "grammes"})) {
                    grams.push_back(column);
                }
            });
            for (std::size_t row = rule + 1; is_table_row(row); ++row) {
                for_each_cell(row, [&](std::size_t column, std::size_t at) {
                    Token& token = tokens_[at];
                    if (token.kind != TokenKind::number) {
                        return;
                    }
                    const auto is_in = [column](const std::vector<std::size_t>& columns) {
                        return std::find(columns.begin(), columns.end(), column) != columns.end();
                    };
                    Token* next = at + 1 < tokens_.size() ? &tokens_[at + 1] : nullptr;
                    // "Flour T65": beside a column of weights other figures are names.
                    if (is_in(shares) || (!grams.empty() && !is_in(grams))) {
                        token.kind = TokenKind::mark;
                    } else if (is_in(grams) && next != nullptr && is_mark(*next, '|')) {
                        next->kind = TokenKind::word;
                        next->text = "g";
                    }
                });
            }
        }
    }

private:
    [[nodiscard]] bool is_table_row(std::size_t piece) const {
        return piece < pieces_.size() && text_[pieces_[piece].span.begin] == '|';
    }

    // Cells are numbered from the bar before them.
    template <typename Visit>
    void for_each_cell(std::size_t row, const Visit& visit) {
        const Span span = pieces_[row].span;
        const auto first = std::lower_bound(
            tokens_.begin(), tokens_.end(), span.begin, [](const Token& t, std::size_t at) {
                return t.span.begin < at;
            });
        std::size_t column = 0;
        for (auto at = static_cast<std::size_t>(first - tokens_.begin());
             at < tokens_.size() && tokens_[at].span.end <= span.end;
             ++at) {
            const bool bar = text_[tokens_[at].span.begin] == '|';
            column += bar ? 1U : 0U;
            if (!bar) {
                visit(column, at);
            }
        }
    }

    std::string_view text_;
    const std::vector<Piece>& pieces_;
    std::vector<Token>& tokens_;
};

} // namespace

void read_table_heads(std::string_view text,
                      const std::vector<Piece>& pieces,
                      std::vector<Token>& tokens) {
    TableReader(text, pieces, tokens).run();
}

} // namespace loafwright::reading

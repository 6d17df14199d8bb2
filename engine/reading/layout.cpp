// SPDX-License-Identifier: Apache-2.0
//
// Lines to blocks. Three passes: cut the text into lines; join lines into blocks by their mark-up
// (lists, headings, paragraphs, front matter); give each block a role from the heading it stands
// under. A text without headings keeps its paragraphs as method, and runs of short lines that begin
// with an amount become an ingredient list.
#include "engine/reading/layout.hpp"

#include "engine/reading/clock.hpp"
#include "engine/reading/duration.hpp"
#include "engine/reading/lines.hpp"
#include "engine/reading/number.hpp"
#include "engine/reading/repair.hpp"
#include "engine/recipe/words.hpp"

#include <algorithm>
#include <array>
#include <cctype>

namespace loafwright::reading {
namespace {

class Layouter {
public:
    Layouter(std::string_view text, const Lexicon& lexicon) : text_(text), lexicon_(lexicon) {}

    Layout run() {
        layout_.tokens = tokenise(text_);
        drop_link_targets();
        lines_ = lines_of(text_);
        cut();
        part_words_over_blocks();
        part_runs(layout_.tokens, lexicon_);
        repair_words(layout_.tokens, lexicon_);
        read_table_heads();
        layout_.ids = lexicon_.identify(layout_.tokens);
        assign_tokens();
        give_roles();
        return std::move(layout_);
    }

private:
    enum class Shape { heading, item, paragraph, mark_up };
    struct Draft {
        Shape shape = Shape::paragraph;
        Span span;
        std::optional<int> number;
        std::string_view words; // a heading's own words
        bool weak_heading = false;
    };

    // A word broken at a line end is one word; over the border of two blocks it was two after all.
    void part_words_over_blocks() {
        std::vector<Token> parted;
        std::size_t draft = 0;
        bool any = false;
        for (std::size_t at = 0; at < layout_.tokens.size(); ++at) {
            Token& token = layout_.tokens[at];
            while (draft < drafts_.size() && drafts_[draft].span.end <= token.span.begin) {
                ++draft;
            }
            const bool over = draft < drafts_.size() &&
                              drafts_[draft].span.begin <= token.span.begin &&
                              token.span.end > drafts_[draft].span.end;
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
            const std::size_t border = drafts_[draft].span.end;
            for (const Span part : {Span{token.span.begin, border}, Span{border, token.span.end}}) {
                for (Token& piece : tokenise(text_.substr(part.begin, part.end - part.begin))) {
                    piece.span = Span{piece.span.begin + part.begin, piece.span.end + part.begin};
                    parted.push_back(std::move(piece));
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

    void add(Shape shape,
             Span span,
             std::optional<int> number = std::nullopt,
             std::string_view words = {},
             bool weak = false) {
        Draft draft;
        draft.shape = shape;
        draft.span = span;
        draft.number = number;
        draft.words = words;
        draft.weak_heading = weak;
        words_seen_ = words_seen_ || shape != Shape::mark_up;
        drafts_.push_back(draft);
    }

    void cut() {
        std::size_t at = 0;
        while (at < lines_.size() && lines_[at].text.empty()) {
            ++at;
        }
        if (at < lines_.size() && lines_[at].text == "---") {
            at = front_matter(at);
        }
        while (at < lines_.size()) {
            at = one_block(at);
        }
    }

    std::size_t front_matter(std::size_t at) {
        std::size_t close = at + 1;
        while (close < lines_.size() && close < at + 60 && lines_[close].text != "---") {
            ++close;
        }
        if (close >= lines_.size() || lines_[close].text != "---") {
            return at;
        }
        for (std::size_t line = at + 1; line < close; ++line) {
            if (starts_with(lines_[line].text, "title:")) {
                layout_.title = std::string(stripped(lines_[line].text.substr(6), " \"'"));
            }
        }
        add(Shape::mark_up, Span{lines_[at].span.begin, lines_[close].span.end});
        return close + 1;
    }

    std::size_t one_block(std::size_t at) {
        const Line& line = lines_[at];
        if (line.text.empty()) {
            return at + 1;
        }
        if (starts_with(line.text, "<!--")) {
            std::size_t close = at;
            while (close < lines_.size() &&
                   lines_[close].text.find("-->") == std::string_view::npos) {
                ++close;
            }
            close = std::min(close, lines_.size() - 1);
            add(Shape::mark_up, Span{line.span.begin, lines_[close].span.end});
            return close + 1;
        }
        if (starts_with(line.text, "|")) { // a row of a table is a line of a list
            const bool rule = line.text.find_first_not_of("|-: ") == std::string_view::npos;
            add(rule ? Shape::mark_up : Shape::item, line.span);
            return at + 1;
        }
        if (starts_with(line.text, "![") || is_rule(line.text) || starts_with(line.text, "```")) {
            add(Shape::mark_up, line.span);
            return at + 1;
        }
        if (starts_with(line.text, "#")) {
            add(Shape::heading, line.span, std::nullopt, stripped(line.text, "# *_:"));
            return at + 1;
        }
        std::optional<int> number = number_without_a_dot(at);
        if (number) {
            return list_item(at, number);
        }
        if (const std::size_t marker = list_marker(line.text, number); marker != 0) {
            // "1. Country bread", the first of many in a book.
            if (!words_seen_ && number && at + 1 < lines_.size() && section_of_line(at + 1)) {
                add(Shape::heading, line.span, std::nullopt, line.text.substr(marker));
                return at + 1;
            }
            return list_item(at, number);
        }
        if (!words_seen_) {
            // "Recipe: Hamburger buns"
            for (const std::string_view label : {"recipe:", "title:", "name:"}) {
                if (lower_case(line.text.substr(0, label.size())) == label &&
                    line.text.size() > label.size() + 1 && line.text.size() <= 80) {
                    add(Shape::heading,
                        line.span,
                        std::nullopt,
                        stripped(line.text.substr(label.size()), " *_"));
                    return at + 1;
                }
            }
        }
        // "Cheese plait | Feeds 6 | Cook 30 mins": a name with what is told of the whole behind it.
        const std::size_t bar = line.text.find(" | ");
        if (!words_seen_ && bar != std::string_view::npos && bar > 0 && bar < 60 && alone(at) &&
            !is_meta_line(at) && more_follows(at)) {
            add(Shape::heading,
                Span{line.span.begin, line.span.begin + bar},
                std::nullopt,
                line.text.substr(0, bar));
            add(Shape::paragraph, Span{line.span.begin + bar + 3, line.span.end});
            return at + 1;
        }
        if (at + 1 < lines_.size() && is_rule(lines_[at + 1].text) && line.text.size() < 80 &&
            lines_[at + 1].text[0] != '*') {
            add(Shape::heading,
                Span{line.span.begin, lines_[at + 1].span.end},
                std::nullopt,
                line.text);
            return at + 2;
        }
        if (is_heading_line(at)) {
            add(Shape::heading,
                line.span,
                std::nullopt,
                stripped(line.text, "_*=: "),
                !wrapped(line.text));
            return at + 1;
        }
        return paragraph(at);
    }

    [[nodiscard]] bool alone(std::size_t at) const {
        const bool before = at == 0 || lines_[at - 1].text.empty();
        const bool after = at + 1 >= lines_.size() || lines_[at + 1].text.empty();
        return before && after;
    }

    // A short line by itself: wrapped in marks, in capitals, ending in a colon, or a word that
    // heads a section.
    [[nodiscard]] bool is_heading_line(std::size_t at) const {
        const std::string_view text = lines_[at].text;
        if (text.size() > 80 || at + 1 >= lines_.size()) {
            return false;
        }
        // One star each side is also how a remark is set; a part's name in them is a heading.
        const bool slanted =
            text.size() > 2 && text.front() == '*' && text[1] != ' ' && text.back() == '*';
        if (wrapped(text) || (slanted && section_named(stripped(text, "*")) != nullptr)) {
            return true;
        }
        if (all_capitals(text) && text.size() < 60 && (at == 0 || lines_[at - 1].text.empty())) {
            return true;
        }
        if (is_section_word(stripped(text, "_*=:. "))) {
            return true;
        }
        const std::size_t words =
            static_cast<std::size_t>(std::count(text.begin(), text.end(), ' ')) + 1;
        if (text.back() == ':' && words <= 6) {
            return true;
        }
        const bool sentence = text.back() == '.' || text.back() == ',' || text.back() == ';';
        // "100% rye" is a name, "100 g rye" is none.
        const std::size_t digits = text.find_first_not_of("0123456789");
        const bool amount =
            digits != 0 && (digits == std::string_view::npos || text[digits] != '%');
        return !words_seen_ && (alone(at) || heads_the_text(at)) && words <= 12 && !sentence &&
               !amount && more_follows(at);
    }

    // A name over "Ingredients", over "Prep 20 min | Serves 8" or over the first amount, without an
    // empty line between.
    [[nodiscard]] bool heads_the_text(std::size_t at) const {
        const std::string_view next = lines_[at + 1].text;
        const bool amount = !next.empty() && next[0] >= '0' && next[0] <= '9';
        return section_of_line(at + 1) || is_meta_line(at + 1) ||
               (amount && !begins_with_an_order(lines_[at].text));
    }

    [[nodiscard]] bool begins_with_an_order(std::string_view text) const {
        const std::vector<Token> tokens = tokenise(text);
        const std::vector<WordIds> ids = lexicon_.identify(tokens);
        const Match action = lexicon_.at("action", tokens, ids, 0, tokens.size());
        return action.row != nullptr && action.head == Inflection::none;
    }

    // "Prep 25 min", "Serves: 8": one of those words, then a figure.
    [[nodiscard]] bool is_meta_line(std::size_t at) const {
        constexpr std::size_t longest_line = 100; // bytes; longer ones are sentences
        const std::string_view text = lines_[at].text;
        // Most lines are told at a glance.
        if (text.empty() || text.size() > longest_line || text[0] == '-' ||
            text.find_first_of("0123456789") == std::string_view::npos) {
            return false;
        }
        const std::vector<Token> tokens = tokenise(text);
        const std::vector<WordIds> ids = lexicon_.identify(tokens);
        const Match match = lexicon_.at("meta", tokens, ids, 0, tokens.size());
        if (match.row == nullptr || match.row->weight < 1.0 || !tokens.front().capital) {
            return false;
        }
        std::size_t next = match.range.end;
        if (next < tokens.size() && is_mark(tokens[next], ':')) {
            ++next;
        }
        return next < tokens.size() && tokens[next].kind == TokenKind::number;
    }

    [[nodiscard]] bool more_follows(std::size_t at) const {
        for (std::size_t line = at + 1; line < lines_.size(); ++line) {
            if (!lines_[line].text.empty()) {
                return true;
            }
        }
        return false;
    }

    // "1 Make up the dough." above "2 Roll it out.": a figure, and an order that it cannot count.
    [[nodiscard]] std::optional<int> number_without_a_dot(std::size_t at) {
        const std::string_view text = lines_[at].text;
        const std::size_t digits = text.find_first_not_of("0123456789");
        if (digits == 0 || digits > 2 || digits + 1 >= text.size() || text[digits] != ' ' ||
            text[digits + 1] < 'A' || text[digits + 1] > 'Z') {
            return std::nullopt;
        }
        const int value = std::stoi(std::string(text.substr(0, digits)));
        const bool begins = value == 1 && begins_with_an_order(text.substr(digits + 1));
        if (!begins && value != dotless_ + 1) {
            return std::nullopt;
        }
        dotless_ = value;
        return value;
    }

    std::size_t list_item(std::size_t at, std::optional<int> number) {
        std::size_t last = at;
        std::optional<int> unused;
        while (last + 1 < lines_.size() && !lines_[last + 1].text.empty() &&
               list_marker(lines_[last + 1].text, unused) == 0 &&
               !(dotless_ > 0 &&
                 starts_with(lines_[last + 1].text, std::to_string(dotless_ + 1) + " ")) &&
               !starts_with(lines_[last + 1].text, "#") &&
               !starts_with(lines_[last + 1].text, "![") &&
               !starts_with(lines_[last + 1].text, "<!--") && !section_of_line(last + 1)) {
            ++last;
        }
        add(Shape::item, Span{lines_[at].span.begin, lines_[last].span.end}, number);
        return last + 1;
    }

    // A run of lines; if most of them look like lines of an ingredient list, each is an item.
    std::size_t paragraph(std::size_t at) {
        std::size_t last = at;
        std::optional<int> unused;
        while (last + 1 < lines_.size() && !lines_[last + 1].text.empty() &&
               list_marker(lines_[last + 1].text, unused) == 0 &&
               !starts_with(lines_[last + 1].text, "#") &&
               !starts_with(lines_[last + 1].text, "<!--") &&
               !starts_with(lines_[last + 1].text, "![") &&
               !(is_heading_line(last + 1) && section_of_line(last + 1)) &&
               !is_meta_line(last + 1)) {
            ++last;
        }
        std::size_t listed = 0;
        for (std::size_t line = at; line <= last; ++line) {
            listed += looks_listed(lines_[line].text) ? 1U : 0U;
        }
        const std::size_t count = last - at + 1;
        if (count >= 2 && (listed * 3 >= count * 2 || one_order_a_line(at, last) ||
                           broken_on_purpose(lines_, at, last))) {
            for (std::size_t line = at; line <= last; ++line) {
                add(Shape::item, lines_[line].span);
            }
        } else {
            add(Shape::paragraph, Span{lines_[at].span.begin, lines_[last].span.end});
        }
        return last + 1;
    }

    // Short lines without full stops, most of them beginning with a verb: each is a step.
    [[nodiscard]] bool one_order_a_line(std::size_t first, std::size_t last) const {
        std::size_t orders = 0;
        for (std::size_t line = first; line <= last; ++line) {
            const std::string_view text = lines_[line].text;
            const bool stopped =
                line < last && (text.back() == ',' || text.back() == ';' || text.back() == '-');
            if (text.size() > 60 || stopped) {
                return false;
            }
            const std::vector<Token> tokens = tokenise(stripped(text, "*_"));
            const std::vector<WordIds> ids = lexicon_.identify(tokens);
            const std::size_t clock =
                tokens.size() > 3 && tokens[0].kind == TokenKind::number && is_mark(tokens[1], ':')
                    ? 3
                    : 0;
            const bool named = std::any_of(tokens.begin(), tokens.end(), [](const Token& token) {
                return is_mark(token, ':') && !token.glued;
            });
            const Match action = lexicon_.at("action", tokens, ids, clock, tokens.size());
            const bool order = action.row != nullptr && action.head == Inflection::none;
            orders += order || starts_with(text, "**") || named ? 1U : 0U;
        }
        return orders * 3 >= (last - first + 1) * 2;
    }

    [[nodiscard]] bool section_of_line(std::size_t at) const {
        return is_section_word(stripped(lines_[at].text, "_*=:. "));
    }

    [[nodiscard]] const LexiconRow* section_named(std::string_view words) const {
        if (words.empty() || words.size() > 80) {
            return nullptr;
        }
        const std::vector<Token> tokens = tokenise(words);
        const std::vector<WordIds> ids = lexicon_.identify(tokens);
        for (std::size_t at = 0; at < tokens.size(); ++at) {
            const Match match = lexicon_.at("section", tokens, ids, at, tokens.size());
            // "Country loaf, notes to self" is a title; "Notes on flour" is a section.
            if (match.row != nullptr && (at == 0 || match.row->means != "note")) {
                return match.row;
            }
        }
        return nullptr;
    }

    // A plain line is a heading only when it is the section's name and hardly more.
    [[nodiscard]] bool is_section_word(std::string_view words) const {
        if (words.empty() || words.size() >= 40) {
            return false;
        }
        const std::vector<Token> tokens = tokenise(words);
        const std::vector<WordIds> ids = lexicon_.identify(tokens);
        const Match match = lexicon_.at("section", tokens, ids, 0, tokens.size());
        // "First dough (evening)"
        const bool remark = match.range.end < tokens.size() &&
                            is_mark(tokens[match.range.end], '(') && is_mark(tokens.back(), ')');
        return match.row != nullptr && (match.range.end + 1 >= tokens.size() || remark) &&
               tokens.front().capital;
    }

    void assign_tokens() {
        std::size_t token = 0;
        for (const Draft& draft : drafts_) {
            Block block;
            block.span = draft.span;
            block.number = draft.number;
            block.list_item = draft.shape == Shape::item;
            while (token < layout_.tokens.size() &&
                   layout_.tokens[token].span.begin < draft.span.begin) {
                ++token;
            }
            block.tokens.begin = token;
            while (token < layout_.tokens.size() &&
                   layout_.tokens[token].span.end <= draft.span.end) {
                ++token;
            }
            block.tokens.end = token;
            // The list's own mark is no word of the step: "- ", "1." .
            std::size_t& begin = block.tokens.begin;
            if (draft.shape == Shape::item && begin < block.tokens.end) {
                if (draft.number) {
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

    [[nodiscard]] bool is_table_row(std::size_t draft) const {
        return draft < drafts_.size() && text_[drafts_[draft].span.begin] == '|';
    }

    // The head of a table says what its figures are. A baker's formula has its per cents beside the
    // weights: only the weights are amounts, and the unit stands over them.
    void read_table_heads() {
        for (std::size_t rule = 1; rule < drafts_.size(); ++rule) {
            if (drafts_[rule].shape != Shape::mark_up || !is_table_row(rule) ||
                !is_table_row(rule - 1)) {
                continue;
            }
            std::vector<std::size_t> shares;
            std::vector<std::size_t> grams;
            for_each_cell(rule - 1, [&](std::size_t column, std::size_t at) {
                const Token& token = layout_.tokens[at];
                if (is_mark(token, '%') || is_any_word(token, {"percent", "percentage"})) {
                    shares.push_back(column);
                } else if (is_any_word(token, {"g", "gram", "grams", "grammes"})) {
                    grams.push_back(column);
                }
            });
            for (std::size_t row = rule + 1; is_table_row(row); ++row) {
                for_each_cell(row, [&](std::size_t column, std::size_t at) {
                    Token& token = layout_.tokens[at];
                    if (token.kind != TokenKind::number) {
                        return;
                    }
                    const auto is_in = [column](const std::vector<std::size_t>& columns) {
                        return std::find(columns.begin(), columns.end(), column) != columns.end();
                    };
                    Token* next =
                        at + 1 < layout_.tokens.size() ? &layout_.tokens[at + 1] : nullptr;
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

    // Cells are numbered from the bar before them.
    template <typename Visit>
    void for_each_cell(std::size_t row, const Visit& visit) {
        const Span span = drafts_[row].span;
        const auto first =
            std::lower_bound(layout_.tokens.begin(),
                             layout_.tokens.end(),
                             span.begin,
                             [](const Token& t, std::size_t at) { return t.span.begin < at; });
        std::size_t column = 0;
        for (auto at = static_cast<std::size_t>(first - layout_.tokens.begin());
             at < layout_.tokens.size() && layout_.tokens[at].span.end <= span.end;
             ++at) {
            const bool bar = text_[layout_.tokens[at].span.begin] == '|';
            column += bar ? 1U : 0U;
            if (!bar) {
                visit(column, at);
            }
        }
    }

    void give_roles() {
        bool method_heading = false;
        for (const Draft& draft : drafts_) {
            if (draft.shape == Shape::heading) {
                const LexiconRow* row = section_named(draft.words);
                method_heading = method_heading || (row != nullptr && row->means == "method");
                layout_.has_ingredient_list =
                    layout_.has_ingredient_list || (row != nullptr && row->means == "ingredients");
            }
        }
        std::string_view section = method_heading ? "intro" : "";
        std::optional<std::string> part;
        bool titled = !layout_.title.empty();
        const bool numbered_once =
            std::count_if(drafts_.begin(), drafts_.end(), [](const Draft& draft) {
                return draft.number == 1;
            }) == 1;
        const LexiconRow* above = nullptr; // the label of the last heading
        bool remarks = false;              // the block before opened remarks in its own line
        for (std::size_t at = 0; at < layout_.blocks.size(); ++at) {
            Block& block = layout_.blocks[at];
            const Draft& draft = drafts_[at];
            if (draft.shape == Shape::mark_up) {
                block.role = BlockRole::mark_up;
                continue;
            }
            if (draft.shape == Shape::heading) {
                heading(block, draft, section, part, titled, method_heading);
                above = block.role == BlockRole::heading ? label_in(block.tokens) : nullptr;
                continue;
            }
            // One numbered method for all the lists above it belongs to none of them.
            if (draft.number == 1 && numbered_once) {
                part.reset();
            }
            if (section == "ingredients" && begins_the_method(at)) {
                section = "method";
            }
            block.part = part;
            const LexiconRow* own = label_in(block.tokens);
            block.label = own != nullptr ? own : above;
            // "Notes: slack in August…", and the lines right below it.
            const bool below =
                at > 0 && remarks && draft.span.begin <= drafts_[at - 1].span.end + 1;
            remarks = below || (method_seen_ && opens_remarks(block));
            block.role = remarks ? BlockRole::note : role_under(block, section, draft.shape);
            method_seen_ = method_seen_ || block.role == BlockRole::method;
            layout_.has_ingredient_list =
                layout_.has_ingredient_list || block.role == BlockRole::ingredients;
        }
    }

    // Below the last list of what to weigh a numbered list begins, and not with an amount: nobody
    // wrote "Method" over it.
    [[nodiscard]] bool begins_the_method(std::size_t at) const {
        const std::optional<int>& number = drafts_[at].number;
        const bool list_begins = number && (*number == 1 || at == 0 || !drafts_[at - 1].number);
        return list_begins && !is_ingredient_line(layout_.blocks[at]);
    }

    // "**Second rise.**", "Bake": the words at the very start.
    [[nodiscard]] const LexiconRow* label_in(TokenRange range) const {
        std::size_t at = range.begin;
        while (at < range.end && layout_.tokens[at].kind == TokenKind::mark) {
            ++at;
        }
        const Match match = lexicon_.at("label", layout_.tokens, layout_.ids, at, range.end);
        if (match.row == nullptr) {
            return nullptr;
        }
        const std::size_t next = match.range.end;
        const bool ends = next >= range.end || (layout_.tokens[next].kind == TokenKind::mark &&
                                                !is_mark(layout_.tokens[next], '-'));
        return ends ? match.row : nullptr;
    }

    [[nodiscard]] bool opens_remarks(const Block& block) const {
        const Match match = lexicon_.at(
            "section", layout_.tokens, layout_.ids, block.tokens.begin, block.tokens.end);
        return match.row != nullptr && match.row->means == "note" &&
               match.range.end < block.tokens.end && is_mark(layout_.tokens[match.range.end], ':');
    }

    void heading(Block& block,
                 const Draft& draft,
                 std::string_view& section,
                 std::optional<std::string>& part,
                 bool& titled,
                 bool method_heading) {
        const LexiconRow* row = section_named(draft.words);
        if (row != nullptr && row->means != "part") {
            block.role = BlockRole::heading;
            section = row->means;
            part = part_in(draft.words);
            return;
        }
        if (row != nullptr) {
            block.role = BlockRole::heading;
            part = part_in(draft.words);
            if (section == "intro" || section == "note") {
                section = "";
            }
            return;
        }
        if (!titled) {
            block.role = BlockRole::title;
            layout_.title = std::string(stripped(draft.words, " ._*=:"));
            titled = true;
            section = method_heading ? "intro" : "";
            return;
        }
        block.role = BlockRole::heading;
        part.reset();
        // A heading nobody knows: the text goes on as it would without it.
        section = section == "note" ? "note" : section == "ingredients" ? "" : section;
    }

    // "For the filling" -> "filling".
    [[nodiscard]] std::optional<std::string> part_in(std::string_view words) const {
        const std::vector<Token> tokens = tokenise(words);
        const std::vector<WordIds> ids = lexicon_.identify(tokens);
        for (std::size_t at = 0; at < tokens.size(); ++at) {
            const Match match = lexicon_.at("part", tokens, ids, at, tokens.size());
            if (match.row != nullptr) {
                return std::string(match.row->means);
            }
        }
        return std::nullopt;
    }

    [[nodiscard]] BlockRole
    role_under(const Block& block, std::string_view section, Shape shape) const {
        if (is_meta(block)) {
            return BlockRole::meta;
        }
        if (section == "method") {
            return BlockRole::method;
        }
        if (section == "note") {
            return BlockRole::note;
        }
        if (section == "ingredients") {
            return shape == Shape::item || short_line(block) ? BlockRole::ingredients
                                                             : BlockRole::method;
        }
        if (section == "intro") {
            return shape == Shape::item && looks_listed(text_.substr(
                                               block.span.begin, block.span.end - block.span.begin))
                       ? BlockRole::ingredients
                       : BlockRole::intro;
        }
        if (shape == Shape::item && !block.number && is_ingredient_line(block)) {
            return BlockRole::ingredients;
        }
        return BlockRole::method;
    }

    [[nodiscard]] bool short_line(const Block& block) const {
        return block.span.end - block.span.begin < 70;
    }

    [[nodiscard]] bool is_meta(const Block& block) const {
        constexpr std::size_t longest_line = 100; // bytes; longer ones are sentences
        if (block.span.end - block.span.begin > longest_line) {
            return false;
        }
        // Pictures and bullets may stand before the words.
        std::size_t first = block.tokens.begin;
        while (first < block.tokens.end && layout_.tokens[first].kind == TokenKind::mark) {
            ++first;
        }
        const Match match =
            lexicon_.at("meta", layout_.tokens, layout_.ids, first, block.tokens.end);
        if (match.row == nullptr || match.head != Inflection::none) {
            return match.row != nullptr && match.range.end < block.tokens.end &&
                   layout_.tokens[match.range.end].kind == TokenKind::number;
        }
        // "Oven: 190 °C" heads a recipe, "oven at 190 °C for…" is a step.
        const bool colon =
            match.range.end < block.tokens.end && is_mark(layout_.tokens[match.range.end], ':');
        return match.row->weight >= 1.0 || (colon && !method_seen_);
    }

    // No action stands at its start, and it has an amount or is only a few words.
    [[nodiscard]] bool is_ingredient_line(const Block& block) const {
        if (block.tokens.empty()) {
            return false;
        }
        const Match action = lexicon_.at(
            "action", layout_.tokens, layout_.ids, block.tokens.begin, block.tokens.end);
        const std::size_t begin = block.tokens.begin;
        const auto clocks = clocks_in(layout_.tokens, block.tokens);
        const bool clock =
            (begin + 3 < block.tokens.end && is_mark(layout_.tokens[begin + 1], ':')) ||
            (!clocks.empty() && clocks.front().range.begin <= begin + 1) ||
            (begin + 1 < block.tokens.end && is_any_word(layout_.tokens[begin + 1], {"am", "pm"}));
        const bool forbids = is_any_word(layout_.tokens[begin], {"do", "don't", "dont", "never"});
        if ((action.row != nullptr && action.head == Inflection::none) || clock || forbids) {
            return false;
        }
        // A line with a length of time or about the oven tells what to do.
        if (!durations_in(layout_.tokens, block.tokens).empty() ||
            lexicon_.holds("place", "oven", layout_.tokens, layout_.ids, block.tokens)) {
            return false;
        }
        const std::size_t count = block.tokens.end - block.tokens.begin;
        const bool amount =
            number_phrase(layout_.tokens, block.tokens.begin, block.tokens.end).has_value();
        bool digits = false;
        for (std::size_t at = block.tokens.begin; at < block.tokens.end; ++at) {
            digits = digits || layout_.tokens[at].kind == TokenKind::number;
        }
        return (amount && count <= 24) || (digits && count <= 12) || count <= 6;
    }

    std::string_view text_;
    const Lexicon& lexicon_;
    Layout layout_;
    std::vector<Line> lines_;
    std::vector<Draft> drafts_;
    bool method_seen_ = false; // a block of the method has been met
    bool words_seen_ = false;  // something other than mark-up has been cut
    int dotless_ = 0;          // the last number of a list whose numbers have no dot
};

} // namespace

Layout lay_out(std::string_view text, const Lexicon& lexicon) {
    return Layouter(text, lexicon).run();
}

} // namespace loafwright::reading

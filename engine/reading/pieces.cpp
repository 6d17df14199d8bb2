// SPDX-License-Identifier: Apache-2.0
//
// Lines to pieces: lists, headings, paragraphs, tables, front matter. A text without mark-up shows
// its lists by lines that look alike, and its headings by standing alone.
#include "engine/reading/pieces.hpp"

#include "engine/reading/lines.hpp"
#include "engine/recipe/words.hpp"

#include <algorithm>
#include <utility>

namespace loafwright::reading {

namespace {

class Cutter {
public:
    Cutter(std::string_view text, const Lexicon& lexicon)
        : lines_(lines_of(text)), lexicon_(lexicon) {}

    CutText run() {
        cut();
        return std::move(cut_);
    }

private:
    void add(Shape shape,
             Span span,
             std::optional<int> number = std::nullopt,
             std::string_view words = {}) {
        Piece piece;
        piece.shape = shape;
        piece.span = span;
        piece.number = number;
        piece.words = words;
        words_seen_ = words_seen_ || shape != Shape::mark_up;
        cut_.pieces.push_back(piece);
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
                cut_.title = std::string(stripped(lines_[line].text.substr(6), " \"'"));
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
            add(Shape::heading, line.span, std::nullopt, stripped(line.text, "_*=: "));
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
        if (wrapped(text) || (slanted && section_named(stripped(text, "*"), lexicon_) != nullptr)) {
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

    std::vector<Line> lines_;
    const Lexicon& lexicon_;
    CutText cut_;
    bool words_seen_ = false; // something other than mark-up has been cut
    int dotless_ = 0;         // the last number of a list whose numbers have no dot
};

} // namespace

const LexiconRow* section_named(std::string_view words, const Lexicon& lexicon) {
    if (words.empty() || words.size() > 80) {
        return nullptr;
    }
    const std::vector<Token> tokens = tokenise(words);
    const std::vector<WordIds> ids = lexicon.identify(tokens);
    for (std::size_t at = 0; at < tokens.size(); ++at) {
        const Match match = lexicon.at("section", tokens, ids, at, tokens.size());
        // "Country loaf, notes to self" is a title; "Notes on flour" is a section.
        if (match.row != nullptr && (at == 0 || match.row->means != "note")) {
            return match.row;
        }
    }
    return nullptr;
}

CutText cut_text(std::string_view text, const Lexicon& lexicon) {
    return Cutter(text, lexicon).run();
}

} // namespace loafwright::reading

// SPDX-License-Identifier: Apache-2.0
//
// A text without headings keeps its paragraphs as method, and runs of short lines that begin with
// an amount become an ingredient list.
#include "engine/reading/roles.hpp"

#include "engine/reading/clock.hpp"
#include "engine/reading/duration.hpp"
#include "engine/reading/lines.hpp"
#include "engine/reading/number.hpp"

#include <algorithm>
#include <cstddef>
#include <optional>
#include <string>

namespace loafwright::reading {

namespace {

class RoleGiver {
public:
    RoleGiver(std::string_view text,
              const std::vector<Piece>& pieces,
              const Lexicon& lexicon,
              Layout& layout)
        : text_(text), pieces_(pieces), lexicon_(lexicon), layout_(layout) {}

    void run() {
        bool method_heading = false;
        for (const Piece& piece : pieces_) {
            if (piece.shape == Shape::heading) {
                const LexiconRow* row = section_named(piece.words, lexicon_);
                method_heading = method_heading || (row != nullptr && row->means == "method");
                layout_.has_ingredient_list =
                    layout_.has_ingredient_list || (row != nullptr && row->means == "ingredients");
            }
        }
        std::string_view section = method_heading ? "intro" : "";
        std::optional<std::string> part;
        bool titled = !layout_.title.empty();
        const bool numbered_once =
            std::count_if(pieces_.begin(), pieces_.end(), [](const Piece& piece) {
                return piece.number == 1;
            }) == 1;
        const LexiconRow* above = nullptr; // the label of the last heading
        bool remarks = false;              // the block before opened remarks in its own line
        for (std::size_t at = 0; at < layout_.blocks.size(); ++at) {
            Block& block = layout_.blocks[at];
            const Piece& piece = pieces_[at];
            if (piece.shape == Shape::mark_up) {
                block.role = BlockRole::mark_up;
                continue;
            }
            if (piece.shape == Shape::heading) {
                heading(block, piece, section, part, titled, method_heading);
                above = block.role == BlockRole::heading ? label_in(block.tokens) : nullptr;
                continue;
            }
            // One numbered method for all the lists above it belongs to none of them.
            if (piece.number == 1 && numbered_once) {
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
                at > 0 && remarks && piece.span.begin <= pieces_[at - 1].span.end + 1;
            remarks = below || (method_seen_ && opens_remarks(block));
            block.role = remarks ? BlockRole::note : role_under(block, section, piece.shape);
            method_seen_ = method_seen_ || block.role == BlockRole::method;
            layout_.has_ingredient_list =
                layout_.has_ingredient_list || block.role == BlockRole::ingredients;
        }
    }

private:
    // Below the last list of what to weigh a numbered list begins, and not with an amount: nobody
    // wrote "Method" over it.
    [[nodiscard]] bool begins_the_method(std::size_t at) const {
        const std::optional<int>& number = pieces_[at].number;
        const bool list_begins = number && (*number == 1 || at == 0 || !pieces_[at - 1].number);
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
                 const Piece& piece,
                 std::string_view& section,
                 std::optional<std::string>& part,
                 bool& titled,
                 bool method_heading) {
        const LexiconRow* row = section_named(piece.words, lexicon_);
        if (row != nullptr && row->means != "part") {
            block.role = BlockRole::heading;
            section = row->means;
            part = part_in(piece.words);
            return;
        }
        if (row != nullptr) {
            block.role = BlockRole::heading;
            part = part_in(piece.words);
            if (section == "intro" || section == "note") {
                section = "";
            }
            return;
        }
        if (!titled) {
            block.role = BlockRole::title;
            layout_.title = std::string(stripped(piece.words, " ._*=:"));
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
    const std::vector<Piece>& pieces_;
    const Lexicon& lexicon_;
    Layout& layout_;
    bool method_seen_ = false; // a block of the method has been met
};

} // namespace

void give_roles(std::string_view text,
                const std::vector<Piece>& pieces,
                const Lexicon& lexicon,
                Layout& layout) {
    RoleGiver(text, pieces, lexicon, layout).run();
}

} // namespace loafwright::reading

// SPDX-License-Identifier: Apache-2.0
//
// One line of an ingredient list. The first amount outside a remark and the first known name
// outside brackets make the item; what stands behind it may say more: how it is prepared ("potato,
// boiled" is another row of the table than "potato"), what it weighs ("(about 125 g)"), what may
// stand for it ("or 7 g dried"), and a second thing ("+ 1 tbsp milk"). Writers leave out a noun
// that comes again, so "dried" behind "fresh yeast" is tried with that noun.
#include "engine/reading/ingredient.hpp"
#include "engine/reading/number.hpp"

#include <algorithm>

namespace loafwright::reading {
namespace {

bool is_or(const std::vector<Token>& tokens, std::size_t at) {
    return is_word(tokens[at], "or") || is_mark(tokens[at], '/');
}

bool begins_another_thing(const Token& token) {
    return is_any_word(token, {"plus", "or", "for", "with", "in", "to", "and", "if", "extra"}) ||
           is_mark(token, '+') || is_mark(token, '/');
}

// How the cup was filled, said before the item ("sifted cake flour") or as a way of measuring
// behind it ("flour, spooned and levelled"); "flour, sifted" is measured first.
Filling filling_in(const std::vector<Token>& tokens, TokenRange line, std::size_t item) {
    for (std::size_t at = line.begin; at < line.end; ++at) {
        if (is_any_word(tokens[at], {"spooned", "fluffed"})) {
            return Filling::spooned;
        }
        if (is_any_word(tokens[at], {"scooped", "dipped"})) {
            return Filling::scooped;
        }
        const bool sifted = is_any_word(tokens[at], {"sifted", "loose", "loosely"});
        const bool pressed_lightly = is_word(tokens[at], "lightly") && at + 1 < line.end &&
                                     is_word(tokens[at + 1], "packed");
        if ((sifted && at < item) || pressed_lightly) {
            return Filling::sifted;
        }
    }
    return Filling::as_it_comes;
}

// "extra water, if needed"; not "flour, plus more if needed".
bool is_spare(const std::vector<Token>& tokens, TokenRange range) {
    for (std::size_t at = range.begin; at + 1 < range.end; ++at) {
        if (is_word(tokens[at], "if") &&
            is_any_word(tokens[at + 1], {"needed", "necessary", "required"})) {
            return true;
        }
    }
    return false;
}

} // namespace

// The row of the ingredient table that these words name, all of them, or null.
const LexiconRow* IngredientReader::named(const std::vector<Token>& words) const {
    const std::vector<WordIds> ids = lexicon_.identify(words);
    const Match match = lexicon_.at("ingredient", words, ids, 0, words.size());
    return match.row != nullptr && match.range.end == words.size() ? match.row : nullptr;
}

// The first amount outside a remark, wherever it stands in the line.
IngredientReader::Amounts IngredientReader::first_amounts(TokenRange range) const {
    const auto& tokens = layout_.tokens;
    for (std::size_t at = range.begin; at < range.end; ++at) {
        if (!number_phrase(tokens, at, range.end)) {
            continue;
        }
        Amounts amounts = amounts_at(at, range.end);
        const bool bare_article = amounts.measures.size() == 1 &&
                                  amounts.measures.front().unit == nullptr &&
                                  is_any_word(tokens[at], {"a", "an"}) && at != range.begin;
        if (!amounts.measures.empty() && !bare_article) {
            return amounts;
        }
    }
    // "Pinch of salt", "knob of butter": one.
    std::size_t next = range.begin;
    Measure one;
    const bool item =
        lexicon_.at("ingredient", tokens, layout_.ids, range.begin, range.end).row != nullptr;
    one.unit =
        item ? nullptr : units_.at(tokens, range.begin, range.end, region_, next, one.by_region);
    if (one.unit == nullptr || !one.unit->value || is_package(*one.unit) ||
        (one.unit->dimension != Dimension::mass && one.unit->dimension != Dimension::volume)) {
        return {};
    }
    one.amount = *one.unit->value;
    one.dimension = one.unit->dimension;
    one.range = TokenRange{range.begin, next};
    return Amounts{{one}, one.range, Filling::as_it_comes};
}

Match IngredientReader::first_item(TokenRange range, const Amounts& amounts) const {
    const auto& tokens = layout_.tokens;
    std::size_t depth = 0;
    for (std::size_t at = range.begin; at < range.end; ++at) {
        depth += is_mark(tokens[at], '(') ? 1U : 0U;
        depth -= is_mark(tokens[at], ')') && depth > 0 ? 1U : 0U;
        const bool inside_amount = at >= amounts.range.begin && at < amounts.range.end;
        if (inside_amount || depth > 0) {
            continue;
        }
        const Match match = lexicon_.at("ingredient", tokens, layout_.ids, at, range.end);
        if (match.row != nullptr) {
            return match;
        }
    }
    // "6 cloves": the spice and no garlic, when nothing else is named.
    return amounts.range.empty()
               ? Match{}
               : lexicon_.at(
                     "ingredient", tokens, layout_.ids, amounts.range.end - 1, amounts.range.end);
}

// "zest of 1 orange", "juice of half a lemon", "yolks of 2 eggs": the amount stands inside the
// name.
Match IngredientReader::part_of_fruit(TokenRange range, const Amounts& amounts) const {
    const auto& tokens = layout_.tokens;
    const std::size_t begin = amounts.range.begin;
    const bool counted = amounts.measures.size() == 1 && amounts.measures.front().unit == nullptr;
    if (!counted || begin < range.begin + 2 || !is_any_word(tokens[begin - 1], {"of", "from"}) ||
        tokens[begin - 2].kind != TokenKind::word) {
        return {};
    }
    constexpr std::size_t reach = 3; // "2 large unwaxed lemons"
    for (std::size_t at = amounts.range.end;
         at < std::min(range.end, amounts.range.end + reach) && tokens[at].kind == TokenKind::word;
         ++at) {
        const Token& whole = tokens[at];
        const Token& part = tokens[begin - 2];
        Match match;
        match.row = named({whole, part});
        match.row = match.row != nullptr ? match.row : named({part, tokens[begin - 1], whole});
        match.range = TokenRange{begin - 2, at + 1};
        if (match.row != nullptr) {
            return match;
        }
    }
    return {};
}

// What the words behind an item make of it, when that is another row: "1 potato, boiled", "1 lemon,
// zest only".
const LexiconRow* IngredientReader::prepared(TokenRange item, TokenRange range) const {
    const auto& tokens = layout_.tokens;
    constexpr std::size_t longest_item = 4;
    constexpr std::size_t reach = 12;
    if (item.end - item.begin > longest_item) {
        return nullptr;
    }
    const auto from = tokens.begin() + static_cast<std::ptrdiff_t>(item.begin);
    const auto to = tokens.begin() + static_cast<std::ptrdiff_t>(item.end);
    bool apart = false; // behind a comma or a bracket
    for (std::size_t at = item.end; at < std::min(range.end, item.end + reach); ++at) {
        apart = apart || is_mark(tokens[at], ',') || is_mark(tokens[at], '(');
        if (tokens[at].kind == TokenKind::number ||
            (begins_another_thing(tokens[at]) && !is_word(tokens[at], "and"))) {
            return nullptr;
        }
        if (!apart || tokens[at].kind != TokenKind::word) {
            continue;
        }
        for (const std::size_t length : {std::size_t{2}, std::size_t{1}}) {
            if (at + length > range.end || tokens[at + length - 1].kind != TokenKind::word) {
                continue;
            }
            std::vector<Token> words(tokens.begin() + static_cast<std::ptrdiff_t>(at),
                                     tokens.begin() + static_cast<std::ptrdiff_t>(at + length));
            words.insert(words.end(), from, to);
            if (const LexiconRow* row = named(words)) {
                return row;
            }
            std::rotate(
                words.begin(), words.begin() + static_cast<std::ptrdiff_t>(length), words.end());
            if (const LexiconRow* row = named(words)) {
                return row;
            }
        }
    }
    return nullptr;
}

// "olive or sunflower oil", "20 g fresh or 7 g dried yeast": what stands before the "or" shares the
// noun behind it. `own` becomes the amount of what is behind.
const LexiconRow*
IngredientReader::said_before_or(const Match& item, std::size_t from, Amounts& own) const {
    const auto& tokens = layout_.tokens;
    std::size_t join = item.range.begin;
    while (join > from && !is_word(tokens[join], "or")) {
        --join;
    }
    if (join <= from) {
        return nullptr;
    }
    if (join + 1 < item.range.begin) {
        Amounts behind = amounts_at(join + 1, item.range.begin);
        if (behind.measures.empty() || behind.measures.front().unit == nullptr) {
            return nullptr;
        }
        own = std::move(behind);
    }
    std::vector<Token> words{tokens[item.range.end - 1]};
    for (std::size_t at = join; at > from && words.size() < 4; --at) {
        if (tokens[at - 1].kind != TokenKind::word) {
            break;
        }
        words.insert(words.begin(), tokens[at - 1]);
        if (const LexiconRow* row = named(words)) {
            return row;
        }
    }
    return nullptr;
}

// "1 small potato, boiled and mashed (about 125 g)", "2 bananas, about 240 g": the same thing
// again, alone in its brackets or behind the last comma.
void IngredientReader::add_amounts_behind(const Match& item,
                                          TokenRange range,
                                          Amounts& amounts) const {
    const auto& tokens = layout_.tokens;
    if (amounts.measures.empty() || amounts.range.end > item.range.begin) {
        return;
    }
    for (std::size_t at = item.range.end; at + 1 < range.end; ++at) {
        if (is_any_word(tokens[at], {"plus", "or"}) || is_mark(tokens[at], '+')) {
            return;
        }
        if (!is_mark(tokens[at], '(') && !is_mark(tokens[at], ',')) {
            continue;
        }
        Amounts more = amounts_at(at + 1, range.end);
        if (more.measures.empty() || more.measures.front().unit == nullptr) {
            continue;
        }
        std::size_t end = more.range.end;
        const bool each = end < range.end && is_any_word(tokens[end], {"each", "apiece"});
        end += each ? 1U : 0U;
        const bool closed = end >= range.end || is_mark(tokens[end], ')') ||
                            is_mark(tokens[end], ',') || is_mark(tokens[end - 1], ')');
        if (!closed) {
            continue;
        }
        const double number = amounts.measures.front().unit == nullptr && each
                                  ? amounts.measures.front().amount.likely
                                  : 1.0;
        for (Measure& measure : more.measures) {
            measure.amount.low *= number;
            measure.amount.likely *= number;
            measure.amount.high *= number;
            amounts.measures.push_back(measure);
        }
        return;
    }
}

// "lard or butter", "15 g fresh yeast (or 7 g dried)": without an amount of its own a substitute
// takes the amount of the item.
void IngredientReader::add_substitutes(FoundIngredient& found,
                                       const Match& item,
                                       TokenRange range,
                                       const Amounts& amounts) const {
    const auto& tokens = layout_.tokens;
    constexpr std::size_t most = 4;
    std::size_t at = item.range.end;
    while (at + 1 < range.end && found.ingredient.substitutes.size() < most) {
        if (is_any_word(tokens[at], {"plus", "for"}) || is_mark(tokens[at], '+') ||
            is_mark(tokens[at], '.') || is_mark(tokens[at], ';')) {
            return;
        }
        if (!is_or(tokens, at)) {
            ++at;
            continue;
        }
        ++at;
        Amounts own = amounts_at(at, range.end);
        const std::size_t from = std::max(at, own.range.end);
        std::size_t end = from;
        while (end < range.end && end < from + 5 && tokens[end].kind == TokenKind::word &&
               !begins_another_thing(tokens[end])) {
            ++end;
        }
        Match match;
        for (std::size_t word = from; word < end && match.row == nullptr; ++word) {
            match = lexicon_.at("ingredient", tokens, layout_.ids, word, range.end);
        }
        if (match.row == nullptr && end > from) { // "dried", of "fresh yeast"
            std::vector<Token> words(tokens.begin() + static_cast<std::ptrdiff_t>(from),
                                     tokens.begin() + static_cast<std::ptrdiff_t>(end));
            words.push_back(tokens[item.range.end - 1]);
            match.row = named(words);
            match.range = TokenRange{from, end};
        }
        if (match.row == nullptr || match.row->means == found.ingredient.known_as) {
            continue;
        }
        const IngredientRow* row = row_named(match.row->means);
        Substitute other;
        other.item = words(TokenRange{from, match.range.end});
        other.known_as = std::string(match.row->means);
        FoundIngredient apart; // what is open about a substitute is not asked
        other.grams = grams_of(own.measures.empty() ? amounts : own, row, apart);
        found.ingredient.substitutes.push_back(std::move(other));
        at = match.range.end;
    }
}

std::optional<FoundIngredient> IngredientReader::line(const Block& block) const {
    const auto& tokens = layout_.tokens;
    const TokenRange range = block.tokens;
    if (range.empty()) {
        return std::nullopt;
    }
    FoundIngredient found;
    found.range = range;
    found.ingredient.span = span_of(tokens, range);
    found.ingredient.text = tidy(text_, *found.ingredient.span);
    found.ingredient.part = block.part;
    Amounts amounts = first_amounts(range);
    Match item = part_of_fruit(range, amounts);
    if (item.row == nullptr) {
        item = first_item(range, amounts);
    }
    const bool ahead = !amounts.measures.empty() &&
                       (amounts.range.begin <= range.begin ||
                        (item.row != nullptr && amounts.range.end <= item.range.begin));
    const std::size_t words_from = ahead ? amounts.range.end : range.begin;
    const std::size_t words_end = item.row != nullptr ? item.range.end : words_from;
    // What is said of something more, "plus seeds if you like", is not said of this.
    TokenRange own = range;
    for (std::size_t at = words_end; at < own.end; ++at) {
        own.end = is_any_word(tokens[at], {"plus", "more"}) ? at : own.end;
    }
    found.ingredient.optional =
        lexicon_.holds("optional", "", tokens, layout_.ids, own) || is_spare(tokens, own);
    if (item.row != nullptr) {
        const Match written = item;
        amounts.filling = filling_in(tokens, range, item.range.begin);
        add_amounts_behind(item, range, amounts);
        Amounts behind_or = amounts;
        const LexiconRow* before = said_before_or(item, words_from, behind_or);
        const LexiconRow* after = prepared(item.range, range);
        item.row = before != nullptr ? before : after != nullptr ? after : item.row;
        describe(found, item, amounts, words_from, range);
        if (before != nullptr && before->means != written.row->means) {
            Substitute other;
            other.item = words(written.range);
            other.known_as = std::string(written.row->means);
            FoundIngredient apart;
            other.grams = grams_of(behind_or, row_named(other.known_as), apart);
            found.ingredient.item = std::string(before->say);
            found.ingredient.substitutes.push_back(std::move(other));
        }
        add_substitutes(found, written, range, amounts);
        if (amounts.measures.empty()) {
            const IngredientRow* row = row_named(found.ingredient.known_as);
            found.salt_without_amount = row != nullptr && row->role == "salt";
        }
        return found;
    }
    // Not in the table: its own words up to the first mark.
    std::size_t end = words_from;
    while (end < range.end && !(tokens[end].kind == TokenKind::mark && !is_dash(tokens[end])) &&
           !(end > words_from && is_any_word(tokens[end], {"for", "to", "or", "if"}))) {
        ++end;
    }
    std::size_t begin = words_from;
    while (begin < end &&
           (is_any_word(tokens[begin], {"of", "the"}) || tokens[begin].kind == TokenKind::mark)) {
        ++begin;
    }
    found.ingredient.item = words(TokenRange{begin, end});
    if (found.ingredient.item.empty()) {
        return std::nullopt;
    }
    const LexiconRow* made = begin < end ? prepared(TokenRange{end - 1, end}, range) : nullptr;
    const IngredientRow* row = made == nullptr ? nullptr : row_named(made->means);
    found.ingredient.known_as = row == nullptr ? "" : std::string(row->item);
    found.ingredient.grams = grams_of(amounts, row, found);
    return found;
}

// A further thing on the line of `first`, said in `rest` of the line.
FoundIngredient IngredientReader::second(const FoundIngredient& first,
                                         const Match& item,
                                         const Amounts& amounts,
                                         TokenRange rest) const {
    FoundIngredient found;
    found.range = TokenRange{rest.begin, item.range.end};
    found.ingredient.span = span_of(layout_.tokens, found.range);
    found.ingredient.text = tidy(text_, *found.ingredient.span);
    found.ingredient.part = first.ingredient.part;
    found.ingredient.optional = first.ingredient.optional;
    const std::size_t from = std::max(rest.begin, amounts.range.end);
    describe(found, item, amounts, std::min(from, item.range.begin), rest);
    return found;
}

std::vector<FoundIngredient> IngredientReader::beside(const FoundIngredient& first) const {
    const auto& tokens = layout_.tokens;
    const TokenRange range = first.range;
    const Amounts amounts = first_amounts(range);
    const Match item = first_item(range, amounts);
    std::vector<FoundIngredient> more;
    if (item.row == nullptr || amounts.measures.empty() || amounts.range.begin > item.range.begin) {
        return more;
    }
    // "1 tsp each cinnamon and nutmeg": the one amount is for all of them.
    const std::size_t behind = amounts.range.end;
    const bool each = behind < item.range.begin && is_word(tokens[behind], "each");
    std::size_t depth = 0;
    for (std::size_t at = item.range.end; at + 1 < range.end; ++at) {
        depth += is_mark(tokens[at], '(') ? 1U : 0U;
        depth -= is_mark(tokens[at], ')') && depth > 0 ? 1U : 0U;
        const bool joins = is_any_word(tokens[at], {"plus", "and", "in", "with"}) ||
                           is_mark(tokens[at], '+') || (each && is_mark(tokens[at], ','));
        if (!joins || depth > 0) {
            continue;
        }
        const Amounts own = each ? amounts : amounts_at(at + 1, range.end);
        const std::size_t from = each ? at + 1 : own.range.end;
        const bool of_the =
            from + 1 < range.end && is_word(tokens[from], "of") && is_word(tokens[from + 1], "the");
        if (own.measures.empty() || of_the) {
            continue; // "dissolved in 50 ml of the water": a part of what is listed
        }
        Match match;
        for (std::size_t word = from;
             word < std::min(range.end, from + 4) && match.row == nullptr &&
             tokens[word].kind == TokenKind::word && !is_any_word(tokens[word], {"for", "or"});
             ++word) {
            match = lexicon_.at("ingredient", tokens, layout_.ids, word, range.end);
        }
        const bool bare = own.measures.front().unit == nullptr;
        if (match.row == nullptr || (bare && !sold_by_the_piece(match, own.measures.front()))) {
            continue;
        }
        more.push_back(second(first, match, own, TokenRange{at + 1, range.end}));
        at = match.range.end - 1;
    }
    return more;
}

} // namespace loafwright::reading

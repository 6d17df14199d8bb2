// SPDX-License-Identifier: Apache-2.0
//
// Ingredients in running text, and what list lines and running text have in common: amounts (one or
// several for the same thing), then the words of the item, found by the longest name in the
// ingredient table. In running text an amount counts only with a known item beside it: nothing is
// made up from "2 inches" or "three times".
#include "engine/reading/ingredient.hpp"

#include "engine/reading/number.hpp"
#include "engine/reading/temperature.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace loafwright::reading {
namespace {

constexpr std::size_t longest_reach = 9; // tokens between an amount and its item

} // namespace

IngredientReader::IngredientReader(const Knowledge& knowledge,
                                   const Lexicon& lexicon,
                                   const Units& units,
                                   std::string_view text,
                                   const Layout& layout,
                                   std::optional<Region> told_region)
    : knowledge_(knowledge), lexicon_(lexicon), units_(units), text_(text), layout_(layout),
      region_(told_region ? *told_region : region_of(layout.tokens, layout.ids, lexicon)) {
    rows_.reserve(knowledge_.ingredients.size());
    for (const IngredientRow& row : knowledge_.ingredients) {
        rows_.emplace(row.item, &row);
        for (const std::string_view alias : row.aliases) {
            const std::size_t bracket = alias.find(" (");
            if (bracket != std::string_view::npos && row.role != "egg") { // sizes: egg_row
                regional_names_.emplace(
                    alias.substr(0, bracket),
                    std::pair(&row, alias.substr(bracket + 2, alias.size() - bracket - 3)));
            }
        }
    }
    for (const WarmthWordRow& row : knowledge_.warmth_words) {
        warmth_openings_.insert(row.words.substr(0, row.words.find_first_of(" -")));
    }
}

const IngredientRow* IngredientReader::row_named(std::string_view item) const {
    const auto found = rows_.find(item);
    return found == rows_.end() ? nullptr : found->second;
}

// Sizes of eggs differ by region: the words "large" and "medium" choose the row. Where no size is
// told an American egg is large; elsewhere it may be either (common practice).
const IngredientRow* IngredientReader::egg_row(TokenRange range) const {
    std::string size = region_ == Region::us ? "large" : "";
    for (std::size_t at = range.begin; at < range.end; ++at) {
        const Token& token = layout_.tokens[at];
        if (is_any_word(token, {"small", "medium", "large", "jumbo"})) {
            const bool beyond = at > 0 && is_any_word(layout_.tokens[at - 1], {"extra", "very"});
            size = !beyond || token.text != "large" ? token.text
                   : region_ == Region::uk          ? "very large"
                                                    : "extra large";
        }
    }
    if (size.empty()) {
        return row_named("egg");
    }
    const std::string where = region_ == Region::uk ? "egg EU/UK " : "egg US ";
    if (const IngredientRow* row = row_named(where + size)) {
        return row;
    }
    const IngredientRow* elsewhere = row_named("egg US " + size);
    return elsewhere != nullptr ? elsewhere : row_named("egg");
}

std::string IngredientReader::words(TokenRange range) const {
    std::string out;
    for (std::size_t at = range.begin; at < range.end; ++at) {
        const Token& token = layout_.tokens[at];
        if (token.kind == TokenKind::mark) {
            continue;
        }
        const std::string word =
            token.kind == TokenKind::number ? tidy(text_, token.span) : token.text;
        if (!out.empty()) {
            out += token.hyphenated ? "-" : " ";
        }
        out += word;
    }
    return out;
}

// The item's own words: the match and the describing words before it, back to the amount or a word
// that is not about it.
TokenRange IngredientReader::item_words(TokenRange match, std::size_t from) const {
    std::size_t begin = match.begin;
    while (begin > from && begin + 6 > match.begin) {
        const Token& before = layout_.tokens[begin - 1];
        const bool stops =
            before.kind != TokenKind::word ||
            is_any_word(before,
                        {"of",   "the", "a",    "an",   "and",  "or",     "with", "to",   "in",
                         "add",  "for", "plus", "some", "more", "enough", "all",  "your", "as",
                         "that", "use", "put",  "pour", "into", "from",   "be",   "it",   "each"});
        if (stops) {
            break;
        }
        --begin;
    }
    return TokenRange{begin, match.end};
}

// "lukewarm water", "water at blood heat", "milk, about 38 °C".
std::optional<TemperatureRange>
IngredientReader::warmth_beside(TokenRange item, std::optional<TokenRange> within) const {
    const auto& tokens = layout_.tokens;
    const TokenRange bounds = within.value_or(TokenRange{0, tokens.size()});
    const std::size_t from = std::max(bounds.begin, item.begin > 3 ? item.begin - 3 : 0);
    const std::size_t to = std::min(bounds.end, item.end + 6);
    std::size_t begin = item.begin;
    while (begin > from && tokens[begin - 1].kind == TokenKind::word) {
        --begin;
    }
    std::size_t end = item.end;
    while (end < to && !is_mark(tokens[end], '.') && !is_mark(tokens[end], ';') &&
           !is_word(tokens[end], "and")) {
        ++end;
    }
    for (const TemperaturePhrase& figure : temperatures_in(tokens, TokenRange{item.end, end})) {
        if (figure.middle() < 90) {
            return TemperatureRange{figure.low, figure.high};
        }
    }
    const WarmthWordRow* best = nullptr;
    for (std::size_t at = begin; at < end; ++at) {
        if (tokens[at].kind != TokenKind::word || warmth_openings_.count(tokens[at].text) == 0) {
            continue;
        }
        for (const WarmthWordRow& row : knowledge_.warmth_words) {
            const bool fits = row.of_liquid && starts_at(row.words, at, end) &&
                              (best == nullptr || row.words.size() > best->words.size());
            best = fits ? &row : best;
        }
    }
    if (best == nullptr) {
        return std::nullopt;
    }
    return TemperatureRange{best->temperature.low, best->temperature.high};
}

bool IngredientReader::starts_at(std::string_view words, std::size_t at, std::size_t end) const {
    while (!words.empty()) {
        const std::size_t blank = std::min(words.find_first_of(" -"), words.size());
        if (at >= end || !is_word(layout_.tokens[at], words.substr(0, blank))) {
            return false;
        }
        ++at;
        words.remove_prefix(std::min(blank + 1, words.size()));
    }
    return true;
}

void IngredientReader::describe(FoundIngredient& found,
                                const Match& match,
                                const Amounts& amounts,
                                std::size_t words_from,
                                TokenRange within) const {
    const std::vector<Measure>& measures = amounts.measures;
    const TokenRange own = item_words(match.range, words_from);
    found.ingredient.item = words(own);
    const IngredientRow* row = row_named(match.row->means);
    // "oatmeal" is rolled in America, milled in Britain.
    if (const auto here = regional_names_.find(words(match.range)); here != regional_names_.end()) {
        const bool told = (region_ == Region::us && here->second.second == "US") ||
                          (region_ == Region::uk && here->second.second == "UK");
        row = told ? here->second.first : row;
    }
    // A cake of "yeast" is compressed, whatever the word alone means.
    const bool in_cakes = !measures.empty() && measures.front().unit != nullptr &&
                          (measures.front().unit->unit.find("yeast cake") == 0 ||
                           measures.front().unit->unit.find("yeast block") == 0);
    if (in_cakes && words(match.range) == "yeast") {
        row = row_named("fresh yeast");
    }
    const bool whole_egg = row != nullptr && row->role == "egg" && row->item.find("egg") == 0 &&
                           row->item != "egg white" && row->item != "egg yolk";
    if (whole_egg) {
        if (const IngredientRow* sized =
                egg_row(TokenRange{own.begin > 3 ? own.begin - 3 : 0, own.end})) {
            row = sized;
        }
    }
    // Yeast by the spoon or cup in a text that knows no packets is the liquid kind.
    const bool yeast = row != nullptr && row->role == "yeast";
    if (yeast && !measures.empty() && measures.front().dimension == Dimension::volume &&
        (found.ingredient.item == "yeast" || row->item == "liquid barm")) {
        found.vague_yeast = true;
    }
    found.ingredient.about = !measures.empty() && measures.front().about;
    found.ingredient.temperature = warmth_beside(match.range, within);
    found.ingredient.known_as = row == nullptr ? "" : std::string(row->item);
    found.ingredient.grams = found.vague_yeast ? std::nullopt : grams_of(amounts, row, found);
}

// "two eggs", "a lemon"; not "a butter knife", not "a flour": a bare number counts only for what is
// sold by the piece, an article only for what is a thing of its own.
bool IngredientReader::sold_by_the_piece(const Match& match, const Measure& measure) const {
    const IngredientRow* row = row_named(match.row->means);
    if (row == nullptr || (!row->per_piece && row->role != "egg")) {
        return false;
    }
    if (lexicon_.at("thing", layout_.tokens, layout_.ids, match.range.begin, layout_.tokens.size())
            .row != nullptr) {
        return false;
    }
    const bool one = measure.amount.likely == 1.0;
    const bool named = words(match.range).find(row->piece_name) != std::string::npos;
    const bool own_piece = row->piece_name.empty() || named || row->role == "egg" ||
                           row->item.find(row->piece_name) != std::string_view::npos;
    return own_piece || !one;
}

std::vector<FoundIngredient> IngredientReader::in_prose(TokenRange range) const {
    const auto& tokens = layout_.tokens;
    std::vector<FoundIngredient> all;
    std::size_t at = range.begin;
    std::size_t floor = range.begin; // the end of the last ingredient, to look back to
    while (at < range.end) {
        const bool may_begin =
            tokens[at].kind == TokenKind::number || tokens[at].kind == TokenKind::word;
        Amounts amounts = may_begin ? amounts_at(at, range.end) : Amounts{};
        if (amounts.measures.empty()) {
            ++at;
            continue;
        }
        const bool has_unit = amounts.measures.front().unit != nullptr;
        // "a dough", "the one": an article or a bare number counts only right before a thing sold
        // by the piece.
        Match match;
        std::size_t probe = amounts.range.end;
        const std::size_t reach = has_unit ? longest_reach : 4;
        for (; probe < std::min(range.end, amounts.range.end + reach); ++probe) {
            match = lexicon_.at("ingredient", tokens, layout_.ids, probe, range.end);
            const bool bracketed =
                has_unit && probe == amounts.range.end && is_mark(tokens[probe], '(');
            const bool stops =
                tokens[probe].kind == TokenKind::mark || tokens[probe].kind == TokenKind::number ||
                is_any_word(tokens[probe],
                            {"and",  "minus", "less", "however", "to",   "in",    "into",
                             "for",  "until", "till", "the",     "each", "every", "or",
                             "with", "from",  "on",   "at",      "when", "is",    "are"});
            if (match.row != nullptr || (stops && !bracketed)) {
                break;
            }
        }
        if (match.row != nullptr && !has_unit &&
            !sold_by_the_piece(match, amounts.measures.front())) {
            match.row = nullptr;
        }
        const bool restated = amounts.range.end < range.end &&
                              is_any_word(tokens[amounts.range.end], {"minus", "less"});
        const bool article = is_any_word(tokens[amounts.range.begin], {"a", "an"});
        if (match.row == nullptr && has_unit && !article &&
            amounts.measures.front().unit->unit != "part") {
            // "as much milk as is required to work it, about two cups": the item stands before its
            // amount in the same sentence.
            const std::size_t back =
                amounts.range.begin > floor + 14 ? amounts.range.begin - 14 : floor;
            for (std::size_t token = back; token + 2 < amounts.range.begin; ++token) {
                // "as much milk as the flour takes": the milk, not the flour.
                if (is_word(tokens[token], "as") && is_word(tokens[token + 1], "much")) {
                    match = lexicon_.at(
                        "ingredient", tokens, layout_.ids, token + 2, amounts.range.begin);
                }
            }
            for (std::size_t token = match.row == nullptr ? amounts.range.begin : back;
                 token > back;
                 --token) {
                if (is_mark(tokens[token - 1], '.') || is_mark(tokens[token - 1], ';')) {
                    break;
                }
                const Match before =
                    lexicon_.at("ingredient", tokens, layout_.ids, token - 1, amounts.range.begin);
                if (before.row != nullptr) {
                    match = before;
                    break;
                }
            }
            const bool thing =
                amounts.range.end < range.end && is_any_word(tokens[amounts.range.end],
                                                             {"tin",
                                                              "tins",
                                                              "loaf",
                                                              "loaves",
                                                              "pan",
                                                              "bowl",
                                                              "pieces",
                                                              "piece",
                                                              "balls",
                                                              "portions"});
            // "an oiled 2lb tin" holds two pounds, and nothing that is named before it.
            const bool vessel =
                is_any_word(tokens[amounts.range.end - 1], {"tin", "tins", "pan", "pans"});
            if (thing || vessel) {
                match.row = nullptr;
            }
        }
        if (match.row == nullptr || restated) {
            at = std::max(amounts.range.end, at + 1);
            continue;
        }
        FoundIngredient found;
        const bool after = match.range.begin >= amounts.range.end;
        found.range = after ? TokenRange{amounts.range.begin, match.range.end}
                            : TokenRange{match.range.begin, amounts.range.end};
        describe(found, match, amounts, after ? amounts.range.end : match.range.begin, range);
        found.ingredient.span = span_of(tokens, found.range);
        found.ingredient.text = tidy(text_, *found.ingredient.span);
        floor = found.range.end;
        at = std::max(found.range.end, at + 1);
        all.push_back(std::move(found));
    }
    return all;
}

std::vector<Mention> IngredientReader::mentions(TokenRange range) const {
    const auto& tokens = layout_.tokens;
    std::vector<Mention> all;
    for (const Match& match : lexicon_.find("ingredient", tokens, layout_.ids, range)) {
        Mention mention;
        mention.known_as = std::string(match.row->means);
        mention.item = words(match.range);
        mention.range = match.range;
        // "half (of) the flour", "a third of the water", "the rest of the salt", "remaining flour"
        std::size_t before = match.range.begin;
        const std::size_t least = before > range.begin + 6 ? before - 6 : range.begin;
        for (std::size_t at = before; at > least; --at) {
            const Token& token = tokens[at - 1];
            if (token.kind == TokenKind::mark && !is_dash(token)) {
                break;
            }
            if (is_any_word(token, {"rest", "remaining", "remainder", "remains"})) {
                mention.share = -1.0; // what is left; resolved when all uses are known
                break;
            }
            const auto number = single_number(tokens, at - 1, before);
            if (number && !number->article && number->low > 0.0 && number->low < 1.0 &&
                number->range.end < before &&
                is_any_word(tokens[number->range.end], {"of", "the", "your"})) {
                mention.share = number->low;
                break;
            }
        }
        all.push_back(std::move(mention));
    }
    return all;
}

} // namespace loafwright::reading

// SPDX-License-Identifier: Apache-2.0
//
// Ingredients from list lines and from running text by one grammar: amounts (one or several for the
// same thing), then the words of the item, found by the longest name in the ingredient table. When
// the text gives the same amount twice, a weight outranks a metric volume outranks cups and spoons;
// a difference of more than a tenth is kept and asked about. In running text an amount counts only
// with a known item beside it: nothing is made up from "2 inches" or "three times".
#include "engine/reading/ingredient.hpp"

#include "engine/reading/number.hpp"
#include "engine/reading/temperature.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace loafwright::reading {
namespace {

bool any_of(const Token& token, std::initializer_list<std::string_view> words) {
    if (token.kind != TokenKind::word) {
        return false;
    }
    return std::any_of(
        words.begin(), words.end(), [&](std::string_view word) { return token.text == word; });
}

bool is_joiner(const Token& token) {
    return is_mark(token, '(') || is_mark(token, '/') || is_mark(token, ')') ||
           is_mark(token, '=') || is_mark(token, '[') || is_mark(token, ',') ||
           any_of(token, {"or", "about", "appr", "approx", "ie"});
}

// A weight outranks a metric volume outranks cups and spoons outranks pieces.
int rank_of(const Measure& measure) {
    if (measure.dimension == Dimension::mass) {
        const bool packet = measure.unit != nullptr &&
                            (measure.unit->unit.find("yeast") != std::string_view::npos ||
                             measure.unit->unit.find("sachet") != std::string_view::npos);
        return packet ? 1 : 4;
    }
    if (measure.dimension == Dimension::volume) {
        const bool metric =
            measure.unit != nullptr && measure.unit->unit.find("litre") != std::string_view::npos;
        return metric ? 3 : 2;
    }
    return 0;
}

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
    }
    for (const WarmthWordRow& row : knowledge_.warmth_words) {
        warmth_openings_.insert(row.words.substr(0, row.words.find_first_of(" -")));
    }
}

const IngredientRow* IngredientReader::row_named(std::string_view item) const {
    const auto found = rows_.find(item);
    return found == rows_.end() ? nullptr : found->second;
}

// Sizes of eggs differ by region: the words "large" and "medium" choose the row.
const IngredientRow* IngredientReader::egg_row(TokenRange range) const {
    std::string_view size = region_ == Region::uk ? "medium" : "large";
    for (std::size_t at = range.begin; at < range.end; ++at) {
        if (any_of(layout_.tokens[at], {"small", "medium", "large"})) {
            size = layout_.tokens[at].text;
        }
    }
    const std::string where = region_ == Region::uk ? "egg EU/UK " : "egg US ";
    if (const IngredientRow* row = row_named(where + std::string(size))) {
        return row;
    }
    for (const IngredientRow& row : knowledge_.ingredients) {
        if (row.role == "egg" && row.per_piece && row.item.find(size) != std::string_view::npos) {
            return &row;
        }
    }
    return row_named("egg");
}

// One amount, or several for the same thing: "600g or 5 cups", "1 packet (appr. 2 1/4 tsp or 7g)",
// "350ml/12fl oz".
IngredientReader::Amounts IngredientReader::amounts_at(std::size_t at, std::size_t end) const {
    Amounts amounts;
    amounts.range = TokenRange{at, at};
    std::size_t from = at;
    while (from < end) {
        const auto measure = measure_at(layout_.tokens, from, end, units_, region_);
        if (!measure) {
            break;
        }
        if (!amounts.measures.empty() && measure->unit == nullptr) {
            break; // "1 cup or two eggs" is no second amount of the cup
        }
        amounts.measures.push_back(*measure);
        amounts.range.end = measure->range.end;
        from = measure->range.end;
        std::size_t probe = from;
        while (probe < end && probe < from + 4 && is_joiner(layout_.tokens[probe])) {
            ++probe;
        }
        // "2 1/4 tsp or 7g) active dry yeast", "1 packet (appr. 2 1/4 tsp": a further amount
        // directly behind joining marks.
        if (probe == from) { // "7 g sachet": the second unit is the packet of the first
            std::size_t next = from;
            bool ignored = false;
            const UnitRow* packet = units_.at(layout_.tokens, from, end, region_, next, ignored);
            if (packet != nullptr && measure->unit != nullptr && packet != measure->unit &&
                rank_of(*measure) == 4) {
                amounts.range.end = next;
                from = next;
                probe = from;
                while (probe < end && probe < from + 3 && is_joiner(layout_.tokens[probe])) {
                    ++probe;
                }
            }
            if (probe == from) {
                break;
            }
        }
        const bool comma_only = probe == from + 1 && is_mark(layout_.tokens[from], ',');
        const auto further = measure_at(layout_.tokens, probe, end, units_, region_);
        if (!further || further->unit == nullptr || comma_only) {
            break;
        }
        from = probe;
    }
    while (amounts.range.end < end && !amounts.measures.empty() &&
           is_mark(layout_.tokens[amounts.range.end], ')')) {
        ++amounts.range.end;
    }
    return amounts;
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
            any_of(before, {"of",   "the", "a",    "an",   "and",  "or",     "with", "to",   "in",
                            "add",  "for", "plus", "some", "more", "enough", "all",  "your", "as",
                            "that", "use", "put",  "pour", "into", "from",   "be",   "it"});
        if (stops) {
            break;
        }
        --begin;
    }
    return TokenRange{begin, match.end};
}

std::optional<Band<Grams>> IngredientReader::grams_of(const std::vector<Measure>& measures,
                                                      const IngredientRow* row,
                                                      FoundIngredient& found) const {
    std::optional<Band<Grams>> best;
    int best_rank = -1;
    std::optional<double> least;
    std::optional<double> most;
    for (const Measure& measure : measures) {
        const auto grams = weigh(measure, row);
        if (!grams) {
            continue;
        }
        const double middle = grams->likely.count();
        least = least ? std::min(*least, middle) : middle;
        most = most ? std::max(*most, middle) : middle;
        const int rank = rank_of(measure);
        if (rank > best_rank) {
            best = grams;
            best_rank = rank;
            found.regional = measure.by_region;
            found.by_region = measure.by_region && region_ == Region::unknown;
        }
    }
    if (least && most && *least > 0 && *most / *least > 1.1 && measures.size() > 1) {
        found.disagreement = *most / *least;
    }
    return best;
}

// "lukewarm water", "water at blood heat", "milk, about 38 °C".
std::optional<TemperatureRange> IngredientReader::warmth_beside(TokenRange item) const {
    const auto& tokens = layout_.tokens;
    const std::size_t from = item.begin > 3 ? item.begin - 3 : 0;
    const std::size_t to = std::min(tokens.size(), item.end + 6);
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
                                const std::vector<Measure>& measures,
                                std::size_t words_from) const {
    const TokenRange own = item_words(match.range, words_from);
    found.ingredient.item = words(own);
    const IngredientRow* row = row_named(match.row->means);
    if (row != nullptr && row->role == "egg" && row->item.find("white") == std::string_view::npos &&
        row->item.find("yolk") == std::string_view::npos) {
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
    found.ingredient.temperature = warmth_beside(match.range);
    found.ingredient.known_as = row == nullptr ? "" : std::string(row->item);
    found.ingredient.grams = found.vague_yeast ? std::nullopt : grams_of(measures, row, found);
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
    found.ingredient.optional = lexicon_.holds("optional", "", tokens, layout_.ids, range);
    // The first amount outside a remark, wherever it stands in the line.
    Amounts amounts;
    for (std::size_t at = range.begin; at < range.end && amounts.measures.empty(); ++at) {
        const bool number = tokens[at].kind == TokenKind::number || is_hedge(tokens[at]) ||
                            single_number(tokens, at, range.end).has_value();
        if (number || is_mark(tokens[at], '.')) {
            amounts = amounts_at(at, range.end);
            const bool bare_article =
                amounts.measures.size() == 1 && amounts.measures.front().unit == nullptr &&
                (is_word(tokens[at], "a") || is_word(tokens[at], "an")) && at != range.begin;
            if (bare_article) {
                amounts.measures.clear();
            }
        }
    }
    Match best;
    std::size_t depth = 0;
    for (std::size_t at = range.begin; at < range.end; ++at) {
        depth += is_mark(tokens[at], '(') ? 1U : 0U;
        depth -= is_mark(tokens[at], ')') && depth > 0 ? 1U : 0U;
        const bool inside_amount =
            !amounts.measures.empty() && at >= amounts.range.begin && at < amounts.range.end;
        if (inside_amount || depth > 0) {
            continue;
        }
        const Match match = lexicon_.at("ingredient", tokens, layout_.ids, at, range.end);
        if (match.row != nullptr) {
            // "rye or whole wheat flour": the noun at the end belongs to the first word too.
            best = match;
            break;
        }
    }
    const std::size_t words_from = amounts.measures.empty() || amounts.range.begin > range.begin
                                       ? range.begin
                                       : amounts.range.end;
    if (best.row != nullptr) {
        describe(found, best, amounts.measures, words_from);
        if (amounts.measures.empty()) {
            const IngredientRow* row = row_named(found.ingredient.known_as);
            found.salt_without_amount = row != nullptr && row->role == "salt";
        }
        return found;
    }
    // Not in the table: its own words up to the first mark.
    std::size_t end = words_from;
    while (end < range.end && !(tokens[end].kind == TokenKind::mark && !is_dash(tokens[end])) &&
           !(end > words_from && any_of(tokens[end], {"for", "to", "or", "if"}))) {
        ++end;
    }
    std::size_t begin = words_from;
    while (begin < end &&
           (any_of(tokens[begin], {"of", "the"}) || tokens[begin].kind == TokenKind::mark)) {
        ++begin;
    }
    found.ingredient.item = words(TokenRange{begin, end});
    if (found.ingredient.item.empty()) {
        return std::nullopt;
    }
    found.ingredient.grams = grams_of(amounts.measures, nullptr, found);
    return found;
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
                any_of(tokens[probe], {"and",  "minus", "less", "however", "to",   "in",    "into",
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
        const bool restated =
            amounts.range.end < range.end && any_of(tokens[amounts.range.end], {"minus", "less"});
        const bool article = any_of(tokens[amounts.range.begin], {"a", "an"});
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
            const bool thing = amounts.range.end < range.end && any_of(tokens[amounts.range.end],
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
            if (thing) {
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
        describe(found, match, amounts.measures, after ? amounts.range.end : match.range.begin);
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
            if (any_of(token, {"rest", "remaining", "remainder", "remains"})) {
                mention.share = -1.0; // what is left; resolved when all uses are known
                break;
            }
            const auto number = single_number(tokens, at - 1, before);
            if (number && !number->article && number->low > 0.0 && number->low < 1.0 &&
                number->range.end < before &&
                any_of(tokens[number->range.end], {"of", "the", "your"})) {
                mention.share = number->low;
                break;
            }
        }
        all.push_back(std::move(mention));
    }
    return all;
}

} // namespace loafwright::reading

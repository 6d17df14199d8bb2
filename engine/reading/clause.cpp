// SPDX-License-Identifier: Apache-2.0
//
// Blocks to sentences to clauses. A sentence is cut before every verb that is used as an order; a
// verb is an order by where it stands
// ("and knead"), not by what it is: after an article it is a noun ("the bake"), after "until" or
// "when" it tells a state, in another form than the base it mostly tells what was done before.
// Dependent parts keep their kind, because "until doubled" is a cue, "before baking" an anchor and
// "if you like" a choice.
#include "engine/reading/clause.hpp"

#include "engine/reading/clause_links.hpp"
#include "engine/reading/labels.hpp"
#include "engine/reading/number.hpp"
#include "engine/reading/order.hpp"
#include "engine/reading/sentence.hpp"

#include <algorithm>
#include <array>
#include <string_view>

namespace loafwright::reading {
namespace {

using Words = std::initializer_list<std::string_view>;

bool ends_with(std::string_view text, std::string_view tail) {
    return text.size() > tail.size() && text.substr(text.size() - tail.size()) == tail;
}

struct FoundAction {
    Match match;
    double doubt = 0.0;
    bool by_setting = false;
    bool negated = false;
    std::size_t lead =
        0; // where its piece of the sentence begins, for one told by a setting; 0: unsaid
};

// Words that are part of a thing's name ("baking sheet", "oven rack") are no verbs and no places:
// the ids of a text with those words blanked.
class Things {
public:
    Things(const Layout& layout, const Lexicon& lexicon) : ids_(layout.ids) {
        const TokenRange all{0, layout.tokens.size()};
        for (const Match& thing : lexicon.find("thing", layout.tokens, layout.ids, all)) {
            // A "noun" keeps its last word: the sheet of a baking sheet is a place to put a loaf.
            const std::size_t end = thing.range.end - (thing.row->means == "noun" ? 1U : 0U);
            for (std::size_t at = thing.range.begin; at < end; ++at) {
                if (ids_[at].exact != 0 || ids_[at].base != 0) {
                    ids_[at] = WordIds{};
                }
                masked_.push_back(at);
            }
        }
    }

    [[nodiscard]] const std::vector<WordIds>& ids() const { return ids_; }
    [[nodiscard]] bool masked(std::size_t at) const {
        return std::binary_search(masked_.begin(), masked_.end(), at);
    }

private:
    std::vector<WordIds> ids_;
    std::vector<std::size_t> masked_; // in order
};

// One sentence's worth of state while it is being cut.
class SentenceCutter {
public:
    SentenceCutter(const Layout& layout,
                   const Lexicon& lexicon,
                   const Things& things,
                   std::size_t block,
                   std::size_t sentence,
                   TokenRange range)
        : tokens_(layout.tokens), ids_(layout.ids), lexicon_(lexicon), things_(things),
          label_(layout.blocks[block].label), block_(block), sentence_(sentence), range_(range) {}

    void cut(std::vector<Clause>& out) {
        find_subs();
        find_actions();
        std::vector<Clause> clauses;
        std::size_t begin = range_.begin;
        for (std::size_t index = 0; index < actions_.size(); ++index) {
            const std::size_t end = index + 1 < actions_.size()
                                        ? boundary(actions_[index], actions_[index + 1])
                                        : range_.end;
            clauses.push_back(made(TokenRange{begin, end}, &actions_[index]));
            begin = end;
        }
        if (actions_.empty()) {
            clauses.push_back(made(range_, nullptr));
        }
        const std::optional<std::size_t> trouble = trouble_opens();
        for (Clause& clause : clauses) {
            fill(clause, tells_minutes(out));
            clause.remedy = trouble && clause.range.end > *trouble;
            out.push_back(std::move(clause));
        }
    }

private:
    // until…, when…, before…: from the introducing word to the next mark, or to a verb that stands
    // as an order.
    void find_subs() {
        std::size_t at = range_.begin;
        while (at < range_.end) {
            const auto kind = sub_kind(at);
            if (!kind) {
                ++at;
                continue;
            }
            std::size_t end = at + 1;
            bool subject = *kind == SubKind::relative;
            // Its own verb has been seen ("before putting…"): a base form after it is an order.
            bool finite = *kind != SubKind::until && at + 1 < range_.end &&
                          ends_with(tokens_[at + 1].text, "ing");
            while (end < range_.end) {
                if (tokens_[end].kind == TokenKind::mark && !is_mark(tokens_[end], '-') &&
                    !is_mark(tokens_[end], '/') && !is_mark(tokens_[end], '\'') &&
                    !is_mark(tokens_[end], '"')) {
                    break;
                }
                if (end > at + 1 && sub_kind(end)) {
                    break;
                }
                const bool opens = is_any_word(tokens_[end - 1], {"and", "then", "or"}) ||
                                   is_word(tokens_[end], "then");
                const Match action = lexicon_.at("action", tokens_, things_.ids(), end, range_.end);
                const bool base = action.row != nullptr && action.head == Inflection::none;
                if (base && opens && !is_word(tokens_[end - 1], "or")) {
                    break;
                }
                const bool leads = *kind != SubKind::until;
                const bool bound =
                    is_any_word(tokens_[end - 1],
                                {"and", "or", "to", "not", "will", "can", "they", "you"}) ||
                    ends_with(tokens_[end - 1].text, "ing") || tokens_[end].hyphenated;
                // "When light add…": no subject has been named, so the verb is an order; "when it
                // has risen turn it…", "as the water cools add…": the part has its verb already.
                if (base && leads && end > at + 1 && !bound && (!subject || finite)) {
                    break;
                }
                finite = finite ||
                         is_any_word(tokens_[end], {"is", "are", "has", "have", "was", "were"}) ||
                         (action.row != nullptr &&
                          (action.head == Inflection::s || action.head == Inflection::ed));
                subject =
                    subject ||
                    is_any_word(tokens_[end],
                                {"it",    "they", "dough",      "loaf",    "loaves", "rolls",
                                 "you",   "oven", "yeast",      "mixture", "sponge", "bread",
                                 "water", "milk", "batter",     "buns",    "top",    "this",
                                 "that",  "the",  "crust",      "each",    "pieces", "surface",
                                 "both",  "all",  "everything", "there"});
                ++end;
            }
            subs_.push_back({*kind, TokenRange{at, end}});
            at = std::max(end, at + 1);
        }
    }

    [[nodiscard]] std::optional<SubKind> sub_kind(std::size_t at) const {
        const Token& token = tokens_[at];
        const auto next_is = [&](Words words) {
            return at + 1 < range_.end && is_any_word(tokens_[at + 1], words);
        };
        if (is_any_word(token, {"until", "till", "til"})) {
            return SubKind::until;
        }
        if (is_any_word(token, {"when", "once", "whenever"})) {
            if (is_word(token, "once") && (next_is({"more", "again", "or", "a"}) ||
                                           (at > range_.begin && is_word(tokens_[at - 1], "at")))) {
                return std::nullopt;
            }
            return SubKind::when;
        }
        if (is_word(token, "as") && next_is({"soon"})) {
            return SubKind::when;
        }
        if (is_word(token, "after")) {
            const bool time =
                at + 1 < range_.end && (number_phrase(tokens_, at + 1, range_.end).has_value() ||
                                        next_is({"the", "about"}));
            return time ? std::nullopt : std::optional<SubKind>(SubKind::after);
        }
        if (is_word(token, "before")) {
            return SubKind::before;
        }
        if (is_any_word(token, {"while", "whilst"}) ||
            (is_word(token, "as") && next_is({"it", "they", "the", "you"}))) {
            return SubKind::meanwhile;
        }
        if (is_any_word(token, {"if", "unless"})) {
            return SubKind::condition;
        }
        if (is_word(token, "which") && next_is({"must", "should", "may", "are"})) {
            return std::nullopt; // "which must stand an hour" orders
        }
        if (is_word(token, "which") && at > range_.begin && is_mark(tokens_[at - 1], ',') &&
            at + 1 < range_.end) { // ", which beat for a quarter of an hour" does too
            const Match verb = lexicon_.at("action", tokens_, things_.ids(), at + 1, range_.end);
            if (verb.row != nullptr && verb.head == Inflection::none) {
                return std::nullopt;
            }
        }
        if (is_any_word(token, {"which", "who", "because", "since", "so"}) ||
            (is_word(token, "that") && at > range_.begin &&
             tokens_[at - 1].kind == TokenKind::word &&
             next_is({"has", "have", "is", "are", "can", "will", "was", "were", "you", "it"}))) {
            return SubKind::relative;
        }
        return std::nullopt;
    }

    [[nodiscard]] const SubClause* sub_at(std::size_t token) const {
        for (const SubClause& sub : subs_) {
            if (token >= sub.range.begin && token < sub.range.end) {
                return &sub;
            }
        }
        return nullptr;
    }

    void find_actions() {
        if (lexicon_.holds("story", "", tokens_, ids_, range_) || narrates()) {
            return;
        }
        std::size_t at = range_.begin;
        while (at < range_.end) {
            if (tokens_[at].kind != TokenKind::word) {
                ++at;
                continue;
            }
            if (things_.masked(
                    at)) { // "second rise: 45 minutes" is a place in the order, not an order
                const Match setting = lexicon_.at("setting", tokens_, ids_, at, range_.end);
                if (setting.row != nullptr && setting.range.end > at + 1 && sub_at(at) == nullptr) {
                    FoundAction found;
                    found.match = setting;
                    found.by_setting = true;
                    settings_.push_back(found);
                }
                ++at;
                continue;
            }
            const Match match = lexicon_.at("action", tokens_, things_.ids(), at, range_.end);
            const Order order = match.row == nullptr ? Order{} : order_of(match);
            if (!order.is_order) {
                const Match setting = lexicon_.at("setting", tokens_, ids_, at, range_.end);
                if (setting.row != nullptr && sub_at(at) == nullptr) {
                    FoundAction found;
                    found.match = setting;
                    found.by_setting = true;
                    settings_.push_back(found);
                }
                ++at;
                continue;
            }
            if (order.is_order) {
                FoundAction found;
                found.match = match;
                found.doubt = order.doubt;
                found.negated = order.negated;
                if (!order.only_purpose) {
                    actions_.push_back(found);
                } else if (match.row->means == "activate" || match.row->means == "preheat") {
                    purposes_.push_back(found); // other purposes are never the step itself
                }
            }
            at = order.is_order && !order.only_purpose ? std::max(match.range.end, at + 1) : at + 1;
        }
        add_settings_between();
        // A place or a purpose tells an action only where the sentence has no other: "three
        // quarters of an hour in the oven", "follow the packet to activate the yeast".
        if (actions_.empty() && !purposes_.empty()) {
            actions_.push_back(purposes_.front());
        } else if (actions_.empty() && !settings_.empty()) {
            actions_.push_back(settings_.front());
        }
        // "240 °C for the first 15 minutes, then 190 °C for 45": nothing but an oven is so hot.
        if (actions_.empty() && tells_an_oven()) {
            FoundAction found;
            found.match.row = lexicon_.first("bare heat");
            found.match.range = TokenRange{range_.begin, range_.begin + 1};
            found.match.weight = found.match.row == nullptr ? 0.0 : found.match.row->weight;
            if (found.match.row != nullptr) {
                actions_.push_back(found);
            }
        }
        // "**Second rise.** 30 minutes.": the label is all the verb there is.
        if (actions_.empty() && label_ != nullptr && !durations_in(tokens_, range_).empty()) {
            FoundAction found;
            found.match.row = label_;
            found.match.range = TokenRange{range_.begin, range_.begin + 1};
            found.match.weight = label_->weight;
            actions_.push_back(found);
        }
    }

    [[nodiscard]] bool tells_an_oven() const {
        bool hot = false;
        for (const TemperaturePhrase& heat : temperatures_in(tokens_, range_)) {
            hot = hot || heat.middle() >= 140.0;
        }
        return hot && !durations_in(tokens_, range_).empty();
    }

    // "…, and in five hours the batter will be light": a piece of the sentence with a time but
    // without an order tells its step by a place or a state.
    void add_settings_between() {
        if (actions_.empty()) {
            return;
        }
        for (const FoundAction& setting : settings_) {
            TokenRange piece = setting.match.range;
            const auto parts = [this](std::size_t at) {
                return tokens_[at].kind == TokenKind::mark && !is_mark(tokens_[at], '-') &&
                       !is_mark(tokens_[at], '/') && !is_mark(tokens_[at], '\'') &&
                       !is_mark(tokens_[at], '(') && !is_mark(tokens_[at], ')');
            };
            while (piece.begin > range_.begin && !parts(piece.begin - 1)) {
                --piece.begin;
            }
            while (piece.end < range_.end && !parts(piece.end)) {
                ++piece.end;
            }
            const bool ordered =
                std::any_of(actions_.begin(), actions_.end(), [&](const FoundAction& action) {
                    return action.match.range.begin < piece.end &&
                           piece.begin < action.match.range.end;
                });
            const bool other_way = is_word(tokens_[piece.begin], "or");
            if (ordered || other_way || durations_in(tokens_, piece).empty()) {
                continue;
            }
            const auto place =
                std::find_if(actions_.begin(), actions_.end(), [&](const FoundAction& action) {
                    return action.match.range.begin > setting.match.range.begin;
                });
            FoundAction found = setting;
            found.lead = piece.begin;
            actions_.insert(place, found);
        }
    }

    // "which takes 45 minutes" and "until kneaded" tell, they do not order.
    [[nodiscard]] Order order_of(const Match& match) const {
        const std::size_t at = match.range.begin;
        const SubClause* sub = sub_at(at);
        if (sub != nullptr && at != sub->range.begin && !done_before(match, *sub)) {
            return Order{};
        }
        const bool mark_before = at > range_.begin && tokens_[at - 1].kind == TokenKind::mark &&
                                 !is_mark(tokens_[at - 1], '-') && !is_mark(tokens_[at - 1], '/');
        return judge_order(
            tokens_, range_, match, at == range_.begin || mark_before || sub_ends_at(at));
    }

    // "yeast that has been soaked fifteen minutes in warm water"
    [[nodiscard]] bool done_before(const Match& match, const SubClause& sub) const {
        const std::size_t at = match.range.begin;
        const TokenRange beside{at, std::min(sub.range.end, match.range.end + 6)};
        const std::string_view means = match.row->means;
        const auto kind = step_kind_named(means.substr(0, means.find_first_of("|?")));
        return kind && attention_of(*kind) == Attention::wait && sub.kind == SubKind::relative &&
               match.head == Inflection::ed && is_word(tokens_[at - 1], "been") &&
               !durations_in(tokens_, beside).empty();
    }

    [[nodiscard]] bool sub_ends_at(std::size_t at) const {
        return std::any_of(
            subs_.begin(), subs_.end(), [at](const SubClause& sub) { return sub.range.end == at; });
    }

    // Where the clause of one action ends and the next begins: at the last joining word or mark
    // between them, or before a dependent part that leads in the next ("while the oven heats,
    // brush").
    [[nodiscard]] std::size_t boundary(const FoundAction& left, const FoundAction& right) const {
        if (right.lead != 0) {
            return right.lead;
        }
        const std::size_t from = left.match.range.end;
        const std::size_t to = right.match.range.begin;
        std::size_t cut = std::max(from, left.match.range.begin + 1);
        std::size_t best = to;
        for (std::size_t at = to; at > cut; --at) {
            const Token& token = tokens_[at - 1];
            if (token.kind == TokenKind::mark && !is_dash(token) && !is_mark(token, '/') &&
                !is_mark(token, '"')) {
                best = at; // the mark stays on the left
                break;
            }
            if (is_any_word(token, {"and", "then", "but", "or"})) {
                best = at - 1;
                break;
            }
        }
        for (const SubClause& sub : subs_) {
            const bool leads = sub.kind == SubKind::when || sub.kind == SubKind::meanwhile ||
                               sub.kind == SubKind::condition || sub.kind == SubKind::before ||
                               sub.kind == SubKind::after;
            const bool opens =
                sub.range.begin > range_.begin &&
                (tokens_[sub.range.begin - 1].kind == TokenKind::mark ||
                 is_any_word(tokens_[sub.range.begin - 1], {"and", "then", "just", "shortly"}));
            if (leads && opens && sub.range.begin >= cut && sub.range.end <= to &&
                sub.range.end + 2 >= to) {
                best = std::min(best, sub.range.begin);
            }
        }
        return std::clamp(best, cut, to);
    }

    Clause made(TokenRange range, const FoundAction* action) const {
        Clause clause;
        clause.block = block_;
        clause.sentence = sentence_;
        clause.range = range;
        if (action != nullptr) {
            clause.action = action->match;
            clause.by_setting = action->by_setting;
            clause.doubt = action->doubt;
            clause.negated = action->negated;
        }
        return clause;
    }

    // "I set the alarm…, went up to see about the goat": somebody tells what happened.
    [[nodiscard]] bool narrates() const {
        std::size_t at = range_.begin;
        while (at < range_.end && tokens_[at].kind == TokenKind::mark) {
            ++at;
        }
        if (at + 1 >= range_.end || !is_any_word(tokens_[at], {"i", "we", "she", "he", "they"})) {
            return false;
        }
        const bool regular = ends_with(tokens_[at + 1].text, "ed") &&
                             !is_any_word(tokens_[at + 1], {"need", "feed"});
        for (std::size_t token = at + 1; token < range_.end; ++token) {
            const bool went_on = token > at + 1 && is_word(tokens_[token - 1], "and") &&
                                 ends_with(tokens_[token].text, "ed") &&
                                 tokens_[token].text.size() > 4;
            if (regular || went_on ||
                is_any_word(tokens_[token],
                            {"was",
                             "were",
                             "had",
                             "went",
                             "came",
                             "got",
                             "took",
                             "made",
                             "said",
                             "did",
                             "knew",
                             "thought",
                             "happened",
                             "didn't"})) {
                return true;
            }
        }
        return false;
    }

    // Where the sentence, or a remark in brackets, begins with a condition that names trouble.
    [[nodiscard]] std::optional<std::size_t> trouble_opens() const {
        for (const Match& match : lexicon_.find("trouble", tokens_, ids_, range_)) {
            const std::size_t at = match.range.begin;
            // "It should clean the bowl - if it doesn't, add flour."
            const bool opens = at <= range_.begin + 1 || is_mark(tokens_[at - 1], '(') ||
                               (is_dash(tokens_[at - 1]) && !tokens_[at].glued);
            const bool yeast = match.range.end < range_.end &&
                               is_any_word(tokens_[match.range.end], {"using", "used"});
            if (opens && !yeast) {
                return at;
            }
        }
        return std::nullopt;
    }

    // A length in minutes stands in this sentence already, or in the one before it.
    [[nodiscard]] bool tells_minutes(const std::vector<Clause>& before) const {
        for (auto clause = before.rbegin(); clause != before.rend() && clause->block == block_ &&
                                            clause->sentence + 1 >= sentence_;
             ++clause) {
            if (std::any_of(clause->durations.begin(), clause->durations.end(), in_minutes)) {
                return true;
            }
        }
        return false;
    }

    void fill(Clause& clause, bool minutes_told) const {
        for (const SubClause& sub : subs_) {
            if (sub.range.begin >= clause.range.begin && sub.range.begin < clause.range.end) {
                clause.subs.push_back(
                    {sub.kind,
                     TokenRange{sub.range.begin, std::min(sub.range.end, clause.range.end)}});
            }
        }
        clause.durations = durations_in(tokens_, clause.range, minutes_told);
        clause.clocks = clocks_in(tokens_, clause.range);
        clause.temperatures = temperatures_in(tokens_, clause.range);
        clause.cues = lexicon_.find("cue", tokens_, ids_, clause.range);
        clause.places = lexicon_.find("place", tokens_, ids_, clause.range);
        clause.nouns = lexicon_.find("noun", tokens_, ids_, clause.range);
        clause.facts = lexicon_.find("fact", tokens_, ids_, clause.range);
        clause.optional = lexicon_.holds("optional", "", tokens_, ids_, clause.range);
        clause.meanwhile = lexicon_.holds("meanwhile", "", tokens_, ids_, clause.range);
        if (clause.action) { // "you can then keep it in the fridge"
            const TokenRange lead{clause.range.begin, clause.action->range.begin};
            clause.optional =
                clause.optional || lexicon_.holds("permission", "", tokens_, ids_, lead);
        }
        const TokenRange opening{clause.range.begin,
                                 std::min(clause.range.end, clause.range.begin + 8)};
        clause.variant = lexicon_.holds("variant", "", tokens_, ids_, opening);
        clause.opens_variant = clause.variant;
        for (std::size_t at = opening.begin; clause.variant && at < opening.end; ++at) {
            clause.version = clause.version || is_mark(tokens_[at], ':');
        }
    }

    const std::vector<Token>& tokens_;
    const std::vector<WordIds>& ids_;
    const Lexicon& lexicon_;
    const Things& things_;
    const LexiconRow* label_; // what the block's label says is done, or null
    std::size_t block_;
    std::size_t sentence_;
    TokenRange range_;
    std::vector<SubClause> subs_;
    std::vector<FoundAction> actions_;
    std::vector<FoundAction> settings_;
    std::vector<FoundAction> purposes_;
};

} // namespace

std::vector<Clause> clauses_of(const Layout& layout, const Lexicon& lexicon) {
    std::vector<Clause> clauses;
    const Things things(layout, lexicon);
    std::size_t sentence = 0;
    for (std::size_t index = 0; index < layout.blocks.size(); ++index) {
        const Block& block = layout.blocks[index];
        if (block.role != BlockRole::method) {
            continue;
        }
        std::size_t begin = block.tokens.begin;
        for (std::size_t at = begin; at < block.tokens.end; ++at) {
            const bool last = at + 1 == block.tokens.end;
            if (last || at - begin >= longest_sentence ||
                ends_sentence(layout.tokens, begin, at, block.tokens.end) ||
                begins_sentence(layout.tokens, layout.ids, lexicon, at + 1, block.tokens.end)) {
                SentenceCutter(layout, lexicon, things, index, sentence, TokenRange{begin, at + 1})
                    .cut(clauses);
                begin = at + 1;
                sentence += is_mark(layout.tokens[at], ':') && !last ? 0U : 1U;
            }
        }
    }
    for (Clause& clause : clauses) {
        const auto& part = layout.blocks[clause.block].part;
        clause.part = part ? std::string_view(*part) : std::string_view();
        clause.label = layout.blocks[clause.block].label;
    }
    take_labels_away(layout, clauses);
    link_clauses(layout.tokens, clauses);
    return clauses;
}

} // namespace loafwright::reading

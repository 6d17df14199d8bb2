// SPDX-License-Identifier: Apache-2.0
//
// A verb is an order by where it stands, not by what it is. The base form is one at the start of a
// clause, after "and" or an adverb ("gently fold"); after an article it is a noun ("the bake"),
// after "to" a purpose. Other forms tell a state, unless somebody is told what must be done
// ("should be kneaded"). Old books and telegrams leave out words, so a verb after an adjective or a
// place ("when light add") counts too, with some doubt.
#include "engine/reading/order.hpp"

#include "engine/reading/duration.hpp"
#include "engine/reading/temperature.hpp"

#include <algorithm>
#include <string_view>

namespace loafwright::reading {
namespace {

using Words = std::initializer_list<std::string_view>;

bool is_adverb(const Token& token) {
    return token.kind == TokenKind::word && token.text.size() > 4 &&
           token.text.substr(token.text.size() - 2) == "ly";
}

class Judge {
public:
    Judge(const std::vector<Token>& tokens, TokenRange sentence, const Match& verb)
        : tokens_(tokens), sentence_(sentence), verb_(verb), at_(verb.range.begin) {}

    Order run(bool opens) {
        order_.negated = is_negated();
        const Token* before = at_ > sentence_.begin ? &tokens_[at_ - 1] : nullptr;
        const bool part_of_word =
            before != nullptr &&
            (tokens_[at_].hyphenated || (is_mark(*before, '/') && tokens_[at_].glued));
        if (part_of_word || alone_in_brackets()) {
            return order_;
        }
        switch (verb_.head) {
        case Inflection::none:
            order_.is_order = base(before, opens);
            break;
        case Inflection::s:
            order_.is_order = third_person(before);
            break;
        case Inflection::ed:
            order_.is_order = participle();
            break;
        case Inflection::ing:
            order_.is_order = gerund(before);
            break;
        }
        return order_;
    }

private:
    // "(autolyze)" names what has been said.
    [[nodiscard]] bool alone_in_brackets() const {
        return at_ > sentence_.begin && is_mark(tokens_[at_ - 1], '(') &&
               verb_.range.end < sentence_.end && is_mark(tokens_[verb_.range.end], ')');
    }

    [[nodiscard]] bool said_before(Words words, std::size_t reach) const {
        const std::size_t from = at_ > sentence_.begin + reach ? at_ - reach : sentence_.begin;
        for (std::size_t token = at_; token > from; --token) {
            if (tokens_[token - 1].kind == TokenKind::mark && !is_mark(tokens_[token - 1], '-')) {
                return false;
            }
            if (is_any_word(tokens_[token - 1], words)) {
                return true;
            }
        }
        return false;
    }

    [[nodiscard]] bool timed() const {
        return !durations_in(tokens_, TokenRange{at_, std::min(sentence_.end, at_ + 12)}).empty();
    }

    [[nodiscard]] bool rhythmic() const {
        const auto lengths =
            durations_in(tokens_, TokenRange{at_, std::min(sentence_.end, at_ + 12)});
        return std::any_of(lengths.begin(), lengths.end(), [](const DurationPhrase& length) {
            return length.role == DurationRole::every;
        });
    }

    [[nodiscard]] bool heated() const {
        return !temperatures_in(tokens_, TokenRange{at_, std::min(sentence_.end, at_ + 10)})
                    .empty();
    }

    // "In a large bowl mix…", "On a floured board knead…", "The next morning shape…": where or when
    // stands first.
    [[nodiscard]] bool behind_its_place(const Token& before) const {
        const std::size_t length = at_ - sentence_.begin;
        if (length < 2 || length > 7) {
            return false;
        }
        const Token& first = tokens_[sentence_.begin];
        const bool where =
            is_any_word(first, {"in", "into", "on", "using", "with"}) &&
            is_any_word(before,
                        {"bowl",      "basin",   "jug",       "pan",     "saucepan", "mixer",
                         "pot",       "dish",    "container", "box",     "tub",      "surface",
                         "board",     "worktop", "table",     "counter", "bench",    "machine",
                         "processor", "cup",     "measuring"});
        const bool when = is_any_word(first, {"in", "the", "next", "on", "that", "this"}) &&
                          is_any_word(before, {"morning", "evening", "afternoon", "day", "night"});
        return where || when;
    }

    bool base(const Token* before, bool opens) {
        if (said_before(
                {"expect", "watch", "see", "hear", "notice", "goal", "aim", "idea", "purpose"},
                6)) {
            return false;
        }
        if (opens || before == nullptr) {
            return true;
        }
        // A timetable: "09:30 Fold"; and "for the white dough mix…".
        const bool clock = at_ >= sentence_.begin + 3 && before->kind == TokenKind::number &&
                           is_mark(tokens_[at_ - 2], ':') && tokens_[at_ - 2].glued;
        const bool heading = is_word(tokens_[sentence_.begin], "for") &&
                             at_ <= sentence_.begin + 6 && at_ >= sentence_.begin + 3 &&
                             !is_any_word(*before, {"the", "a", "of"});
        if (clock || heading) {
            order_.doubt = clock ? 0.0 : 0.4;
            return true;
        }
        if (behind_its_place(*before)) {
            return true;
        }
        if (is_word(*before, "to")) {
            // "to keep it rising" is a purpose; "is to rise", "begin to knead" are orders.
            const bool order = at_ >= sentence_.begin + 2 && is_any_word(tokens_[at_ - 2],
                                                                         {"is",
                                                                          "are",
                                                                          "begin",
                                                                          "start",
                                                                          "set",
                                                                          "put",
                                                                          "left",
                                                                          "leave",
                                                                          "ready",
                                                                          "continue",
                                                                          "need",
                                                                          "needs",
                                                                          "want",
                                                                          "wants",
                                                                          "have"});
            order_.doubt = order ? 0.3 : 1.2;
            order_.only_purpose = !order && !timed();
            return true;
        }
        if (is_any_word(*before, {"will", "should", "would"})) {
            // "you should knead" orders, "it should form a dough" describes; with a length of time
            // it tells a step all the same.
            const bool baker =
                at_ >= sentence_.begin + 2 && is_any_word(tokens_[at_ - 2], {"you", "we", "i"});
            order_.doubt = baker ? 0.3 : 0.6;
            return baker || timed();
        }
        if (is_any_word(*before,
                        {"either",    "and",     "then",   "or",     "now",        "again",
                         "but",       "also",    "just",   "next",   "first",      "finally",
                         "lastly",    "must",    "please", "not",    "never",      "don't",
                         "dont",      "do",      "let",    "simply", "once",       "meanwhile",
                         "otherwise", "instead", "always", "only",   "afterwards", "later",
                         "morning",   "evening", "day",    "here",   "together",   "twice"}) ||
            is_adverb(*before)) {
            return true;
        }
        // "a dough you can stretch": what it is like, no order
        const bool told_of_it =
            is_any_word(*before, {"can", "could", "may"}) && at_ >= sentence_.begin + 3 &&
            is_word(tokens_[at_ - 2], "you") && tokens_[at_ - 3].kind == TokenKind::word &&
            !is_any_word(tokens_[at_ - 3],
                         {"and", "then", "or", "if", "when", "so", "but", "now", "here", "also"});
        if (told_of_it) {
            return false;
        }
        if (is_any_word(*before, {"you", "may", "can", "could", "we", "i"})) {
            order_.doubt = 0.5;
            return true;
        }
        if (is_any_word(*before,
                        {"it",    "light", "lukewarm", "cool",    "cold",  "ready",   "more",
                         "out",   "over",  "up",       "down",    "done",  "smooth",  "warm",
                         "point", "baked", "doubled",  "bulk",    "size",  "minutes", "hours",
                         "hour",  "mins",  "min",      "hrs",     "which", "well",    "aside",
                         "time",  "noon",  "night",    "meantime"})) {
            order_.doubt = 0.4;
            return true;
        }
        return false;
    }

    // "the dough rises for two hours"; a plural ("the rolls") stands after an article or a number.
    bool third_person(const Token* before) {
        if (before == nullptr ||
            !is_any_word(*before,
                         {"dough", "it", "loaf", "bread", "sponge", "batter", "then", "mixture"})) {
            return false;
        }
        const std::string_view means =
            verb_.row->means; // "it keeps well", "the bread eats well" order nothing
        if (said_before({"longer", "more", "if", "how"}, 5) || means == "store" ||
            means == "serve") {
            return false;
        }
        order_.doubt = 0.8;
        return true;
    }

    // "should be kneaded", "must then be left to rise", "is baked for an hour", "make sure the oven
    // is heated to 220 °C".
    bool participle() {
        bool be = false;
        bool now = false; // "is rubbed in": told as it is done, and meant as an order
        bool modal = false;
        const std::size_t from = at_ > sentence_.begin + 4 ? at_ - 4 : sentence_.begin;
        for (std::size_t token = from; token < at_; ++token) {
            if (tokens_[token].kind == TokenKind::mark) {
                be = modal = now = false;
            }
            be = be || is_any_word(tokens_[token], {"be", "is", "are", "been"});
            now = now || is_any_word(tokens_[token], {"is", "are"});
            modal = modal ||
                    is_any_word(tokens_[token], {"should", "must", "may", "can", "will", "to"});
        }
        order_.doubt = modal ? 0.3 : 0.7;
        if (be && (modal || timed() || heated())) {
            return true;
        }
        order_.doubt = 0.8;
        const Token* before = at_ > sentence_.begin ? &tokens_[at_ - 1] : nullptr;
        // "…, stirred together and left, covered, for 14 hours"
        if (before != nullptr && attention_of_verb() == Attention::wait && timed() &&
            (is_word(*before, "and") || is_mark(*before, ','))) {
            return true;
        }
        return now && with_hands() && !describes();
    }

    [[nodiscard]] Attention attention_of_verb() const {
        const std::string_view means = verb_.row->means;
        const auto kind = step_kind_named(means.substr(0, means.find_first_of("|?")));
        return kind && *kind != StepKind::finish ? attention_of(*kind) : Attention::none;
    }
    [[nodiscard]] bool with_hands() const { return attention_of_verb() == Attention::hands; }

    // "such bread is kneaded less", "dough that is mixed cold", "as it is shaped".
    [[nodiscard]] bool describes() const {
        return said_before({"such",
                            "that",
                            "which",
                            "who",
                            "as",
                            "usually",
                            "often",
                            "always",
                            "when",
                            "if",
                            "how",
                            "where",
                            "been",
                            "already",
                            "not",
                            "never"},
                           8);
    }

    // "Kneading by hand takes ten minutes"
    [[nodiscard]] bool explains() const {
        for (std::size_t at = at_; at < std::min(sentence_.end, at_ + 12); ++at) {
            if (is_any_word(tokens_[at],
                            {"is",
                             "takes",
                             "gives",
                             "makes",
                             "helps",
                             "will",
                             "means",
                             "does",
                             "needs",
                             "should"})) {
                return true;
            }
        }
        return false;
    }

    bool gerund(const Token* before) {
        if (before == nullptr) { // "Cooling 20 min on the tray"
            order_.doubt = 0.3;
            return timed() && !explains();
        }
        if (is_any_word(*before, {"keep", "start", "begin", "continue", "go"})) {
            order_.doubt = 0.3;
            return true;
        }
        const std::string_view means = verb_.row->means;
        if (is_mark(*before, ',') && timed() &&
            (means == "knead" || means == "mix" || (means == "fold" && !rhythmic()))) {
            order_.doubt = 0.6; // "…, labouring it stoutly for half an hour"
            return true;
        }
        if (is_mark(*before, ',') &&
            ((means == "bake" && heated()) || (means == "preheat" && heated()) ||
             (means == "bake?" && timed()))) {
            order_.doubt = 0.3; // "bake for an hour, reducing the heat to 200 °C"
            return true;
        }
        if (is_word(*before, "of")) { // "ten minutes of kneading"
            order_.doubt = 1.0;
            const std::size_t from = at_ > sentence_.begin + 6 ? at_ - 6 : sentence_.begin;
            return !durations_in(tokens_, TokenRange{from, at_}).empty();
        }
        return false;
    }

    [[nodiscard]] bool is_negated() const {
        const std::size_t from = at_ > sentence_.begin + 5 ? at_ - 5 : sentence_.begin;
        bool negated = false;
        for (std::size_t token = from; token < at_; ++token) {
            if (tokens_[token].kind == TokenKind::mark ||
                is_any_word(tokens_[token], {"but", "then"})) {
                negated = false;
                continue;
            }
            negated = negated || is_any_word(tokens_[token],
                                             {"not",
                                              "never",
                                              "don't",
                                              "dont",
                                              "without",
                                              "no",
                                              "avoid",
                                              "cannot",
                                              "can't",
                                              "needn't",
                                              "nor",
                                              "doesn't"});
            negated = negated || (token + 1 < at_ && is_word(tokens_[token], "rather") &&
                                  is_word(tokens_[token + 1], "than"));
            negated = negated || (token + 1 < at_ && is_word(tokens_[token], "instead") &&
                                  is_word(tokens_[token + 1], "of"));
        }
        return negated;
    }

    const std::vector<Token>& tokens_;
    TokenRange sentence_;
    const Match& verb_;
    std::size_t at_;
    Order order_;
};

} // namespace

Order judge_order(const std::vector<Token>& tokens,
                  TokenRange sentence,
                  const Match& verb,
                  bool opens) {
    return Judge(tokens, sentence, verb).run(opens);
}

} // namespace loafwright::reading

// SPDX-License-Identifier: Apache-2.0
#include "engine/reading/clause_links.hpp"

#include <algorithm>
#include <initializer_list>
#include <string_view>

namespace loafwright::reading {
namespace {

// "ROLLS.—Use the same dough…", "**Muffins:** …" after the bread itself is told.
bool labelled_as_bread(const std::vector<Token>& tokens, TokenRange range) {
    std::size_t at = range.begin;
    while (at < range.end && tokens[at].kind == TokenKind::mark) {
        ++at;
    }
    return at + 1 < range.end &&
           is_any_word(tokens[at],
                       {"rolls",
                        "buns",
                        "loaves",
                        "muffins",
                        "sticks",
                        "twists",
                        "pizza",
                        "baguettes",
                        "biscuits",
                        "scones",
                        "gems",
                        "rusks",
                        "toast",
                        "sandwiches"}) &&
           tokens[at + 1].kind == TokenKind::mark && !is_mark(tokens[at + 1], ',') &&
           !is_mark(tokens[at + 1], '(');
}

// Another kind of bread goes on to the end of its sentence, over a semicolon and behind a label of
// its own ("Leftovers?"), and where it opens a paragraph, to the end of that.
void spread_variants(const std::vector<Token>& tokens, std::vector<Clause>& clauses) {
    bool baked = false;
    for (std::size_t index = 0; index < clauses.size(); ++index) {
        Clause& clause = clauses[index];
        const bool opens = index == 0 || clauses[index - 1].block != clause.block;
        if (baked && opens && labelled_as_bread(tokens, clause.range)) {
            clause.variant = clause.version = clause.variant_of_block = clause.opens_variant = true;
        }
        baked = baked || (clause.action && clause.action->row->means.substr(0, 4) == "bake");
    }
    for (std::size_t index = 1; index < clauses.size(); ++index) {
        Clause& clause = clauses[index];
        Clause& before = clauses[index - 1];
        const bool opens_block =
            index == 1 || clauses[index - 2].block != before.block || before.variant_of_block;
        before.variant_of_block = before.variant && before.version && opens_block;
        if (!before.variant || clause.block != before.block || clause.variant) {
            continue;
        }
        const Token& stop = tokens[before.range.end - 1];
        const bool label = is_mark(stop, '?') && before.range.end - before.range.begin <= 3;
        if (clause.sentence == before.sentence || is_mark(stop, ';') || label) {
            clause.variant = true;
            clause.variant_of_block = before.variant_of_block;
            clause.version = before.version;
        } else if (opens_block && before.version) {
            clause.variant = clause.variant_of_block = clause.version = true;
        }
    }
}

// "For rolls, …; for twists, …" after a dough that is told only once: the first is the bread that
// is read, for the text has no other.
void take_first_variant(std::vector<Clause>& clauses) {
    const auto heats = [](const Clause& clause) {
        return clause.action && (clause.action->row->means.substr(0, 4) == "bake" ||
                                 clause.action->row->means.substr(0, 4) == "cook");
    };
    const auto first = std::find_if(
        clauses.begin(), clauses.end(), [](const Clause& clause) { return clause.opens_variant; });
    const bool baked = std::any_of(clauses.begin(), clauses.end(), [&](const Clause& clause) {
        return !clause.variant && heats(clause);
    });
    if (first == clauses.end() || baked) {
        return;
    }
    auto next = first + 1;
    while (next != clauses.end() && !next->opens_variant) {
        ++next;
    }
    // "For rolls, bake 12 minutes; for one big loaf, 40" is a choice between two lengths.
    if (std::none_of(first, next, heats) ||
        (next != clauses.end() && std::none_of(next, clauses.end(), heats))) {
        return;
    }
    std::for_each(first, next, [](Clause& clause) {
        clause.variant = clause.variant_of_block = clause.version = false;
    });
}

// "Cover the sponge and leave it": "it" is still the sponge.
void inherit_nouns(std::vector<Clause>& clauses) {
    for (std::size_t index = 1; index < clauses.size(); ++index) {
        Clause& clause = clauses[index];
        const Clause& before = clauses[index - 1];
        const bool nameless =
            std::none_of(clause.nouns.begin(), clause.nouns.end(), [](const Match& noun) {
                return noun.row->means == "sponge" || noun.row->means == "dough" ||
                       noun.row->means == "shaped" || noun.row->means == "yeast";
            });
        if (!nameless || clause.sentence != before.sentence) {
            continue;
        }
        // "Add the leaven, rest half an hour": what rests is the dough.
        const bool added = before.action && before.action->row->say == "add";
        for (const Match& noun : before.nouns) {
            if (added && noun.row->means == "sponge") {
                continue;
            }
            if (noun.row->means == "sponge" || noun.row->means == "dough" ||
                noun.row->means == "yeast" || noun.row->means == "unsalted") {
                clause.nouns.push_back(noun);
            }
        }
    }
}

} // namespace

void link_clauses(const std::vector<Token>& tokens, std::vector<Clause>& clauses) {
    inherit_nouns(clauses);
    spread_variants(tokens, clauses);
    take_first_variant(clauses);
}

} // namespace loafwright::reading

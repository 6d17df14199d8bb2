// SPDX-License-Identifier: Apache-2.0
//
// Every row of the lexicon has a case: at least one of its phrases stands in a text of
// tests/cases/reading. A row that nobody has seen at work is a guess.
#include "engine/reading/lexicon.hpp"
#include "engine/reading/token.hpp"
#include "tests/reading/case_file.hpp"

#include <gtest/gtest.h>

#include <set>
#include <string>
#include <string_view>
#include <vector>

namespace loafwright {
namespace {

TEST(lexicon, has_a_case_for_every_row) {
    const Knowledge knowledge = built_in_knowledge();
    const reading::Lexicon lexicon(knowledge);
    // The phrases of one row of data follow one another.
    std::vector<std::size_t> row_of(knowledge.lexicon.size());
    std::vector<std::string_view> first_phrases;
    std::set<std::string_view> roles;
    for (std::size_t at = 0; at < knowledge.lexicon.size(); ++at) {
        const LexiconRow& row = knowledge.lexicon[at];
        const bool opens = at == 0 || row.role != knowledge.lexicon[at - 1].role ||
                           row.means != knowledge.lexicon[at - 1].means ||
                           row.weight != knowledge.lexicon[at - 1].weight;
        if (opens) {
            first_phrases.push_back(row.say);
        }
        row_of[at] = first_phrases.size() - 1;
        roles.insert(row.role);
    }
    std::vector<bool> seen(first_phrases.size(), false);
    const LexiconRow* const first = knowledge.lexicon.data();
    for (const tests::ReadingCase& one : tests::all_cases()) {
        if (one.not_yet) {
            continue;
        }
        const auto tokens = reading::tokenise(one.text);
        const auto ids = lexicon.identify(tokens);
        for (const std::string_view role : roles) {
            for (const reading::Match& match :
                 lexicon.find(role, tokens, ids, reading::TokenRange{0, tokens.size()})) {
                const auto at = static_cast<std::size_t>(match.row - first);
                ASSERT_LT(at, row_of.size());
                seen[row_of[at]] = true;
            }
        }
    }
    for (std::size_t at = 0; at < knowledge.lexicon.size(); ++at) {
        if (!seen[row_of[at]] && knowledge.lexicon[at].say == first_phrases[row_of[at]]) {
            ADD_FAILURE() << "no case has a phrase of the row of \"" << knowledge.lexicon[at].role
                          << "\" that begins with \"" << knowledge.lexicon[at].say
                          << "\" and means \"" << knowledge.lexicon[at].means << '"';
        }
    }
}

} // namespace
} // namespace loafwright

// SPDX-License-Identifier: Apache-2.0
#include "engine/reading/labels.hpp"

#include <cstddef>
#include <string_view>

namespace loafwright::reading {

namespace {

bool may_be(const Clause& clause, std::string_view kind) {
    return clause.action && clause.action->row->means.find(kind) != std::string_view::npos;
}

} // namespace

void take_labels_away(const Layout& layout, std::vector<Clause>& clauses) {
    for (std::size_t i = 0; i < clauses.size(); ++i) {
        Clause& clause = clauses[i];
        const bool first = i == 0 || clauses[i - 1].block != clause.block;
        if (!first || clause.label == nullptr || !clause.action || !clause.durations.empty() ||
            !clause.temperatures.empty()) {
            continue;
        }
        std::size_t begin = layout.blocks[clause.block].tokens.begin;
        while (begin < clause.range.end && layout.tokens[begin].kind == TokenKind::mark) {
            ++begin;
        }
        const std::size_t behind = clause.action->range.end;
        const bool names_only =
            clause.action->range.begin == begin && behind < clause.range.end &&
            (is_mark(layout.tokens[behind], '.') || is_mark(layout.tokens[behind], ':') ||
             is_mark(layout.tokens[behind], '*'));
        const std::string_view means = clause.label->means;
        const std::string_view kind = means.substr(0, means.find_first_of("|?"));
        bool follows = false;
        for (std::size_t j = i + 1; j < clauses.size() && clauses[j].block == clause.block; ++j) {
            follows = follows || may_be(clauses[j], kind);
        }
        if (names_only && follows) {
            clause.action.reset();
        }
    }
}

} // namespace loafwright::reading

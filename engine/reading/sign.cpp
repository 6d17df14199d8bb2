// SPDX-License-Identifier: Apache-2.0
//
// How one sees that a wait or a bake is over: the words of the text, cut to what stands on a card;
// where it has none, common practice by the kind of dough and by which wait it is (data/cues.toml).
#include "engine/reading/sign.hpp"

#include "engine/knowledge/family.hpp"
#include "engine/reading/draft.hpp"

#include <string>

namespace loafwright::reading {

// "until the next morning" tells a time, not a sign.
bool tells_only_time(const Layout& layout, const Lexicon& lexicon, TokenRange range) {
    return lexicon.find("cue", layout.tokens, layout.ids, range).empty() &&
           (any_word(layout.tokens,
                     range,
                     {"morning", "night", "bed", "day", "past", "o'clock", "tomorrow", "time"}) ||
            range.end - range.begin < 2);
}

// The words after "until" or "when", without a closing mark and without the time that stands
// with them.
Cue cue_in(std::string_view text, const std::vector<Token>& tokens, TokenRange range) {
    std::size_t begin = range.begin + 1;
    std::size_t end = range.end;
    const auto is_any = [&tokens](std::size_t at, std::initializer_list<std::string_view> words) {
        return any_word(tokens, TokenRange{at, at + 1}, words);
    };
    if (begin + 1 < end && is_any(begin, {"soon"}) && is_any(begin + 1, {"as"})) {
        begin += 2;
    }
    // "it has doubled" is "doubled"; "it stands above the rim" keeps its subject.
    if (begin + 2 < end && is_any(begin, {"it", "they"}) &&
        is_any(begin + 1, {"has", "have", "is", "are"})) {
        begin += 2;
    } else if (begin + 1 < end && is_any(begin, {"it's"})) {
        begin += 1;
    }
    constexpr std::size_t longest = 9;
    if (end > begin + longest) {
        end = begin + longest;
        // Too long for a card: better one whole sign than one and a half.
        for (std::size_t at = end; at > begin + 2; --at) {
            if (is_any(at - 1, {"and", "or", "so"}) || is_mark(tokens[at - 1], ',')) {
                end = at - 1;
                break;
            }
        }
    }
    while (end > begin && (tokens[end - 1].kind == TokenKind::mark ||
                           is_word(tokens[end - 1], "and") || is_word(tokens[end - 1], "or") ||
                           is_word(tokens[end - 1], "the") || is_word(tokens[end - 1], "a"))) {
        --end;
    }
    if (begin >= end) {
        begin = range.begin;
        end = range.end;
    }
    Cue cue;
    cue.span = span_of(tokens, TokenRange{begin, end});
    cue.text = tidy(text, *cue.span);
    return cue;
}

void add_usual_cues(Recipe& recipe, const Knowledge& knowledge) {
    const DoughFamily family = family_of(recipe, knowledge);
    bool baked_later = false;
    for (auto step = recipe.steps.rbegin(); step != recipe.steps.rend(); ++step) {
        const bool ends_here = step->kind != StepKind::bake || !baked_later;
        baked_later = baked_later || step->kind == StepKind::bake;
        if (step->cue || !ends_here) {
            continue;
        }
        if (const CueRow* row = cue_for(knowledge, step->kind, family)) {
            step->cue = Cue{std::string(row->text), std::nullopt};
        }
    }
}

} // namespace loafwright::reading

// SPDX-License-Identifier: Apache-2.0
//
// Who writes one numbered method under three lists names the part that is being made: "mix the
// leaven", "pour boiling water over the seeds". A part begins with a clause that names it and
// nothing else of the bread; it ends with its wait. What names two parts, or the dough, brings them
// together.
#include "engine/reading/parts.hpp"

#include "engine/reading/candidate.hpp"
#include "engine/recipe/part_word.hpp"
#include "engine/recipe/words.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <optional>
#include <string_view>

namespace loafwright::reading {

namespace {

struct Part {
    std::string_view name;                           // as Step::part
    std::string_view noun;                           // as the lexicon names what it is
    std::initializer_list<std::string_view> also_by; // the words of a step
};

// "Sponge" is the lexicon's one name for leavens, sponges and their like.
const std::array<Part, 2> parts{
    {{"leaven", "sponge", {"starter", "ferment"}},
     {"soaker",
      "soaker",
      {"soaker", "oats", "seeds", "grain", "grains", "raisins", "bran", "fruit"}}}};

bool are_of(std::string_view words, const Part& part) {
    return (part.name == "leaven" && names_a_leaven(words)) ||
           has_any_word(lower_case(words), part.also_by);
}

const Part* part_named(std::string_view name) {
    const auto found = std::find_if(
        parts.begin(), parts.end(), [name](const Part& part) { return part.name == name; });
    return found == parts.end() ? nullptr : &*found;
}

// The only part that a clause names; none where it names the dough, or both.
const Part* only_part(const Clause& clause) {
    const Part* only = nullptr;
    for (const Part& part : parts) {
        if (names(clause, part.noun)) {
            if (only != nullptr) {
                return nullptr;
            }
            only = &part;
        }
    }
    return names(clause, "dough") ? nullptr : only;
}

bool names_any(const Clause& clause) {
    return names(clause, "dough") ||
           std::any_of(parts.begin(), parts.end(), [&clause](const Part& part) {
               return names(clause, part.noun);
           });
}

bool waits(const Clause& clause) {
    return own_length(clause) != nullptr ||
           std::any_of(clause.facts.begin(), clause.facts.end(), [](const Match& fact) {
               return fact.row->means == "night";
           });
}

// "Biga: stir together…" tells its part without a list of its own.
const Part* part_labelled(const Layout& layout, const Clause& clause) {
    const std::size_t at = clause.range.begin;
    if (at + 1 >= clause.range.end || !is_mark(layout.tokens[at + 1], ':')) {
        return nullptr;
    }
    const auto found = std::find_if(parts.begin(), parts.end(), [&](const Part& part) {
        return are_of(layout.tokens[at].text, part);
    });
    return found == parts.end() ? nullptr : &*found;
}

// One part of the method after the other: [begin, end) of steps that make the same.
struct Stretch {
    std::size_t begin;
    std::size_t end;
    const Part* part;
};

bool is_wait(const Step& step) {
    return attention_of(step.kind) == Attention::wait;
}

std::vector<Stretch> stretches_of(const std::vector<Step>& steps) {
    std::vector<Stretch> stretches;
    for (std::size_t s = 0; s < steps.size(); ++s) {
        const Part* part = steps[s].part ? part_named(*steps[s].part) : nullptr;
        if (part == nullptr) {
            break; // the dough, or something that is put on it
        }
        if (!stretches.empty() && stretches.back().part == part) {
            stretches.back().end = s + 1;
        } else {
            stretches.push_back({s, s + 1, part});
        }
    }
    return stretches;
}

// What goes in later than the rest is soon forgotten.
void remind_of(Step& step) {
    constexpr std::ptrdiff_t most_words = 9;
    const std::ptrdiff_t words = std::count(step.text.begin(), step.text.end(), ' ') + 1;
    const bool told = std::any_of(
        step.reminders.begin(), step.reminders.end(), [&step](const Reminder& reminder) {
            return lower_case(reminder.text) == lower_case(step.text);
        });
    if (words <= most_words && !told) {
        step.reminders.insert(step.reminders.begin(), {step.text, step.span, 85});
    }
}

} // namespace

void tell_parts(const Layout& layout, std::vector<Clause>& clauses) {
    std::vector<const Part*> listed;
    for (const Block& block : layout.blocks) {
        if (block.role == BlockRole::method && block.part) {
            return; // headings say it
        }
        const Part* part = block.part ? part_named(*block.part) : nullptr;
        if (block.role == BlockRole::ingredients && part != nullptr &&
            std::find(listed.begin(), listed.end(), part) == listed.end()) {
            listed.push_back(part);
        }
    }
    const Part* now = nullptr;
    for (Clause& clause : clauses) {
        if (clause.variant || clause.remedy) {
            continue;
        }
        const Part* label = clause.action ? part_labelled(layout, clause) : nullptr;
        if (label != nullptr && std::find(listed.begin(), listed.end(), label) == listed.end()) {
            listed.push_back(label);
        }
        if (listed.empty() && now == nullptr) {
            continue;
        }
        const Part* only = only_part(clause);
        const auto open = std::find(listed.begin(), listed.end(), only);
        if (now == nullptr || (only != nullptr && only != now)) {
            if (open == listed.end()) {
                if (now != nullptr || clause.action) {
                    return; // the dough begins
                }
                continue; // "The night before:"
            }
            now = *open;
            listed.erase(open);
        } else if (only == nullptr && names_any(clause)) {
            return;
        }
        clause.part = now->name;
        if (waits(clause)) {
            now = nullptr;
        }
    }
}

void part_ways(std::vector<Step>& steps) {
    const std::vector<Stretch> stretches = stretches_of(steps);
    const std::size_t dough = stretches.empty() ? 0 : stretches.back().end;
    const bool all_wait =
        std::all_of(stretches.begin(), stretches.end(), [&steps](const Stretch& one) {
            return is_wait(steps[one.end - 1]);
        });
    // Three stretches are a leaven in stages with a soaker between them: in the text's own order.
    if (stretches.size() != 2 || !all_wait || dough >= steps.size()) {
        return;
    }
    std::vector<std::size_t> first;
    for (const Stretch& one : stretches) {
        std::size_t join = dough;
        for (std::size_t s = dough; s < steps.size(); ++s) {
            const bool hands = attention_of(steps[s].kind) == Attention::hands;
            if (hands && !steps[s].during && are_of(steps[s].text, *one.part)) {
                join = s;
                break;
            }
        }
        std::size_t before = join;
        while (before > dough && (steps[before - 1].during ||
                                  attention_of(steps[before - 1].kind) == Attention::none)) {
            --before;
        }
        if (before == dough) {
            first.push_back(one.end - 1);
        } else {
            steps[join].after = {before - 1, one.end - 1};
            remind_of(steps[join]);
        }
    }
    // Whatever the dough begins with waits for one of them at least: else nobody would know when.
    if (first.empty()) {
        for (const Stretch& one : stretches) {
            first.push_back(one.end - 1);
        }
    }
    steps[dough].after = first;
}

} // namespace loafwright::reading

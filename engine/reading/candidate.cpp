// SPDX-License-Identifier: Apache-2.0
//
// What the words of one clause say by themselves, before the order of the whole method is asked.
// The figures are small corrections to the weights of the lexicon, set by hand on texts of our own;
// each line tells its reason.
#include "engine/reading/candidate.hpp"

#include <algorithm>

namespace loafwright::reading {
namespace {

bool any_match(const std::vector<Match>& matches, std::string_view means) {
    return std::any_of(matches.begin(), matches.end(), [&](const Match& match) {
        return match.row->means == means;
    });
}

// A shelf life or a warning is no time for the step.
bool tells_time(const Clause& clause) {
    return std::any_of(clause.durations.begin(),
                       clause.durations.end(),
                       [&clause](const DurationPhrase& duration) {
                           return duration.role != DurationRole::keeps &&
                                  duration.role != DurationRole::limit &&
                                  !(duration.role == DurationRole::ahead && clause.action &&
                                    duration.range.begin < clause.action->range.begin) &&
                                  duration.role != DurationRole::whole_plan;
                       });
}

double by_length(StepKind kind, double minutes) {
    switch (kind) {
    case StepKind::rest: // a bench rest is short; an hour's rest is a rise
        return minutes <= 35 ? 0.3 : minutes >= 50 ? -1.3 : 0.0;
    case StepKind::rise:
        return minutes < 20 ? -1.2 : minutes < 40 ? -0.4 : 0.3;
    case StepKind::prove:
        return minutes < 15 ? -0.8 : minutes > 6 * 60 ? -0.2 : 0.1;
    case StepKind::ferment:
        return minutes < 25 ? -1.5 : minutes >= 180 ? 0.2 : 0.0;
    case StepKind::activate: // yeast wakes in minutes
        return minutes <= 20 ? 0.6 : -1.6;
    case StepKind::soak:
        return minutes > 90 ? -0.9 : minutes >= 15 && minutes <= 60 ? 0.1 : 0.0;
    case StepKind::cool: // rye waits a day for the knife
        return minutes < 5 ? -0.6 : minutes <= 240 ? 0.1 : -0.6;
    case StepKind::cook: // nothing boils for half a day
        return minutes > 360 ? -2.0 : minutes < 0.3 ? -3.0 : 0.0;
    default:
        return 0.0;
    }
}

double by_context(StepKind kind, const Clause& clause) {
    double score = 0.0;
    const bool sponge = names(clause, "sponge");
    const bool dough = names(clause, "dough");
    const bool yeast = names(clause, "yeast");
    const bool fridge = happens_at(clause, "fridge");
    const bool rising =
        kind == StepKind::rise || kind == StepKind::prove || kind == StepKind::ferment;
    if (clause.label != nullptr) {
        const std::string_view means = clause.label->means;
        const auto told = step_kind_named(means.substr(0, means.find_first_of("|?")));
        score += told == kind ? 1.0 : 0.0;
    }
    if (kind == StepKind::ferment) {
        score += sponge ? 1.3 : 0.0;
        score -= dough ? 0.4 : 0.0;
    }
    if (kind == StepKind::prove || kind == StepKind::rise) {
        score -= sponge ? 0.5 : 0.0;
    }
    if (kind == StepKind::activate) {
        // A wait wakes yeast only where yeast is what waits.
        score += yeast && !dough && !sponge ? 0.8 : dough ? -1.4 : -1.0;
        const bool foams =
            std::any_of(clause.cues.begin(), clause.cues.end(), [](const Match& cue) {
                return cue.row->say == "foamy" || cue.row->say == "frothy" ||
                       cue.row->say == "foam" || cue.row->say == "froth";
            });
        score += foams && !dough && !sponge ? 1.2 : 0.0;
    }
    if (kind == StepKind::soak) {
        score += names(clause, "soaker") ? 1.2 : 0.0;
        score += names(clause, "unsalted") ? 2.0 : 0.0; // flour and water wait for the salt
    }
    if (rising) {
        score += shows(clause, "risen") ? 0.6 : 0.0;
        score += happens_at(clause, "warm") ? 0.2 : 0.0;
    }
    // Stages of a leaven under a heading of their own, and soakers.
    if (clause.part == "leaven") {
        score += kind == StepKind::ferment ? 1.3 : rising ? -0.5 : 0.0;
    }
    if (clause.part == "soaker") {
        score += kind == StepKind::soak ? 2.0 : rising ? -0.8 : 0.0;
    }
    // "until it is milk-warm": it cools, it does not rise.
    if (rising && shows(clause, "cooled")) {
        score -= 1.0;
    }
    if (shows(clause, "rested")) {
        score += kind == StepKind::rest ? 1.0 : rising ? -0.5 : 0.0;
    }
    if (kind == StepKind::rest) {
        score -= shows(clause, "risen") ? 0.8 : 0.0;
        score -= fridge ? 0.5 : 0.0;
    }
    if (kind == StepKind::chill) {
        score += fridge ? 0.8 : 0.4;
    }
    // "ten minutes before you pull them apart"
    const bool before_eating =
        std::any_of(clause.subs.begin(), clause.subs.end(), [&clause](const SubClause& sub) {
            return sub.kind == SubKind::before && clause.action &&
                   sub.range.begin > clause.action->range.begin;
        });
    if (before_eating) {
        score += kind == StepKind::cool ? 0.7 : kind == StepKind::bake ? -0.7 : 0.0;
    }
    // Over the hob it cooks, whatever the verb.
    if (happens_at(clause, "over the heat") && !names(clause, "oven")) {
        score += kind == StepKind::cook ? 0.6 : kind == StepKind::bake ? -0.4 : 0.0;
    }
    if (kind == StepKind::cool) {
        const bool in_tin = names(clause, "tin") && !names(clause, "oven");
        score += names(clause, "rack") || shows(clause, "cooled") || in_tin ? 0.5 : 0.0;
    }
    if (kind == StepKind::prove && (names(clause, "shaped") || names(clause, "tin"))) {
        score += 0.4;
    }
    return score;
}

} // namespace

bool names(const Clause& clause, std::string_view means) {
    return any_match(clause.nouns, means);
}
bool shows(const Clause& clause, std::string_view means) {
    return any_match(clause.cues, means);
}
bool happens_at(const Clause& clause, std::string_view means) {
    return any_match(clause.places, means);
}

const DurationPhrase* own_length(const Clause& clause) {
    for (const DurationPhrase& duration : clause.durations) {
        if (duration.role == DurationRole::length || duration.role == DurationRole::further ||
            duration.role == DurationRole::total || duration.role == DurationRole::each_side) {
            return &duration;
        }
    }
    return nullptr;
}

std::vector<Candidate> candidates_of(const Clause& clause) {
    std::vector<Candidate> candidates;
    if (!clause.action || clause.negated || clause.variant || clause.remedy) {
        return candidates;
    }
    const DurationPhrase* length = own_length(clause);
    const bool until = std::any_of(clause.subs.begin(),
                                   clause.subs.end(),
                                   [](const SubClause& sub) { return sub.kind == SubKind::until; });
    const bool timed = length != nullptr || until || shows(clause, "risen") || tells_time(clause) ||
                       happens_at(clause, "warm") || !clause.clocks.empty();
    const std::string_view means = clause.action->row->means;
    double order = 0.0;
    std::size_t at = 0;
    while (at < means.size()) {
        const std::size_t bar = std::min(means.find('|', at), means.size());
        std::string_view word = means.substr(at, bar - at);
        at = bar + 1;
        const bool needs_time = !word.empty() && word.back() == '?';
        if (needs_time) {
            word.remove_suffix(1);
        }
        const auto kind = step_kind_named(word);
        if (!kind || (needs_time && !timed)) {
            continue;
        }
        double score =
            clause.action->row->weight - clause.doubt - order + by_context(*kind, clause);
        if (length != nullptr) {
            score += by_length(*kind, length->likely.count());
            score += needs_time ? 0.8 : 0.0;
            // "Give it another half hour" of what it is in.
            const bool heat = *kind == StepKind::bake || *kind == StepKind::cook;
            score += length->role == DurationRole::further && heat && needs_time ? 0.7 : 0.0;
            // "Bake for 40 minutes" is the step that no bread is without.
            score += *kind == StepKind::bake && !needs_time && order == 0.0 ? 1.2 : 0.0;
        }
        Candidate candidate{*kind, score, {}, 0.0};
        const bool in_the_oven = *kind == StepKind::bake && clause.by_setting && length != nullptr;
        candidate.loss = in_the_oven ? 3.0 : 0.0;
        candidate.loss =
            *kind == StepKind::bake && !needs_time && length != nullptr ? 8.0 : candidate.loss;
        if (*kind == StepKind::mix || *kind == StepKind::knead) {
            candidate.leads_to = names(clause, "sponge")  ? "sponge"
                                 : names(clause, "dough") ? "dough"
                                                          : "";
        }
        candidates.push_back(candidate);
        order += order == 0.0 ? 0.3 : 0.05;
    }
    return candidates;
}

} // namespace loafwright::reading

// SPDX-License-Identifier: Apache-2.0
//
// From signs and a log to causes and one change. The rows of data become a network, the facts of
// the log move its priors, exact inference does the rest, and what spoke for and against is kept
// beside each cause.
#include "engine/faults/find_faults.hpp"

#include "engine/faults/facts.hpp"
#include "engine/faults/network.hpp"
#include "engine/fitting/words.hpp"
#include "engine/following/signs.hpp"
#include "engine/recipe/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numeric>

namespace loafwright {

namespace {

using faults::Fact;
using following::Signs;

constexpr std::size_t most_findings = 8;
constexpr double least_probability = 0.01;
constexpr double shows_well = 0.25;
constexpr double step_of_change = 1.2; // the published single changes: a fifth longer or shorter
constexpr double kept_within = 0.15;

/// One row of causes with what was found of it.
struct Suspect {
    const FaultCauseRow* row = nullptr;
    double prior = 0.0;
    double probability = 0.0;
    bool shows_something = false;
    std::vector<std::string> speaks_for;
    std::vector<std::string> speaks_against;
};

std::string listed(const std::vector<std::string>& words, std::string_view last) {
    std::string list;
    for (std::size_t i = 0; i < words.size(); ++i) {
        list += i == 0 ? "" : i + 1 == words.size() ? fmt::format(" {} ", last) : ", ";
        list += words[i];
    }
    return list;
}

double shows(const Knowledge& knowledge, std::string_view cause, std::string_view symptom) {
    for (const FaultLinkRow& link : knowledge.fault_links) {
        if (link.cause == cause && link.symptom == symptom) {
            return link.shows_share;
        }
    }
    return 0.0;
}

Signs all_signs(const std::vector<std::string>& symptoms,
                const BakeLog* log,
                const Knowledge& knowledge) {
    Told told = log != nullptr ? log->told : Told{};
    told.symptoms.insert(told.symptoms.begin(), symptoms.begin(), symptoms.end());
    Signs signs = following::signs_of(told, knowledge);
    if (signs.seen.size() > faults::most_seen) {
        signs.seen.resize(faults::most_seen);
    }
    return signs;
}

// The odds of a cause with what the log says of it.
void weigh(Suspect& suspect, const std::vector<Fact>& facts, const Knowledge& knowledge) {
    double log_odds = std::log(suspect.row->usual_share / (1.0 - suspect.row->usual_share));
    for (const FaultEvidenceRow& row : knowledge.fault_evidence) {
        if (row.cause != suspect.row->key) {
            continue;
        }
        for (const Fact& fact : facts) {
            if (fact.key == row.fact) {
                log_odds += fact.strength * std::log(row.odds_factor);
                auto& sentences =
                    row.odds_factor > 1.0 ? suspect.speaks_for : suspect.speaks_against;
                sentences.push_back(faults::sentence_of(row.says, fact));
            }
        }
    }
    suspect.prior = 1.0 / (1.0 + std::exp(-log_odds));
}

void name_signs(Suspect& suspect, const Signs& signs, const Knowledge& knowledge) {
    std::vector<std::string> seen;
    std::vector<std::string> absent;
    for (const FaultSymptomRow* sign : signs.seen) {
        const double how_often = shows(knowledge, suspect.row->key, sign->key);
        suspect.shows_something = suspect.shows_something || how_often > 0.0;
        if (how_often >= shows_well) {
            seen.emplace_back(sign->tells);
        }
    }
    for (const FaultSymptomRow* sign : signs.absent) {
        if (shows(knowledge, suspect.row->key, sign->key) >= shows_well) {
            absent.emplace_back(sign->tells);
        }
    }
    if (!seen.empty()) {
        suspect.speaks_for.insert(suspect.speaks_for.begin(),
                                  fmt::format("You saw {}.", listed(seen, "and")));
    }
    if (!absent.empty()) {
        suspect.speaks_against.push_back(fmt::format("You did not see {}.", listed(absent, "or")));
    }
}

std::vector<Suspect>
suspects_of(const Signs& signs, const std::vector<Fact>& facts, const Knowledge& knowledge) {
    std::vector<Suspect> suspects;
    faults::NoisyOr network;
    for (const FaultCauseRow& row : knowledge.fault_causes) {
        Suspect suspect;
        suspect.row = &row;
        weigh(suspect, facts, knowledge);
        name_signs(suspect, signs, knowledge);
        network.priors.push_back(suspect.prior);
        std::vector<double> shares;
        for (const FaultSymptomRow& sign : knowledge.fault_symptoms) {
            shares.push_back(shows(knowledge, row.key, sign.key));
        }
        network.shows.push_back(std::move(shares));
        suspects.push_back(std::move(suspect));
    }
    for (const FaultSymptomRow& sign : knowledge.fault_symptoms) {
        network.leaks.push_back(sign.unexplained_share);
    }
    const auto indices = [&knowledge](const std::vector<const FaultSymptomRow*>& rows) {
        std::vector<std::size_t> found;
        for (const FaultSymptomRow* row : rows) {
            found.push_back(static_cast<std::size_t>(row - knowledge.fault_symptoms.data()));
        }
        return found;
    };
    const auto posterior =
        faults::posterior_of(network, indices(signs.seen), indices(signs.absent));
    for (std::size_t c = 0; c < suspects.size(); ++c) {
        suspects[c].probability = posterior[c];
    }
    return suspects;
}

StepKind wait_of(std::string_view cause) {
    return cause == "under_risen" || cause == "over_risen" ? StepKind::rise : StepKind::prove;
}

bool is_too_short(std::string_view cause) {
    return cause == "under_proved" || cause == "under_risen";
}

bool is_about_a_wait(std::string_view cause) {
    return is_too_short(cause) || cause == "over_proved" || cause == "over_risen";
}

// The wait that a cause blames, where its real length is known.
const LoggedLine* blamed_wait(const BakeLog* log, std::string_view cause) {
    if (log == nullptr || !is_about_a_wait(cause)) {
        return nullptr;
    }
    const LoggedLine* line = line_of(*log, wait_of(cause));
    const bool tells = line != nullptr && line->timed && !line->chosen &&
                       line->minutes.likely > 0 && real_minutes(*line).value_or(0) > 0;
    return tells ? line : nullptr;
}

// How long that wait is to be next time.
std::int64_t next_length(const LoggedLine& line, bool too_short) {
    const auto real = static_cast<double>(*real_minutes(line));
    const auto wanted = static_cast<double>(line.minutes.likely);
    const double next = too_short ? std::max(real * step_of_change, wanted)
                                  : std::min(real / step_of_change, wanted);
    return fitting::nearest_five(Minutes(next));
}

bool kept_to_plan(const LoggedLine& line) {
    const double ratio =
        static_cast<double>(*real_minutes(line)) / static_cast<double>(line.minutes.likely);
    return ratio >= 1.0 - kept_within && ratio <= 1.0 + kept_within;
}

std::string wait_word(StepKind kind) {
    return kind == StepKind::rise ? "the first rise" : "the prove";
}

std::string our_time(const Suspect& first, const BakeLog* log) {
    const LoggedLine* line = blamed_wait(log, first.row->key);
    if (line == nullptr || !kept_to_plan(*line)) {
        return "";
    }
    const bool too_short = is_too_short(first.row->key);
    const std::string place =
        line->stands ? " at " + fitting::degrees_text(*line->stands) : std::string();
    return fmt::format(
        "We planned {} for {}{}, and you kept to it: our time was too {}, not yours. "
        "Next time we plan about {}.",
        fitting::duration_text(line->minutes.likely),
        wait_word(line->kind),
        place,
        too_short ? "short" : "long",
        fitting::duration_text(next_length(*line, too_short)));
}

std::string change_words(const FaultCauseRow& row, const BakeLog* log) {
    const LoggedLine* line = blamed_wait(log, row.key);
    // "Make the dough cooler" has its number already.
    if (line == nullptr || row.key == "over_risen") {
        return std::string(row.change);
    }
    // With this bake's own numbers, which may ask for more than a fifth.
    return fmt::format("plan {} for {} (it was {}), and go by the sign and not by the clock",
                       fitting::duration_text(next_length(*line, is_too_short(row.key))),
                       wait_word(line->kind),
                       fitting::duration_text(*real_minutes(*line)));
}

std::optional<TryNext> best_change(const std::vector<Suspect>& suspects, const BakeLog* log) {
    const Suspect* best = nullptr;
    double best_sum = 0.0;
    for (const Suspect& suspect : suspects) {
        if (!suspect.shows_something) {
            continue;
        }
        const bool made =
            log != nullptr &&
            std::any_of(log->told.changed.begin(),
                        log->told.changed.end(),
                        [&suspect](const std::string& change) {
                            return lower_case(change).find(lower_case(suspect.row->change)) == 0;
                        });
        double sum = 0.0;
        for (const Suspect& other : suspects) {
            sum += other.shows_something && other.row->change == suspect.row->change
                       ? other.probability
                       : 0.0;
        }
        // The likelier of two causes that share a change gives the words.
        const bool better = sum > best_sum + 1e-12 || (best != nullptr && sum > best_sum - 1e-12 &&
                                                       suspect.row->change == best->row->change &&
                                                       suspect.probability > best->probability);
        if (!made && better) {
            best = &suspect;
            best_sum = sum;
        }
    }
    if (best == nullptr) {
        return std::nullopt;
    }
    return TryNext{
        change_words(*best->row, log), std::string(best->row->because), best->row->stage};
}

std::string cannot_tell(const BakeLog* log) {
    if (log == nullptr || log->told.changed.size() < 2) {
        return "";
    }
    const std::size_t count = log->told.changed.size();
    return fmt::format(
        "You changed {} things since the last bake ({}): this bake can't tell which of "
        "them made the difference.",
        count == 2   ? "two"
        : count == 3 ? "three"
                     : "several",
        listed(log->told.changed, "and"));
}

} // namespace

Findings find_faults(const std::vector<std::string>& symptoms,
                     const BakeLog* log,
                     const Knowledge& knowledge) {
    Findings out;
    out.cannot_tell = cannot_tell(log);
    const Signs signs = all_signs(symptoms, log, knowledge);
    if (signs.seen.empty()) {
        return out;
    }
    for (const FaultSymptomRow* sign : signs.seen) {
        out.seen.emplace_back(sign->tells);
    }
    const std::vector<Fact> facts = log != nullptr ? faults::facts_of(*log) : std::vector<Fact>{};
    std::vector<Suspect> suspects = suspects_of(signs, facts, knowledge);
    std::stable_sort(suspects.begin(), suspects.end(), [](const Suspect& a, const Suspect& b) {
        return a.probability > b.probability;
    });
    const Suspect* first = nullptr;
    for (const Suspect& suspect : suspects) {
        if (!suspect.shows_something || suspect.probability < least_probability ||
            out.findings.size() == most_findings) {
            continue;
        }
        first = first != nullptr ? first : &suspect;
        out.findings.push_back({std::string(suspect.row->key),
                                std::string(suspect.row->cause),
                                suspect.row->stage,
                                suspect.probability,
                                suspect.speaks_for,
                                suspect.speaks_against});
    }
    out.try_next = best_change(suspects, log);
    if (first != nullptr) {
        out.our_time = our_time(*first, log);
    }
    return out;
}

} // namespace loafwright

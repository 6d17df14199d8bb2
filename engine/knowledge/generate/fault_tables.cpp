// SPDX-License-Identifier: Apache-2.0
//
// The tables about what bakes teach: how much kitchens differ, and the network of causes and signs.
// Whether causes and signs that one table names stand in the other is tests/knowledge's to check:
// each table is written by itself.

#include "engine/knowledge/generate/table_rows.hpp"

#include <fmt/format.h>

#include <string>

namespace loafwright::generate {

namespace {

// A share of bakes: above 0, for nothing in baking never happens, and below 1.
double share(Row& row, std::string_view key) {
    const auto found = row.number_if(key);
    if (!found || *found <= 0.0 || *found >= 1.0) {
        row.fault_at(key, fmt::format("{} is missing or not between 0 and 1", key));
        return 0.5;
    }
    return *found;
}

double deviation(Row& row, std::string_view key, double most) {
    const auto found = row.number_if(key);
    if (!found || *found <= 0.0 || *found > most) {
        row.fault_at(key, fmt::format("{} is missing or not above 0 and up to {}", key, most));
        return 1.0;
    }
    return *found;
}

} // namespace

std::string learning(std::vector<DataFile>& files) {
    static const Names groups{"dough", "hands", "oven", "thermostat"};
    std::string rows;
    SeenKeys kinds;
    for (DataFile& file : files) {
        for (Row& row : file.rows()) {
            const std::string kind = row.word("kind", kind_names());
            kinds.add(row, "the kind", kind);
            const std::string group = row.word("group", groups);
            const double most = group == "thermostat" ? 50.0 : 2.0;
            const double between_groups = deviation(row, "group_deviation", most);
            const double between_kinds = deviation(row, "kind_deviation", most);
            const double within = deviation(row, "within_deviation", most);
            const Origin origin = row.origin();
            row.finish();
            rows += fmt::format("    {{StepKind::{}, LearnedGroup::{}, {}, {}, {}, {}, {}}},\n",
                                kind,
                                group,
                                literal(between_groups),
                                literal(between_kinds),
                                literal(within),
                                quoted(origin.cite),
                                trust_of(origin));
        }
    }
    return source_file("learning", "LearningRow", rows, nullptr);
}

std::string fault_causes(std::vector<DataFile>& files) {
    std::string rows;
    SeenKeys keys;
    Names stages = kind_names();
    stages.emplace_back("leaven");
    for (DataFile& file : files) {
        for (Row& row : file.rows()) {
            const std::string key = row.text("key");
            keys.add(row, "the cause", key);
            const std::string cause = row.text("cause");
            const std::string stage = row.word("stage", stages);
            const double usual = share(row, "usual_share");
            const std::string change = row.text("change");
            const std::string because = row.text("tells");
            const Origin origin = row.origin();
            row.finish();
            rows += fmt::format("    {{{}, {}, {}, {}, {}, {}, {}, {}}},\n",
                                quoted(key),
                                quoted(cause),
                                stage == "leaven" ? "std::nullopt" : "StepKind::" + stage,
                                literal(usual),
                                quoted(change),
                                quoted(because),
                                quoted(origin.cite),
                                trust_of(origin));
        }
    }
    return source_file("fault_causes", "FaultCauseRow", rows, nullptr);
}

std::string fault_symptoms(std::vector<DataFile>& files) {
    static const Names proved_words{"too_short", "too_long"};
    std::string rows;
    WordPool words;
    SeenKeys keys;
    SeenKeys phrases;
    for (DataFile& file : files) {
        for (Row& row : file.rows()) {
            const std::string key = row.text("key");
            keys.add(row, "the sign", key);
            const std::string tells = row.text("tells");
            const auto says = row.texts("says");
            want_plain_phrases(row, "says", says);
            for (const std::string& phrase : says) {
                phrases.add(row, "the words", phrase);
            }
            if (says.empty()) {
                row.fault(fmt::format("no words tell of {}, expected says = [\"…\"]", key));
            }
            const double unexplained = share(row, "unexplained_share");
            const auto proved = row.word_if("proved", proved_words);
            const Origin origin = row.origin();
            row.finish();
            const std::string range = words.range_of(says);
            rows += fmt::format("    {{{}, {}, {}, {}, Proved::{}, {}, {}}},\n",
                                quoted(key),
                                quoted(tells),
                                range,
                                literal(unexplained),
                                proved.value_or("unsaid"),
                                quoted(origin.cite),
                                trust_of(origin));
        }
    }
    return source_file("fault_symptoms", "ListedFaultSymptom", rows, &words);
}

std::string fault_links(std::vector<DataFile>& files) {
    std::string rows;
    SeenKeys pairs;
    for (DataFile& file : files) {
        for (Row& row : file.rows()) {
            const std::string cause = row.text("cause");
            const std::string symptom = row.text("symptom");
            pairs.add(row, "the pair", cause + " " + symptom);
            const double shows = share(row, "shows_share");
            const Origin origin = row.origin();
            row.finish();
            rows += fmt::format("    {{{}, {}, {}, {}, {}}},\n",
                                quoted(cause),
                                quoted(symptom),
                                literal(shows),
                                quoted(origin.cite),
                                trust_of(origin));
        }
    }
    return source_file("fault_links", "FaultLinkRow", rows, nullptr);
}

std::string fault_evidence(std::vector<DataFile>& files) {
    std::string rows;
    SeenKeys pairs;
    for (DataFile& file : files) {
        for (Row& row : file.rows()) {
            const std::string fact = row.text("fact");
            const std::string cause = row.text("cause");
            pairs.add(row, "the pair", fact + " " + cause);
            const auto odds = row.number_if("odds_factor");
            if (!odds || *odds < 0.01 || *odds > 100.0 || *odds == 1.0) {
                row.fault("odds_factor is missing, 1, or not from 0.01 to 100");
            }
            const std::string says = row.text("says");
            const Origin origin = row.origin();
            row.finish();
            rows += fmt::format("    {{{}, {}, {}, {}, {}, {}}},\n",
                                quoted(fact),
                                quoted(cause),
                                literal(odds.value_or(2.0)),
                                quoted(says),
                                quoted(origin.cite),
                                trust_of(origin));
        }
    }
    return source_file("fault_evidence", "FaultEvidenceRow", rows, nullptr);
}

} // namespace loafwright::generate

// SPDX-License-Identifier: Apache-2.0
#include "engine/faults/facts.hpp"
#include "engine/faults/find_faults.hpp"
#include "engine/faults/network.hpp"
#include "engine/faults/words.hpp"
#include "tests/faults/logs.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <set>
#include <string>

namespace loafwright::faults {
namespace {

const Knowledge& known() {
    static const Knowledge knowledge = built_in_knowledge();
    return knowledge;
}

Findings found(const std::vector<std::string>& symptoms, const BakeLog* log = nullptr) {
    return find_faults(symptoms, log, known());
}

std::string first(const Findings& findings) {
    return findings.findings.empty() ? "" : findings.findings.front().key;
}

bool says(const std::vector<std::string>& sentences, const std::string& part) {
    return std::any_of(sentences.begin(), sentences.end(), [&part](const std::string& sentence) {
        return sentence.find(part) != std::string::npos;
    });
}

TEST(find_faults, the_log_speaks_with_its_own_numbers) {
    const BakeLog log = LogMaker().went(StepKind::prove, 40, 95).at_c(18).log();
    const Findings findings = found({"dense", "burst at the side"}, &log);
    ASSERT_EQ(first(findings), "under_proved");
    const Finding& most_likely = findings.findings.front();
    EXPECT_EQ(most_likely.cause, "proved too short");
    EXPECT_EQ(most_likely.stage, StepKind::prove);
    EXPECT_GT(most_likely.probability, 0.8);
    EXPECT_TRUE(says(most_likely.speaks_for,
                     "Your prove was 40 min at 18 °C; this dough wanted about 1 h 35."));
    EXPECT_TRUE(says(most_likely.speaks_for, "You saw a close, heavy crumb and a burst side."));
    ASSERT_TRUE(findings.try_next);
    EXPECT_NE(findings.try_next->change.find("plan 1 h 35 for the prove (it was 40 min)"),
              std::string::npos)
        << findings.try_next->change;
    EXPECT_EQ(findings.our_time, "") << "nobody kept to our time here";
}

TEST(find_faults, the_same_signs_with_another_log_come_in_another_order) {
    const std::vector<std::string> signs{"small loaf", "no oven spring"};
    const BakeLog short_prove = LogMaker().went(StepKind::prove, 35, 60).log();
    const BakeLog long_prove = LogMaker().went(StepKind::prove, 110, 60).log();
    const BakeLog cool_oven = LogMaker().went(StepKind::prove, 60, 60).baked_at(230, 195).log();
    EXPECT_EQ(first(found(signs, &long_prove)), "over_proved");
    EXPECT_NE(first(found(signs, &short_prove)), "over_proved");
    const Findings cool = found(signs, &cool_oven);
    EXPECT_EQ(first(cool), "oven_cool");
    const auto chance = [](const Findings& findings, const std::string& key) {
        for (const Finding& finding : findings.findings) {
            if (finding.key == key) {
                return finding.probability;
            }
        }
        return 0.0;
    };
    EXPECT_GT(chance(found(signs, &short_prove), "under_proved"),
              5.0 * chance(found(signs, &long_prove), "under_proved"));
}

TEST(find_faults, where_our_time_was_wrong_it_says_so) {
    const BakeLog log = LogMaker().went(StepKind::prove, 45, 45).at_c(18).log();
    const Findings findings = found({"close crumb", "burst side"}, &log);
    ASSERT_EQ(first(findings), "under_proved");
    EXPECT_EQ(findings.our_time,
              "We planned 45 min for the prove at 18 °C, and you kept to it: our time was too "
              "short, not yours. Next time we plan about 55 min.");
}

TEST(find_faults, two_changes_at_once_cannot_be_told_apart) {
    const BakeLog one = LogMaker().changed("a longer prove").log();
    EXPECT_EQ(found({"pale"}, &one).cannot_tell, "");
    const BakeLog two = LogMaker().changed("a longer prove").changed("a hotter oven").log();
    EXPECT_EQ(found({"pale"}, &two).cannot_tell,
              "You changed two things since the last bake (a longer prove and a hotter oven): this "
              "bake can't tell which of them made the difference.");
}

TEST(find_faults, there_is_one_change_and_never_the_one_that_was_made_already) {
    const auto change = found({"pale crust"}).try_next;
    ASSERT_TRUE(change);
    const BakeLog again = LogMaker().changed(change->change).log();
    const auto next = found({"pale crust"}, &again).try_next;
    ASSERT_TRUE(next);
    EXPECT_NE(next->change, change->change);
}

// Two causes of one change: salt is weighed whether it was too much or too little.
TEST(find_faults, causes_that_share_a_change_count_together) {
    std::set<std::string_view> changes;
    for (const FaultCauseRow& row : known().fault_causes) {
        changes.insert(row.change);
    }
    EXPECT_LT(changes.size(), known().fault_causes.size());
    const auto change = found({"sour", "grey crumb"}).try_next;
    ASSERT_TRUE(change);
    EXPECT_EQ(change->change, "make the dough 2 °C cooler");
}

TEST(find_faults, what_was_as_it_should_be_speaks_against) {
    BakeLog log = LogMaker().log();
    log.told.crust = Crust::right;
    log.told.symptoms = {"soft crust"};
    const Findings findings = found({}, &log);
    EXPECT_EQ(findings.seen, std::vector<std::string>{"a soft, leathery crust"});
    const auto under_baked = std::find_if(findings.findings.begin(),
                                          findings.findings.end(),
                                          [](const Finding& f) { return f.key == "under_baked"; });
    ASSERT_NE(under_baked, findings.findings.end());
    EXPECT_TRUE(says(under_baked->speaks_against, "You did not see a pale crust."));
}

TEST(find_faults, no_sign_gives_no_finding_and_no_change) {
    BakeLog log = LogMaker().went(StepKind::prove, 40, 95).log();
    log.told.crust = Crust::right;
    log.told.crumb = Crumb::even;
    const Findings findings = found({}, &log);
    EXPECT_TRUE(findings.findings.empty());
    EXPECT_FALSE(findings.try_next);
    EXPECT_EQ(words_of(findings).size(), 1U);
}

TEST(find_faults, every_sign_alone_has_findings_in_order_and_a_change) {
    for (const FaultSymptomRow& sign : known().fault_symptoms) {
        const Findings findings = found({std::string(sign.says.front())});
        ASSERT_FALSE(findings.findings.empty()) << sign.key;
        EXPECT_TRUE(findings.try_next) << sign.key;
        EXPECT_TRUE(std::is_sorted(
            findings.findings.begin(),
            findings.findings.end(),
            [](const Finding& a, const Finding& b) { return a.probability > b.probability; }))
            << sign.key;
        EXPECT_LE(findings.findings.front().probability, 1.0);
    }
}

TEST(find_faults, words_for_people_have_no_numbers_for_how_likely) {
    const BakeLog log = LogMaker().went(StepKind::prove, 40, 95).at_c(18).log();
    const auto say = words_of(found({"dense", "burst side"}, &log));
    ASSERT_GE(say.size(), 3U);
    EXPECT_EQ(say.front().find("Most likely: proved too short."), 0U) << say.front();
    EXPECT_EQ(say.back().find("Change one thing: "), 0U) << say.back();
    for (const std::string& line : say) {
        EXPECT_EQ(line.find('!'), std::string::npos);
        EXPECT_EQ(line.find("0."), std::string::npos) << line;
    }
}

// ---- the data

TEST(fault_data, causes_signs_and_facts_that_are_named_are_there) {
    std::set<std::string_view> causes;
    std::set<std::string_view> signs;
    for (const FaultCauseRow& row : known().fault_causes) {
        causes.insert(row.key);
    }
    for (const FaultSymptomRow& row : known().fault_symptoms) {
        signs.insert(row.key);
    }
    std::set<std::string_view> linked;
    for (const FaultLinkRow& row : known().fault_links) {
        EXPECT_EQ(causes.count(row.cause), 1U) << row.cause;
        EXPECT_EQ(signs.count(row.symptom), 1U) << row.symptom;
        EXPECT_FALSE(row.source.empty());
        linked.insert(row.cause);
        linked.insert(row.symptom);
    }
    EXPECT_EQ(linked.size(), causes.size() + signs.size()) << "a cause or sign that nothing links";
    const auto& keys = fact_keys();
    for (const FaultEvidenceRow& row : known().fault_evidence) {
        EXPECT_EQ(causes.count(row.cause), 1U) << row.cause;
        EXPECT_NE(std::find(keys.begin(), keys.end(), row.fact), keys.end()) << row.fact;
        EXPECT_EQ(row.says.back(), '.') << row.says;
    }
    for (const std::string_view key : keys) {
        EXPECT_TRUE(std::any_of(known().fault_evidence.begin(),
                                known().fault_evidence.end(),
                                [key](const FaultEvidenceRow& row) { return row.fact == key; }))
            << key;
    }
}

TEST(fault_data, the_words_of_a_sign_mean_that_sign_alone) {
    for (const FaultSymptomRow& row : known().fault_symptoms) {
        for (const std::string_view words : row.says) {
            const auto meant = symptoms_in(known(), words);
            ASSERT_EQ(meant.size(), 1U) << words;
            EXPECT_EQ(meant.front()->key, row.key) << words;
        }
        const auto shown = symptoms_in(known(), row.tells);
        ASSERT_EQ(shown.size(), 1U) << row.tells;
        EXPECT_EQ(shown.front()->key, row.key) << row.tells;
    }
    EXPECT_TRUE(symptoms_in(known(), "it was lovely").empty());
    EXPECT_EQ(symptoms_in(known(), "Pale, and DENSE in the middle").size(), 2U);
}

} // namespace
} // namespace loafwright::faults

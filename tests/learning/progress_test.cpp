// SPDX-License-Identifier: Apache-2.0
#include "engine/learning/progress.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <string>
#include <vector>

namespace loafwright {
namespace {

using Words = std::vector<std::string>;

const Knowledge& known() {
    static const Knowledge knowledge = built_in_knowledge();
    return knowledge;
}

BakeLog bake(std::int64_t prove, std::int64_t planned, Growth growth = Growth::doubled) {
    LoggedLine line;
    line.stage = 4;
    line.kind = StepKind::prove;
    line.attention = Attention::wait;
    line.minutes = {planned, planned, planned};
    line.usual_minutes = static_cast<double>(planned);
    line.begun = Instant{1795597200};
    line.done = later_by_minutes(*line.begun, prove);
    line.timed = true;
    line.wanted_growth = 1.0;
    line.grown = LoggedGrowth{*line.done, growth};
    BakeLog log;
    log.bread = "Plain tin loaf";
    log.leaven = "yeast";
    log.lines = {line};
    return log;
}

TEST(progress, one_bake_or_none_compares_with_nothing) {
    EXPECT_TRUE(progress_of({}, known()).points.empty());
    const Progress one = progress_of({bake(45, 45)}, known());
    EXPECT_EQ(one.points.size(), 1U);
    EXPECT_TRUE(one.better_than_last.empty() && one.better_than_first.empty() &&
                one.differed.empty() && one.our_time.empty());
}

TEST(progress, names_what_got_better_and_only_that) {
    BakeLog first = bake(45, 45, Growth::little);
    first.told.crust = Crust::pale;
    first.told.crumb = Crumb::close;
    first.told.symptoms = {"a burst side", "gummy"};
    first.told.again = false;
    BakeLog second = bake(70, 45, Growth::doubled);
    second.told.crust = Crust::right;
    second.told.crumb = Crumb::close;
    second.told.symptoms = {"gummy"};
    second.told.again = true;
    const Progress progress = progress_of({first, second}, known());
    EXPECT_EQ(progress.better_than_last,
              (Words{"The crust is right; it was pale last time.",
                     "Gone since last time: a burst side.",
                     "The dough came nearer to the rise it wants than last time.",
                     "You want to bake it again."}));
    EXPECT_EQ(progress.differed, (Words{"The prove took 1 h 10; last time 45 min."}));
    // The other way round nothing got better, and nothing is said.
    EXPECT_TRUE(progress_of({second, first}, known()).better_than_last.empty());
}

TEST(progress, since_the_first_bake_has_its_own_words) {
    BakeLog first = bake(45, 45);
    first.told.crumb = Crumb::open;
    BakeLog last = bake(45, 45);
    last.told.crumb = Crumb::even;
    const Progress progress = progress_of({first, last, last}, known());
    EXPECT_TRUE(progress.better_than_last.empty());
    EXPECT_EQ(progress.better_than_first,
              (Words{"The crumb is even; it was open at the first bake."}));
}

TEST(progress, a_bake_nobody_spoke_of_makes_nothing_better) {
    BakeLog first = bake(45, 45);
    first.told.symptoms = {"gummy"};
    EXPECT_TRUE(progress_of({first, bake(45, 45)}, known()).better_than_last.empty());
}

TEST(progress, where_our_time_was_wrong_it_says_so) {
    const Progress wrong = progress_of({bake(60, 45), bake(45, 45), bake(65, 45)}, known());
    EXPECT_EQ(wrong.our_time,
              (Words{"Our prove was too short in two of three bakes; you went by the dough."}));
    EXPECT_TRUE(progress_of({bake(46, 45), bake(44, 45)}, known()).our_time.empty());
    EXPECT_TRUE(progress_of({bake(65, 45), bake(45, 45)}, known()).our_time.empty())
        << "one bake is no pattern";
}

TEST(progress, several_changes_at_once_cannot_be_told_apart) {
    BakeLog last = bake(45, 45);
    last.told.changed = {"warmer water", "a hotter oven"};
    const Words said = progress_of({bake(45, 45), last}, known()).differed;
    ASSERT_EQ(said.size(), 3U);
    EXPECT_NE(said.back().find("can't tell"), std::string::npos);
}

RC_GTEST_PROP(progress, has_a_point_for_each_bake_and_never_blames, ()) {
    std::vector<BakeLog> logs;
    const int count = *rc::gen::inRange(0, 6);
    for (int k = 0; k < count; ++k) {
        BakeLog log =
            bake(*rc::gen::inRange(10, 120), 45, static_cast<Growth>(*rc::gen::inRange(0, 4)));
        if (*rc::gen::arbitrary<bool>()) {
            log.told.crust = static_cast<Crust>(*rc::gen::inRange(0, 3));
            log.told.crumb = static_cast<Crumb>(*rc::gen::inRange(0, 3));
        }
        logs.push_back(log);
    }
    const Progress progress = progress_of(logs, known());
    RC_ASSERT(progress.points.size() == logs.size());
    for (const Words* words : {&progress.better_than_last,
                               &progress.better_than_first,
                               &progress.differed,
                               &progress.our_time}) {
        for (const std::string& sentence : *words) {
            RC_ASSERT(sentence.find('!') == std::string::npos);
            for (const char* never : {"error", "mistake", "failed", "score", "best"}) {
                RC_ASSERT(sentence.find(never) == std::string::npos);
            }
        }
    }
}

} // namespace
} // namespace loafwright

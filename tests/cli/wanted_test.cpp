// SPDX-License-Identifier: Apache-2.0
//
// Another size and another yeast, as a baker would ask for them. What comes of them is checked in
// tests/formula; here is what reaches the page.
#include "tests/cli/program.hpp"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <string>
#include <vector>

namespace loafwright {
namespace {

using nlohmann::json;

class wanted : public program {
protected:
    [[nodiscard]] std::vector<std::string> plan_of(const std::string& file,
                                                   std::vector<std::string> more) const {
        std::vector<std::string> words{
            "plan", file, "--start", "09:00", "--now", "2026-11-28T08:00:00Z", "--zone", "UTC"};
        words.insert(words.end(), more.begin(), more.end());
        return words;
    }
    [[nodiscard]] std::string page(const std::string& file,
                                   const std::vector<std::string>& more) const {
        const Outcome outcome = run(plan_of(file, more));
        EXPECT_EQ(outcome.status, 0) << outcome.err;
        return outcome.out;
    }
    [[nodiscard]] json plan(const std::string& file, std::vector<std::string> more) const {
        more.emplace_back("--json");
        const Outcome outcome = run(plan_of(file, more));
        EXPECT_EQ(outcome.status, 0) << outcome.out;
        return json::parse(outcome.out).at("plan");
    }
    static void expect_in(const std::string& page, const std::vector<std::string>& words) {
        for (const std::string& some : words) {
            EXPECT_NE(page.find(some), std::string::npos) << some << "\n" << page;
        }
    }
    static json stage(const json& plan, const std::string& title) {
        for (const json& one : plan.at("stages")) {
            if (one.at("title").get<std::string>().rfind(title, 0) == 0) {
                return one;
            }
        }
        ADD_FAILURE() << "no stage " << title << " in " << plan.at("stages").dump(1);
        return json::object();
    }
};

TEST_F(wanted, the_page_weighs_the_size_that_was_asked_for) {
    expect_in(page("loaf.txt", {"--factor", "2"}),
              {"1000 g strong white flour", "20 g salt", "660 g water", "2 times the recipe."});
    expect_in(page("loaf.txt", {"--dough", "1694"}), {"1000 g strong white flour"});
    expect_in(page("loaf.txt", {"--pieces", "3"}), {"1500 g strong white flour", "For 3: 3 times"});
    expect_in(page("loaf.txt", {"--tin", "230x130x70"}), {"For a tin of 230 x 130 x 70 mm"});
}

// A heavier loaf bakes longer, two of the same do not.
TEST_F(wanted, the_bake_follows_the_size) {
    const auto minutes = [this](const std::vector<std::string>& more) {
        return plan("loaf.txt", more).at("total_minutes").get<int>();
    };
    EXPECT_GT(minutes({"--factor", "1.5"}), minutes({}));
    expect_in(page("loaf.txt", {"--factor", "3"}), {"may not do for so large a change"});
    EXPECT_EQ(page("loaf.txt", {"--pieces", "3"}).find("for so large a change"), std::string::npos);
    EXPECT_EQ(stage(plan("loaf.txt", {"--pieces", "2"}), "Bake").at("reason"),
              stage(plan("loaf.txt", {}), "Bake").at("reason"));
}

TEST_F(wanted, another_yeast_is_weighed_and_told) {
    const std::string fresh = page("loaf.txt", {"--yeast", "fresh"});
    expect_in(fresh, {"21 g fresh yeast", "With fresh yeast instead of instant yeast: 21 g"});
    EXPECT_EQ(page("loaf.txt", {"--yeast", "instant"}), page("loaf.txt", {}));
    // Size first, so that the words have the weights of the page.
    expect_in(page("loaf.txt", {"--yeast", "active_dry", "--factor", "2"}),
              {"17 g instead of 14 g"});
}

TEST_F(wanted, leaven_instead_of_yeast_begins_the_evening_before) {
    const std::string told = page("loaf.txt", {"--yeast", "leaven"});
    expect_in(told,
              {"With leaven instead of yeast: the evening before",
               "18 g ripe starter",
               "491 g strong white flour", // the starter brings 9 g of each
               "321 g water",
               "18 g starter, 91 g flour, 91 g water",
               "400 g flour, 230 g water, all the leaven"});
    EXPECT_EQ(told.find("7 g instant"), std::string::npos) << told;
    const json made = plan("loaf.txt", {"--yeast", "leaven"});
    EXPECT_EQ(stage(made, "Leaven").at("basis"), "computed");
    EXPECT_EQ(stage(made, "First rise").at("basis"), "computed");
    EXPECT_GT(made.at("total_minutes").get<int>(),
              plan("loaf.txt", {}).at("total_minutes").get<int>() + 8 * 60);
}

TEST_F(wanted, yeast_instead_of_leaven_takes_an_afternoon) {
    write("leaven.txt",
          "Shelf loaf\n\n450 g strong white flour\n280 g water\n100 g ripe starter\n10 g salt\n\n"
          "Mix everything and knead for 10 minutes. Leave to rise for 5 hours. Shape and put in a "
          "tin. Prove for 2 hours. Bake for 40 minutes at 230°C.\n");
    const std::string told = page("leaven.txt", {"--yeast", "instant"});
    expect_in(told,
              {"500 g strong white flour",
               "330 g water",
               "5 g instant yeast",
               "With instant yeast instead of leaven"});
    EXPECT_EQ(told.find("starter"), std::string::npos) << told;
    const json made = plan("leaven.txt", {"--yeast", "instant"});
    EXPECT_EQ(stage(made, "First rise").at("basis"), "assumed");
    EXPECT_EQ(page("leaven.txt", {"--yeast", "leaven"}), page("leaven.txt", {}));
}

TEST_F(wanted, what_cannot_be_swapped_says_so) {
    write("soda.txt",
          "Soda bread\n\n450 g plain flour\n1 tsp bicarbonate of soda\n1 tsp salt\n350 ml "
          "buttermilk\n\nMix it all and bake for 40 minutes at 200°C.\n");
    expect_refused(plan_of("soda.txt", {"--yeast", "instant"}),
                   {"soda.txt", "neither yeast nor leaven in Soda bread"});
    write("milk.txt",
          "Milk loaf\n\n500 g strong white flour\n8 g salt\n7 g instant yeast\n320 ml milk\n\nMix, "
          "knead for 10 minutes, leave to rise for 1 hour. Bake for 35 minutes at 200°C.\n");
    const Outcome outcome = run({"scale", "milk.txt", "--yeast", "leaven", "--json"});
    EXPECT_EQ(outcome.status, 2);
    EXPECT_EQ(json::parse(outcome.out).at("error")[0].at("code"), "leaven_does_not_fit");
    EXPECT_EQ(json::parse(outcome.out).at("error")[0].at("where"), "milk.txt");
}

TEST_F(wanted, the_other_commands_take_it_too) {
    expect_in(run({"gather", "loaf.txt", "--factor", "2"}).out, {"1000 g   strong white flour"});
    expect_in(run({"formula", "loaf.txt", "--yeast", "leaven"}).out, {"20 % of the flour"});
    expect_in(run({"scale", "loaf.txt", "--yeast", "fresh"}).out, {"21 g   fresh yeast"});
    const Outcome chosen = run({"choose",
                                "loaf.txt",
                                "--yeast",
                                "leaven",
                                "--now",
                                "2026-11-28T08:00:00Z",
                                "--zone",
                                "UTC",
                                "--json"});
    EXPECT_EQ(chosen.status, 0) << chosen.out;
    EXPECT_GT(json::parse(chosen.out).at("choices")[0].at("total_minutes").get<int>(), 12 * 60)
        << chosen.out;
    const Outcome changes = run({"scale", "loaf.txt", "--factor", "2", "--json"});
    EXPECT_EQ(json::parse(changes.out).at("recipe").at("changes")[0], "2 times the recipe.");
}

TEST_F(wanted, it_is_asked_for_one_bread_and_in_one_way) {
    write("other.txt", loaf);
    expect_refused({"plan", "loaf.txt", "other.txt", "--factor", "2"},
                   {"2 recipes", "one of them"});
    expect_refused({"gather", "loaf.txt", "other.txt", "--yeast", "fresh"}, {"one of them"});
    expect_refused({"plan", "loaf.txt", "--pieces", "2", "--factor", "2"},
                   {"--pieces and --factor"});
    expect_refused({"plan", "loaf.txt", "--yeast", "barm"},
                   {"--yeast was given 'barm'", "fresh, active_dry, instant or leaven"});
    expect_refused({"choose", "loaf.txt", "--pieces", "none"}, {"--pieces"});
}

} // namespace
} // namespace loafwright

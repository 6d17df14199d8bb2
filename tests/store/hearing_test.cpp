// SPDX-License-Identifier: Apache-2.0
//
// Two openings of one PostgreSQL hear of each other.
#include "tests/store/cluster.hpp"
#include "tests/store/places.hpp"

#include <gtest/gtest.h>
#include <poll.h>

#include <algorithm>
#include <string>
#include <vector>

namespace loafwright::store {
namespace {

class hearing : public testing::Test {
protected:
    void SetUp() override {
        if (Cluster::get() == nullptr) {
            GTEST_SKIP() << "no PostgreSQL server is installed (postgresql-15)";
        }
        place_ = std::make_unique<Place>(Where::postgresql);
        mine_ = place_->open();
        theirs_ = place_->open();
        for (const char* bake : {"a", "b"}) {
            taken(mine_->create_bake(bake, "{}", Instant{}));
        }
    }
    // True when there is something to read, at once or after waiting ten seconds for it.
    static bool is_readable(Store& store, int milliseconds = 10000) {
        pollfd what{store.changes_descriptor().value_or(-1), POLLIN, 0};
        return ::poll(&what, 1, milliseconds) == 1;
    }
    // Its news, once there are any.
    static std::vector<std::string> news(Store& store) {
        std::vector<std::string> names;
        for (int turn = 0; names.empty() && turn < 100 && is_readable(store); ++turn) {
            names = store.changed_bakes();
        }
        std::sort(names.begin(), names.end());
        return names;
    }

    std::unique_ptr<Place> place_;
    std::unique_ptr<Store> mine_;
    std::unique_ptr<Store> theirs_;
};

TEST_F(hearing, an_append_names_its_bake_to_the_other) {
    EXPECT_TRUE(theirs_->changed_bakes().empty());
    EXPECT_FALSE(is_readable(*theirs_, 0));
    taken(mine_->append_all({{"b", {{"e", "{}"}}}}));
    EXPECT_EQ(news(*theirs_), std::vector<std::string>{"b"});
    EXPECT_EQ(taken(theirs_->events_after("b", 0, 10)).size(), 1U) << "and it can be read";
    EXPECT_FALSE(is_readable(*theirs_, 0)) << "once";
}

TEST_F(hearing, several_bakes_are_named_each_and_an_import_too) {
    taken(mine_->append_all({{"b", {{"e", "{}"}, {"f", "{}"}}}, {"a", {{"e", "{}"}}}}));
    EXPECT_EQ(news(*theirs_), (std::vector<std::string>{"a", "b"}));
    taken(mine_->import_all(
        R"({"loafwright_export":1,"documents":[],"photos":[],"bakes":[{"id":"c","created":1,)"
        R"("request":{},"events":[{"id":"e"}]}]})"));
    EXPECT_EQ(news(*theirs_), std::vector<std::string>{"c"});
}

TEST_F(hearing, a_retry_and_a_refusal_are_no_news) {
    taken(mine_->append_all({{"a", {{"e", "{}"}}}}));
    EXPECT_EQ(news(*theirs_), std::vector<std::string>{"a"});
    taken(mine_->append_all({{"a", {{"e", "{}"}}}, {"nobody", {{"e", "{}"}}}}));
    taken(mine_->append_all({{"b", {{"e", "{}"}}}})); // the next thing that is heard
    EXPECT_EQ(news(*theirs_), std::vector<std::string>{"b"});
}

TEST_F(hearing, after_a_lost_connection_all_have_to_be_looked_at) {
    Cluster::get()->stop("fast");
    EXPECT_TRUE(is_readable(*theirs_)) << "the end of a connection wakes, too";
    for (int turn = 0; turn < 3; ++turn) {
        EXPECT_TRUE(theirs_->changed_bakes().empty())
            << "nothing is heard of a server that is away";
    }
    EXPECT_EQ(theirs_->changes_descriptor(), -1);
    Cluster::get()->start();
    EXPECT_EQ(theirs_->changed_bakes(), std::vector<std::string>{""});
    taken(mine_->append_all({{"a", {{"e", "{}"}}}}));
    EXPECT_EQ(news(*theirs_), std::vector<std::string>{"a"});
}

TEST(hearing_in_a_folder, there_is_nobody_else_to_hear_of) {
    const Place place(Where::folder);
    const auto store = place.open();
    EXPECT_EQ(store->changes_descriptor(), std::nullopt);
    EXPECT_TRUE(store->changed_bakes().empty());
}

} // namespace
} // namespace loafwright::store

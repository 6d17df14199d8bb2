// SPDX-License-Identifier: Apache-2.0
//
// Whoever listens hears every event once and in order, also when another process keeps events of
// the same bake: a second opening of the store stands for it.
#include "shell/server/keeper.hpp"

#include <gtest/gtest.h>
#include <stdlib.h>

#include <filesystem>
#include <future>
#include <string>
#include <utility>
#include <vector>

namespace loafwright::server {
namespace {

namespace fs = std::filesystem;

class keeper : public testing::Test {
protected:
    void SetUp() override {
        std::string pattern = (fs::temp_directory_path() / "loafwright-keeper-XXXXXX").string();
        ASSERT_NE(::mkdtemp(pattern.data()), nullptr);
        folder_ = pattern;
        theirs_ = opened();
        ASSERT_TRUE(theirs_->create_bake("rye", "{}", Instant{1}).has_value());
        ours_ = std::make_unique<Keeper>(opened(), opened(), hub_, metrics_);
    }
    void TearDown() override {
        ours_.reset();
        theirs_.reset();
        std::error_code ignored;
        fs::remove_all(folder_, ignored);
    }
    [[nodiscard]] std::unique_ptr<store::Store> opened() const {
        return std::move(store::open(folder_.string(), "").value());
    }
    // Kept by this process; the numbers.
    std::vector<std::int64_t> append(std::vector<store::NewEvent> events) {
        std::promise<std::vector<std::int64_t>> numbers;
        ours_->append({"rye", std::move(events)},
                      [&numbers](const auto& kept) { numbers.set_value(kept.value().value()); });
        return numbers.get_future().get();
    }
    void append_elsewhere(const std::string& id) {
        const auto kept = theirs_->append_all({{"rye", {{id, "{}"}}}});
        ASSERT_TRUE(kept.has_value());
    }
    // The numbers that have come to a listener since the last time.
    static std::vector<std::string> heard(EventStream& stream) {
        std::vector<std::string> lines;
        for (const EventText& text : stream.take()) {
            lines.push_back(text->substr(0, text->find('\n')));
        }
        return lines;
    }

    fs::path folder_;
    EventHub hub_;
    Metrics metrics_;
    std::unique_ptr<store::Store> theirs_;
    std::unique_ptr<Keeper> ours_;
};

const EventHub::Replay nothing_before = [](const auto& /*give*/) {};
using Lines = std::vector<std::string>;

TEST_F(keeper, what_another_process_kept_is_told_before_what_came_after_it) {
    const auto stream = hub_.subscribe("rye", 0, nothing_before);
    EXPECT_EQ(append({{"a", "{}"}}), std::vector<std::int64_t>{1});
    append_elsewhere("b");
    append_elsewhere("c");
    EXPECT_EQ(append({{"d", "{}"}}), std::vector<std::int64_t>{4});
    EXPECT_EQ(heard(*stream), (Lines{"id: 1", "id: 2", "id: 3", "id: 4"}));
}

TEST_F(keeper, a_retry_of_what_another_process_kept_is_told_once) {
    const auto stream = hub_.subscribe("rye", 0, nothing_before);
    append_elsewhere("a");
    EXPECT_EQ(append({{"a", "{}"}, {"b", "{}"}}), (std::vector<std::int64_t>{1, 2}));
    EXPECT_EQ(append({{"b", "{}"}, {"a", "{}"}}), (std::vector<std::int64_t>{2, 1}));
    EXPECT_EQ(heard(*stream), (Lines{"id: 1", "id: 2"}));
}

TEST_F(keeper, a_long_hole_is_filled_up_like_a_short_one) {
    const auto stream = hub_.subscribe("rye", 1000, nothing_before);
    std::vector<store::NewEvent> many;
    for (int n = 0; n < 1500; ++n) {
        many.push_back({"e" + std::to_string(n), "{}"});
    }
    ASSERT_TRUE(theirs_->append_all({{"rye", many}}).has_value());
    append({{"last", "{}"}});
    const Lines lines = heard(*stream);
    ASSERT_EQ(lines.size(), 501U);
    EXPECT_EQ(lines.front(), "id: 1001");
    EXPECT_EQ(lines.back(), "id: 1501");
}

} // namespace
} // namespace loafwright::server

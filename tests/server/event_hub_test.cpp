// SPDX-License-Identifier: Apache-2.0
#include "shell/server/event_hub.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <atomic>
#include <string>
#include <thread>

namespace loafwright::server {
namespace {

const EventHub::Replay nothing = [](const auto& /*give*/) {};

// The numbers of the events that wait, by the form of the WHATWG standard.
std::vector<std::int64_t> numbers(EventStream& stream) {
    std::vector<std::int64_t> all;
    for (const EventText& text : stream.take()) {
        EXPECT_EQ(text->rfind("id: ", 0), 0U);
        EXPECT_EQ(text->substr(text->size() - 2), "\n\n");
        all.push_back(std::stoll(text->substr(4)));
    }
    return all;
}

TEST(event_hub, the_form_is_that_of_the_standard) {
    EXPECT_EQ(*event_text(7, R"({"a":1})"), "id: 7\nevent: event\ndata: {\"a\":1}\n\n");
}

TEST(event_hub, a_listener_gets_what_was_before_and_what_comes_once_each) {
    EventHub hub;
    const auto stream = hub.subscribe("rye", 1, [&hub](const auto& give) {
        hub.publish("rye", 4, "{}"); // comes while the past is being told
        hub.publish("rye", 3, "{}");
        give(2, "{}");
        give(3, "{}");
    });
    hub.publish("rye", 3, "{}"); // told again
    hub.publish("rye", 5, "{}");
    hub.publish("wheat", 6, "{}");
    EXPECT_EQ(numbers(*stream), (std::vector<std::int64_t>{2, 3, 4, 5}));
    EXPECT_EQ(hub.channels().at("rye"), 5);
}

TEST(event_hub, who_is_gone_is_forgotten) {
    EventHub hub;
    auto stream = hub.subscribe("rye", 0, nothing);
    EXPECT_EQ(hub.listeners(), 1U);
    stream.reset();
    EXPECT_EQ(hub.listeners(), 0U);
    hub.publish("rye", 1, "{}");
    EXPECT_TRUE(hub.channels().empty());
}

TEST(event_hub, a_listener_too_far_behind_is_let_go) {
    EventHub hub;
    const auto stream = hub.subscribe("rye", 0, nothing);
    for (std::size_t n = 1; n <= EventStream::most_waiting + 1; ++n) {
        hub.publish("rye", static_cast<std::int64_t>(n), "{}");
    }
    EXPECT_TRUE(stream->too_slow());
    EXPECT_EQ(stream->take().size(), EventStream::most_waiting);
}

TEST(event_hub, many_threads_at_once_lose_nothing) {
    EventHub hub;
    std::atomic<int> woken{0};
    const auto stream = hub.subscribe("rye", 0, nothing);
    stream->on_news([&woken] { ++woken; });
    std::thread other([&hub] {
        for (std::int64_t n = 1; n <= 500; ++n) {
            hub.publish("rye", n, "{}");
        }
    });
    std::vector<std::int64_t> got;
    while (got.size() < 500) {
        const auto more = numbers(*stream);
        got.insert(got.end(), more.begin(), more.end());
    }
    other.join();
    for (std::size_t n = 0; n < got.size(); ++n) {
        ASSERT_EQ(got[n], static_cast<std::int64_t>(n) + 1);
    }
    EXPECT_EQ(woken, 500);
}

RC_GTEST_PROP(event_hub, whatever_is_published_when_each_number_comes_once_and_in_order, ()) {
    EventHub hub;
    const auto before = *rc::gen::container<std::vector<int>>(rc::gen::inRange(1, 20));
    const auto during = *rc::gen::container<std::vector<int>>(rc::gen::inRange(1, 20));
    const auto after = *rc::gen::inRange(0, 10);
    const auto stream = hub.subscribe("rye", after, [&](const auto& give) {
        for (const int n : during) {
            hub.publish("rye", n, "{}");
        }
        std::int64_t last = 0;
        for (const int n : before) {
            last = std::max<std::int64_t>(last, n);
            give(last, "{}");
        }
    });
    std::int64_t last = after;
    for (const std::int64_t n : numbers(*stream)) {
        RC_ASSERT(n > last);
        last = n;
    }
}

} // namespace
} // namespace loafwright::server

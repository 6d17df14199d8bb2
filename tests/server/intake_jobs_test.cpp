// SPDX-License-Identifier: Apache-2.0
//
// Files on their way to becoming words: one at a time, to be looked at, stopped and forgotten. What
// reads them is a stand-in that waits to be told; the real one is asked over HTTP in tests/api.
#include "shell/server/intake_jobs.hpp"

#include <gtest/gtest.h>

#include <atomic>
#include <chrono>
#include <future>
#include <string>
#include <thread>

namespace loafwright::server {
namespace {

using namespace std::chrono_literals;

// Reads nothing until it is let; ends early when it is stopped.
class Reader {
public:
    IntakeJobs::TakeIn taking() {
        return [this](const std::vector<intake::NamedBytes>& files, const intake::Wish& wish) {
            ++begun;
            wish.progress(40);
            while (!open && !wish.stop.stop_requested()) {
                std::this_thread::sleep_for(1ms);
            }
            stopped = stopped || wish.stop.stop_requested();
            intake::TakenIn taken;
            taken.text = files.front().bytes;
            return IntakeJobs::Taken(std::move(taken));
        };
    }
    std::atomic<int> begun{0};
    std::atomic<bool> open{false};
    std::atomic<bool> stopped{false};
};

template <typename Holds>
bool soon(const Holds& holds) {
    for (int tries = 0; tries < 5000; ++tries) {
        if (holds()) {
            return true;
        }
        std::this_thread::sleep_for(1ms);
    }
    return false;
}

bool is_over(IntakeJobs& jobs, const std::string& id) {
    return soon([&] {
        const auto found = jobs.look(id);
        return found && found->taken;
    });
}

TEST(intake_jobs, run_one_after_another_and_say_how_far_they_are) {
    Reader reader;
    IntakeJobs jobs(reader.taking());
    const auto first = jobs.begin({{"a", "first"}});
    const auto second = jobs.begin({{"b", "second"}});
    ASSERT_TRUE(first && second);
    EXPECT_NE(*first, *second);
    EXPECT_TRUE(soon([&] { return jobs.look(*first)->percent == 40; }));
    EXPECT_EQ(jobs.look(*second)->percent, 0);
    EXPECT_EQ(reader.begun, 1);
    reader.open = true;
    ASSERT_TRUE(is_over(jobs, *first) && is_over(jobs, *second));
    EXPECT_EQ((*jobs.look(*first)->taken)->text, "first");
    EXPECT_EQ((*jobs.look(*second)->taken)->text, "second");
    EXPECT_EQ(jobs.look(*second)->percent, 100);
}

TEST(intake_jobs, what_is_forgotten_is_stopped_and_gone) {
    Reader reader;
    IntakeJobs jobs(reader.taking());
    const auto id = jobs.begin({{"a", "words"}});
    ASSERT_TRUE(soon([&] { return reader.begun == 1; }));
    EXPECT_TRUE(jobs.forget(*id));
    EXPECT_FALSE(jobs.look(*id));
    EXPECT_FALSE(jobs.forget(*id));
    EXPECT_TRUE(soon([&] { return reader.stopped.load(); }));
    reader.open = true;
    const auto next = jobs.begin({{"b", "more"}});
    EXPECT_TRUE(is_over(jobs, *next));
}

TEST(intake_jobs, no_more_wait_than_there_is_room_for) {
    Reader reader;
    IntakeJobs jobs(reader.taking());
    ASSERT_TRUE(jobs.begin({{"a", "words"}}));
    ASSERT_TRUE(soon([&] { return reader.begun == 1; }));
    for (std::size_t waiting = 0; waiting < IntakeJobs::most_waiting; ++waiting) {
        EXPECT_TRUE(jobs.begin({{"b", "words"}}));
    }
    EXPECT_FALSE(jobs.begin({{"c", "words"}}));
}

TEST(intake_jobs, are_kept_for_a_while) {
    Reader reader;
    reader.open = true;
    std::atomic<std::int64_t> minutes{0};
    IntakeJobs jobs(reader.taking(), [&minutes] {
        return IntakeJobs::Clock::time_point(std::chrono::minutes(minutes.load()));
    });
    const auto id = jobs.begin({{"a", "words"}});
    ASSERT_TRUE(is_over(jobs, *id));
    minutes = 14;
    EXPECT_TRUE(jobs.look(*id));
    minutes = 16;
    EXPECT_FALSE(jobs.look(*id));
}

TEST(intake_jobs, only_so_many_are_kept) {
    Reader reader;
    reader.open = true;
    IntakeJobs jobs(reader.taking());
    const auto first = jobs.begin({{"a", "words"}});
    ASSERT_TRUE(is_over(jobs, *first));
    for (std::size_t more = 0; more < IntakeJobs::most_kept; ++more) {
        ASSERT_TRUE(is_over(jobs, *jobs.begin({{"b", "words"}})));
    }
    static_cast<void>(jobs.begin({{"c", "words"}}));
    EXPECT_FALSE(jobs.look(*first));
}

} // namespace
} // namespace loafwright::server

// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "shell/intake/take_in.hpp"

#include <tl/expected.hpp>

#include <chrono>
#include <condition_variable>
#include <functional>
#include <list>
#include <memory>
#include <mutex>
#include <optional>
#include <stop_token>
#include <string>
#include <thread>
#include <vector>

namespace loafwright::server {

/// Files from which words are being taken, one after another on a thread of its own: a photo takes
/// seconds, and whoever asks something else meanwhile is answered at once. Safe from any thread.
class IntakeJobs {
public:
    using Taken = tl::expected<intake::TakenIn, Diagnostics>;
    using TakeIn =
        std::function<Taken(const std::vector<intake::NamedBytes>&, const intake::Wish&)>;
    using Clock = std::chrono::steady_clock;

    static constexpr std::size_t most_waiting = 8;
    static constexpr std::size_t most_kept = 16; // of those that are over
    static constexpr std::chrono::minutes kept_for{15};

    explicit IntakeJobs(TakeIn take_in = intake::take_in,
                        std::function<Clock::time_point()> clock = Clock::now);
    /// What runs is stopped.
    ~IntakeJobs();
    IntakeJobs(const IntakeJobs&) = delete;
    IntakeJobs& operator=(const IntakeJobs&) = delete;

    /// How far one is.
    struct Look {
        int percent = 0;
        std::shared_ptr<const Taken> taken; // null while it waits or runs
    };

    /// Its id, which cannot be guessed; none where `most_waiting` wait already.
    std::optional<std::string> begin(std::vector<intake::NamedBytes> files);
    /// None where there is no such one, or not any more.
    std::optional<Look> look(const std::string& id);
    /// Stopped, and forgotten with what it found. False where there is none.
    bool forget(const std::string& id);

private:
    struct Job {
        std::string id;
        std::vector<intake::NamedBytes> files;
        int percent = 0;
        bool running = false;
        std::stop_source stop;
        std::shared_ptr<const Taken> taken;
        Clock::time_point over;
    };

    void work();
    void clear_old();
    std::list<Job>::iterator find(const std::string& id);

    TakeIn take_in_;
    std::function<Clock::time_point()> clock_;
    std::mutex lock_;
    std::condition_variable news_;
    std::list<Job> jobs_; // in the order they came
    bool closing_ = false;
    std::thread worker_;
};

} // namespace loafwright::server

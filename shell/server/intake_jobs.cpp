// SPDX-License-Identifier: Apache-2.0
#include "shell/server/intake_jobs.hpp"

#include "shell/server/access.hpp"

#include <algorithm>
#include <utility>

namespace loafwright::server {

IntakeJobs::IntakeJobs(TakeIn take_in, std::function<Clock::time_point()> clock)
    : take_in_(std::move(take_in)), clock_(std::move(clock)), worker_([this] { work(); }) {}

IntakeJobs::~IntakeJobs() {
    {
        const std::lock_guard guard(lock_);
        closing_ = true;
        for (Job& job : jobs_) {
            job.stop.request_stop();
        }
    }
    news_.notify_all();
    worker_.join();
}

std::optional<std::string> IntakeJobs::begin(std::vector<intake::NamedBytes> files) {
    std::string id = random_word();
    {
        const std::lock_guard guard(lock_);
        clear_old();
        const auto waiting = std::count_if(
            jobs_.begin(), jobs_.end(), [](const Job& job) { return !job.taken && !job.running; });
        if (id.empty() || static_cast<std::size_t>(waiting) >= most_waiting) {
            return std::nullopt;
        }
        Job job;
        job.id = id;
        job.files = std::move(files);
        jobs_.push_back(std::move(job));
    }
    news_.notify_all();
    return id;
}

std::optional<IntakeJobs::Look> IntakeJobs::look(const std::string& id) {
    const std::lock_guard guard(lock_);
    clear_old();
    const auto job = find(id);
    if (job == jobs_.end()) {
        return std::nullopt;
    }
    return Look{job->percent, job->taken};
}

bool IntakeJobs::forget(const std::string& id) {
    const std::lock_guard guard(lock_);
    const auto job = find(id);
    if (job == jobs_.end()) {
        return false;
    }
    if (job->running) {
        job->stop.request_stop();
        job->id.clear(); // its thread takes it out
    } else {
        jobs_.erase(job);
    }
    return true;
}

std::list<IntakeJobs::Job>::iterator IntakeJobs::find(const std::string& id) {
    return std::find_if(
        jobs_.begin(), jobs_.end(), [&id](const Job& job) { return !id.empty() && job.id == id; });
}

// Those that are over and old, and the oldest beyond the number that is kept.
void IntakeJobs::clear_old() {
    const Clock::time_point now = clock_();
    jobs_.remove_if([now](const Job& job) { return job.taken && now - job.over > kept_for; });
    auto over = static_cast<std::size_t>(std::count_if(
        jobs_.begin(), jobs_.end(), [](const Job& job) { return job.taken != nullptr; }));
    for (auto job = jobs_.begin(); job != jobs_.end() && over > most_kept;) {
        if (job->taken) {
            job = jobs_.erase(job);
            --over;
        } else {
            ++job;
        }
    }
}

void IntakeJobs::work() {
    std::unique_lock guard(lock_);
    for (;;) {
        const auto next = [this] {
            return std::find_if(
                jobs_.begin(), jobs_.end(), [](const Job& job) { return !job.taken; });
        };
        news_.wait(guard, [&] { return closing_ || next() != jobs_.end(); });
        if (closing_) {
            return;
        }
        const auto job = next(); // stays in its place in the list until it is over
        job->running = true;
        const std::vector<intake::NamedBytes> files = std::move(job->files);
        intake::Wish wish;
        wish.page_pictures = true;
        wish.stop = job->stop.get_token();
        wish.progress = [this, job](int percent) {
            const std::lock_guard told(lock_);
            job->percent = percent;
        };
        guard.unlock();
        auto taken = std::make_shared<const Taken>(take_in_(files, wish));
        guard.lock();
        job->running = false;
        if (job->id.empty()) {
            jobs_.erase(job);
            continue;
        }
        job->percent = 100;
        job->over = clock_();
        job->taken = std::move(taken);
    }
}

} // namespace loafwright::server

// SPDX-License-Identifier: Apache-2.0
#include "shell/server/keeper.hpp"

#include <poll.h>

#include <algorithm>
#include <iterator>
#include <utility>

namespace loafwright::server {

namespace {

constexpr std::size_t most_together = 200;
constexpr std::size_t most_news = 1000;
constexpr int look_again_ms = 500;

} // namespace

Keeper::Keeper(std::unique_ptr<store::Store> reading,
               std::unique_ptr<store::Store> writing,
               EventHub& hub,
               Metrics& metrics)
    : reading_(std::move(reading)), writing_(std::move(writing)), hub_(hub), metrics_(metrics) {
    writer_ = std::thread([this] { write(); });
    if (reading_->changes_descriptor()) {
        watcher_ = std::thread([this] { watch(); });
    }
}

Keeper::~Keeper() {
    {
        const std::lock_guard guard(lock_);
        over_ = true;
    }
    news_.notify_all();
    writer_.join();
    if (watcher_.joinable()) {
        watcher_.join();
    }
}

void Keeper::append(store::Append append, Appended then) {
    {
        const std::lock_guard guard(lock_);
        orders_.push_back({std::move(append), std::move(then)});
    }
    news_.notify_one();
}

void Keeper::write() {
    std::unique_lock guard(lock_);
    while (true) {
        news_.wait(guard, [this] { return over_ || !orders_.empty(); });
        if (orders_.empty()) {
            return;
        }
        const auto count =
            static_cast<std::ptrdiff_t>(std::min<std::size_t>(orders_.size(), most_together));
        std::vector<Order> together(std::make_move_iterator(orders_.begin()),
                                    std::make_move_iterator(orders_.begin() + count));
        orders_.erase(orders_.begin(), orders_.begin() + count);
        guard.unlock();
        write_together(std::move(together));
        guard.lock();
    }
}

void Keeper::write_together(std::vector<Order> orders) {
    std::vector<store::Append> appends;
    appends.reserve(orders.size());
    for (const Order& order : orders) {
        appends.push_back(order.append);
    }
    const auto written = writing_->append_all(appends);
    for (std::size_t n = 0; n < orders.size(); ++n) {
        if (!written) {
            orders[n].then(tl::make_unexpected(written.error()));
            continue;
        }
        const store::Appended& sequences = (*written)[n];
        if (sequences) {
            metrics_.appended(static_cast<std::int64_t>(sequences->size()));
            for (std::size_t e = 0; e < sequences->size(); ++e) {
                if (const auto last = hub_.last_before_hole(appends[n].bake, (*sequences)[e])) {
                    tell_news_of(appends[n].bake, *last);
                }
                hub_.publish(appends[n].bake, (*sequences)[e], appends[n].events[e].json);
            }
        }
        orders[n].then(sequences);
    }
}

void Keeper::watch() {
    while (true) {
        {
            const std::lock_guard guard(lock_);
            if (over_) {
                return;
            }
        }
        std::optional<int> descriptor;
        with([&descriptor](store::Store& store) { descriptor = store.changes_descriptor(); });
        pollfd waiting{descriptor.value_or(-1), POLLIN, 0};
        ::poll(&waiting, 1, look_again_ms);
        const std::vector<std::string> changed =
            with([](store::Store& store) { return store.changed_bakes(); });
        if (changed.empty()) {
            continue;
        }
        const bool all = std::find(changed.begin(), changed.end(), "") != changed.end();
        for (const auto& [bake, last] : hub_.channels()) {
            if (all || std::find(changed.begin(), changed.end(), bake) != changed.end()) {
                tell_news_of(bake, last);
            }
        }
    }
}

void Keeper::tell_news_of(const std::string& bake, std::int64_t after) {
    bool more = true;
    while (more) {
        const auto news =
            with([&](store::Store& store) { return store.events_after(bake, after, most_news); });
        more = news && news->size() == most_news;
        if (news) {
            for (const store::StoredEvent& event : *news) {
                hub_.publish(bake, event.sequence, event.json);
                after = event.sequence;
            }
        }
    }
}

} // namespace loafwright::server

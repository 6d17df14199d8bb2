// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/diagnostic/diagnostic.hpp"
#include "shell/server/event_hub.hpp"
#include "shell/server/metrics.hpp"
#include "shell/store/store.hpp"

#include <tl/expected.hpp>

#include <condition_variable>
#include <deque>
#include <functional>
#include <memory>
#include <mutex>
#include <string>
#include <thread>
#include <vector>

namespace loafwright::server {

/// The store as the handlers' threads share it, and the one thread that writes events: what comes
/// in while it writes goes together into the next transaction, so that many screens cost one wait
/// for the disk. What is kept is told to those who listen.
class Keeper {
public:
    /// Sequences of the events, none where there is no such bake.
    using Appended = std::function<void(store::Answer<store::Appended>)>;

    /// `reading` and `writing` are two openings of one store.
    Keeper(std::unique_ptr<store::Store> reading,
           std::unique_ptr<store::Store> writing,
           EventHub& hub,
           Metrics& metrics);
    /// What was taken in is written first.
    ~Keeper();
    Keeper(const Keeper&) = delete;
    Keeper& operator=(const Keeper&) = delete;

    /// `use` is alone with the store.
    template <typename Use>
    auto with(Use use) {
        const std::lock_guard guard(store_lock_);
        return use(*reading_);
    }

    /// `then` is called from the writing thread, once the events are durable.
    void append(store::Append append, Appended then);

private:
    struct Order {
        store::Append append;
        Appended then;
    };

    void write();
    void write_together(std::vector<Order> orders);
    /// What another process has kept is told here too.
    void watch();
    void tell_news_of(const std::string& bake, std::int64_t after);

    std::mutex store_lock_;
    std::unique_ptr<store::Store> reading_;
    std::unique_ptr<store::Store> writing_;
    EventHub& hub_;
    Metrics& metrics_;
    std::mutex lock_;
    std::condition_variable news_;
    std::deque<Order> orders_;
    bool over_ = false;
    std::thread writer_;
    std::thread watcher_;
};

} // namespace loafwright::server

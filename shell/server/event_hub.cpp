// SPDX-License-Identifier: Apache-2.0
#include "shell/server/event_hub.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstdint>

namespace loafwright::server {

EventText event_text(std::int64_t sequence, std::string_view json) {
    return std::make_shared<const std::string>(
        fmt::format("id: {}\nevent: event\ndata: {}\n\n", sequence, json));
}

void EventStream::on_news(std::function<void()> wake) {
    const std::lock_guard guard(lock_);
    wake_ = std::move(wake);
}

std::vector<EventText> EventStream::take() {
    const std::lock_guard guard(lock_);
    std::vector<EventText> all(waiting_.begin(), waiting_.end());
    waiting_.clear();
    return all;
}

bool EventStream::too_slow() const {
    const std::lock_guard guard(lock_);
    return too_slow_;
}

void EventStream::queue(std::int64_t sequence, const EventText& text, std::size_t most) {
    if (sequence <= last_) {
        return;
    }
    if (waiting_.size() >= most) {
        too_slow_ = true;
        return;
    }
    last_ = sequence;
    waiting_.push_back(text);
}

void EventStream::push(std::int64_t sequence, const EventText& text) {
    std::function<void()> wake;
    {
        const std::lock_guard guard(lock_);
        if (holding_) {
            held_.emplace_back(sequence, text);
            return;
        }
        queue(sequence, text, most_waiting);
        wake = wake_;
    }
    if (wake) {
        wake();
    }
}

void EventStream::replay(std::int64_t sequence, const EventText& text) {
    const std::lock_guard guard(lock_);
    queue(sequence, text, SIZE_MAX); // as long as the bake is
}

void EventStream::release() {
    const std::lock_guard guard(lock_);
    holding_ = false;
    std::sort(
        held_.begin(), held_.end(), [](const auto& a, const auto& b) { return a.first < b.first; });
    for (const auto& [sequence, text] : held_) {
        queue(sequence, text, SIZE_MAX);
    }
    held_.clear();
}

std::shared_ptr<EventStream>
EventHub::subscribe(const std::string& channel, std::int64_t after, const Replay& replay) {
    const auto stream = std::make_shared<EventStream>(after);
    {
        const std::lock_guard guard(lock_);
        channels_[channel].listeners.push_back(stream);
    }
    std::int64_t last = after;
    replay([&](std::int64_t sequence, std::string_view json) {
        stream->replay(sequence, event_text(sequence, json));
        last = std::max(last, sequence);
    });
    stream->release();
    const std::lock_guard guard(lock_);
    Channel& here = channels_[channel];
    here.last = std::max(here.last, last);
    return stream;
}

std::optional<std::int64_t> EventHub::last_before_hole(const std::string& channel,
                                                       std::int64_t sequence) const {
    const std::lock_guard guard(lock_);
    const auto found = channels_.find(channel);
    if (found == channels_.end() || found->second.last + 1 >= sequence) {
        return std::nullopt;
    }
    return found->second.last;
}

void EventHub::publish(const std::string& channel, std::int64_t sequence, std::string_view json) {
    const std::lock_guard one_by_one(publishing_);
    std::vector<std::shared_ptr<EventStream>> listeners;
    {
        const std::lock_guard guard(lock_);
        const auto found = channels_.find(channel);
        if (found == channels_.end()) {
            return;
        }
        Channel& here = found->second;
        here.last = std::max(here.last, sequence);
        auto& all = here.listeners;
        all.erase(std::remove_if(all.begin(),
                                 all.end(),
                                 [](const auto& listener) { return listener.expired(); }),
                  all.end());
        for (const auto& listener : all) {
            if (auto stream = listener.lock()) {
                listeners.push_back(std::move(stream));
            }
        }
        if (listeners.empty()) {
            channels_.erase(found);
            return;
        }
    }
    const EventText text = event_text(sequence, json);
    for (const auto& listener : listeners) {
        listener->push(sequence, text);
    }
}

std::map<std::string, std::int64_t> EventHub::channels() const {
    const std::lock_guard guard(lock_);
    std::map<std::string, std::int64_t> all;
    for (const auto& [name, channel] : channels_) {
        all[name] = channel.last;
    }
    return all;
}

std::size_t EventHub::listeners() const {
    const std::lock_guard guard(lock_);
    std::size_t count = 0;
    for (const auto& [name, channel] : channels_) {
        for (const auto& listener : channel.listeners) {
            count += listener.expired() ? 0U : 1U;
        }
    }
    return count;
}

} // namespace loafwright::server

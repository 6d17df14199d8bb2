// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <cstdint>
#include <deque>
#include <functional>
#include <map>
#include <memory>
#include <mutex>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

/// Server-sent events (WHATWG HTML, section 9.2): who listens to what.
namespace loafwright::server {

/// One event as it goes over the wire, shared by all who get it.
using EventText = std::shared_ptr<const std::string>;

/// "id: 7\nevent: event\ndata: {…}\n\n"; `json` on one line.
EventText event_text(std::int64_t sequence, std::string_view json);

/// What waits to be written to one listener. Safe from any thread.
class EventStream {
public:
    /// A listener that takes this many events too late is let go.
    static constexpr std::size_t most_waiting = 1000;

    explicit EventStream(std::int64_t after) : last_(after) {}

    /// Called whenever something can be taken; from any thread, never under the lock.
    void on_news(std::function<void()> wake);
    /// Everything that waits.
    std::vector<EventText> take();
    /// True once it fell too far behind: close it, it comes back with its last number.
    [[nodiscard]] bool too_slow() const;

private:
    friend class EventHub;

    /// Once each, in order; until `release` they are held back.
    void push(std::int64_t sequence, const EventText& text);
    void replay(std::int64_t sequence, const EventText& text);
    void release();
    void queue(std::int64_t sequence, const EventText& text, std::size_t most); // under the lock

    mutable std::mutex lock_;
    std::deque<EventText> waiting_;
    std::vector<std::pair<std::int64_t, EventText>> held_;
    bool holding_ = true;
    bool too_slow_ = false;
    std::int64_t last_ = 0;
    std::function<void()> wake_;
};

/// Channels, one for each bake. Safe from any thread.
class EventHub {
public:
    using Replay = std::function<void(const std::function<void(std::int64_t, std::string_view)>&)>;

    /// A listener that gets everything after `after`: first what `replay` gives, then what is
    /// published, nothing twice and nothing left out though both go on at once.
    std::shared_ptr<EventStream>
    subscribe(const std::string& channel, std::int64_t after, const Replay& replay);

    /// The last number that was published to the channel, where somebody listens and numbers before
    /// `sequence` are missing: another process kept those. Publish them first, a listener takes no
    /// number that is smaller than one it has.
    [[nodiscard]] std::optional<std::int64_t> last_before_hole(const std::string& channel,
                                                               std::int64_t sequence) const;

    /// To everybody who listens, once: a number that was published is passed over.
    void publish(const std::string& channel, std::int64_t sequence, std::string_view json);

    /// The channels that somebody listens to, with the last number that was published there.
    [[nodiscard]] std::map<std::string, std::int64_t> channels() const;
    [[nodiscard]] std::size_t listeners() const;

private:
    struct Channel {
        std::vector<std::weak_ptr<EventStream>> listeners;
        std::int64_t last = 0;
    };

    std::mutex
        publishing_; // two threads may publish; each number is with everybody before the next
    mutable std::mutex lock_;
    std::map<std::string, Channel> channels_;
};

} // namespace loafwright::server

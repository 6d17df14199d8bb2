// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/breads/bake.hpp"
#include "engine/knowledge/knowledge.hpp"

#include <tl/expected.hpp>

#include <cstddef>
#include <list>
#include <map>
#include <memory>
#include <mutex>
#include <string>
#include <vector>

namespace loafwright::server {

/// A few values by their keys, the least lately used is forgotten. Safe from any thread.
template <typename Value>
class Remembered {
public:
    explicit Remembered(std::size_t most) : most_(most) {}

    std::shared_ptr<const Value> find(const std::string& key) {
        const std::lock_guard guard(lock_);
        const auto found = places_.find(key);
        if (found == places_.end()) {
            return nullptr;
        }
        entries_.splice(entries_.begin(), entries_, found->second);
        return found->second->second;
    }

    void keep(const std::string& key, std::shared_ptr<const Value> value) {
        const std::lock_guard guard(lock_);
        const auto found = places_.find(key);
        if (found != places_.end()) {
            found->second->second = std::move(value);
            entries_.splice(entries_.begin(), entries_, found->second);
            return;
        }
        entries_.emplace_front(key, std::move(value));
        places_[key] = entries_.begin();
        if (entries_.size() > most_) {
            places_.erase(entries_.back().first);
            entries_.pop_back();
        }
    }

private:
    using Entry = std::pair<std::string, std::shared_ptr<const Value>>;

    std::mutex lock_;
    std::size_t most_;
    std::list<Entry> entries_;
    std::map<std::string, typename std::list<Entry>::iterator> places_;
};

/// Plans requests; what no day changes is worked out once for a text in a kitchen. Safe from any
/// thread.
class Planner {
public:
    explicit Planner(const Knowledge& knowledge)
        : knowledge_(knowledge), reader_(knowledge), known_(128) {}

    /// The breads of a request, read and fitted, and the kitchen they were fitted for.
    struct Fitted {
        Kitchen kitchen;
        std::shared_ptr<const breads::KnownBreads> known;
    };

    /// Errors: as breads::bake_of.
    tl::expected<breads::Bake, Diagnostics> bake(breads::BakeRequest request);
    tl::expected<Fitted, Diagnostics> fitted(const breads::BakeRequest& request);

    [[nodiscard]] const Knowledge& knowledge() const { return knowledge_; }
    [[nodiscard]] const Reader& reader() const { return reader_; }

private:
    const Knowledge& knowledge_;
    Reader reader_; // what a word means, worked out once
    Remembered<breads::KnownBreads> known_;
};

/// Everything of a request that reading and fitting look at, as one text.
std::string key_of(const breads::BakeRequest& request, const Kitchen& kitchen);

} // namespace loafwright::server

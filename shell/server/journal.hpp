// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/following/bake_log.hpp"
#include "engine/kitchen/factors.hpp"
#include "engine/knowledge/knowledge.hpp"
#include "shell/server/told_bakes.hpp"

#include <cstdint>
#include <map>
#include <memory>
#include <mutex>
#include <optional>
#include <string>
#include <vector>

namespace loafwright::server {

/// As many of the newest bakes are learned from; older ones were baked with other hands.
inline constexpr std::size_t most_learned_from = 1000;

/// What the bakes of this kitchen have been, and what they taught. A log is worked out from a
/// bake's events and kept beside it as a document, so that opening the journal plans nothing again.
/// Safe from any thread.
class Journal {
public:
    Journal(ToldBakes& bakes, Keeper& keeper, const Knowledge& knowledge)
        : bakes_(bakes), keeper_(keeper), knowledge_(knowledge) {}

    /// Reads what is kept, and works out the logs of the bakes that have news since.
    ///
    /// Errors: those of reading the store. A bake that cannot be planned any more is left out; a
    /// log that cannot be kept is worked out again at the next start.
    std::optional<Diagnostic> catch_up();
    /// What was learned as of the last catch_up.
    [[nodiscard]] KitchenFactors factors() const;
    /// The logs of one bake, one a bread.
    ///
    /// Errors: those of ToldBakes::told_of.
    tl::expected<std::vector<BakeLog>, Response> logs_of(const std::string& id);
    /// All logs as of the last catch_up, oldest bake first.
    [[nodiscard]] std::vector<BakeLog> all() const;

private:
    struct Entry {
        std::int64_t last = 0; // events that the log knows
        Instant created;
        std::vector<BakeLog> logs;
    };

    std::optional<Diagnostic> read_kept(const std::vector<store::BakeRecord>& bakes);
    std::vector<BakeLog> made_of(const Told& told) const;

    ToldBakes& bakes_;
    Keeper& keeper_;
    const Knowledge& knowledge_;
    mutable std::mutex lock_;
    bool read_ = false;
    std::map<std::string, Entry> entries_;
    KitchenFactors factors_;
};

} // namespace loafwright::server

// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

struct pg_conn;

namespace loafwright::store {

/// A connection of its own that hears of what others keep (PostgreSQL, LISTEN). What it hears is
/// only a hint to look: it may be lost, and is made up for by "look at all".
class Listener {
public:
    static constexpr const char* channel = "loafwright_events";

    explicit Listener(std::string address);

    /// None while there is no connection.
    [[nodiscard]] std::optional<int> descriptor() const;
    /// The names that were told; "" once after each lost connection.
    std::vector<std::string> drain();

private:
    struct Finish {
        void operator()(pg_conn* connection) const;
    };

    void connect();

    std::string address_;
    std::unique_ptr<pg_conn, Finish> connection_;
};

} // namespace loafwright::store

// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <chrono>
#include <cstdint>
#include <memory>
#include <string>
#include <string_view>

namespace loafwright::server {

/// What the server counts, in the text form of Prometheus. Safe from any thread.
class Metrics {
public:
    Metrics();
    ~Metrics();
    Metrics(const Metrics&) = delete;
    Metrics& operator=(const Metrics&) = delete;

    /// `route` is a template, never a path: what people write does not become a name.
    void answered(std::string_view route,
                  std::string_view method,
                  unsigned status,
                  std::chrono::microseconds took);
    void appended(std::int64_t events);
    void connections(std::int64_t open);
    void listeners(std::int64_t open);

    [[nodiscard]] std::string text() const;

private:
    struct Counters;
    std::unique_ptr<Counters> counters_;
};

} // namespace loafwright::server

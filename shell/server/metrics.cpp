// SPDX-License-Identifier: Apache-2.0
#include "shell/server/metrics.hpp"

#include <prometheus/counter.h>
#include <prometheus/gauge.h>
#include <prometheus/histogram.h>
#include <prometheus/registry.h>
#include <prometheus/text_serializer.h>

namespace loafwright::server {

struct Metrics::Counters {
    prometheus::Registry registry;
    prometheus::Family<prometheus::Counter>& requests =
        prometheus::BuildCounter()
            .Name("loafwright_requests_total")
            .Help("Answered requests by route, method and status")
            .Register(registry);
    prometheus::Family<prometheus::Histogram>& seconds =
        prometheus::BuildHistogram()
            .Name("loafwright_request_seconds")
            .Help("From the whole request to its answer")
            .Register(registry);
    prometheus::Counter& events = prometheus::BuildCounter()
                                      .Name("loafwright_events_total")
                                      .Help("Events kept")
                                      .Register(registry)
                                      .Add({});
    prometheus::Gauge& connections = prometheus::BuildGauge()
                                         .Name("loafwright_connections")
                                         .Help("Open connections")
                                         .Register(registry)
                                         .Add({});
    prometheus::Gauge& listeners = prometheus::BuildGauge()
                                       .Name("loafwright_listeners")
                                       .Help("Open event streams")
                                       .Register(registry)
                                       .Add({});
};

Metrics::Metrics() : counters_(std::make_unique<Counters>()) {}
Metrics::~Metrics() = default;

void Metrics::answered(std::string_view route,
                       std::string_view method,
                       unsigned status,
                       std::chrono::microseconds took) {
    counters_->requests
        .Add({{"route", std::string(route)},
              {"method", std::string(method)},
              {"status", std::to_string(status)}})
        .Increment();
    static const prometheus::Histogram::BucketBoundaries bounds{
        0.0005, 0.001, 0.002, 0.005, 0.01, 0.02, 0.05, 0.1, 0.5, 2.0};
    counters_->seconds.Add({{"route", std::string(route)}}, bounds)
        .Observe(std::chrono::duration<double>(took).count());
}

void Metrics::appended(std::int64_t events) {
    counters_->events.Increment(static_cast<double>(events));
}

void Metrics::connections(std::int64_t open) {
    counters_->connections.Set(static_cast<double>(open));
}

void Metrics::listeners(std::int64_t open) {
    counters_->listeners.Set(static_cast<double>(open));
}

std::string Metrics::text() const {
    return prometheus::TextSerializer().Serialize(counters_->registry.Collect());
}

} // namespace loafwright::server

// SPDX-License-Identifier: Apache-2.0
//
// How long does a journal of ten thousand bakes take to open, from a folder (SQLite), when a server
// starts? The yardstick is reading the same documents from the store and doing nothing with them.
#include "shell/server/journal.hpp"

#include "bench/kitchen_logs.hpp"
#include "engine/wire/bake_log_json.hpp"
#include "shell/server/event_hub.hpp"
#include "shell/server/metrics.hpp"

#include <benchmark/benchmark.h>
#include <fmt/format.h>
#include <nlohmann/json.hpp>
#include <stdlib.h>

#include <filesystem>
#include <memory>
#include <string>

namespace loafwright::bench {
namespace {

namespace fs = std::filesystem;

constexpr std::size_t bakes = 10000;

// Ten thousand bakes, each with what it was kept as.
class KeptYears {
public:
    KeptYears() {
        std::string pattern = (fs::temp_directory_path() / "loafwright-bench-XXXXXX").string();
        if (::mkdtemp(pattern.data()) == nullptr) {
            return;
        }
        folder_ = pattern;
        auto store = store::open(folder_.string(), "");
        if (!store) {
            return;
        }
        for (std::size_t number = 0; number < bakes; ++number) {
            const std::string id = fmt::format("bake-{:05}", number);
            const Instant begun{1500000000 + static_cast<std::int64_t>(number) * 86400};
            const std::string log = nlohmann::json(wire::bake_log_json(slow_bake(number))).dump();
            const bool kept =
                (*store)->create_bake(id, "{}", begun).has_value() &&
                (*store)
                    ->put_document("log", id, fmt::format("{{\"last\":0,\"logs\":[{}]}}", log))
                    .has_value();
            if (!kept) {
                return;
            }
        }
        whole_ = true;
    }
    KeptYears(const KeptYears&) = delete;
    KeptYears& operator=(const KeptYears&) = delete;
    ~KeptYears() {
        std::error_code ignored;
        fs::remove_all(folder_, ignored);
    }
    [[nodiscard]] bool whole() const { return whole_; }
    [[nodiscard]] std::unique_ptr<store::Store> opened() const {
        return std::move(store::open(folder_.string(), "").value());
    }

private:
    fs::path folder_;
    bool whole_ = false;
};

const KeptYears& years() {
    static const KeptYears made;
    return made;
}

void open_journal(benchmark::State& state) {
    if (!years().whole()) {
        state.SkipWithError("the bakes could not be kept");
        return;
    }
    const Knowledge knowledge = built_in_knowledge();
    server::EventHub hub;
    server::Metrics metrics;
    server::Keeper keeper(years().opened(), years().opened(), hub, metrics);
    server::Planner planner(knowledge);
    server::ToldBakes told(planner, keeper, [] { return Instant{}; });
    for (auto _ : state) {
        server::Journal journal(told, keeper, knowledge);
        if (journal.catch_up() || journal.all().size() < server::most_learned_from) {
            state.SkipWithError("the journal did not open");
            break;
        }
    }
}
BENCHMARK(open_journal)->Unit(benchmark::kMillisecond);

void read_documents(benchmark::State& state) {
    if (!years().whole()) {
        state.SkipWithError("the bakes could not be kept");
        return;
    }
    const auto store = years().opened();
    for (auto _ : state) {
        auto documents = store->documents("log");
        benchmark::DoNotOptimize(documents);
    }
}
BENCHMARK(read_documents)->Unit(benchmark::kMillisecond);

} // namespace
} // namespace loafwright::bench

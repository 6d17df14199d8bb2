// SPDX-License-Identifier: Apache-2.0
//
// How many events a second are kept so that they survive the power going, one at a time and twenty
// together, in a folder (SQLite)? The yardstick is the disk: 4096 bytes written to the end of a
// file and fsync, in turn with the appends, on the same disk. `ratio_to_raw` is the median append
// by the median raw write. TMPDIR says which disk.
#include "shell/store/store.hpp"

#include <benchmark/benchmark.h>
#include <fcntl.h>
#include <stdlib.h>
#include <unistd.h>

#include <algorithm>
#include <chrono>
#include <filesystem>
#include <string>
#include <vector>

namespace loafwright::bench {
namespace {

namespace fs = std::filesystem;
using Clock = std::chrono::steady_clock;

double seconds_since(Clock::time_point start) {
    return std::chrono::duration<double>(Clock::now() - start).count();
}

double median(std::vector<double> values) {
    const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
    std::nth_element(values.begin(), middle, values.end());
    return *middle;
}

void append_events(benchmark::State& state) {
    std::string folder = (fs::temp_directory_path() / "loafwright-bench-XXXXXX").string();
    if (::mkdtemp(folder.data()) == nullptr) {
        state.SkipWithError("no folder");
        return;
    }
    auto store = store::open(folder + "/kept", "");
    const int file = ::open((folder + "/raw").c_str(), O_WRONLY | O_CREAT | O_CLOEXEC, 0600);
    if (!store || !(*store)->create_bake("a", "{}", Instant{}) || file < 0) {
        state.SkipWithError("the folder was not opened");
        return;
    }
    const std::string page(4096, 'x');
    const auto together = static_cast<std::size_t>(state.range(0));
    std::vector<double> raw;
    std::vector<double> ours;
    std::size_t number = 0;
    for (auto _ : state) {
        auto start = Clock::now();
        if (::write(file, page.data(), page.size()) != static_cast<ssize_t>(page.size()) ||
            ::fsync(file) != 0) {
            state.SkipWithError("the disk did not take it");
            break;
        }
        raw.push_back(seconds_since(start));
        // As the server does: what came in together goes in together.
        std::vector<store::Append> appends(1);
        appends.front().bake = "a";
        for (std::size_t n = 0; n < together; ++n) {
            const std::string id = "event-" + std::to_string(++number);
            appends.front().events.push_back(
                {id, R"({"id":")" + id + R"(","kind":"done","at":1790000000,"step":3})"});
        }
        start = Clock::now();
        const auto answer = (*store)->append_all(appends);
        const double took = seconds_since(start);
        if (!answer || answer->front()->back() != static_cast<std::int64_t>(number)) {
            state.SkipWithError("the events were not kept");
            break;
        }
        ours.push_back(took);
        state.SetIterationTime(took);
    }
    if (!raw.empty() && !ours.empty()) {
        state.counters["raw_us"] = 1e6 * median(raw);
        state.counters["median_us"] = 1e6 * median(ours);
        state.counters["ratio_to_raw"] = median(ours) / median(raw);
        state.counters["events_per_s"] = static_cast<double>(together) / median(ours);
    }
    ::close(file);
    store->reset();
    std::error_code ignored;
    fs::remove_all(folder, ignored);
}
BENCHMARK(append_events)->Arg(1)->Arg(20)->UseManualTime()->Unit(benchmark::kMicrosecond);

} // namespace
} // namespace loafwright::bench

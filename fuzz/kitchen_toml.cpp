// SPDX-License-Identifier: Apache-2.0
//
// Any bytes as a kitchen file. What is accepted keeps to the ranges of the table in
// shell/settings/README.md; what is refused names the file and the reasons, sorted by line.
#include "fuzz/promise.hpp"
#include "shell/settings/settings.hpp"

#include <cmath>
#include <cstdlib>
#include <string>
#include <string_view>

namespace loafwright::fuzz {
namespace {

void within(double value, double low, double high) {
    // Written so that NaN fails too.
    promise(value >= low && value <= high, "figures keep to their ranges");
}

void check(const Kitchen& kitchen) {
    for (const RoomPeriod& period : kitchen.room) {
        within(period.temperature.degrees(), 0.0, 45.0);
        promise(period.from.hour >= 0 && period.from.hour <= 23 && period.from.minute >= 0 &&
                    period.from.minute <= 59,
                "a clock time is on the clock");
    }
    if (kitchen.flour) {
        within(kitchen.flour->degrees(), -20.0, 45.0);
    }
    within(kitchen.tap.degrees(), 0.0, 40.0);
    within(kitchen.fridge.degrees(), 0.0, 15.0);
    within(kitchen.altitude.count(), -430.0, 5500.0);
    if (kitchen.warm_spot) {
        within(kitchen.warm_spot->degrees(), 15.0, 50.0);
    }
    within(kitchen.oven.max.degrees(), 100.0, 350.0);
    within(kitchen.oven.heat_up.count(), 1.0, 120.0);
    within(kitchen.oven.shelves, 1.0, 10.0);
    within(kitchen.oven.offset.count(), -60.0, 60.0);
    for (const Tin& tin : kitchen.tins) {
        promise(!tin.name.empty(), "a tin has a name");
        within(tin.length.count(), 50.0, 600.0);
        within(tin.width.count(), 30.0, 600.0);
        within(tin.height.count(), 20.0, 300.0);
    }
}

void check(const Diagnostics& reasons) {
    promise_told(reasons);
    constexpr std::string_view name = "kitchen.toml";
    int line = 0;
    for (const Diagnostic& reason : reasons) {
        promise(reason.where.compare(0, name.size(), name) == 0, "a reason names the file");
        if (reason.where.size() > name.size() && reason.where[name.size()] == ':') {
            const int next = std::atoi(reason.where.c_str() + name.size() + 1);
            promise(next >= line, "reasons are sorted by line");
            line = next;
        }
    }
}

void one_text(std::string_view text) {
    const auto kitchen = settings::kitchen_from_toml(text, "kitchen.toml");
    if (kitchen) {
        check(*kitchen);
    } else {
        check(kitchen.error());
    }
}

} // namespace
} // namespace loafwright::fuzz

int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    loafwright::fuzz::one_text(loafwright::fuzz::text_of(data, size));
    return 0;
}

// SPDX-License-Identifier: Apache-2.0
//
// Any bytes as a bare scheduling problem. What is accepted has no fault that the scheduler's own
// gate would find; what is refused names the file and the reasons.
#include "engine/schedule/problem.hpp"
#include "engine/wire/schedule_problem.hpp"
#include "fuzz/promise.hpp"

#include <string_view>

namespace loafwright::fuzz {
namespace {

void one_text(std::string_view text) {
    constexpr std::string_view name = "day.json";
    const auto read = wire::schedule_problem_from_json(text, name);
    if (!read) {
        promise_told(read.error());
        for (const Diagnostic& reason : read.error()) {
            promise(reason.where.compare(0, name.size(), name) == 0, "a reason names the file");
        }
        return;
    }
    promise(schedule::faults_in(read->problem).empty(), "what is accepted has no faults");
    promise(!has_errors(read->warnings), "beside a problem stand warnings only");
}

} // namespace
} // namespace loafwright::fuzz

int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    loafwright::fuzz::one_text(loafwright::fuzz::text_of(data, size));
    return 0;
}

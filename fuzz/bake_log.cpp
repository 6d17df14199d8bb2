// SPDX-License-Identifier: Apache-2.0
//
// Any bytes as the log of a bake. What is read is written and read back the same, and both learning
// and looking for faults bear it; what is refused names the file and the reasons.
#include "engine/faults/find_faults.hpp"
#include "engine/learning/learn.hpp"
#include "engine/wire/bake_log_json.hpp"
#include "fuzz/promise.hpp"

#include <cmath>
#include <string>
#include <string_view>

namespace loafwright::fuzz {
namespace {

void one_text(std::string_view text) {
    static const Knowledge knowledge = built_in_knowledge();
    constexpr std::string_view name = "bake.json";
    const auto read = wire::bake_log_from_json(text, name);
    if (!read) {
        promise_told(read.error());
        for (const Diagnostic& reason : read.error()) {
            promise(reason.where.compare(0, name.size(), name) == 0, "a reason names the file");
        }
        return;
    }
    const std::string written = wire::bake_log_json(*read);
    const auto again = wire::bake_log_from_json(written, name);
    promise(again.has_value(), "what was written is read");
    promise(!again || wire::bake_log_json(*again) == written, "and is the same");
    for (const KindFactor& factor : learn({*read}, knowledge).kinds) {
        promise(std::isfinite(factor.log_mean) && std::fabs(factor.log_mean) < 1.0,
                "one bake, however wild, moves a factor by less than e");
        promise(factor.within_deviation > 0.0, "bakes differ");
    }
    for (const Finding& finding : find_faults({"dense"}, &*read, knowledge).findings) {
        promise(finding.probability > 0.0 && finding.probability <= 1.0, "a chance is one");
    }
}

} // namespace
} // namespace loafwright::fuzz

int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    loafwright::fuzz::one_text(loafwright::fuzz::text_of(data, size));
    return 0;
}

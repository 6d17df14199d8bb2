// SPDX-License-Identifier: Apache-2.0
#include "bench/kitchen_logs.hpp"

#include <cstdint>
#include <utility>

namespace loafwright::bench {

BakeLog slow_bake(std::size_t number) {
    BakeLog log;
    log.bread = "The hall loaf";
    log.leaven = "yeast";
    Instant clock{1795597200};
    int stage = 0;
    for (const auto& [kind, planned] : {std::pair(StepKind::knead, std::int64_t{30}),
                                        std::pair(StepKind::rise, std::int64_t{80}),
                                        std::pair(StepKind::shape, std::int64_t{10}),
                                        std::pair(StepKind::prove, std::int64_t{50}),
                                        std::pair(StepKind::bake, std::int64_t{40})}) {
        LoggedLine line;
        line.stage = ++stage;
        line.title = "a line of the page";
        line.kind = kind;
        line.attention = attention_of(kind);
        line.minutes = exactly(planned);
        line.usual_minutes = static_cast<double>(planned);
        line.begun = clock;
        clock = later_by_minutes(
            clock, planned * 5 / 4 + (static_cast<std::int64_t>(number) * 7 + stage * 3) % 9 - 4);
        line.done = clock;
        line.timed = true;
        log.lines.push_back(line);
    }
    return log;
}

} // namespace loafwright::bench

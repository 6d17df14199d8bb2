// SPDX-License-Identifier: Apache-2.0
//
// Steps name each other by their place in the list, so whoever changes the list mends the names.
#include "engine/formula/step_edits.hpp"

#include <algorithm>
#include <cstddef>
#include <optional>
#include <utility>

namespace loafwright::formula {

void take_out(std::vector<Step>& steps, const std::vector<bool>& out) {
    // The place of each step afterwards; for one that goes, that of the last that stays before it.
    std::vector<std::optional<std::size_t>> place(steps.size());
    std::vector<Step> kept;
    for (std::size_t i = 0; i < steps.size(); ++i) {
        if (!out[i]) {
            kept.push_back(steps[i]);
        }
        if (!kept.empty()) {
            place[i] = kept.size() - 1;
        }
    }
    for (Step& step : kept) {
        if (step.during) {
            step.during = *step.during < steps.size() && !out[*step.during]
                              ? place[*step.during]
                              : std::optional<std::size_t>();
        }
        std::vector<std::size_t> after;
        for (const std::size_t one : step.after) {
            const auto now = one < steps.size() ? place[one] : std::nullopt;
            if (now && std::find(after.begin(), after.end(), *now) == after.end()) {
                after.push_back(*now);
            }
        }
        step.after = std::move(after);
    }
    steps = std::move(kept);
}

void put_first(std::vector<Step>& steps, const std::vector<Step>& first) {
    for (Step& step : steps) {
        if (step.during) {
            *step.during += first.size();
        }
        for (std::size_t& one : step.after) {
            one += first.size();
        }
    }
    steps.insert(steps.begin(), first.begin(), first.end());
}

} // namespace loafwright::formula

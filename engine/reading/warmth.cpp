// SPDX-License-Identifier: Apache-2.0
#include "engine/reading/warmth.hpp"

#include "engine/reading/candidate.hpp"

namespace loafwright::reading {

bool is_core(const std::vector<Token>& tokens,
             const Clause& clause,
             const TemperaturePhrase& temperature) {
    if (temperature.middle() < 60 || temperature.middle() > 105) {
        return false;
    }
    return any_word(tokens,
                    clause.range,
                    {"inside",
                     "middle",
                     "centre",
                     "center",
                     "core",
                     "internal",
                     "thermometer",
                     "reads",
                     "probe",
                     "reaches"});
}

Place place_of(const Clause& clause) {
    return happens_at(clause, "fridge") ? Place::fridge
           : happens_at(clause, "warm") ? Place::warm
                                        : Place::counter;
}

void attach_temperatures(const std::vector<Token>& tokens, const Clause& clause, Draft& draft) {
    Step& step = draft.step;
    for (const TemperaturePhrase& temperature : clause.temperatures) {
        if (is_core(tokens, clause, temperature)) {
            continue;
        }
        const bool of_oven = temperature.middle() >= 95;
        const bool heats = step.kind == StepKind::bake || step.kind == StepKind::preheat ||
                           step.kind == StepKind::cook;
        const bool waits = attention_of(step.kind) == Attention::wait &&
                           step.kind != StepKind::cool && step.kind != StepKind::activate;
        if (((heats && of_oven) || (waits && temperature.middle() < 60)) && !step.temperature) {
            step.temperature = TemperatureRange{temperature.low, temperature.high};
        }
    }
}

} // namespace loafwright::reading

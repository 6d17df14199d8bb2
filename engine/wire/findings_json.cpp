// SPDX-License-Identifier: Apache-2.0
#include "engine/wire/findings_json.hpp"

#include "engine/faults/words.hpp"
#include "engine/wire/json_values.hpp"

namespace loafwright::wire {

std::string findings_json(const Findings& findings) {
    Json json;
    json["version"] = 1;
    json["findings"] = list(findings.findings, [](const Finding& finding) {
        return Json{{"cause", finding.cause},
                    {"stage", finding.stage ? text(name_of(*finding.stage)) : text("leaven")},
                    {"probability", number(finding.probability)},
                    {"for", texts(finding.speaks_for)},
                    {"against", texts(finding.speaks_against)}};
    });
    json["try_next"] = or_null(findings.try_next, [](const TryNext& next) {
        return Json{{"change", next.change},
                    {"because", next.because},
                    {"stage", next.stage ? text(name_of(*next.stage)) : text("leaven")}};
    });
    json["seen"] = texts(findings.seen);
    const auto if_any = [](const std::string& words) {
        return words.empty() ? Json(nullptr) : Json(words);
    };
    json["our_time"] = if_any(findings.our_time);
    json["cannot_tell"] = if_any(findings.cannot_tell);
    json["say"] = texts(faults::words_of(findings));
    return printed(json);
}

} // namespace loafwright::wire

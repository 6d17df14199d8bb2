// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/diagnostic/diagnostic.hpp"
#include "engine/planning/plan.hpp"
#include "engine/provisions/gather.hpp"
#include "engine/recipe/recipe.hpp"

#include <nlohmann/json.hpp>

#include <optional>
#include <string>
#include <string_view>

/// The pieces that the answers are made of. Only this room's .cpp files include it.
namespace loafwright::wire {

using Json = nlohmann::ordered_json;

/// At most three decimals, a whole number without a point; null for what is not finite.
Json number(double value);

inline Json text(std::string_view words) {
    return std::string(words);
}

template <typename Value, typename Write>
Json or_null(const std::optional<Value>& value, Write write) {
    return value ? Json(write(*value)) : Json(nullptr);
}

template <typename Values, typename Write>
Json list(const Values& values, Write write) {
    Json array = Json::array();
    for (const auto& value : values) {
        array.push_back(write(value));
    }
    return array;
}

Json span_json(const Span& span);
Json caution_json(const Caution& caution);
Json texts(const std::vector<std::string>& words);
Json grams_json(const Band<Grams>& band);
Json minutes_json(const TimedBand& timed);
Json temperature_json(const TemperatureRange& range);

/// Cues and reminders have one form.
template <typename Words>
Json words_json(const Words& words) {
    return {{"text", words.text}, {"span", or_null(words.span, span_json)}};
}

Json diagnostic_json(const Diagnostic& diagnostic);
Json question_json(const Question& question);
Json times_json(const Band<Instant>& times, const Zone& zone);

Json plan_value(const Plan& plan, const Provisions& provisions, const Zone& zone);
Json impossible_value(const Impossible& impossible, const Zone& zone);

/// Indented by two, one newline at the end.
std::string printed(const Json& json);
/// On one line, for what goes over a network.
std::string compact(const Json& json);

} // namespace loafwright::wire

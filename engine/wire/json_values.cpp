// SPDX-License-Identifier: Apache-2.0
#include "engine/wire/json_values.hpp"

#include <cmath>
#include <cstdint>

namespace loafwright::wire {

// Three decimals are a milligram or a sixtieth of a second: what lies beyond is the dust of
// conversions.
Json number(double value) {
    if (!std::isfinite(value)) {
        return nullptr;
    }
    const double rounded = std::floor(value * 1000.0 + 0.5) / 1000.0;
    constexpr double largest_exact = 9007199254740992.0; // 2^53
    if (rounded == std::floor(rounded) && std::fabs(rounded) < largest_exact) {
        return static_cast<std::int64_t>(rounded);
    }
    return rounded;
}

Json span_json(const Span& span) {
    return Json::array({span.begin, span.end});
}

Json texts(const std::vector<std::string>& words) {
    return list(words, [](const std::string& word) { return Json(word); });
}

Json grams_json(const Band<Grams>& band) {
    return {{"low", number(band.low.count())},
            {"likely", number(band.likely.count())},
            {"high", number(band.high.count())}};
}

Json minutes_json(const TimedBand& timed) {
    return {{"low", number(timed.minutes.low.count())},
            {"likely", number(timed.minutes.likely.count())},
            {"high", number(timed.minutes.high.count())},
            {"basis", text(name_of(timed.basis))}};
}

Json temperature_json(const TemperatureRange& range) {
    return {{"low", number(range.low.degrees())}, {"high", number(range.high.degrees())}};
}

Json diagnostic_json(const Diagnostic& diagnostic) {
    return {{"code", diagnostic.code},
            {"severity", text(name_of(diagnostic.severity))},
            {"what", diagnostic.what},
            {"where", diagnostic.where},
            {"do_this", diagnostic.do_this}};
}

Json question_json(const Question& question) {
    return {{"key", question.key},
            {"about", question.about},
            {"ask", question.ask},
            {"default", question.default_answer},
            {"span", or_null(question.span, span_json)}};
}

Json times_json(const Band<Instant>& times, const Zone& zone) {
    return {{"low", rfc3339(zone, times.low)},
            {"likely", rfc3339(zone, times.likely)},
            {"high", rfc3339(zone, times.high)}};
}

namespace {

Json act_json(const Act& act, const Zone& zone) {
    return {{"at", rfc3339(zone, act.at)},
            {"text", act.text},
            {"step", or_null(act.step, [](std::size_t index) { return index; })}};
}

Json stage_json(const Stage& stage, const Zone& zone) {
    Json json;
    json["number"] = stage.number;
    json["bread"] = stage.bread;
    json["title"] = stage.title;
    json["who"] = stage.who.empty() ? Json(nullptr) : text(stage.who);
    json["attention"] = text(name_of(stage.attention));
    json["start"] = rfc3339(zone, stage.start);
    json["end"] = times_json(stage.end, zone);
    json["look_from"] =
        or_null(stage.look_from, [&zone](Instant moment) { return rfc3339(zone, moment); });
    json["basis"] = or_null(stage.basis, [](Basis basis) { return text(name_of(basis)); });
    json["reason"] = stage.reason.empty() ? Json(nullptr) : text(stage.reason);
    json["cue"] = or_null(stage.cue, words_json<Cue>);
    json["acts"] = list(stage.acts, [&zone](const Act& act) { return act_json(act, zone); });
    json["reminders"] = list(stage.reminders, words_json<Reminder>);
    json["steps"] = list(stage.steps, [](std::size_t index) { return Json(index); });
    return json;
}

Json times_of_plan(const Plan& plan, const Zone& zone) {
    Json body;
    body["start"] = rfc3339(zone, plan.start);
    body["out_of_oven"] = rfc3339(zone, plan.out_of_oven);
    body["cut_from"] = rfc3339(zone, plan.cut_from);
    body["best_from"] = rfc3339(zone, plan.best_from);
    body["eat"] = times_json(plan.eat, zone);
    body["total_minutes"] = plan.total_minutes;
    body["hands_on_minutes"] = plan.hands_on_minutes;
    return body;
}

} // namespace

Json plan_value(const Plan& plan, const Provisions& provisions, const Zone& zone) {
    Json body;
    body["proven"] = plan.proven;
    body.update(times_of_plan(plan, zone));
    body["stages"] =
        list(plan.stages, [&zone](const Stage& stage) { return stage_json(stage, zone); });
    body["free"] = list(plan.free, [&zone](const FreeSpan& span) {
        return Json{{"from", rfc3339(zone, span.from)}, {"to", rfc3339(zone, span.to)}};
    });
    body["warnings"] = list(plan.warnings, diagnostic_json);
    if (!plan.breads.empty()) {
        body["breads"] = list(plan.breads, [&zone](const Plan& bread) {
            Json json{{"bread", bread.stages.empty() ? "" : bread.stages.front().bread}};
            json.update(times_of_plan(bread, zone));
            return json;
        });
    }
    body["cautions"] = list(provisions.cautions, caution_json);
    return body;
}

Json caution_json(const Caution& caution) {
    return {{"code", caution.code}, {"text", caution.text}, {"source", caution.source}};
}

Json impossible_value(const Impossible& impossible, const Zone& zone) {
    Json body;
    body["why"] = impossible.why;
    body["reasons"] =
        list(impossible.reasons, [](const std::string& reason) { return Json(reason); });
    body["ways_out"] = list(impossible.ways_out, [&zone](const WayOut& way) {
        return Json{{"change", way.change},
                    {"eat", rfc3339(zone, way.eat)},
                    {"taken_by", list(way.taken_by, [](const TakenBy& taken) {
                         return Json{{"bread", taken.bread},
                                     {"key", taken.answer.key},
                                     {"value", taken.answer.value}};
                     })}};
    });
    return body;
}

std::string printed(const Json& json) {
    // Text was checked to be UTF-8 when it came in; were it not, the mark for a broken letter is
    // better than no answer.
    return json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

std::string compact(const Json& json) {
    return json.dump(-1, ' ', false, Json::error_handler_t::replace);
}

} // namespace loafwright::wire

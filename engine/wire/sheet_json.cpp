// SPDX-License-Identifier: Apache-2.0
//
// The page as JSON, version 1, for whoever draws it. Its texts are ready to print; a text that the
// page does not have is null, a list that it does not have is empty.
#include "engine/wire/sheet_value.hpp"
#include "engine/wire/wire.hpp"

namespace loafwright::wire {

namespace {

Json text_or_null(const std::string& words) {
    return words.empty() ? Json(nullptr) : Json(words);
}

Json said_json(const SaidTime& when) {
    return {{"words", when.words}, {"time", when.time}};
}

Json act_json(const SheetAct& act) {
    return {{"time", act.time}, {"text", act.text}};
}

Json stage_json(const SheetStage& stage) {
    Json json;
    json["number"] = stage.number;
    json["time"] = stage.time;
    json["bread"] = text_or_null(stage.bread);
    json["title"] = stage.title;
    json["length"] = text_or_null(stage.length);
    json["also"] = text_or_null(stage.also);
    json["box"] = stage.box;
    json["acts"] = list(stage.acts, act_json);
    json["cue"] = text_or_null(stage.cue);
    json["cue_is_ours"] = stage.cue_is_ours;
    json["reminders"] = texts(stage.reminders);
    json["normal"] = text_or_null(stage.normal);
    return json;
}

Json day_line_json(const DayLine& line) {
    if (line.spans.empty()) {
        return nullptr;
    }
    Json json;
    json["from"] = rfc3339(Zone{}, line.from);
    json["minutes"] = line.minutes;
    json["spans"] = list(line.spans, [](const DayLineSpan& span) {
        return Json{{"number", span.number},
                    {"from_minutes", span.from_minutes},
                    {"to_minutes", span.to_minutes},
                    {"attention", text(name_of(span.attention))}};
    });
    json["hours"] = list(line.hours, [](const DayLineHour& hour) {
        return Json{{"minutes", hour.minutes}, {"hour", hour.hour}, {"text", hour.text}};
    });
    return json;
}

} // namespace

Json sheet_value(const Sheet& sheet) {
    Json body;
    body["kind"] = sheet.kind == SheetKind::bread ? "bread" : "shared_clock";
    body["title"] = sheet.title;
    body["eat"] = said_json(sheet.eat);
    body["begin"] = said_json(sheet.begin);
    body["free"] = text_or_null(sheet.free);
    body["weigh"] = texts(sheet.weigh);
    body["ready"] = texts(sheet.ready);
    body["ahead"] = texts(sheet.ahead);
    body["stages"] = list(sheet.stages, stage_json);
    body["warnings"] = texts(sheet.warnings);
    body["notes"] = texts(sheet.notes);
    body["cautions"] = texts(sheet.cautions);
    body["questions"] = texts(sheet.questions);
    body["day_line"] = day_line_json(sheet.day_line);
    return body;
}

std::string sheet_json(const Sheet& sheet) {
    return printed({{"version", 1}, {"sheet", sheet_value(sheet)}});
}

} // namespace loafwright::wire

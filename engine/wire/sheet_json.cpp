// SPDX-License-Identifier: Apache-2.0
#include "engine/wire/sheet_json.hpp"

#include "engine/wire/json_values.hpp"
#include "engine/wire/sheet_value.hpp"

namespace loafwright::wire {

namespace {

Json act_value(const SheetAct& act) {
    return {{"time", act.time}, {"text", act.text}};
}

Json stage_value(const SheetStage& stage) {
    return {{"number", stage.number},
            {"time", stage.time},
            {"title", stage.title},
            {"length", stage.length},
            {"box", stage.box},
            {"acts", list(stage.acts, act_value)},
            {"cue", stage.cue},
            {"cue_is_ours", stage.cue_is_ours},
            {"reminders", texts(stage.reminders)}};
}

Json day_line_value(const DayLine& line) {
    return {{"minutes", line.minutes},
            {"spans",
             list(line.spans,
                  [](const DayLineSpan& span) {
                      return Json{{"number", span.number},
                                  {"from_minutes", span.from_minutes},
                                  {"to_minutes", span.to_minutes},
                                  {"attention", text(name_of(span.attention))}};
                  })},
            {"hours", list(line.hours, [](const DayLineHour& hour) {
                 return Json{{"minutes", hour.minutes}, {"hour", hour.hour}, {"text", hour.text}};
             })}};
}

} // namespace

Json sheet_value(const Sheet& sheet) {
    return {{"title", sheet.title},
            {"eat", sheet.eat},
            {"opening", sheet.opening},
            {"weigh", texts(sheet.weigh)},
            {"ready", texts(sheet.ready)},
            {"ahead", texts(sheet.ahead)},
            {"stages", list(sheet.stages, stage_value)},
            {"notes", texts(sheet.notes)},
            {"warnings", texts(sheet.warnings)},
            {"cautions", texts(sheet.cautions)},
            {"questions", texts(sheet.questions)},
            {"day_line", day_line_value(sheet.day_line)}};
}

std::string sheet_json(const Sheet& sheet) {
    return printed({{"version", 1}, {"sheet", sheet_value(sheet)}});
}

} // namespace loafwright::wire

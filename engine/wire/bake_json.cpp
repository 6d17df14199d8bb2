// SPDX-License-Identifier: Apache-2.0
#include "engine/wire/bake_json.hpp"

#include "engine/following/troubles.hpp"
#include "engine/wire/sheet_value.hpp"

#include <variant>

namespace loafwright::wire {

namespace {

Json sheets_value(const std::vector<Sheet>& pages) {
    return list(pages, sheet_value);
}

// The page of one bread: the pages of several begin with the clock they share.
const SheetStage* line_on_page(const std::vector<Sheet>& pages, std::size_t bread, int stage) {
    const std::size_t page = pages.size() == 1 ? 0 : bread + 1;
    if (page >= pages.size()) {
        return nullptr;
    }
    for (const SheetStage& line : pages[page].stages) {
        if (line.number == stage) {
            return &line;
        }
    }
    return nullptr;
}

class MomentWriter {
public:
    MomentWriter(const breads::BakeState& state, const Zone& zone) : state_(state), zone_(zone) {}

    [[nodiscard]] Json value() const {
        const Moment& moment = state_.moment;
        return {{"now", time(moment.now)},
                {"finished", moment.finished},
                {"free_until", time_if_any(moment.free_until)},
                {"say", moment.say},
                {"doing", list(moment.doing, [this](const Doing& doing) { return of(doing); })},
                {"next", list(moment.next, [this](const Upcoming& next) { return of(next); })},
                {"alarms", list(moment.alarms, [this](const Alarm& alarm) { return of(alarm); })},
                {"lines", list(moment.lines, [this](const LineStory& line) { return of(line); })},
                {"remedies",
                 list(state_.remedies, [this](const breads::Given& given) { return of(given); })},
                {"eat", times_json(moment.eat, zone_)}};
    }

private:
    [[nodiscard]] Json time(Instant moment) const { return rfc3339(zone_, moment); }
    [[nodiscard]] Json time_if_any(const std::optional<Instant>& moment) const {
        return or_null(moment, [this](Instant at) { return time(at); });
    }

    [[nodiscard]] Json of(const Doing& doing) const {
        const SheetStage* line = line_on_page(state_.pages, doing.bread, doing.stage);
        Json json;
        json["bread"] = doing.bread;
        json["bread_name"] = doing.bread_name;
        json["stage"] = doing.stage;
        json["title"] = doing.title;
        json["attention"] = text(name_of(doing.attention));
        json["state"] = text(name_of(doing.standing));
        json["begun"] = time_if_any(doing.begun);
        json["end"] = times_json(doing.end, zone_);
        json["look_from"] = time_if_any(doing.look_from);
        json["free_until"] = time_if_any(doing.free_until);
        json["cue"] = line != nullptr && !line->cue.empty() ? Json(line->cue) : Json(nullptr);
        json["cue_is_ours"] = line != nullptr && line->cue_is_ours;
        json["reminders"] = line != nullptr ? texts(line->reminders) : Json::array();
        json["acts"] = list(doing.acts, [this](const MomentAct& act) {
            return Json{{"act", act.act},
                        {"at", time(act.at)},
                        {"text", act.text},
                        {"done", act.done},
                        {"due", act.due}};
        });
        json["grows"] = doing.grows;
        return json;
    }

    [[nodiscard]] Json of(const Upcoming& next) const {
        return {{"bread", next.bread},
                {"bread_name", next.bread_name},
                {"stage", next.stage},
                {"title", next.title},
                {"at", time(next.at)},
                {"attention", text(name_of(next.attention))}};
    }

    [[nodiscard]] Json of(const Alarm& alarm) const {
        return {{"at", time(alarm.at)},
                {"text", alarm.text},
                {"bread", alarm.bread},
                {"stage", alarm.stage},
                {"kind", text(name_of(alarm.kind))}};
    }

    [[nodiscard]] Json of(const LineStory& line) const {
        return {{"bread", line.bread},
                {"stage", line.stage},
                {"begun", time_if_any(line.begun)},
                {"done", time_if_any(line.done)},
                {"acts_done", list(line.acts_done, [](std::size_t act) { return Json(act); })}};
    }

    [[nodiscard]] Json of(const breads::Given& given) const {
        return {{"id", given.id},
                {"at", time(given.at)},
                {"bread", given.bread},
                {"stage", given.stage},
                {"what", text(following::name_of(given.trouble))},
                {"remedy", given.remedy},
                {"until", time_if_any(given.until)}};
    }

    const breads::BakeState& state_;
    const Zone& zone_;
};

} // namespace

std::string plan_answer_json(const breads::Bake& bake) {
    const Day& day = bake.request.day;
    Json json;
    json["version"] = 1;
    if (const auto* impossible = std::get_if<Impossible>(&bake.outcome)) {
        json["impossible"] = impossible_value(*impossible, day.zone);
    } else {
        const Plan& plan = std::get<Plan>(bake.outcome);
        json["plan"] = plan_value(plan, bake.known->cautions(), day.zone);
        json["sheets"] = sheets_value(bake.known->pages(plan, day, bake.request.page));
    }
    json["questions"] = list(bake.known->questions(), question_json);
    json["remarks"] = list(bake.known->remarks, diagnostic_json);
    return compact(json);
}

std::string
bake_state_json(const breads::Bake& bake, const breads::BakeState& state, std::int64_t last) {
    const Zone& zone = bake.request.day.zone;
    Json json;
    json["version"] = 1;
    json["plan"] = plan_value(state.plan, bake.known->cautions(), zone);
    json["sheets"] = sheets_value(state.pages);
    json["moment"] = MomentWriter(state, zone).value();
    json["change"] = state.change;
    json["last"] = last;
    return compact(json);
}

std::string help_json(const Knowledge& knowledge) {
    Json json;
    json["version"] = 1;
    json["troubles"] = list(knowledge.remedies, [](const RemedyRow& row) {
        return Json{{"key", text(row.key)},
                    {"tells", text(row.tells)},
                    {"remedy", text(row.remedy)},
                    {"asks_until", row.asks_until},
                    {"source", text(row.source)}};
    });
    json["symptoms"] = list(knowledge.fault_symptoms, [](const FaultSymptomRow& row) {
        return Json{
            {"key", text(row.key)}, {"tells", text(row.tells)}, {"source", text(row.source)}};
    });
    return compact(json);
}

} // namespace loafwright::wire

// SPDX-License-Identifier: Apache-2.0
//
// JSON for what the verbs give back, version 1. Keys keep the order in which they are written here;
// minutes are numbers, whole ones without a point; times are RFC 3339 with the zone's offset; what
// is missing is null and never left out, so that a reader can tell "none" from "an older version".
// New keys may come, these stay.
#include "engine/wire/wire.hpp"

#include "engine/fitting/words.hpp"
#include "engine/wire/json_values.hpp"

namespace loafwright::wire {

namespace {

Json substitute_json(const Substitute& substitute) {
    return {{"item", substitute.item},
            {"known_as", substitute.known_as},
            {"grams", or_null(substitute.grams, grams_json)}};
}

Json ingredient_json(const Ingredient& ingredient) {
    return {{"text", ingredient.text},
            {"item", ingredient.item},
            {"known_as", ingredient.known_as},
            {"grams", or_null(ingredient.grams, grams_json)},
            {"optional", ingredient.optional},
            {"part", or_null(ingredient.part, [](const std::string& part) { return part; })},
            {"span", or_null(ingredient.span, span_json)},
            {"temperature_c", or_null(ingredient.temperature, temperature_json)},
            {"about", ingredient.about},
            {"substitutes", list(ingredient.substitutes, substitute_json)},
            {"at", ingredient.at},
            {"as_read", or_null(ingredient.as_read, [](const AmountAsRead& before) {
                 return Json{{"grams", or_null(before.grams, grams_json)}};
             })}};
}

Json use_json(const Use& use) {
    return {{"item", use.item}, {"share", or_null(use.share, number)}};
}

Json alternative_json(const Alternative& alternative) {
    return {{"kind", text(name_of(alternative.kind))},
            {"place", text(name_of(alternative.place))},
            {"minutes", or_null(alternative.minutes, minutes_json)},
            {"temperature_c", or_null(alternative.temperature, temperature_json)}};
}

Json step_json(const Step& step) {
    Json json;
    json["kind"] = text(name_of(step.kind));
    json["place"] = text(name_of(step.place));
    json["text"] = step.text;
    json["part"] = or_null(step.part, [](const std::string& part) { return part; });
    json["minutes"] = or_null(step.minutes, minutes_json);
    json["temperature_c"] = or_null(step.temperature, temperature_json);
    json["optional"] = step.optional;
    json["meanwhile"] = step.meanwhile;
    json["after_night"] = step.after_night;
    json["after"] = list(step.after, [](std::size_t index) { return Json(index); });
    json["during"] = or_null(step.during, [](std::size_t index) { return index; });
    json["repeat_minutes"] =
        or_null(step.repeat, [](Minutes minutes) { return number(minutes.count()); });
    json["after_start_minutes"] =
        or_null(step.after_start, [](Minutes minutes) { return number(minutes.count()); });
    json["before_next_minutes"] =
        or_null(step.before_next, [](Minutes minutes) { return number(minutes.count()); });
    json["clock"] = or_null(step.clock, [](ClockTime clock) { return clock_text(clock); });
    json["uses"] = list(step.uses, use_json);
    json["alternatives"] = list(step.alternatives, alternative_json);
    json["cue"] = or_null(step.cue, words_json<Cue>);
    json["reminders"] = list(step.reminders, words_json<Reminder>);
    json["span"] = span_json(step.span);
    json["at"] = step.at;
    json["as_read"] = or_null(step.as_read, [](const StepAsRead& before) {
        return Json{{"kind", text(name_of(before.kind))},
                    {"place", text(name_of(before.place))},
                    {"minutes", or_null(before.minutes, minutes_json)},
                    {"temperature_c", or_null(before.temperature, temperature_json)}};
    });
    return json;
}

Json reference_json(const Reference& reference) {
    return {{"step", or_null(reference.number, [](int value) { return value; })},
            {"kind", or_null(reference.kind, [](StepKind kind) { return text(name_of(kind)); })},
            {"times", reference.times},
            {"gap_minutes",
             or_null(reference.gap, [](Minutes minutes) { return number(minutes.count()); })},
            {"span", span_json(reference.span)}};
}

Json written_size_json(const WrittenSize& size) {
    return {{"factor", number(size.factor)}, {"pieces", or_null(size.pieces, number)}};
}

Json tin_json(const TinSize& tin) {
    return {{"length", number(tin.length.count())},
            {"width", number(tin.width.count())},
            {"height", number(tin.height.count())}};
}

Json unread_json(const Unread& unread) {
    return {{"text", unread.text},
            {"span", span_json(unread.span)},
            {"why", unread.why},
            {"at", unread.at}};
}

std::string_view name_of(dough::WaterAdvice advice) {
    switch (advice) {
    case dough::WaterAdvice::tap_as_it_is:
        return "tap_as_it_is";
    case dough::WaterAdvice::tap_and_boiled:
        return "tap_and_boiled";
    case dough::WaterAdvice::tap_and_ice:
        return "tap_and_ice";
    case dough::WaterAdvice::would_harm:
        return "would_harm";
    case dough::WaterAdvice::beyond_ice:
        return "beyond_ice";
    case dough::WaterAdvice::beyond_boiling:
        return "beyond_boiling";
    case dough::WaterAdvice::no_water_to_set:
        return "no_water_to_set";
    }
    return "";
}

// As on the command line.
std::string_view name_of(dough::MixingMethod method) {
    switch (method) {
    case dough::MixingMethod::stirred:
        return "stirred";
    case dough::MixingMethod::by_hand:
        return "hand";
    case dough::MixingMethod::stand_mixer:
        return "mixer";
    case dough::MixingMethod::food_processor:
        return "processor";
    }
    return "";
}

std::string_view name_of(dough::YeastMeetsWater yeast) {
    switch (yeast) {
    case dough::YeastMeetsWater::fresh_in_water:
        return "fresh";
    case dough::YeastMeetsWater::dry_in_water:
        return "dry";
    case dough::YeastMeetsWater::dry_in_flour:
        return "dry-in-flour";
    case dough::YeastMeetsWater::none:
        return "none";
    }
    return "";
}

Json celsius_json(Celsius temperature) {
    return number(temperature.degrees());
}

Json grounds_json(const asking::WaterGrounds& grounds) {
    return {{"flour_grams", number(grounds.flour.count())},
            {"water_grams", number(grounds.water.count())},
            {"room_c", celsius_json(grounds.room)},
            {"flour_c", celsius_json(grounds.flour_temperature)},
            {"tap_c", celsius_json(grounds.tap)},
            {"altitude_m", number(grounds.altitude.count())},
            {"boiling_c", celsius_json(grounds.boiling)},
            {"mixing", text(name_of(grounds.mixing))},
            {"yeast", text(name_of(grounds.yeast))}};
}

// The first paragraph says why, the rest what else there is to say.
Json impossible_in_words(const std::vector<std::string>& say) {
    const std::vector<std::string> reasons(say.empty() ? say.begin() : say.begin() + 1, say.end());
    return {{"why", say.empty() ? std::string() : say.front()},
            {"reasons", texts(reasons)},
            {"ways_out", Json::array()}};
}

} // namespace

std::string reading_json(const Reading& reading) {
    Json recipe;
    recipe["title"] = reading.recipe.title;
    recipe["pieces"] = or_null(reading.recipe.pieces, number);
    recipe["ingredients"] = list(reading.recipe.ingredients, ingredient_json);
    recipe["steps"] = list(reading.recipe.steps, step_json);
    recipe["references"] = list(reading.recipe.references, reference_json);
    recipe["reminders"] = list(reading.recipe.reminders, words_json<Reminder>);
    recipe["written_for"] = or_null(reading.recipe.written_for, written_size_json);
    recipe["tin_mm"] = or_null(reading.recipe.tin, tin_json);
    recipe["changes"] = list(reading.recipe.changes, [](const Phrase& change) {
        return Json(fitting::plain_text(change));
    });

    Json json;
    json["version"] = 1;
    json["recipe"] = std::move(recipe);
    json["unread"] = list(reading.unread, unread_json);
    json["questions"] = list(reading.questions, question_json);
    json["remarks"] = list(reading.remarks, diagnostic_json);
    return printed(json);
}

std::string plan_json(const Plan& plan,
                      const Provisions& provisions,
                      const std::vector<Question>& questions,
                      const Zone& zone) {
    Json json;
    json["version"] = 1;
    json["plan"] = plan_value(plan, provisions, zone);
    json["questions"] = list(questions, question_json);
    return printed(json);
}

std::string impossible_json(const Impossible& impossible,
                            const std::vector<Question>& questions,
                            const Zone& zone) {
    Json json;
    json["version"] = 1;
    json["impossible"] = impossible_value(impossible, zone);
    json["questions"] = list(questions, question_json);
    return printed(json);
}

std::string water_json(const asking::WaterAnswer& answer) {
    const std::vector<std::string> say = asking::words_of(answer);
    const dough::WaterPlan& plan = answer.plan;
    Json body;
    body["dough_c"] = celsius_json(answer.wanted);
    body["advice"] = text(name_of(plan.advice));
    body["water_c"] = {{"low", celsius_json(answer.temperature.low)},
                       {"likely", celsius_json(answer.temperature.likely)},
                       {"high", celsius_json(answer.temperature.high)}};
    body["boiled_grams"] = number(plan.boiled.count());
    body["ice_grams"] = number(plan.ice.count());
    body["tap_grams"] = number(plan.tap.count());
    body["limit_c"] = celsius_json(plan.limit);
    body["dough_with_it_c"] = celsius_json(plan.dough);
    body["water_for_one_degree_c"] = number(answer.for_one_degree.count());
    body["flour_needed_c"] = or_null(answer.flour_needed, celsius_json);
    body["rule"] = {{"convention", "american_friction_factor"},
                    {"factor_c", number(answer.rule.factor.count())},
                    {"water_c", celsius_json(answer.rule.water)}};
    body["worked_out_from"] = grounds_json(answer.grounds);
    body["say"] = texts(say);

    Json json;
    json["version"] = 1;
    json["water"] = std::move(body);
    if (!asking::can_be(answer)) {
        json["impossible"] = impossible_in_words(say);
    }
    return printed(json);
}

std::string how_long_json(const asking::RiseAnswer& answer) {
    const std::vector<std::string> say = asking::words_of(answer);
    const asking::RiseQuestion& question = answer.question;
    const auto* room = std::get_if<asking::InRoom>(&question.here);
    const auto* fridge = std::get_if<asking::InFridge>(&question.here);
    Json body;
    body["stated_minutes"] = number(question.stated.count());
    body["at_c"] = celsius_json(question.at);
    body["here_c"] = room != nullptr ? celsius_json(room->temperature) : Json(nullptr);
    body["fridge_c"] = fridge != nullptr ? celsius_json(fridge->fridge) : Json(nullptr);
    body["grams"] = fridge != nullptr ? number(fridge->lump.count()) : Json(nullptr);
    body["dough_c"] = fridge != nullptr ? celsius_json(fridge->dough) : Json(nullptr);
    body["leaven"] = question.curve == dough::Curve::leaven_yeast;
    body["minutes"] = or_null(answer.minutes, [](const Band<Minutes>& minutes) {
        return Json{{"low", number(minutes.low.count())},
                    {"likely", number(minutes.likely.count())},
                    {"high", number(minutes.high.count())}};
    });
    body["say"] = texts(say);

    Json json;
    json["version"] = 1;
    json["how_long"] = std::move(body);
    if (!answer.minutes) {
        json["impossible"] = impossible_in_words(say);
    }
    return printed(json);
}

std::string error_json(const Diagnostics& diagnostics) {
    Json json;
    json["version"] = 1;
    json["error"] = list(diagnostics, diagnostic_json);
    return printed(json);
}

} // namespace loafwright::wire

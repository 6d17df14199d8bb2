// SPDX-License-Identifier: Apache-2.0
//
// JSON for what is worked out before the bake: the formula, and what to have out.
#include "engine/wire/json_values.hpp"
#include "engine/wire/wire.hpp"

namespace loafwright::wire {

namespace {

Json percent_json(dough::BakersPercent percent) {
    return number(percent.count());
}

Json item_json(const FormulaItem& item) {
    return {{"item", item.item},
            {"known_as", item.known_as},
            {"part", or_null(item.part, [](const std::string& part) { return part; })},
            {"grams", grams_json(item.grams)},
            {"percent", percent_json(item.percent)},
            {"in_dough", item.in_dough}};
}

Json to_buy_json(const ToBuy& one) {
    return {{"item", one.item},
            {"known_as", one.known_as},
            {"grams", or_null(one.grams, grams_json)},
            {"as_written", one.as_written},
            {"optional", one.optional}};
}

Json ahead_json(const Ahead& ahead) {
    return {{"what", ahead.what}, {"hours_before", number(ahead.hours_before)}};
}

Json allergen_json(const AllergenNote& note) {
    return {{"allergen", note.allergen}, {"because", texts(note.because)}};
}

} // namespace

std::string formula_json(const Formula& formula) {
    Json body;
    body["flour_grams"] = number(formula.flour.count());
    body["dough_grams"] = number(formula.dough.count());
    body["hydration_percent"] = percent_json(formula.hydration);
    body["total_hydration_percent"] = percent_json(formula.total_hydration);
    body["prefermented_percent"] = percent_json(formula.prefermented);
    body["yeast_as_fresh_grams"] = or_null(formula.yeast_as_fresh, grams_json);
    body["items"] = list(formula.items, item_json);
    body["unweighed"] = texts(formula.unweighed);
    body["remarks"] = list(formula.remarks, diagnostic_json);
    return printed({{"version", 1}, {"formula", std::move(body)}});
}

std::string provisions_json(const Provisions& provisions) {
    Json body;
    body["buy"] = list(provisions.buy, to_buy_json);
    body["kit"] = texts(provisions.kit);
    body["ahead"] = list(provisions.ahead, ahead_json);
    body["allergens"] = list(provisions.allergens, allergen_json);
    body["cautions"] = list(provisions.cautions, caution_json);
    return printed({{"version", 1}, {"provisions", std::move(body)}});
}

} // namespace loafwright::wire

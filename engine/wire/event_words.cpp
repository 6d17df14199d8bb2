// SPDX-License-Identifier: Apache-2.0
#include "engine/wire/event_words.hpp"

#include "engine/following/troubles.hpp"

namespace loafwright::wire {

namespace {

const std::vector<std::string_view>& crust_words() {
    static const std::vector<std::string_view> words{"pale", "right", "dark"};
    return words;
}

const std::vector<std::string_view>& crumb_words() {
    static const std::vector<std::string_view> words{"close", "even", "open"};
    return words;
}

} // namespace

const std::vector<std::string_view>& growth_words() {
    static const std::vector<std::string_view> words{"little", "half_as_much", "doubled", "more"};
    return words;
}

const std::vector<std::string_view>& measured_words() {
    static const std::vector<std::string_view> words{"dough", "room", "oven", "loaf"};
    return words;
}

const std::vector<std::string_view>& trouble_words() {
    static const std::vector<std::string_view> words = [] {
        std::vector<std::string_view> all;
        for (int k = 0; k <= static_cast<int>(Trouble::oven_taken); ++k) {
            all.push_back(following::name_of(static_cast<Trouble>(k)));
        }
        return all;
    }();
    return words;
}

Json told_value(const Told& told) {
    Json json;
    json["crust"] = or_null(told.crust, [](Crust crust) {
        return text(crust_words().at(static_cast<std::size_t>(crust)));
    });
    json["crumb"] = or_null(told.crumb, [](Crumb crumb) {
        return text(crumb_words().at(static_cast<std::size_t>(crumb)));
    });
    json["again"] = or_null(told.again, [](bool again) { return again; });
    json["symptoms"] = texts(told.symptoms);
    json["changed"] = texts(told.changed);
    return json;
}

Told told_from(JsonFields& fields) {
    Told told;
    if (const auto crust = fields.one_of_if_any("crust", crust_words())) {
        told.crust = static_cast<Crust>(*crust);
    }
    if (const auto crumb = fields.one_of_if_any("crumb", crumb_words())) {
        told.crumb = static_cast<Crumb>(*crumb);
    }
    told.again = fields.truth_if_any("again");
    told.symptoms = fields.texts_if_any("symptoms", most_told, longest_told);
    told.changed = fields.texts_if_any("changed", most_told, longest_told);
    return told;
}

} // namespace loafwright::wire

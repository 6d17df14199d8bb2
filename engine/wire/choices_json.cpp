// SPDX-License-Identifier: Apache-2.0
#include "engine/wire/json_values.hpp"
#include "engine/wire/wire.hpp"

namespace loafwright::wire {

std::string choices_json(const Shelf& shelf, const Zone& zone) {
    const auto time = [&zone](Instant moment) { return rfc3339(zone, moment); };
    Json json;
    json["version"] = 1;
    json["choices"] = list(shelf.choices, [&](const Choice& choice) {
        Json one;
        one["place"] = shelf.places.at(choice.bread);
        one["bread"] = choice.title;
        one["suits"] = text(name_of(choice.suits));
        one["fits_today"] = choice.fits_today;
        one["begin"] = or_null(choice.begin, time);
        one["eat"] = or_null(choice.eat, time);
        one["total_minutes"] = choice.total_minutes;
        one["hands_on_minutes"] = choice.hands_on_minutes;
        one["doughs"] = choice.doughs;
        one["stages"] = choice.stages;
        one["because"] = texts(choice.because);
        return one;
    });
    json["left_out"] = list(shelf.left_out, [](std::size_t place) { return Json(place); });
    return printed(json);
}

} // namespace loafwright::wire

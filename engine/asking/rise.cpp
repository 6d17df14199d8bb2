// SPDX-License-Identifier: Apache-2.0
//
// One rise carried from one temperature to another: the question that a recipe's "an hour in a warm
// place" leaves open, without a recipe. In a room the dough is taken to be as warm as its place; in
// the fridge it cools as a lump of its weight does, and most of the rise is made on the way.
#include "engine/asking/rise.hpp"

#include "engine/dough/lump.hpp"
#include "engine/dough/progress.hpp"
#include "engine/dough/temperature_history.hpp"
#include "engine/fitting/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <string_view>

namespace loafwright::asking {

namespace {

using fitting::degrees_text;
using fitting::duration_text;
using fitting::whole_minutes;

dough::Chilling chilling_of(const InFridge& place) {
    return {place.dough, exactly(place.fridge), dough::time_constant({place.lump})};
}

dough::TemperatureHistory history_of(const RiseQuestion& question) {
    if (const auto* fridge = std::get_if<InFridge>(&question.here)) {
        return dough::in_one_place(
            fridge->dough, fridge->fridge, chilling_of(*fridge).time_constant.likely);
    }
    return dough::steady(std::get<InRoom>(question.here).temperature);
}

std::optional<Band<Minutes>> minutes_of(const RiseQuestion& question) {
    if (const auto* fridge = std::get_if<InFridge>(&question.here)) {
        return dough::chilling_for(
            chilling_of(*fridge), question.stated, question.at, question.curve);
    }
    return dough::transferred(
        question.stated, dough::steady(question.at), history_of(question), question.curve);
}

Minutes to_five(Minutes minutes) {
    return Minutes(static_cast<double>(fitting::nearest_five(minutes)));
}

std::string length(Minutes minutes) {
    return duration_text(whole_minutes(minutes));
}

std::string_view worker(dough::Curve curve) {
    return curve == dough::Curve::leaven_yeast ? "the yeast of a leaven" : "yeast";
}

std::string place_words(const RiseQuestion& question) {
    if (const auto* fridge = std::get_if<InFridge>(&question.here)) {
        return fmt::format("in a fridge of {}, for {:.0f} g of dough that goes in at {}",
                           degrees_text(fridge->fridge),
                           fridge->lump.count(),
                           degrees_text(fridge->dough));
    }
    return "at " + degrees_text(std::get<InRoom>(question.here).temperature);
}

Celsius place_of(const RiseQuestion& question) {
    const auto* fridge = std::get_if<InFridge>(&question.here);
    return fridge != nullptr ? fridge->fridge : std::get<InRoom>(question.here).temperature;
}

std::vector<std::string> never_words(const RiseAnswer& answer) {
    const RiseQuestion& question = answer.question;
    if (*answer.never == NeverRises::still_there) {
        return {fmt::format("It cannot be told: {} does not work at {}, so no rise can have taken "
                            "{} there.",
                            worker(question.curve),
                            degrees_text(question.at),
                            length(question.stated))};
    }
    const std::string never =
        *answer.never == NeverRises::still_here
            ? fmt::format("It never gets there: {} does not work {}.",
                          worker(question.curve),
                          place_words(question))
            : fmt::format("It does not get there within four days {}: by then it has come about "
                          "{:.0f} % of the way that {} at {} takes it.",
                          place_words(question),
                          // A hair short of all of it is still short.
                          std::min(99.0, answer.share_made * 100.0),
                          length(question.stated),
                          degrees_text(question.at));
    if (std::holds_alternative<InFridge>(question.here)) {
        return {never, "Let it rise part of the way before it goes in, or take it out to finish."};
    }
    const bool too_hot = place_of(question) > dough::best_of(question.curve);
    return {never, too_hot ? "Find it a cooler place." : "Find it a warmer place."};
}

bool is_far(const RiseQuestion& question) {
    constexpr double known_well = 0.2;
    return std::max(dough::uncertainty_of(question.curve, question.at),
                    dough::uncertainty_of(question.curve, place_of(question))) > known_well;
}

} // namespace

RiseAnswer rise_elsewhere(const RiseQuestion& question) {
    RiseAnswer answer;
    answer.question = question;
    const double rate_there = dough::rate_of(question.curve, question.at);
    if (rate_there <= 0.0) {
        answer.never = NeverRises::still_there;
        return answer;
    }
    if (const auto minutes = minutes_of(question)) {
        answer.minutes = {to_five(minutes->low), to_five(minutes->likely), to_five(minutes->high)};
        return answer;
    }
    const double made =
        dough::progress(history_of(question), Minutes(0.0), dough::furthest, question.curve)
            .count();
    answer.never = made > 0.0 ? NeverRises::too_slow : NeverRises::still_here;
    answer.share_made = made / (question.stated.count() * rate_there);
    return answer;
}

std::vector<std::string> words_of(const RiseAnswer& answer) {
    const RiseQuestion& question = answer.question;
    const bool chilled = std::holds_alternative<InFridge>(question.here);
    if (answer.never) {
        return never_words(answer);
    }
    const Band<Minutes>& minutes = *answer.minutes;
    const bool open_end = minutes.high >= dough::furthest;
    std::vector<std::string> say{
        fmt::format("A rise of {} at {} takes about {} {}.",
                    length(question.stated),
                    degrees_text(question.at),
                    length(minutes.likely),
                    place_words(question)),
        fmt::format("From {} to {} in most kitchens: look from the earlier time on.",
                    length(minutes.low),
                    open_end ? std::string("more than four days") : length(minutes.high))};
    if (chilled) {
        say.emplace_back("Much of it is made while the dough still cools, so a small lump takes "
                         "longer than a large one.");
    }
    if (is_far(question)) {
        say.emplace_back("Below 18 and above 32 °C doughs differ more, which is why this spreads "
                         "so wide.");
    }
    if (chilled && minutes.likely > dough::longest_retarding) {
        say.emplace_back("Bakers count on 48 h in the cold at most; after that dough goes slack "
                         "and sour.");
    }
    return say;
}

} // namespace loafwright::asking

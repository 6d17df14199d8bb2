// SPDX-License-Identifier: Apache-2.0
//
// The two temperatures of every transfer: the one the recipe was written for, from its own figure,
// its words for warmth or the usual room; and the one here. A room that changes through the day is
// taken at its mean over the clock, because nobody knows yet at what hour the dough will stand in
// it; its coldest and warmest hours widen the outcome.
#include "engine/fitting/room.hpp"

#include "engine/fitting/words.hpp"
#include "engine/recipe/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <vector>

namespace loafwright::fitting {

namespace {

constexpr int day_minutes = 24 * 60;

int minute_of(ClockTime clock) {
    return 60 * clock.hour + clock.minute;
}

// Words for a fridge or a hot oven inside the text of a dough's wait are about something else.
bool is_a_dough_place(const WarmthWordRow& row) {
    return !row.of_liquid && row.temperature.likely >= Celsius(10.0) &&
           row.temperature.likely <= Celsius(45.0);
}

} // namespace

std::optional<Band<Celsius>> room_here(const Kitchen& kitchen) {
    if (kitchen.room.empty()) {
        return std::nullopt;
    }
    std::vector<RoomPeriod> periods = kitchen.room;
    std::stable_sort(periods.begin(), periods.end(), [](const RoomPeriod& a, const RoomPeriod& b) {
        return minute_of(a.from) < minute_of(b.from);
    });
    double weighted = 0.0;
    int counted = 0;
    Celsius coldest = periods.front().temperature;
    Celsius warmest = periods.front().temperature;
    for (std::size_t i = 0; i < periods.size(); ++i) {
        const int from = minute_of(periods[i].from);
        // The last period lasts until the first one of the next day.
        const int to = i + 1 < periods.size() ? minute_of(periods[i + 1].from)
                                              : minute_of(periods.front().from) + day_minutes;
        weighted += periods[i].temperature.degrees() * (to - from);
        counted += to - from;
        coldest = std::min(coldest, periods[i].temperature);
        warmest = std::max(warmest, periods[i].temperature);
    }
    return Band<Celsius>{coldest, Celsius(weighted / counted), warmest};
}

std::optional<PlaceHere> place_here(const Kitchen& kitchen, Place place) {
    if (place == Place::warm && kitchen.warm_spot) {
        return PlaceHere{exactly(*kitchen.warm_spot), "your warm spot"};
    }
    const auto room = room_here(kitchen);
    if (!room) {
        return std::nullopt;
    }
    return PlaceHere{*room, "your kitchen"};
}

WrittenFor written_for(const Step& step, const Knowledge& knowledge) {
    if (step.temperature) {
        const Celsius middle =
            step.temperature->low + (step.temperature->high - step.temperature->low) / 2.0;
        return {middle,
                step.because_made.empty()
                    ? phrase("the recipe asks for {}", {middle})
                    : phrase("{} the times are for {}", {step.because_made, middle})};
    }
    const std::string text = lower_case(step.text);
    const WarmthWordRow* found = nullptr;
    for (const WarmthWordRow& row : knowledge.warmth_words) {
        // The longest words win: "not too cold" says more than "cold".
        if (is_a_dough_place(row) && has_word(text, row.words) &&
            (found == nullptr || row.words.size() > found->words.size())) {
            found = &row;
        }
    }
    if (found == nullptr && step.place == Place::warm) {
        for (const WarmthWordRow& row : knowledge.warmth_words) {
            if (is_a_dough_place(row) && has_word(row.words, "warm place")) {
                found = &row;
            }
        }
    }
    if (found != nullptr) {
        return {found->temperature.likely,
                phrase("“{}” in the recipe was read as about {}",
                       {std::string(found->words), found->temperature.likely})};
    }
    return {usual_room, phrase("the recipe was read as for {}", {usual_room})};
}

bool depends_on_room(StepKind kind, Place place) {
    const bool gas = kind == StepKind::rise || kind == StepKind::prove || kind == StepKind::ferment;
    return gas && (place == Place::counter || place == Place::warm);
}

} // namespace loafwright::fitting

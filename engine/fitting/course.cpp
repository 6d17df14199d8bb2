// SPDX-License-Identifier: Apache-2.0
//
// A kilogram of dough takes two hours to come half way to the temperature of its room, so the room
// alone tells too little: what it was mixed at, and whether it comes from the fridge, counts as
// well. The lump is followed from mixing to the oven, in both kitchens.
#include "engine/fitting/course.hpp"

#include "engine/dough/lump.hpp"
#include "engine/dough/progress.hpp"
#include "engine/fitting/room.hpp"

#include <algorithm>
#include <cmath>

namespace loafwright::fitting {

namespace {

constexpr double alike_within_c = 0.5;
constexpr double alike_within_share = 0.05;
// Fridges are written for as they are: nobody's recipe means another one (common practice).
constexpr Celsius usual_fridge{5.0};
// A wait without a time of its own, for the temperature that the dough goes on with.
constexpr Minutes usual_wait{60.0};
constexpr Grams lightest{50.0};
constexpr Grams heaviest{5000.0};
constexpr double half_risen = 0.5;

bool is_of_a_dough(const Step& step) {
    return attention_of(step.kind) == Attention::wait && step.kind != StepKind::cool &&
           step.kind != StepKind::activate && step.kind != StepKind::soak;
}

// Pieces cool and warm by themselves once they are shaped.
Minutes time_constant_of(const std::optional<double>& pieces, const Step& step, Grams mass) {
    if (!(mass > Grams(0.0))) {
        return Minutes(0.0);
    }
    const double parts = step.kind == StepKind::prove ? pieces.value_or(1.0) : 1.0;
    const Grams lump = std::clamp(mass / std::max(1.0, parts), lightest, heaviest);
    return dough::time_constant({lump, half_risen, dough::still_air}).likely;
}

} // namespace

bool leaves_the_oven(const Recipe& recipe, const Kitchen& kitchen, std::size_t index) {
    const std::vector<Step>& steps = recipe.steps;
    if (!kitchen.warm_spot || !kitchen.warm_spot_is_oven || steps[index].place != Place::warm ||
        !depends_on_room(steps[index].kind, steps[index].place)) {
        return false;
    }
    for (std::size_t after = index + 1; after < steps.size(); ++after) {
        if (steps[after].kind == StepKind::bake) {
            return true;
        }
        if (depends_on_room(steps[after].kind, steps[after].place)) {
            return false;
        }
    }
    return false;
}

dough::TemperatureHistory DoughCourse::there() const {
    return dough::in_one_place(there_start, there_place, there_time_constant);
}

dough::TemperatureHistory DoughCourse::here(CelsiusDifference place_off) const {
    return dough::in_one_place(here_start, here_place + place_off, time_constant);
}

std::optional<Band<Minutes>>
DoughCourse::carried(Minutes stated, dough::Curve curve, CelsiusDifference place_off) const {
    dough::TemperatureHistory history = here(place_off);
    auto band = dough::transferred(stated, there(), history, curve);
    // How long it stands in the warm hangs on how long it stands in all.
    constexpr int rounds = 8;
    for (int round = 0; round < rounds && band && out_before_end > Minutes(0.0); ++round) {
        const Celsius place = here_place + place_off;
        const Minutes in_the_warm = std::max(Minutes(0.0), band->likely - out_before_end);
        history.stays = {dough::Stay{in_the_warm, place, place, time_constant},
                         dough::Stay{Minutes(0.0), room_here, room_here, time_constant}};
        band = dough::transferred(stated, there(), history, curve);
    }
    return band;
}

bool DoughCourse::is_alike() const {
    // A lump of another weight changes nothing where it is as warm as its place.
    const bool moves = std::abs((there_place - there_start).count()) >= alike_within_c;
    return std::abs((here_place - there_place).count()) < alike_within_c &&
           std::abs((here_start - there_start).count()) < alike_within_c &&
           !(moves && std::abs((time_constant - there_time_constant).count()) >
                          alike_within_share * there_time_constant.count());
}

dough::Curve curve_of(DoughFamily family) {
    return family == DoughFamily::sourdough ? dough::Curve::leaven_yeast : dough::Curve::gas;
}

std::vector<std::optional<DoughCourse>> courses_of(const Recipe& recipe,
                                                   const Kitchen& kitchen,
                                                   const Knowledge& knowledge,
                                                   DoughFamily family,
                                                   const MixedDough& mixed) {
    std::vector<std::optional<DoughCourse>> courses(recipe.steps.size());
    Celsius there = mixed.there;
    Celsius here = mixed.here;
    const WrittenSize written = recipe.written_for.value_or(WrittenSize{1.0, recipe.pieces});
    const Grams mass_there = mixed.mass / written.factor;
    for (std::size_t index = 0; index < recipe.steps.size(); ++index) {
        const Step& step = recipe.steps[index];
        if (!is_of_a_dough(step) || step.during) {
            continue;
        }
        DoughCourse course;
        const bool cold = step.place == Place::fridge;
        const auto place = place_here(kitchen, step.place);
        if (!cold && !place) {
            continue;
        }
        course.there_place = cold ? usual_fridge : written_for(step, knowledge).temperature;
        course.here_place = cold ? kitchen.fridge : place->temperature.likely;
        const bool is_leaven = step.kind == StepKind::ferment;
        course.there_start = is_leaven ? course.there_place : there;
        course.here_start = is_leaven ? course.here_place : here;
        course.time_constant =
            is_leaven ? Minutes(0.0) : time_constant_of(recipe.pieces, step, mixed.mass);
        course.there_time_constant =
            is_leaven ? Minutes(0.0) : time_constant_of(written.pieces, step, mass_there);
        if (leaves_the_oven(recipe, kitchen, index)) {
            course.out_before_end = kitchen.oven.heat_up;
            const auto room = room_here(kitchen);
            course.room_here = room ? room->likely : usual_room;
        }
        courses[index] = course;
        if (is_leaven) {
            continue;
        }
        const Minutes stated = step.minutes ? step.minutes->minutes.likely : usual_wait;
        const auto carried = depends_on_room(step.kind, step.place)
                                 ? course.carried(stated, curve_of(family))
                                 : std::nullopt;
        there = dough::dough_at(course.there(), stated);
        here = dough::dough_at(course.here(), carried ? carried->likely : stated);
    }
    return courses;
}

} // namespace loafwright::fitting

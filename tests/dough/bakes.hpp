// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/dough/bake.hpp"

#include <rapidcheck.h>

namespace loafwright::dough {

/// A usual loaf in a hot still oven.
inline Bake usual_bake(Form form, double grams, double oven_c, double minutes) {
    Bake bake;
    bake.loaf = usual_loaf(form, Grams(grams));
    bake.settings = {{Celsius(oven_c), Minutes(minutes)}};
    return bake;
}

/// Any loaf, oven and vessel that the model is meant for.
inline Bake any_bake() {
    const auto form = *rc::gen::element(
        Form::tin_loaf, Form::round_loaf, Form::long_loaf, Form::roll, Form::baguette);
    const double least = form == Form::roll ? 40.0 : 200.0;
    const double most = form == Form::roll ? 150.0 : form == Form::baguette ? 500.0 : 2000.0;
    const double grams = least + (most - least) * 0.01 * *rc::gen::inRange(0, 101);
    Bake bake = usual_bake(form, grams, 160.0 + *rc::gen::inRange(0, 101), 20.0);
    bake.air = *rc::gen::element(OvenAir::still, OvenAir::fan);
    bake.vessel = *rc::gen::element(
        Vessel::none, Vessel::stone, Vessel::dark_tin, Vessel::shiny_tin, Vessel::lidded_pot);
    bake.lid_off_after = Minutes(*rc::gen::inRange(0, 30));
    bake.dough = Celsius(4.0 + *rc::gen::inRange(0, 27));
    bake.vapour_factor = 0.6 + 0.01 * *rc::gen::inRange(0, 141);
    return bake;
}

} // namespace loafwright::dough

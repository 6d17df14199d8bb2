// SPDX-License-Identifier: Apache-2.0
//
// Bodies of loaves. A loaf of twice the dough is taken to have the same proportions and the same
// crumb, so its edges grow by the cube root of two.
#include "engine/dough/loaf.hpp"

#include <cmath>

namespace loafwright::dough {

namespace {

Loaf known_loaf(Form form) {
    using Edge = Millimetres;
    switch (form) {
    case Form::round_loaf:
        return {form, Grams(1000.0), cylinder(Edge(210.0), Edge(95.0))};
    case Form::long_loaf:
        return {form, Grams(800.0), cylinder(Edge(110.0), Edge(280.0))};
    case Form::roll:
        return {form, Grams(70.0), cylinder(Edge(90.0), Edge(55.0))};
    case Form::baguette:
        return {form, Grams(330.0), cylinder(Edge(65.0), Edge(550.0))};
    case Form::flatbread:
        return {form, Grams(1200.0), brick(Edge(400.0), Edge(300.0), Edge(40.0))};
    case Form::tin_loaf:
        break;
    }
    return {Form::tin_loaf, Grams(900.0), brick(Edge(240.0), Edge(110.0), Edge(110.0))};
}

} // namespace

Loaf usual_loaf(Form form, Grams dough) {
    Loaf loaf = known_loaf(form);
    const double factor = dough / loaf.dough;
    loaf.dough = dough;
    if (form == Form::flatbread) {
        loaf.baked.length = loaf.baked.length * std::sqrt(factor);
        loaf.baked.across = loaf.baked.across * std::sqrt(factor);
    } else {
        loaf.baked = stretched(loaf.baked, factor);
    }
    return loaf;
}

Loaf loaf_in_tin(Grams dough, Millimetres tin_length, Millimetres tin_width) {
    const Loaf usual = usual_loaf(Form::tin_loaf, dough);
    const double floor_mm2 = tin_length.count() * tin_width.count();
    const Millimetres height(1000.0 * volume(usual.baked).count() / floor_mm2);
    return {Form::tin_loaf, dough, brick(tin_length, tin_width, height)};
}

KilogramsPerCubicMetre risen_density(const Loaf& loaf) {
    return KilogramsPerCubicMetre(1000.0 * loaf.dough.count() / volume(loaf.baked).count());
}

bool within_known_sizes(const Loaf& loaf) {
    const double thickness_mm = 2000.0 * smallest_half(loaf.baked).count();
    return loaf.form != Form::flatbread && loaf.dough >= Grams(40.0) &&
           loaf.dough <= Grams(2000.0) && thickness_mm >= 20.0 && thickness_mm <= 130.0;
}

} // namespace loafwright::dough

// SPDX-License-Identifier: Apache-2.0
//
// How much a tin holds, and how much dough that is.

#include "engine/formula/tin.hpp"

namespace loafwright::formula {
namespace {

constexpr double cubic_millimetres_in_a_millilitre = 1000.0;
constexpr double millilitres_in_a_litre = 1000.0;

} // namespace

Millilitres volume(const TinSize& tin) {
    return Millilitres(tin.length.count() * tin.width.count() * tin.height.count() /
                       cubic_millimetres_in_a_millilitre);
}

Millilitres volume(const TinSize& rim, Millimetres base_length, Millimetres base_width) {
    const double top = rim.length.count() * rim.width.count();
    const double bottom = base_length.count() * base_width.count();
    const double middle =
        (rim.length + base_length).count() * (rim.width + base_width).count() / 4.0;
    return Millilitres(rim.height.count() / 6.0 * (top + 4.0 * middle + bottom) /
                       cubic_millimetres_in_a_millilitre);
}

Band<Grams> dough_for(Millilitres tin, DoughFamily family, const Knowledge& knowledge) {
    const double litres = tin.count() / millilitres_in_a_litre;
    const Band<Grams>& fill = tin_fill_for(knowledge, family)->per_litre;
    return {fill.low * litres, fill.likely * litres, fill.high * litres};
}

} // namespace loafwright::formula

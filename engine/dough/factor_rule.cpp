// SPDX-License-Identifier: Apache-2.0
#include "engine/dough/factor_rule.hpp"

namespace loafwright::dough {

namespace {

double sum(const std::vector<Celsius>& temperatures) {
    double total = 0.0;
    for (const Celsius temperature : temperatures) {
        total += temperature.degrees();
    }
    return total;
}

double factors(const std::vector<Celsius>& others) {
    return static_cast<double>(others.size()) + 1.0;
}

} // namespace

Celsius water_by_friction_factor(Celsius dough,
                                 CelsiusDifference factor,
                                 const std::vector<Celsius>& others) {
    return Celsius(factors(others) * dough.degrees() - sum(others) - factor.count());
}

Celsius
water_by_rise_first(Celsius dough, CelsiusDifference rise, const std::vector<Celsius>& others) {
    return Celsius(factors(others) * (dough - rise).degrees() - sum(others));
}

Celsius water_by_base(double base_sum_c, Celsius room, Celsius flour) {
    return Celsius(base_sum_c - room.degrees() - flour.degrees());
}

CelsiusDifference rise_of_factor(CelsiusDifference factor, int factors) {
    return factor / static_cast<double>(factors);
}

double base_of(Celsius dough, CelsiusDifference rise) {
    return 3.0 * (dough - rise).degrees();
}

} // namespace loafwright::dough

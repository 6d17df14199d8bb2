// SPDX-License-Identifier: Apache-2.0
#include "tests/dough/lump.hpp"

#include "engine/dough/conduction.hpp"

#include <cmath>
#include <cstddef>
#include <numbers>

namespace loafwright::dough {

namespace {

constexpr std::size_t cells = 48;
constexpr double tick_s = 60.0;

// Both directions start at 1 and stand in surroundings of 0, so temperatures are shares.
class Product {
public:
    explicit Product(const DoughLump& lump)
        : radius_m_(std::cbrt(lump.mass_kg / lump.density_kg_m3 / std::numbers::pi)),
          round_(body(lump, 1.0, radius_m_), {0.0, lump.transfer_w_m2k, 0.0}, 1.0),
          flat_(body(lump, 0.0, radius_m_ / 2.0), {0.0, lump.transfer_w_m2k, 0.0}, 1.0) {}

    void advance() {
        round_.advance(tick_s);
        flat_.advance(tick_s);
    }
    [[nodiscard]] double core() const { return round_.centre_c() * flat_.centre_c(); }
    [[nodiscard]] double mean() const { return round_.mean_c() * flat_.mean_c(); }

private:
    static PlainBody body(const DoughLump& lump, double exponent, double half_m) {
        return {
            exponent, half_m, lump.conductivity_w_mk, lump.density_kg_m3, lump.specific_heat_j_kgk};
    }

    double radius_m_;
    PlainConduction<cells> round_;
    PlainConduction<cells> flat_;
};

template <typename Share>
double hours_until(const DoughLump& lump, double share, Share&& share_of) {
    Product product(lump);
    double before = 1.0;
    for (double minutes = 1.0; minutes < 6000.0; minutes += 1.0) {
        product.advance();
        const double now = share_of(product);
        if (now <= share) {
            // Shares fall as an exponential within a minute.
            const double part = std::log(before / share) / std::log(before / now);
            return (minutes - 1.0 + part) / 60.0;
        }
        before = now;
    }
    return 100.0;
}

} // namespace

double hours_until_core(const DoughLump& lump, double share) {
    return hours_until(lump, share, [](const Product& product) { return product.core(); });
}

double hours_until_mean(const DoughLump& lump, double share) {
    return hours_until(lump, share, [](const Product& product) { return product.mean(); });
}

double last_time_constant_hours(const DoughLump& lump) {
    return hours_until_mean(lump, 0.01 / std::numbers::e) - hours_until_mean(lump, 0.01);
}

} // namespace loafwright::dough

// SPDX-License-Identifier: Apache-2.0
//
// A bake is taken apart into core and crust. The core is limited by conduction and transfers with
// size, shape, start and boiling point; the crust browns at a rate exp(-Ea/(R T)) of its surface
// temperature with Ea/R = 8700 K (Purlis 2009, from memory), and transfers with the oven alone: the
// surface is that of the recipe's own loaf after the stated time, in its oven and in this one. So
// another loaf in the same oven keeps its crust time, without a jump beside that point.
#include "engine/dough/bake_transfer.hpp"

#include "engine/dough/altitude.hpp"

#include <algorithm>
#include <cmath>

namespace loafwright::dough {

namespace {

constexpr double browning_k = 8700.0;
constexpr double least_crust_factor = 0.6; // assumed
constexpr double most_crust_factor = 1.8;  // assumed
constexpr double uncertainty = 0.12;
constexpr double uncertainty_of_shape = 0.20;
constexpr double alike = 0.05;
// How many times its own time a crust may stand by for the core before it is too dark: assumed.
constexpr double patience_of_crust = 2.0;
constexpr Celsius hot_oven{200.0};

Minutes total(const Bake& bake) {
    Minutes sum;
    for (const OvenSetting& setting : bake.settings) {
        sum += setting.lasts;
    }
    return sum;
}

// The settings cut, or the last one drawn out, to last so long in all.
std::vector<OvenSetting> lasting(const std::vector<OvenSetting>& settings, Minutes time) {
    std::vector<OvenSetting> made;
    Minutes left = time;
    for (const OvenSetting& setting : settings) {
        if (left <= Minutes(0.0)) {
            break;
        }
        made.push_back({setting.temperature, std::min(setting.lasts, left)});
        left = left - made.back().lasts;
    }
    if (left > Minutes(0.0)) {
        made.back().lasts += left;
    }
    return made;
}

double crust_factor(const Bake& stated, const Bake& here) {
    Bake own_loaf_here = stated;
    own_loaf_here.air = here.air;
    own_loaf_here.vessel = here.vessel;
    own_loaf_here.lid_off_after = here.lid_off_after;
    own_loaf_here.settings = lasting(here.settings, total(stated));
    const double there_k = simulate_bake(stated).surface_at_end.degrees() + kelvin_at_zero_celsius;
    const double here_k =
        simulate_bake(own_loaf_here).surface_at_end.degrees() + kelvin_at_zero_celsius;
    return std::clamp(std::exp(browning_k * (1.0 / here_k - 1.0 / there_k)),
                      least_crust_factor,
                      most_crust_factor);
}

// Proportions: how long and how wide for the smallest half.
bool same_shape(const Loaf& a, const Loaf& b) {
    const auto near = [](double one, double other) { return std::abs(one / other - 1.0) < alike; };
    const double half_a = smallest_half(a.baked).count();
    const double half_b = smallest_half(b.baked).count();
    return a.form == b.form && a.baked.outline == b.baked.outline &&
           near(a.baked.length.count() / half_a, b.baked.length.count() / half_b) &&
           near(a.baked.across.count() / half_a, b.baked.across.count() / half_b) &&
           near(a.baked.through.count() / half_a, b.baked.through.count() / half_b);
}

} // namespace

double core_share(Form form) {
    switch (form) {
    case Form::tin_loaf:
        return 0.85;
    case Form::roll:
        return 0.80;
    case Form::round_loaf:
    case Form::long_loaf:
    case Form::baguette:
    case Form::flatbread:
        break;
    }
    return 0.75;
}

std::optional<BakeTransfer>
transferred_bake(const Bake& stated, const Bake& here, Celsius core_target) {
    const auto there_core = time_to_core(stated, core_target_at(core_target, stated.boiling));
    const auto here_core = time_to_core(here, core_target_at(core_target, here.boiling));
    if (!there_core || !here_core || *there_core <= Minutes(0.0)) {
        return std::nullopt;
    }
    const double share = core_share(stated.loaf.form);
    const Minutes whole = total(stated);
    BakeTransfer made;
    made.core = whole * share * (*here_core / *there_core);
    made.crust = whole * (1.0 - share) * crust_factor(stated, here);
    const Minutes likely = made.core + made.crust;
    const double off = same_shape(stated.loaf, here.loaf) ? uncertainty : uncertainty_of_shape;
    made.time = Band<Minutes>{likely * (1.0 - off), likely, likely * (1.0 + off)};
    const Minutes added = made.core - whole * share;
    if (added > made.crust * patience_of_crust) {
        made.advice = here.settings.back().temperature >= hot_oven ? CrustAdvice::lower_the_oven
                                                                   : CrustAdvice::cover_with_foil;
    }
    made.within_known = within_known(stated) && within_known(here);
    return made;
}

} // namespace loafwright::dough

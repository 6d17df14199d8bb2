// SPDX-License-Identifier: Apache-2.0
//
// The bake as a course: settings and the lid cut time into stretches of constant surroundings, each
// is walked in even stabilised steps of the enthalpy model in bread_heat.hpp. The weight lost is
// the water dried out, times the ratio of the true surface to that of the one-dimensional stand-in.
#include "engine/dough/bake.hpp"

#include "engine/dough/bread_heat.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace loafwright::dough {

namespace {

using Rates = BakingRates<production_cells>;
using Steps = StabilisedSteps<7>;
using State = Rates::State;

// With the shell of a baking loaf at the boiling point, and for the core's last tenth of the way.
constexpr double share_left_when_baked = 0.1;

// Convection of a domestic oven: from memory, ±30 % still and ±40 % with a fan. With radiation it
// gives 20 to 45 W/m2K, as Baik et al. (1999, J Food Sci 64:688-694) measured over cakes.
constexpr double still_w_m2k = 8.0;
constexpr double fan_w_m2k = 20.0;
constexpr double dark = 0.9;
constexpr double shiny = 0.2;

BreadBody body_of(const Bake& bake) {
    BreadBody body;
    body.exponent =
        stand_in(bake.loaf.baked, std::numeric_limits<double>::infinity(), share_left_when_baked)
            .exponent;
    body.half_m = smallest_half(bake.loaf.baked).count();
    body.density_kg_m3 = risen_density(bake.loaf).count();
    body.water = bake.water;
    body.boiling_c = bake.boiling.degrees();
    body.vapour_factor = bake.vapour_factor;
    return body;
}

Surroundings surroundings_of(const Bake& bake, Celsius oven) {
    return {oven.degrees(),
            bake.air == OvenAir::fan ? fan_w_m2k : still_w_m2k,
            bake.vessel == Vessel::shiny_tin ? shiny : dark};
}

class Baking {
public:
    explicit Baking(const Bake& bake)
        : bake_(bake), body_(body_of(bake)), rates_(body_, bake.dough.degrees()) {
        state_.fill(rates_.properties().enthalpy_j_kg(bake.dough.degrees()));
        state_[production_cells] = 0.0;
        longest_s_ = Steps::reach * 2.0 /
                     rates_.mesh().fastest_rate(
                         rates_.properties().largest_diffusivity_m2_s(body_.density_kg_m3));
    }

    // Walks through all settings, the last one for `beyond` more; stops when the core is at target.
    void run(Minutes beyond, Celsius target) {
        course_.reserve(points_needed(beyond));
        for (std::size_t i = 0; i < bake_.settings.size() && !done_; ++i) {
            const OvenSetting& setting = bake_.settings[i];
            const bool last = i + 1 == bake_.settings.size();
            const Surroundings around = surroundings_of(bake_, setting.temperature);
            double seconds = 60.0 * (setting.lasts + (last ? beyond : Minutes(0.0))).count();
            const double lidded = std::clamp(lid_off_s() - now_s_, 0.0, seconds);
            if (lidded > 0.0) {
                walk(around, Lid::on, lidded, target);
                seconds -= lidded;
            }
            if (seconds > 0.0 && !done_) {
                walk(around, Lid::off, seconds, target);
            }
        }
        State first{};
        rates_(state_, first);
        note(first);
    }

    [[nodiscard]] const CoreCourse& course() const { return course_; }

    [[nodiscard]] BakeCourse ended() {
        BakeCourse made;
        made.core_at_end = course_.back().core;
        made.crust = Millimetres(1000.0 * crust_m());
        made.surface_at_end = Celsius(surface_over_crust());
        made.end.loaf = bake_.loaf;
        made.end.surface = Celsius(rates_.surface_c());
        made.end.boiling = bake_.boiling;
        made.end.water = bake_.water;
        made.end.vapour_factor = bake_.vapour_factor;
        double gone = 0.0;
        double all = 0.0;
        for (std::size_t i = 0; i < production_cells; ++i) {
            const double dried = rates_.properties().dried(state_[i]);
            made.end.temperature_c[i] = rates_.properties().temperature_c(state_[i]);
            made.end.dried[i] = dried;
            gone += rates_.mesh().volume[i] * dried;
            all += rates_.mesh().volume[i];
        }
        const double true_surface =
            surface_per_volume_per_m(bake_.loaf.baked) * body_.half_m / (body_.exponent + 1.0);
        made.loss = std::min(1.0, true_surface * gone / all) * (bake_.water - water_kept_by_crust);
        made.core = std::move(course_);
        return made;
    }

private:
    [[nodiscard]] double crust_m() const {
        double cells = 0.0;
        for (std::size_t i = 0; i < production_cells; ++i) {
            cells += rates_.properties().dried(state_[i]);
        }
        return cells * rates_.mesh().step_m;
    }

    // The surface over a dry crust whose inside is at the boiling point. The outermost cell's own
    // surface jumps by degrees whenever a cell has dried out; the depth of all that is dry does
    // not.
    [[nodiscard]] double surface_over_crust() const {
        const double wet = std::min(rates_.surface_c(), body_.boiling_c);
        const double depth_m = crust_m();
        if (depth_m <= 0.0 || now_s_ < lid_off_s()) {
            return wet;
        }
        const Surroundings around = surroundings_of(bake_, bake_.settings.back().temperature);
        return surface_temperature(
            around, crust_conductivity_w_mk / depth_m, body_.boiling_c, body_.boiling_c, 12);
    }

    [[nodiscard]] double lid_off_s() const {
        return bake_.vessel == Vessel::lidded_pot ? 60.0 * bake_.lid_off_after.count() : 0.0;
    }

    [[nodiscard]] std::size_t points_needed(Minutes beyond) const {
        double seconds = 60.0 * beyond.count();
        for (const OvenSetting& setting : bake_.settings) {
            seconds += 60.0 * setting.lasts.count();
        }
        return static_cast<std::size_t>(seconds / longest_s_) + 2 * bake_.settings.size() + 4;
    }

    void note(const State& rate) {
        const BreadProperties& bread = rates_.properties();
        const double core =
            at_centre(bread.temperature_c(state_[0]), bread.temperature_c(state_[1]));
        const bool wet = bread.temperature_c(state_[0]) < body_.boiling_c;
        const double slope = at_centre(rate[0], rate[1]) / bread.specific_heat_j_kgk(0.0);
        course_.push_back({Minutes(now_s_ / 60.0),
                           Celsius(core),
                           wet ? 60.0 * slope : 0.0,
                           Celsius(rates_.surface_c())});
    }

    void walk(const Surroundings& around, Lid lid, double seconds, Celsius target) {
        rates_.surroundings(around, lid);
        const auto count = static_cast<std::size_t>(std::ceil(seconds / longest_s_));
        const double step_s = seconds / static_cast<double>(count);
        const double from_s = now_s_;
        State first{};
        for (std::size_t i = 0; i < count; ++i) {
            now_s_ = from_s + static_cast<double>(i) * step_s;
            rates_(state_, first);
            note(first);
            if (course_.back().core >= target) {
                done_ = true;
                return;
            }
            Steps::advance(state_, first, step_s, rates_);
        }
        now_s_ = from_s + seconds;
    }

    const Bake& bake_;
    BreadBody body_;
    Rates rates_;
    State state_{};
    CoreCourse course_;
    double longest_s_ = 0.0;
    double now_s_ = 0.0;
    bool done_ = false;
};

} // namespace

bool within_known(const Bake& bake) {
    return within_known_sizes(bake.loaf) &&
           std::all_of(bake.settings.begin(), bake.settings.end(), [](const OvenSetting& setting) {
               return setting.temperature >= Celsius(160.0) &&
                      setting.temperature <= Celsius(260.0);
           });
}

BakeCourse simulate_bake(const Bake& bake) {
    Baking baking(bake);
    baking.run(Minutes(0.0), Celsius(std::numeric_limits<double>::infinity()));
    return baking.ended();
}

std::optional<Minutes> time_to_core(const Bake& bake, Celsius target, Minutes longest) {
    Minutes stated;
    for (const OvenSetting& setting : bake.settings) {
        stated += setting.lasts;
    }
    Baking baking(bake);
    baking.run(std::max(Minutes(0.0), longest - stated), target);
    return first_at_or_above(baking.course(), target);
}

} // namespace loafwright::dough

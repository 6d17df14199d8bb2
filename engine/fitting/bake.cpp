// SPDX-License-Identifier: Apache-2.0
//
// What changes a bake that the recipe states: another tin, thin air, an oven that does not get hot
// enough. The recipe's own time is the measure, the models only carry it over.
#include "engine/fitting/bake.hpp"

#include "engine/dough/altitude.hpp"
#include "engine/dough/bake_transfer.hpp"
#include "engine/fitting/words.hpp"
#include "engine/recipe/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <vector>

namespace loafwright::fitting {

namespace {

// Below this the boiling point moves less than weather moves it.
constexpr Metres height_matters_from{300.0};
constexpr double coolest_c = 160.0; // what the models were looked at for
constexpr double hottest_c = 260.0;
constexpr Minutes usual_bake{35.0};
// A slip of the hand when dough is divided is no other bake.
constexpr double as_heavy_within = 0.03;

bool says_tin(const Recipe& recipe) {
    return has_any_word(lower_case(recipe.title), {"tin", "pan"}) ||
           std::any_of(recipe.steps.begin(), recipe.steps.end(), [](const Step& step) {
               return (step.kind == StepKind::shape || step.kind == StepKind::prove ||
                       step.kind == StepKind::bake) &&
                      has_any_word(lower_case(step.text),
                                   {"tin", "tins", "loaf pan", "bread pan", "pan", "pans"});
           });
}

dough::Form body_of(const Recipe& recipe, Form form) {
    const std::string title = lower_case(recipe.title);
    if (form == Form::rolls) {
        return dough::Form::roll;
    }
    if (form == Form::flat) {
        return dough::Form::flatbread;
    }
    if (has_any_word(title, {"baguette", "baguettes"})) {
        return dough::Form::baguette;
    }
    if (says_tin(recipe)) {
        return dough::Form::tin_loaf;
    }
    return has_any_word(title, {"bloomer", "baton"}) ? dough::Form::long_loaf
                                                     : dough::Form::round_loaf;
}

double litres(const Tin& tin) {
    return tin.length.count() * tin.width.count() * tin.height.count() * 1e-6;
}

// Of several tins the one that this dough fills as usual.
const Tin* tin_for(const Kitchen& kitchen, const dough::Loaf& loaf) {
    const double wanted = dough::volume(loaf.baked).count() / 1000.0;
    const Tin* best = nullptr;
    for (const Tin& tin : kitchen.tins) {
        const bool nearer =
            best == nullptr || std::abs(litres(tin) - wanted) < std::abs(litres(*best) - wanted);
        best = nearer ? &tin : best;
    }
    return best;
}

dough::Vessel vessel_for(const dough::Loaf& loaf) {
    return loaf.form == dough::Form::tin_loaf ? dough::Vessel::dark_tin : dough::Vessel::none;
}

Minutes stated_bake(const Recipe& recipe) {
    Minutes sum(0.0);
    for (const Step& step : recipe.steps) {
        if (step.kind == StepKind::bake && step.minutes) {
            sum += step.minutes->minutes.likely;
        }
    }
    return sum > Minutes(0.0) ? sum : usual_bake;
}

} // namespace

std::optional<dough::Loaf> loaf_of(const Recipe& recipe, Form form, Grams mass) {
    if (!(mass > Grams(0.0)) || form == Form::flat) {
        return std::nullopt;
    }
    const Grams piece = mass / std::max(1.0, recipe.pieces.value_or(1.0));
    const dough::Loaf loaf = recipe.tin
                                 ? dough::loaf_in_tin(piece, recipe.tin->length, recipe.tin->width)
                                 : dough::usual_loaf(body_of(recipe, form), piece);
    return dough::within_known_sizes(loaf) ? std::optional<dough::Loaf>(loaf) : std::nullopt;
}

namespace {

// The piece of dough that the recipe's own times are for.
std::optional<dough::Loaf> own_loaf(const Recipe& recipe, Form form, Grams mass) {
    if (!recipe.written_for) {
        return loaf_of(recipe, form, mass);
    }
    Recipe own = recipe;
    own.tin = std::nullopt;
    own.pieces = recipe.written_for->pieces;
    return loaf_of(own, form_of(own), mass / recipe.written_for->factor);
}

} // namespace

std::optional<BakeHere> bake_here(const Recipe& recipe,
                                  const Kitchen& kitchen,
                                  Form form,
                                  Grams mass,
                                  std::optional<Celsius> wanted) {
    const auto loaf = own_loaf(recipe, form, mass);
    const auto now = loaf_of(recipe, form, mass);
    if (!loaf || !now || !wanted || wanted->degrees() < coolest_c ||
        wanted->degrees() > hottest_c) {
        return std::nullopt;
    }
    const bool in_tin = now->form == dough::Form::tin_loaf;
    dough::Bake stated;
    stated.loaf = *loaf;
    stated.settings = {{*wanted, stated_bake(recipe)}};
    stated.vessel = vessel_for(*loaf);
    dough::Bake here = stated;
    here.loaf = *now;
    here.vessel = vessel_for(*now);

    std::vector<std::string> reasons;
    const bool other_size = std::abs(now->dough / loaf->dough - 1.0) > as_heavy_within;
    if (other_size || now->form != loaf->form) {
        reasons.push_back(fmt::format(
            "{:.0f} g of dough instead of {:.0f}", now->dough.count(), loaf->dough.count()));
    }
    if (recipe.tin) {
        reasons.push_back(fmt::format("in a tin of {:.0f} x {:.0f} mm",
                                      recipe.tin->length.count(),
                                      recipe.tin->width.count()));
    }
    if (const Tin* tin = in_tin && !recipe.tin ? tin_for(kitchen, *now) : nullptr) {
        here.loaf = dough::loaf_in_tin(now->dough, tin->length, tin->width);
        const auto same = [](Millimetres a, Millimetres b) {
            return std::abs((a - b).count()) < 10.0;
        };
        const bool other = !same(here.loaf.baked.across, now->baked.across) ||
                           !same(here.loaf.baked.length, now->baked.length);
        if (!other || !dough::within_known_sizes(here.loaf)) {
            here.loaf = *now;
        } else {
            reasons.push_back(fmt::format("your {} holds this dough {}",
                                          tin->name.empty() ? "tin" : tin->name,
                                          here.loaf.baked.through > now->baked.through
                                              ? "deeper than usual"
                                              : "flatter than usual"));
        }
    }
    if (kitchen.altitude >= height_matters_from) {
        here.boiling = dough::boiling_point_at(kitchen.altitude);
        reasons.push_back(fmt::format("at {:.0f} m water boils at {}",
                                      kitchen.altitude.count(),
                                      degrees_text(Celsius(std::round(here.boiling.degrees())))));
    }
    if (kitchen.oven.max < *wanted && kitchen.oven.max.degrees() >= coolest_c) {
        here.settings.front().temperature = kitchen.oven.max;
        reasons.push_back(fmt::format("your oven stops at {}", degrees_text(kitchen.oven.max)));
    }
    if (reasons.empty()) {
        return std::nullopt;
    }
    const auto moved = dough::transferred_bake(stated, here);
    if (!moved || !moved->within_known) {
        return std::nullopt;
    }
    BakeHere out;
    const Minutes told = stated.settings.front().lasts;
    out.factor = {moved->time.low / told, moved->time.likely / told, moved->time.high / told};
    out.reason = fmt::format("{}", fmt::join(reasons, ", "));
    if (moved->advice == dough::CrustAdvice::lower_the_oven) {
        out.advice = "if it colours too soon, turn the oven down 20 °C";
    } else if (moved->advice == dough::CrustAdvice::cover_with_foil) {
        out.advice = "if it colours too soon, cover it with foil";
    }
    return out;
}

std::optional<Phrase> unknown_size_words(const Recipe& recipe, Form form, Grams mass) {
    if (!recipe.written_for || !(mass > Grams(0.0)) ||
        (own_loaf(recipe, form, mass) && loaf_of(recipe, form, mass))) {
        return std::nullopt;
    }
    const double times = recipe.written_for->factor;
    const double pieces = std::max(1.0, recipe.pieces.value_or(1.0)) /
                          std::max(1.0, recipe.written_for->pieces.value_or(1.0));
    if (std::abs(times / pieces - 1.0) <= as_heavy_within) {
        return std::nullopt;
    }
    return phrase("The bake is the recipe's own, and may not do for so large a change: go by its "
                  "sign.");
}

} // namespace loafwright::fitting

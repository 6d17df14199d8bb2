// SPDX-License-Identifier: Apache-2.0
//
// Kit out of the words of the steps. Of two phrases that overlap the longer one counts, so that "a
// tray of water" asks for something to hold water and not for a baking tray. What measures comes
// from the ingredient lines, and the rack from there being a loaf to cool.

#include "engine/provisions/kit.hpp"

#include "engine/provisions/amounts.hpp"
#include "engine/provisions/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <string_view>

namespace loafwright::provisions {
namespace {

struct KitMatch {
    const KitRow* row = nullptr;
    Match match;
};

void add(std::vector<std::string>& kit, std::string_view piece) {
    if (std::find(kit.begin(), kit.end(), piece) == kit.end()) {
        kit.emplace_back(piece);
    }
}

bool lies_inside_longer(const Match& match, const std::vector<KitMatch>& all) {
    return std::any_of(all.begin(), all.end(), [&](const KitMatch& other) {
        return other.match.count > match.count && other.match.first <= match.first &&
               other.match.first + other.match.count >= match.first + match.count;
    });
}

void add_from_text(std::vector<std::string>& kit,
                   std::string_view text,
                   const Knowledge& knowledge) {
    const Words words = words_of(text);
    std::vector<KitMatch> all;
    for (const KitRow& row : knowledge.kit) {
        for (const std::string_view phrase : row.words) {
            for (const Match& match : matches(words, phrase)) {
                all.push_back({&row, match});
            }
        }
    }
    std::stable_sort(all.begin(), all.end(), [](const KitMatch& a, const KitMatch& b) {
        return a.match.first < b.match.first;
    });
    for (const KitMatch& found : all) {
        if (!lies_inside_longer(found.match, all) && !is_denied(words, found.match) &&
            !is_alternative(words, found.match)) {
            add(kit, found.row->kit);
        }
    }
}

void add_measures(std::vector<std::string>& kit, const Recipe& recipe, const Knowledge& knowledge) {
    bool scales = false;
    bool spoons = false;
    bool cups = false;
    bool jug = false;
    for (const Ingredient& ingredient : recipe.ingredients) {
        switch (amount_in(ingredient.text, knowledge).measure) {
        case Measure::grams:
        case Measure::other_weight:
            scales = true;
            break;
        case Measure::spoon:
            spoons = true;
            break;
        case Measure::cup:
            cups = true;
            break;
        case Measure::volume:
            jug = true;
            break;
        case Measure::none:
        case Measure::pieces:
            break;
        }
    }
    if (scales) {
        add(kit, "scales");
    }
    if (cups) {
        add(kit, "measuring cups");
    }
    if (spoons) {
        add(kit, "measuring spoons");
    }
    if (jug) {
        add(kit, "measuring jug");
    }
}

} // namespace

std::vector<std::string>
kit_for(const Recipe& recipe, const Kitchen& kitchen, const Knowledge& knowledge) {
    std::vector<std::string> kit;
    add_measures(kit, recipe, knowledge);
    bool kneads = false;
    bool cools = false;
    for (const Step& step : recipe.steps) {
        add_from_text(kit, step.text, knowledge);
        kneads = kneads || step.kind == StepKind::knead;
        cools = cools || step.kind == StepKind::cool;
    }
    if (kneads && kitchen.mixing == MixingMethod::mixer) {
        add(kit, "stand mixer with its hook");
    }
    if (cools) {
        add(kit, "rack to cool on");
    }
    // The one tin of this kitchen by its name.
    if (kitchen.tins.size() == 1 && !kitchen.tins.front().name.empty()) {
        for (std::string& piece : kit) {
            if (piece == "loaf tin") {
                piece = fmt::format("loaf tin ({})", kitchen.tins.front().name);
            }
        }
    }
    return kit;
}

} // namespace loafwright::provisions

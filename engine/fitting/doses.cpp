// SPDX-License-Identifier: Apache-2.0
//
// A dose of yeast between the model, which counts fresh yeast in per cent of the flour, and a
// kitchen, which weighs the recipe's own form in steps and speaks of halves and thirds.
#include "engine/fitting/doses.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace loafwright::fitting {

namespace {

struct Share {
    double of_all;
    const char* words;
};

constexpr std::array<Share, 15> shares{{{0.1, "a tenth of the yeast"},
                                        {0.125, "an eighth of the yeast"},
                                        {1.0 / 6.0, "a sixth of the yeast"},
                                        {0.2, "a fifth of the yeast"},
                                        {0.25, "a quarter of the yeast"},
                                        {1.0 / 3.0, "a third of the yeast"},
                                        {0.5, "half the yeast"},
                                        {2.0 / 3.0, "two thirds of the yeast"},
                                        {0.75, "three quarters of the yeast"},
                                        {0.9, "a little less yeast"},
                                        {1.1, "a little more yeast"},
                                        {1.25, "a quarter more yeast"},
                                        {1.5, "half as much yeast again"},
                                        {2.0, "twice the yeast"},
                                        {3.0, "three times the yeast"}}};
// As far from the ends of the table as their neighbours are: beyond, the grams speak for
// themselves.
constexpr double least_share = 0.09;
constexpr double most_share = 3.5;

std::string share_text(double share) {
    if (share < least_share) {
        return "far less yeast";
    }
    if (share > most_share) {
        return "far more yeast";
    }
    const auto apart = [share](const Share& row) { return std::abs(std::log(row.of_all / share)); };
    return std::min_element(
               shares.begin(),
               shares.end(),
               [&apart](const Share& a, const Share& b) { return apart(a) < apart(b); })
        ->words;
}

std::string grams_text(Grams grams) {
    return fmt::format("{:g} g", std::floor(grams.count() * 10.0 + 0.5) / 10.0);
}

} // namespace

Grams as_weighed(Grams grams) {
    const double parts = grams >= Grams(10.0) ? 1.0 : grams >= Grams(2.0) ? 2.0 : 10.0;
    return std::max(least_weighed, Grams(std::floor(grams.count() * parts + 0.5) / parts));
}

dough::BakersPercent fresh_dose(const YeastInDough& yeast, Grams grams) {
    const Grams fresh = dough::converted(grams, yeast.form, dough::YeastForm::fresh).likely;
    return dough::BakersPercent(100.0 * (fresh / yeast.flour));
}

Grams grams_of(const YeastInDough& yeast, dough::BakersPercent fresh) {
    const Grams grams = yeast.flour * (fresh.count() / 100.0);
    return dough::converted(grams, dough::YeastForm::fresh, yeast.form).likely;
}

bool within_limits(dough::BakersPercent dose) {
    return dose >= dough::least_dose && dose <= dough::most_dose;
}

std::string dose_share(const YeastInDough& yeast, Grams weighed) {
    return share_text(weighed / yeast.grams);
}

std::string dose_text(const YeastInDough& yeast, Grams weighed) {
    return fmt::format("{}: {} instead of {}",
                       dose_share(yeast, weighed),
                       grams_text(weighed),
                       grams_text(yeast.grams));
}

} // namespace loafwright::fitting

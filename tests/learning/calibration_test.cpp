// SPDX-License-Identifier: Apache-2.0
//
// Kitchens whose true factors are known, because they were drawn: 500 of them, thirty bakes each.
// Between kitchens a kind's factor has a deviation of 0.25 of the logarithm, from bake to bake 0.08
// (issue 8). Each bake is predicted from those before it and then learned from.
#include "engine/fitting/learned.hpp"
#include "engine/learning/learn.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <map>
#include <random>

namespace loafwright {
namespace {

constexpr int kitchens = 500;
constexpr int bakes = 30;
constexpr double usual_rise = 90.0;
constexpr double usual_prove = 60.0;

const Knowledge& known() {
    static const Knowledge knowledge = built_in_knowledge();
    return knowledge;
}

LoggedLine wait(int stage, StepKind kind, double usual, double real) {
    LoggedLine line;
    line.stage = stage;
    line.kind = kind;
    line.attention = Attention::wait;
    line.usual_minutes = usual;
    const auto likely = static_cast<std::int64_t>(usual);
    line.minutes = {likely, likely, likely};
    line.begun = Instant{0};
    // In seconds, so that whole minutes lose nothing: usual lengths are scaled up by as much.
    line.done = later_by_minutes(Instant{0}, std::llround(real));
    line.timed = true;
    return line;
}

/// What came of predicting: by how many bakes were known before.
struct Score {
    double off = 0.0;    // mean absolute error of the logarithm
    double inside = 0.0; // share of bakes in the band
    int count = 0;
};

// Lines are in "minutes" a hundred times longer, so that rounding to whole ones does not matter.
constexpr double finely = 100.0;

std::map<int, Score> scores(double between_group, double between_kind, double within) {
    std::mt19937_64 random(20261126);
    std::normal_distribution<double> unit;
    std::map<int, Score> scores;
    for (int k = 0; k < kitchens; ++k) {
        const double shared = between_group * unit(random);
        const double rise = shared + between_kind * unit(random);
        const double prove = shared + between_kind * unit(random);
        std::vector<BakeLog> logs;
        for (int b = 0; b < bakes; ++b) {
            const double real_rise = usual_rise * std::exp(rise + within * unit(random));
            const double real_prove = usual_prove * std::exp(prove + within * unit(random));
            if (b == 0 || b == 1 || b == 2 || b == 5 || b == 10 || b == 20 || b == 29) {
                const KitchenFactors factors = learn(logs, known());
                for (const auto& [kind, usual, real] :
                     {std::tuple(StepKind::rise, usual_rise, real_rise),
                      std::tuple(StepKind::prove, usual_prove, real_prove)}) {
                    const KindFactor* factor = learned_factor(factors, kind, "yeast");
                    Band<double> band{usual, usual, usual};
                    if (factor != nullptr) {
                        band = fitting::with_factor(band, *factor);
                    }
                    Score& score = scores[b];
                    score.off += std::fabs(std::log(band.likely / real));
                    score.inside += band.low <= real && real <= band.high ? 1.0 : 0.0;
                    ++score.count;
                }
            }
            BakeLog log;
            log.leaven = "yeast";
            log.lines.push_back(wait(1, StepKind::rise, finely * usual_rise, finely * real_rise));
            log.lines.push_back(
                wait(2, StepKind::prove, finely * usual_prove, finely * real_prove));
            logs.push_back(log);
        }
    }
    for (auto& [before, score] : scores) {
        score.off /= score.count;
        score.inside /= score.count;
    }
    return scores;
}

TEST(calibration, after_five_bakes_the_error_is_less_than_half) {
    const auto by_bakes = scores(0.20, 0.15, 0.08);
    EXPECT_NEAR(by_bakes.at(0).off, 0.8 * 0.2625, 0.02); // as drawn: nothing is known yet
    EXPECT_LT(by_bakes.at(5).off, by_bakes.at(0).off / 2.0);
    EXPECT_LT(by_bakes.at(20).off, by_bakes.at(2).off);
}

TEST(calibration, four_bakes_in_five_fall_into_their_band) {
    for (const auto& [before, score] : scores(0.20, 0.15, 0.08)) {
        if (before > 0) {
            EXPECT_GE(score.inside, 0.77) << "after " << before;
            EXPECT_LE(score.inside, 0.83) << "after " << before;
        }
    }
}

// The prior thinks 0.08 of every kitchen; the logs know better.
TEST(calibration, bands_widen_for_unsteady_kitchens_and_tighten_for_steady_ones) {
    const auto unsteady = scores(0.20, 0.15, 0.16);
    EXPECT_GE(unsteady.at(29).inside, 0.74);
    EXPECT_LE(unsteady.at(29).inside, 0.84);
    const auto steady = scores(0.20, 0.15, 0.04);
    EXPECT_GE(steady.at(29).inside, 0.76);
    EXPECT_LE(steady.at(29).inside, 0.88);
    EXPECT_LT(steady.at(29).inside, steady.at(2).inside) << "too wide as long as the prior counts";
}

} // namespace
} // namespace loafwright

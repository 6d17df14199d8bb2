// SPDX-License-Identifier: Apache-2.0
//
// The closed form against a sum over a fine grid that knows nothing of it, and the bound on what
// one reading can move.
#include "engine/learning/normal_levels.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <cmath>

namespace loafwright::learning {
namespace {

double log_normal_density(double value, double mean, double deviation) {
    const double z = (value - mean) / deviation;
    return -0.5 * z * z - std::log(deviation);
}

// The mean and deviation of each kind's factor, by adding up the joint density of what is shared
// and of the factors of two kinds over a grid of 241³ points. The density of the factors given the
// readings falls apart once what is shared is fixed, so the inner sums are taken one kind at a
// time.
std::vector<Normal> by_grid(const std::vector<std::vector<Reading>>& kinds,
                            const LevelPrior& prior) {
    constexpr int points = 1201;
    constexpr double far = 1.8;
    const auto at = [](int i) { return far * (2.0 * i / (points - 1) - 1.0); };
    std::vector<double> weight(kinds.size(), 0.0);
    std::vector<double> first(kinds.size(), 0.0);
    std::vector<double> second(kinds.size(), 0.0);
    for (int i = 0; i < points; ++i) {
        const double shared = at(i);
        const double of_shared = std::exp(log_normal_density(shared, 0.0, prior.group));
        std::vector<double> mass(kinds.size(), 0.0);
        std::vector<double> mean(kinds.size(), 0.0);
        std::vector<double> square(kinds.size(), 0.0);
        for (std::size_t k = 0; k < kinds.size(); ++k) {
            for (int j = 0; j < points; ++j) {
                const double factor = at(j);
                double log_density = log_normal_density(factor, shared, prior.kind);
                for (const Reading& reading : kinds[k]) {
                    log_density += log_normal_density(reading.value, factor, reading.deviation);
                }
                const double density = std::exp(log_density);
                mass[k] += density;
                mean[k] += density * factor;
                square[k] += density * factor * factor;
            }
        }
        for (std::size_t k = 0; k < kinds.size(); ++k) {
            double others = of_shared;
            for (std::size_t other = 0; other < kinds.size(); ++other) {
                others *= other == k ? 1.0 : mass[other];
            }
            weight[k] += others * mass[k];
            first[k] += others * mean[k];
            second[k] += others * square[k];
        }
    }
    std::vector<Normal> factors;
    for (std::size_t k = 0; k < kinds.size(); ++k) {
        const double mean = first[k] / weight[k];
        factors.push_back({mean, std::sqrt(second[k] / weight[k] - mean * mean)});
    }
    return factors;
}

TEST(normal_levels, the_closed_form_is_what_a_sum_over_a_grid_gives) {
    const std::vector<std::vector<std::vector<Reading>>> cases{
        {{{0.3, 0.08}}, {}},
        {{{0.3, 0.08}, {0.25, 0.08}, {0.41, 0.08}}, {{-0.1, 0.1}}},
        {{{-0.2, 0.3}}, {{0.15, 0.08}, {0.12, 0.08}}, {}},
        {{}, {}}};
    for (const LevelPrior prior : {LevelPrior{0.2, 0.15}, LevelPrior{0.05, 0.3}}) {
        for (const auto& kinds : cases) {
            const auto closed = posterior_of(kinds, prior);
            const auto grid = by_grid(kinds, prior);
            ASSERT_EQ(closed.size(), kinds.size());
            for (std::size_t k = 0; k < kinds.size(); ++k) {
                EXPECT_NEAR(closed[k].mean, grid[k].mean, 2e-4);
                EXPECT_NEAR(closed[k].deviation, grid[k].deviation, 2e-4);
            }
        }
    }
}

TEST(normal_levels, no_readings_give_the_prior_exactly) {
    const LevelPrior prior{0.2, 0.15};
    for (const Normal& factor : posterior_of({{}, {}, {}}, prior)) {
        EXPECT_EQ(factor.mean, 0.0);
        EXPECT_DOUBLE_EQ(factor.deviation, 0.25);
    }
    EXPECT_EQ(within_of({{0.2}, {}, {1.0}}, 0.25, 0.08), 0.08);
}

TEST(normal_levels, a_kind_nobody_baked_has_what_its_group_says) {
    const auto factors =
        posterior_of({{{0.4, 0.08}, {0.4, 0.08}, {0.4, 0.08}}, {}}, LevelPrior{0.2, 0.15});
    EXPECT_GT(factors[1].mean, 0.1);
    EXPECT_LT(factors[1].mean, factors[0].mean);
    EXPECT_GT(factors[1].deviation, factors[0].deviation);
}

// One kind alone: where its readings are drawn in first, as learning does it.
double learned_mean(const std::vector<double>& values, double prior, double within) {
    std::vector<Reading> readings;
    for (const double value : drawn_in(values, prior, within)) {
        readings.push_back({value, within});
    }
    // All of the prior lies with the group; a tiny rest keeps the model proper.
    return posterior_of({readings}, LevelPrior{prior, 1e-9})[0].mean;
}

RC_GTEST_PROP(normal_levels, no_single_reading_moves_a_factor_by_more_than_the_bound, ()) {
    constexpr double prior = 0.25;
    constexpr double within = 0.08;
    const double middle = *rc::gen::inRange(-60, 61) / 100.0;
    const auto count = static_cast<std::size_t>(*rc::gen::inRange(0, 12));
    std::vector<double> values;
    for (std::size_t i = 0; i < count; ++i) {
        values.push_back(middle + *rc::gen::inRange(-20, 21) / 100.0);
    }
    const double before = count == 0 ? 0.0 : learned_mean(values, prior, within);
    double apart = 0.0;
    double farthest = 0.0;
    if (count > 0) {
        const auto [low, high] = std::minmax_element(values.begin(), values.end());
        apart = *high - *low;
        farthest = std::max(std::fabs(*low), std::fabs(*high));
    }
    const double wild = *rc::gen::element(-9.0, -1.0, -0.4, 0.0, 0.3, 0.7, 2.0, 9.0);
    values.push_back(wild);
    const double after = learned_mean(values, prior, within);
    RC_ASSERT(std::fabs(after - before) <= most_pull(count, apart, farthest, prior, within) + 1e-9);
}

TEST(normal_levels, the_bound_in_figures) {
    // Alone: two deviations of 0.2625, of which 0.907 count: a factor of 1.6.
    EXPECT_NEAR(most_pull(0, 0.0, 0.0, 0.25, 0.08), 0.476, 0.001);
    // Beside five that lie within 0.16 of each other, around a kitchen's factor of 1.28.
    EXPECT_LT(most_pull(5, 0.16, 0.33, 0.25, 0.08), 0.06);
    EXPECT_LT(most_pull(20, 0.16, 0.33, 0.25, 0.08), 0.025);
}

TEST(normal_levels, how_much_bakes_differ_is_learned_both_ways) {
    std::vector<double> steady;
    std::vector<double> unsteady;
    for (int i = 0; i < 40; ++i) {
        const double z = (i % 8 - 3.5) / 2.291; // of unit deviation
        steady.push_back(0.2 + 0.03 * z);
        unsteady.push_back(0.2 + 0.2 * z);
    }
    EXPECT_LT(within_of({steady}, 0.25, 0.08), 0.05);
    EXPECT_GT(within_of({unsteady}, 0.25, 0.08), 0.15);
    // One wild reading among many does not make all bakes look uncertain.
    steady.push_back(5.0);
    EXPECT_LT(within_of({steady}, 0.25, 0.08), 0.06);
}

} // namespace
} // namespace loafwright::learning

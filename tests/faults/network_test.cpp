// SPDX-License-Identifier: Apache-2.0
//
// The posterior against the sum over every state of every cause, which knows nothing of subsets of
// signs.
#include "engine/faults/network.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <cmath>

namespace loafwright::faults {
namespace {

std::vector<double> by_enumeration(const NoisyOr& network,
                                   const std::vector<std::size_t>& seen,
                                   const std::vector<std::size_t>& absent) {
    const std::size_t causes = network.priors.size();
    std::vector<double> there(causes, 0.0);
    double all = 0.0;
    for (std::size_t state = 0; state < (std::size_t{1} << causes); ++state) {
        double weight = 1.0;
        for (std::size_t c = 0; c < causes; ++c) {
            weight *= (state >> c & 1U) != 0 ? network.priors[c] : 1.0 - network.priors[c];
        }
        const auto silent = [&](std::size_t sign) {
            double chance = 1.0 - network.leaks[sign];
            for (std::size_t c = 0; c < causes; ++c) {
                chance *= (state >> c & 1U) != 0 ? 1.0 - network.shows[c][sign] : 1.0;
            }
            return chance;
        };
        for (const std::size_t sign : seen) {
            weight *= 1.0 - silent(sign);
        }
        for (const std::size_t sign : absent) {
            weight *= silent(sign);
        }
        all += weight;
        for (std::size_t c = 0; c < causes; ++c) {
            there[c] += (state >> c & 1U) != 0 ? weight : 0.0;
        }
    }
    for (double& chance : there) {
        chance /= all;
    }
    return there;
}

double chance(int most_thousandths) {
    return *rc::gen::inRange(1, most_thousandths) / 1000.0;
}

RC_GTEST_PROP(network, equals_the_sum_over_all_states, ()) {
    const auto causes = static_cast<std::size_t>(*rc::gen::inRange(1, 11));
    const auto signs = static_cast<std::size_t>(*rc::gen::inRange(1, 10));
    NoisyOr network;
    for (std::size_t s = 0; s < signs; ++s) {
        network.leaks.push_back(chance(60));
    }
    for (std::size_t c = 0; c < causes; ++c) {
        network.priors.push_back(chance(600));
        std::vector<double> shows;
        for (std::size_t s = 0; s < signs; ++s) {
            shows.push_back(*rc::gen::arbitrary<bool>() ? chance(1000) : 0.0);
        }
        network.shows.push_back(shows);
    }
    std::vector<std::size_t> seen;
    std::vector<std::size_t> absent;
    for (std::size_t s = 0; s < signs; ++s) {
        const int told = *rc::gen::inRange(0, 3);
        if (told == 0) {
            seen.push_back(s);
        } else if (told == 1) {
            absent.push_back(s);
        }
    }
    const auto exact = by_enumeration(network, seen, absent);
    const auto found = posterior_of(network, seen, absent);
    RC_ASSERT(found.size() == causes);
    for (std::size_t c = 0; c < causes; ++c) {
        RC_ASSERT(std::fabs(found[c] - exact[c]) <= 1e-9);
    }
}

// Worked by hand: one cause of prior 0.2 that shows the sign in half of its bakes, a leak of 0.1.
// P(sign) = 0.2 (1 - 0.9 0.5) + 0.8 0.1 = 0.19, so 0.11 / 0.19.
TEST(network, one_cause_by_hand) {
    const NoisyOr network{{0.2}, {{0.5}}, {0.1}};
    EXPECT_NEAR(posterior_of(network, {0}, {})[0], 0.11 / 0.19, 1e-12);
    EXPECT_NEAR(posterior_of(network, {}, {0})[0], 0.2 * 0.45 / 0.81, 1e-12);
    EXPECT_NEAR(posterior_of(network, {}, {})[0], 0.2, 1e-15);
}

// A second cause that explains the sign takes away from the first: explaining away.
TEST(network, what_one_cause_explains_needs_no_other) {
    const NoisyOr alone{{0.2, 0.001}, {{0.5}, {0.9}}, {0.01}};
    const NoisyOr certain{{0.2, 0.999}, {{0.5}, {0.9}}, {0.01}};
    EXPECT_LT(posterior_of(certain, {0}, {})[0], posterior_of(alone, {0}, {})[0]);
}

TEST(network, twelve_seen_signs_and_forty_causes_stay_between_none_and_one) {
    NoisyOr network;
    network.leaks.assign(most_seen, 0.003);
    for (std::size_t c = 0; c < 40; ++c) {
        network.priors.push_back(0.05);
        std::vector<double> shows(most_seen, 0.0);
        shows[c % most_seen] = 0.6;
        network.shows.push_back(shows);
    }
    std::vector<std::size_t> seen;
    for (std::size_t s = 0; s < most_seen; ++s) {
        seen.push_back(s);
    }
    // By symmetry each sign falls apart from the others: causes that share one are alike.
    const auto found = posterior_of(network, seen, {});
    EXPECT_NEAR(found[0], found[12], 1e-12);
    NoisyOr one;
    one.leaks = {0.003};
    for (int c = 0; c < 4; ++c) { // of 40 causes over 12 signs, the first sign has four
        one.priors.push_back(0.05);
        one.shows.push_back({0.6});
    }
    EXPECT_NEAR(found[0], by_enumeration(one, {0}, {})[0], 1e-9);
}

} // namespace
} // namespace loafwright::faults

// SPDX-License-Identifier: Apache-2.0
//
// The arithmetic of learning: conjugate normals on two levels, and readings drawn in so that none
// can pull without bound. A heavy tail instead of the normal would do both in one, but has no
// closed form; drawing in first keeps the form closed and its bound can be written down.
#include "engine/learning/normal_levels.hpp"

#include <algorithm>
#include <cmath>

namespace loafwright::learning {

namespace {

constexpr double median_to_deviation = 1.4826; // 1 / the normal quartile
constexpr double square_kept = 0.9205;         // of a unit normal cut at +-2, its mean square

double squared(double value) {
    return value * value;
}

// The weighted median of the values and the prior mean 0, which counts for half a value: half of
// all weight is never reached exactly, so there is always one middle.
double middle_of(std::vector<double> values) {
    if (values.size() == 1) {
        return 0.0;
    }
    std::sort(values.begin(), values.end());
    const double half = static_cast<double>(values.size()) / 2.0 + 0.25;
    double passed = 0.0;
    bool prior_passed = false;
    for (const double value : values) {
        if (!prior_passed && value > 0.0) {
            prior_passed = true;
            passed += 0.5;
            if (passed >= half) {
                return 0.0;
            }
        }
        passed += 1.0;
        if (passed >= half) {
            return value;
        }
    }
    return 0.0;
}

double mean_of(const std::vector<double>& values) {
    double sum = 0.0;
    for (const double value : values) {
        sum += value;
    }
    return sum / static_cast<double>(values.size());
}

// How much the mean of n readings counts beside the prior.
double share_of(std::size_t n, double prior_deviation, double within_deviation) {
    const double count = static_cast<double>(n) * squared(prior_deviation);
    return count / (count + squared(within_deviation));
}

} // namespace

double LevelPrior::deviation() const {
    return std::sqrt(squared(group) + squared(kind));
}

std::vector<Normal> posterior_of(const std::vector<std::vector<Reading>>& kinds,
                                 const LevelPrior& prior) {
    struct Sum {
        double precision = 0.0;
        double mean = 0.0;
    };
    std::vector<Sum> sums;
    double shared_precision = 1.0 / squared(prior.group);
    double shared_weighted = 0.0;
    for (const auto& readings : kinds) {
        Sum sum;
        double weighted = 0.0;
        for (const Reading& reading : readings) {
            const double precision = 1.0 / squared(reading.deviation);
            sum.precision += precision;
            weighted += precision * reading.value;
        }
        if (sum.precision > 0.0) {
            sum.mean = weighted / sum.precision;
            const double of_shared = 1.0 / (squared(prior.kind) + 1.0 / sum.precision);
            shared_precision += of_shared;
            shared_weighted += of_shared * sum.mean;
        }
        sums.push_back(sum);
    }
    const double shared = shared_weighted / shared_precision;
    std::vector<Normal> factors;
    for (const Sum& sum : sums) {
        const double own_prior = 1.0 / squared(prior.kind);
        const double own = own_prior + sum.precision;
        Normal factor;
        factor.mean = (own_prior * shared + sum.precision * sum.mean) / own;
        factor.deviation = std::sqrt(1.0 / own + squared(own_prior / own) / shared_precision);
        factors.push_back(factor);
    }
    return factors;
}

double reach(std::size_t n, double prior_deviation, double within_deviation) {
    const double others = static_cast<double>(n - 1) * squared(prior_deviation);
    const double known =
        squared(prior_deviation) * squared(within_deviation) / (others + squared(within_deviation));
    return farthest_deviations * std::sqrt(squared(within_deviation) + known);
}

std::vector<double>
drawn_in(std::vector<double> values, double prior_deviation, double within_deviation) {
    if (values.empty()) {
        return values;
    }
    const double middle = middle_of(values);
    const double far = reach(values.size(), prior_deviation, within_deviation);
    for (double& value : values) {
        value = std::clamp(value, middle - far, middle + far);
    }
    return values;
}

double most_pull(std::size_t others,
                 double apart,
                 double farthest_other,
                 double prior_deviation,
                 double within_deviation) {
    const double alone = share_of(1, prior_deviation, within_deviation) *
                         reach(1, prior_deviation, within_deviation);
    if (others == 0) {
        return alone;
    }
    const double before = share_of(others, prior_deviation, within_deviation);
    const double after = share_of(others + 1, prior_deviation, within_deviation);
    const double far = reach(others + 1, prior_deviation, within_deviation);
    if (others == 1) {
        return std::max(before * reach(1, prior_deviation, within_deviation),
                        after * (farthest_other + far / 2.0)) +
               after * far / 2.0;
    }
    const auto count = static_cast<double>(others);
    const double redrawn = count * std::max(0.0, apart - far);
    return after * (apart + far + redrawn) / (count + 1.0) + (after - before) * farthest_other;
}

double within_of(const std::vector<std::vector<double>>& kinds,
                 double prior_deviation,
                 double within_prior) {
    std::vector<double> off;
    double freedom = 0.0;
    for (const auto& values : kinds) {
        if (values.size() < 2) {
            continue;
        }
        const double middle = middle_of(values);
        for (const double value : values) {
            off.push_back(std::fabs(value - middle));
        }
        freedom += static_cast<double>(values.size() - 1);
    }
    if (freedom < 1.0) {
        return within_prior;
    }
    std::sort(off.begin(), off.end());
    const auto joined = [freedom, within_prior](double square) {
        return std::sqrt((prior_readings * squared(within_prior) + freedom * square) /
                         (prior_readings + freedom));
    };
    const double first = joined(squared(median_to_deviation * off[off.size() / 2]));
    double squares = 0.0;
    for (const auto& values : kinds) {
        if (values.size() < 2) {
            continue;
        }
        const std::vector<double> held = drawn_in(values, prior_deviation, first);
        const double mean = mean_of(held);
        for (const double value : held) {
            squares += squared(value - mean);
        }
    }
    return joined(squares / freedom / square_kept);
}

} // namespace loafwright::learning

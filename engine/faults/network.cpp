// SPDX-License-Identifier: Apache-2.0
//
// Exact inference in a noisy-or network. A set of signs is a number whose bits are the signs that
// were seen and are explained so far.
#include "engine/faults/network.hpp"

#include <algorithm>
#include <optional>

namespace loafwright::faults {

namespace {

using Chances = std::vector<double>; // one for each set of explained signs

// Each sign is explained with its chance, by itself, on top of what is explained already.
void explain(Chances& chances, const std::vector<double>& shows) {
    for (std::size_t sign = 0; sign < shows.size(); ++sign) {
        const std::size_t bit = std::size_t{1} << sign;
        for (std::size_t set = 0; set < chances.size(); ++set) {
            if ((set & bit) == 0) {
                chances[set | bit] += chances[set] * shows[sign];
                chances[set] *= 1.0 - shows[sign];
            }
        }
    }
}

/// One cause as the evidence sees it.
struct Cause {
    double prior = 0.0;
    double stays_silent = 1.0;      // shows none of the absent signs
    std::vector<double> shows = {}; // of the seen signs, in their order
};

// The chance of all the evidence, with one cause left out as not being there.
double evidence(const std::vector<Cause>& causes,
                const std::vector<double>& leaks,
                std::optional<std::size_t> without) {
    Chances chances(std::size_t{1} << leaks.size(), 0.0);
    chances[0] = 1.0;
    explain(chances, leaks);
    for (std::size_t c = 0; c < causes.size(); ++c) {
        const Cause& cause = causes[c];
        if (without == c) {
            for (double& chance : chances) {
                chance *= 1.0 - cause.prior;
            }
            continue;
        }
        Chances there = chances;
        explain(there, cause.shows);
        for (std::size_t set = 0; set < chances.size(); ++set) {
            chances[set] =
                (1.0 - cause.prior) * chances[set] + cause.prior * cause.stays_silent * there[set];
        }
    }
    return chances.back();
}

} // namespace

std::vector<double> posterior_of(const NoisyOr& network,
                                 const std::vector<std::size_t>& seen,
                                 const std::vector<std::size_t>& absent) {
    std::vector<double> leaks;
    for (const std::size_t sign : seen) {
        leaks.push_back(network.leaks[sign]);
    }
    std::vector<Cause> causes;
    for (std::size_t c = 0; c < network.priors.size(); ++c) {
        Cause cause;
        cause.prior = network.priors[c];
        for (const std::size_t sign : seen) {
            cause.shows.push_back(network.shows[c][sign]);
        }
        for (const std::size_t sign : absent) {
            cause.stays_silent *= 1.0 - network.shows[c][sign];
        }
        causes.push_back(std::move(cause));
    }
    const double all = evidence(causes, leaks, std::nullopt);
    if (!(all > 0.0)) {
        return network.priors;
    }
    std::vector<double> posterior;
    for (std::size_t c = 0; c < causes.size(); ++c) {
        posterior.push_back(std::clamp(1.0 - evidence(causes, leaks, c) / all, 0.0, 1.0));
    }
    return posterior;
}

} // namespace loafwright::faults

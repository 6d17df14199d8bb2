// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <vector>

/// Noisy-or networks of two layers: causes that are there or not, signs that are seen or not.
namespace loafwright::faults {

/// Each cause that is there shows each of its signs by itself, with its own chance; a sign also
/// comes for none of them, with the chance of its leak. So a sign stays away with (1 - leak) times
/// the product of (1 - shows) over the causes that are there (Pearl 1988, Probabilistic Reasoning
/// in Intelligent Systems, 4.3.2; from memory).
///
/// Invariants: every number in [0, 1]; `shows` has one row a cause with one entry a sign.
struct NoisyOr {
    std::vector<double> priors;
    std::vector<std::vector<double>> shows;
    std::vector<double> leaks;
};

/// What may be asked about at once: the sums below are over all subsets of the signs that were
/// seen.
inline constexpr std::size_t most_seen = 12;

/// How likely each cause is, given signs that were seen and signs that were looked for and not
/// seen.
///
/// The method: exact, by subsets. The chance that the causes up to one have explained exactly a
/// subset of the seen signs is carried from cause to cause; every term is positive, so nothing
/// cancels, unlike in the sum of signs over subsets that is usual (Heckerman 1989, quickscore).
/// Needs:    at most `most_seen` seen; indices of signs; none both seen and absent.
/// Promises: one number a cause. Where what was seen cannot be, the priors.
std::vector<double> posterior_of(const NoisyOr& network,
                                 const std::vector<std::size_t>& seen,
                                 const std::vector<std::size_t>& absent);

} // namespace loafwright::faults

// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <vector>

/// Two levels of normal distributions: what a group of kinds shares in one kitchen, and what each
/// kind has beside it. All values are logarithms of factors, their prior mean 0.
namespace loafwright::learning {

/// One look at a kind: its value, and how far one look is off.
///
/// Invariants: deviation > 0.
struct Reading {
    double value = 0.0;
    double deviation = 0.1;
};

struct Normal {
    double mean = 0.0;
    double deviation = 0.0;
};

/// How much kitchens differ: in what the kinds of a group share, and in one kind beside that.
///
/// Invariants: both > 0.
struct LevelPrior {
    double group = 0.2;
    double kind = 0.15;

    /// Of one kind's factor, both together.
    [[nodiscard]] double deviation() const;
};

/// The factor of each kind, given the readings of all of them.
///
/// The model: kind j of a kitchen has the factor a + b_j, a ~ N(0, group²), b_j ~ N(0, kind²), a
/// reading of it is a + b_j + e, e ~ N(0, deviation²), all independent. With p_j the sum of 1 /
/// deviation² over the readings of kind j and z_j their mean so weighted, z_j given a is N(a, kind²
/// + 1/p_j), which gives a its posterior; then b_j given a and z_j is conjugate in turn (Lindley &
/// Smith 1972, J. R. Statist. Soc. B 34:1, the two-stage case; from memory, checked against
/// numerical integration).
///
/// Promises: one normal a kind, in order. A kind without readings still has what its group says; no
///           readings at all give N(0, group² + kind²) exactly.
std::vector<Normal> posterior_of(const std::vector<std::vector<Reading>>& kinds,
                                 const LevelPrior& prior);

/// A reading counts up to so many deviations from the middle of the others.
inline constexpr double farthest_deviations = 2.0;

/// How far from the middle the n-th reading of a kind may lie and still count in full: so many
/// deviations of what one more reading is expected to be off after n - 1 of them.
///
/// Needs:    n >= 1.
double reach(std::size_t n, double prior_deviation, double within_deviation);

/// The readings of one kind with the wild ones drawn in to `reach` of their middle: the median of
/// all readings and the prior mean 0, which counts for half a reading; of a single reading the
/// prior mean. So a single reading is held to the prior, and a wild one among several to the
/// others.
std::vector<double>
drawn_in(std::vector<double> values, double prior_deviation, double within_deviation);

/// The most that one reading, however wild, moves the mean of a kind's factor, as the logarithm,
/// where there are `others` readings of the same kind that lie no farther apart than `apart`.
///
/// With none, it is held to the prior: reach(1) times what one reading counts. With one, the two
/// may cancel out, or draw on to where the first could have come by itself: no more than that
/// either. With two and more the middle stays among the others, so that the mean of n + 1 values
/// moves by at most (apart + reach(n + 1)) / (n + 1), and the rest is that the prior counts a
/// little less; where they lie farther apart than their reach, each of them may be drawn in by what
/// is beyond it. A group of several kinds moves by less, since each counts for a part.
double most_pull(std::size_t others,
                 double apart,
                 double farthest_other,
                 double prior_deviation,
                 double within_deviation);

/// From one bake to the next, by the readings themselves where they can tell.
///
/// The prior counts for `prior_readings` readings; the rest is the mean square about each kind's
/// own mean, of readings drawn in by a first look at the median (Huber 1964 on winsorising), a
/// square that is 0.9205 of the full one for normal errors cut at two deviations (computed).
/// Promises: no kind with two readings gives the prior exactly.
double within_of(const std::vector<std::vector<double>>& kinds,
                 double prior_deviation,
                 double within_prior);

inline constexpr double prior_readings = 10.0;

} // namespace loafwright::learning

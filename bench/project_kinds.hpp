// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/schedule/project.hpp"

#include <cstdint>
#include <string>
#include <vector>

/// Projects of the kinds that the public sets are made of, from fixed seeds.
namespace loafwright::bench {

/// The grid of ProGen (Kolisch, Sprecher, Drexl, "Characterization and generation of a general
/// class of resource-constrained project scheduling problems", Management Science 41, 1995).
struct ProjectKind {
    int activities = 30; // without the two ends
    int resources = 4;
    double complexity = 1.5; // arcs an activity
    double factor = 0.5;     // part of the resources that an activity needs
    double strength = 0.5;   // 0: barely enough of each, 1: never short
};

/// The grid of ProGen/max (Schwindt, "Generation of resource-constrained project scheduling
/// problems with minimal and maximal time lags", 1996): order strength instead of complexity, and
/// lags backwards. How tight those are is ours: so that about as many have no schedule as in the
/// public sets.
struct MaxKind {
    int activities = 10;
    int resources = 5;
    double order = 0.5; // part of all pairs that the lags forwards order
    double factor = 0.75;
    double strength = 0.25;
};

schedule::Project project_of(const ProjectKind& kind, unsigned seed);
schedule::Project project_of(const MaxKind& kind, unsigned seed);

/// 48 classes: complexity 1.5, 1.8, 2.1, factor 0.25 to 1, strength 0.2, 0.5, 0.7, 1.
std::vector<ProjectKind> project_classes(int activities);
/// 27 classes: order 0.25, 0.5, 0.75, factor 0.5, 0.75, 1, strength 0, 0.25, 0.5.
std::vector<MaxKind> max_classes(int activities);

} // namespace loafwright::bench

// SPDX-License-Identifier: Apache-2.0
//
// Learning, group by group: gather what the lines say, draw in what is wild, see how much bakes
// differ, and let the two levels of normals do the rest.
#include "engine/learning/learn.hpp"

#include "engine/learning/normal_levels.hpp"
#include "engine/learning/observations.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <map>
#include <string>
#include <tuple>
#include <utility>

namespace loafwright {

namespace {

using learning::LevelPrior;
using learning::Observation;

double joined(double a, double b) {
    return std::sqrt(a * a + b * b);
}

/// The kinds that share something, and what is known of them beforehand.
struct Group {
    std::vector<const LearningRow*> rows;

    [[nodiscard]] LevelPrior prior() const {
        return {rows.front()->group_deviation, rows.front()->kind_deviation};
    }
    [[nodiscard]] double within() const { return rows.front()->within_deviation; }
};

Group group_of(const Knowledge& knowledge, LearnedGroup wanted) {
    Group group;
    for (const LearningRow& row : knowledge.learning) {
        if (row.group == wanted) {
            group.rows.push_back(&row);
        }
    }
    return group;
}

KindFactor prior_factor(const LearningRow& row, const std::string& leaven) {
    KindFactor factor;
    factor.kind = row.kind;
    factor.leaven = leaven;
    factor.factor_deviation = joined(row.group_deviation, row.kind_deviation);
    factor.within_deviation = row.within_deviation;
    factor.prior_deviation = joined(factor.factor_deviation, row.within_deviation);
    return factor;
}

std::vector<double> values_of(const std::vector<Observation>& observations) {
    std::vector<double> values;
    values.reserve(observations.size());
    for (const Observation& observation : observations) {
        values.push_back(observation.log_factor);
    }
    return values;
}

// The kinds of one group, for one leaven.
std::vector<KindFactor> learned_kinds(const Group& group,
                                      const std::string& leaven,
                                      std::vector<Observation> observations) {
    // Sums come out the same whatever the order of the logs.
    std::sort(observations.begin(), observations.end(), [](const auto& a, const auto& b) {
        return std::tie(a.kind, a.log_factor, a.extra_deviation) <
               std::tie(b.kind, b.log_factor, b.extra_deviation);
    });
    std::vector<std::vector<Observation>> by_kind(group.rows.size());
    for (const Observation& observation : observations) {
        for (std::size_t k = 0; k < group.rows.size(); ++k) {
            if (group.rows[k]->kind == observation.kind) {
                by_kind[k].push_back(observation);
            }
        }
    }
    const double between = group.prior().deviation();
    // What a look at the dough had to be made up for says little of how much bakes differ.
    std::vector<std::vector<double>> plain;
    for (const auto& kind : by_kind) {
        std::vector<double> values;
        for (const Observation& observation : kind) {
            if (observation.extra_deviation == 0.0) {
                values.push_back(observation.log_factor);
            }
        }
        plain.push_back(std::move(values));
    }
    const double within = learning::within_of(plain, between, group.within());
    std::vector<std::vector<learning::Reading>> readings;
    for (const auto& kind : by_kind) {
        const std::vector<double> held = learning::drawn_in(values_of(kind), between, within);
        std::vector<learning::Reading> of_kind;
        for (std::size_t i = 0; i < held.size(); ++i) {
            of_kind.push_back({held[i], joined(within, kind[i].extra_deviation)});
        }
        readings.push_back(std::move(of_kind));
    }
    const auto posterior = learning::posterior_of(readings, group.prior());
    std::vector<KindFactor> factors;
    for (std::size_t k = 0; k < group.rows.size(); ++k) {
        KindFactor factor = prior_factor(*group.rows[k], leaven);
        factor.log_mean = posterior[k].mean;
        factor.factor_deviation = posterior[k].deviation;
        factor.within_deviation = within;
        factor.bakes = by_kind[k].size();
        factor.group_bakes = observations.size();
        factors.push_back(factor);
    }
    return factors;
}

OvenOffset learned_offset(const std::vector<BakeLog>& logs, const Knowledge& knowledge) {
    const Group group = group_of(knowledge, LearnedGroup::thermostat);
    OvenOffset offset;
    if (group.rows.empty()) {
        return offset;
    }
    std::vector<double> offsets;
    for (const BakeLog& log : logs) {
        if (const auto measured = learning::oven_offset_of(log)) {
            offsets.push_back(measured->count());
        }
    }
    std::sort(offsets.begin(), offsets.end());
    std::vector<learning::Reading> readings;
    for (const double value :
         learning::drawn_in(offsets, group.prior().deviation(), group.within())) {
        readings.push_back({value, group.within()});
    }
    const auto posterior = learning::posterior_of({readings}, group.prior());
    offset.likely = CelsiusDifference(posterior.front().mean);
    offset.deviation = CelsiusDifference(posterior.front().deviation);
    offset.measured = offsets.size();
    return offset;
}

} // namespace

KitchenFactors learn(const std::vector<BakeLog>& logs, const Knowledge& knowledge) {
    // By group, and within the dough's by leaven.
    std::map<std::pair<LearnedGroup, std::string>, std::vector<Observation>> told;
    for (const BakeLog& log : logs) {
        for (Observation& observation : learning::observations_of(log, knowledge)) {
            const LearnedGroup group = learning::learning_row(knowledge, observation.kind)->group;
            told[{group, observation.leaven}].push_back(std::move(observation));
        }
    }
    KitchenFactors factors;
    for (const LearnedGroup kind : {LearnedGroup::dough, LearnedGroup::hands, LearnedGroup::oven}) {
        const Group group = group_of(knowledge, kind);
        if (group.rows.empty()) {
            continue;
        }
        if (told.count({kind, ""}) == 0) {
            for (const LearningRow* row : group.rows) {
                factors.kinds.push_back(prior_factor(*row, ""));
            }
        }
        for (auto& [key, observations] : told) {
            if (key.first == kind) {
                const auto learned = learned_kinds(group, key.second, std::move(observations));
                factors.kinds.insert(factors.kinds.end(), learned.begin(), learned.end());
            }
        }
    }
    factors.oven = learned_offset(logs, knowledge);
    return factors;
}

} // namespace loafwright

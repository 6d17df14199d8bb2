// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/fitting/otherwise.hpp"
#include "engine/planning/plan.hpp"

#include <cstddef>
#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <vector>

/// Ways out of a day that cannot be, for one bread and for several.
namespace loafwright::planning {

/// At most so many are told, and so many of them make the bread otherwise while one more is left
/// for the bread as it is written.
inline constexpr std::size_t most_ways_out = 4;

/// Plans a changed day; none where it does not hold.
using PlanDay = std::function<std::optional<Plan>(const Day&)>;

/// Bread made otherwise, before it has a time.
struct MadeWay {
    std::string change;
    std::vector<TakenBy> taken_by;
    bool takes_a_night = false; // then it says when the oven goes on
};

/// The ways out found so far, each planned and found to hold.
class Ways {
public:
    explicit Ways(const Day& day);

    /// What the day asks for: its time to eat, its start, or the next full five minutes.
    [[nodiscard]] Instant wish() const { return wish_; }

    /// `distance`: minutes from the wish. A change that is known already is left out.
    void add(const Plan& held, WayOut way, std::int64_t distance);

    /// "eat at 15:40 today": the first of `marks` not before the wish that holds as a time to eat
    /// by.
    ///
    /// Promises: that time, or nothing where none holds.
    std::optional<Instant> offer_meal(const std::vector<Instant>& marks, const PlanDay& plan_day);

    /// The same with bread made otherwise: `made` without its time.
    std::optional<Instant>
    offer_meal(const std::vector<Instant>& marks, const PlanDay& plan_day, const MadeWay& made);

    /// Bread made otherwise, and the wish kept.
    void offer_at_the_wish(const Plan& held, const MadeWay& made);

    /// "begin at 08:20 tomorrow and eat at 14:00": the same meal on one of the next three days.
    void offer_same_meal_later(const PlanDay& plan_day);

    /// "begin at 07:00 tomorrow and eat from 11:25".
    void offer_start(Instant start, std::int64_t distance, const PlanDay& plan_day);

    [[nodiscard]] std::size_t count() const { return ways_.size(); }

    /// The nearest first, at most `most_ways_out`: none at night where one is by day, and one for
    /// the bread as written where there is one.
    [[nodiscard]] std::vector<WayOut> best() const;

private:
    struct Way {
        WayOut way;
        std::int64_t distance = 0;
        bool at_night = false;
    };
    struct Meal {
        Instant eat;
        Plan plan;
    };

    [[nodiscard]] std::optional<Meal> first_meal(const std::vector<Instant>& marks,
                                                 const PlanDay& plan_day) const;
    void add_made(const Plan& held, const MadeWay& made, std::int64_t distance);

    const Day& day_;
    Instant wish_;
    std::vector<Way> ways_;
};

/// `day` with another time in it.
Day with_start(const Day& day, Instant start);
Day with_eat_by(const Day& day, Instant eat_by);

/// How a way out is asked for: the answer that makes this bread so.
TakenBy taken_by(std::size_t bread, fitting::Otherwise how);

} // namespace loafwright::planning

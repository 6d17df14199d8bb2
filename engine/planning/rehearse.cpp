// SPDX-License-Identifier: Apache-2.0
//
// A plan is a promise about likely times. Several breads that share hands and an oven delay each
// other, so how late they may be cannot be added up bread by bread: the day is played through.
#include "engine/planning/rehearse.hpp"

#include "engine/planning/margin.hpp"

#include <algorithm>
#include <cmath>

namespace loafwright::planning {

namespace {

struct Played {
    std::size_t job = 0;
    std::size_t task = 0;
};

// Splitmix64, so that every machine draws the same.
class Draw {
public:
    double normal() {
        // Twelve evenly spread numbers have variance 1.
        double sum = -6.0;
        for (int k = 0; k < 12; ++k) {
            sum += static_cast<double>(next() >> 11U) * 0x1.0p-53;
        }
        return sum;
    }

private:
    std::uint64_t next() {
        state_ += 0x9E3779B97F4A7C15U;
        std::uint64_t z = state_;
        z = (z ^ (z >> 30U)) * 0xBF58476D1CE4E5B9U;
        z = (z ^ (z >> 27U)) * 0x94D049BB133111EBU;
        return z ^ (z >> 31U);
    }

    std::uint64_t state_ = 1;
};

class Rehearsal {
public:
    Rehearsal(const schedule::Problem& problem, const schedule::Schedule& plan)
        : problem_(problem), plan_(plan) {
        for (std::size_t j = 0; j < problem.jobs.size(); ++j) {
            for (std::size_t t = 0; t < problem.jobs[j].tasks.size(); ++t) {
                order_.push_back({j, t});
            }
        }
        std::stable_sort(order_.begin(), order_.end(), [&](const Played& a, const Played& b) {
            return planned_start(a) < planned_start(b);
        });
    }

    std::vector<std::vector<std::int64_t>>
    play(const std::vector<std::vector<Band<std::int64_t>>>& bands, Draw& draw) {
        starts_.clear();
        ends_.clear();
        for (const schedule::Job& job : problem_.jobs) {
            starts_.emplace_back(job.tasks.size(), 0);
            ends_.emplace_back(job.tasks.size(), 0);
        }
        for (std::size_t n = 0; n < order_.size(); ++n) {
            const Played& here = order_[n];
            const std::int64_t length = drawn(bands[here.job][here.task], draw);
            const std::int64_t start = past_windows(here, earliest(n), length);
            starts_[here.job][here.task] = start;
            ends_[here.job][here.task] = start + length;
            if (task(here).stretch) {
                ends_[here.job][here.task] =
                    std::max(start + task(here).stretch->min, planned_end(here));
            }
        }
        return ends_;
    }

private:
    [[nodiscard]] const schedule::Task& task(const Played& here) const {
        return problem_.jobs[here.job].tasks[here.task];
    }
    [[nodiscard]] std::int64_t planned_start(const Played& here) const {
        return plan_.jobs[here.job].starts[here.task];
    }
    [[nodiscard]] std::int64_t planned_end(const Played& here) const {
        return plan_.jobs[here.job].ends[here.task];
    }

    static std::int64_t drawn(const Band<std::int64_t>& band, Draw& draw) {
        const double z = draw.normal();
        const double side =
            static_cast<double>(z < 0.0 ? band.likely - band.low : band.high - band.likely);
        const double minutes = static_cast<double>(band.likely) + z / ninetieth_percentile * side;
        return std::max<std::int64_t>(0, std::llround(minutes));
    }

    [[nodiscard]] std::int64_t change(int from, int to) const {
        for (const schedule::Changeover& entry : problem_.oven.changeover) {
            if (entry.from == from && entry.to == to) {
                return entry.minutes;
            }
        }
        return 0;
    }

    // After everything that the plan puts before it.
    [[nodiscard]] std::int64_t earliest(std::size_t n) const {
        const Played& here = order_[n];
        const schedule::Job& job = problem_.jobs[here.job];
        bool first = true;
        std::int64_t at = 0;
        for (const schedule::Lag& lag : job.lags) {
            if (lag.before == here.task) {
                first = false;
                at = std::max(at, ends_[here.job][lag.after] + lag.min);
            }
        }
        if (first) {
            at = planned_start(here);
        }
        const auto& person = plan_.jobs[here.job].people[here.task];
        for (std::size_t b = 0; b < n; ++b) {
            const Played& before = order_[b];
            const std::int64_t end = ends_[before.job][before.task];
            if (person && plan_.jobs[before.job].people[before.task] == person) {
                at = std::max(at, end);
            }
            if (task(here).oven && task(before).oven &&
                planned_end(before) <= planned_start(here)) {
                at = std::max(
                    at, end + change(task(before).oven->temperature, task(here).oven->temperature));
            }
        }
        return at;
    }

    // The end of a window that [from, to) meets, or `from`.
    static std::int64_t after_window(const schedule::Person& person,
                                     std::int64_t from,
                                     std::int64_t to,
                                     bool busy_counts) {
        std::int64_t at = from;
        for (const schedule::Window& window : person.windows) {
            const bool counts = busy_counts || window.state != schedule::WindowState::busy;
            if (counts && window.from < std::max(to, from + 1) && from < window.to) {
                at = std::max(at, window.to);
            }
        }
        return at;
    }

    [[nodiscard]] std::int64_t
    past_windows(const Played& here, std::int64_t start, std::int64_t length) const {
        const schedule::Task& what = task(here);
        const auto& person = plan_.jobs[here.job].people[here.task];
        for (std::int64_t moved = start; moved <= problem_.horizon; start = moved) {
            if (person) {
                moved = after_window(problem_.people[*person], start, start + length, true);
            } else if (what.oven) {
                // Somebody who was to watch may have gone: then it is put off until one is back.
                std::int64_t soonest = INT64_MAX;
                for (const schedule::Person& watcher : problem_.people) {
                    soonest =
                        std::min(soonest, after_window(watcher, start, start + length, false));
                }
                moved = problem_.people.empty() ? start : soonest;
                for (const schedule::Claim& claim : problem_.oven.claims) {
                    if (moved < claim.to && moved + length > claim.from) {
                        moved = claim.to;
                    }
                }
            }
            if (moved == start) {
                break;
            }
        }
        return start;
    }

    const schedule::Problem& problem_;
    const schedule::Schedule& plan_;
    std::vector<Played> order_;
    std::vector<std::vector<std::int64_t>> starts_;
    std::vector<std::vector<std::int64_t>> ends_;
};

} // namespace

std::vector<std::vector<std::vector<std::int64_t>>>
rehearse(const schedule::Problem& problem,
         const schedule::Schedule& schedule,
         const std::vector<std::vector<Band<std::int64_t>>>& bands) {
    Rehearsal rehearsal(problem, schedule);
    Draw draw;
    std::vector<std::vector<std::vector<std::int64_t>>> days;
    days.reserve(rehearsals);
    for (std::size_t n = 0; n < rehearsals; ++n) {
        days.push_back(rehearsal.play(bands, draw));
    }
    return days;
}

std::int64_t percentile(std::vector<std::int64_t> values, double share) {
    const auto rank =
        static_cast<std::size_t>(std::ceil(share * static_cast<double>(values.size()) - 1e-9));
    const std::size_t at = std::clamp<std::size_t>(rank, 1, values.size()) - 1;
    std::nth_element(
        values.begin(), values.begin() + static_cast<std::ptrdiff_t>(at), values.end());
    return values[at];
}

} // namespace loafwright::planning

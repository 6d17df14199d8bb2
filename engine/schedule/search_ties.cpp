// SPDX-License-Identifier: Apache-2.0
//
// Ties, moment by moment in the stated order. What is left after every objective is fixed may still
// be many schedules; this makes it one, whatever the solver is.
#include "engine/schedule/search.hpp"

namespace loafwright::schedule::sat {

bool Search::settle_ties() {
    if (ask({}) != Answer::yes || !settle_ways()) {
        return false;
    }
    for (const std::size_t j : order_) {
        for (const EncodedTask& task : encoding_->jobs()[j].tasks) {
            if (!settle(task.start, wish_.aim == Aim::begin_late)) {
                return false;
            }
        }
    }
    for (const std::size_t j : order_) {
        for (const EncodedTask& task : encoding_->jobs()[j].tasks) {
            if (!settle(task.end, false)) {
                return false;
            }
        }
    }
    for (const std::size_t j : order_) {
        for (const EncodedTask& task : encoding_->jobs()[j].tasks) {
            if (!settle_people(task)) {
                return false;
            }
        }
    }
    return ask({}) == Answer::yes;
}

// The lowest alternatives, job after job in byte order of their names.
bool Search::settle_ways() {
    for (const std::size_t j : order_) {
        for (const Literal way : encoding_->jobs()[j].ways) {
            if (clauses_->impossible(way)) {
                continue;
            }
            if (!clauses_->holds(way)) {
                const Answer answer = ask({way});
                if (answer == Answer::stopped) {
                    return false;
                }
                if (answer == Answer::no) {
                    clauses_->add({-way});
                    continue;
                }
            }
            clauses_->add({way});
            break;
        }
    }
    return true;
}

// The latest or earliest moment that the rest allows, doubling the step and then halving it.
bool Search::settle(const Moment& moment, bool late) {
    std::int64_t reached = moment.in_model(*clauses_);
    std::int64_t end = late ? moment.latest() : moment.earliest();
    const auto beyond = [&](std::int64_t time) {
        return late ? moment.at_least(time) : moment.at_most(time);
    };
    std::int64_t step = 1;
    while (reached != end) {
        const std::int64_t left = late ? end - reached : reached - end;
        step = std::min(step, left);
        const std::int64_t tried = late ? reached + step : reached - step;
        Answer answer = Answer::no;
        if (!clauses_->impossible(beyond(tried))) {
            answer = ask({beyond(tried)});
        }
        if (answer == Answer::stopped) {
            return false;
        }
        if (answer == Answer::yes) {
            reached = moment.in_model(*clauses_);
            step *= 2;
        } else {
            end = late ? tried - 1 : tried + 1;
            step = std::max<std::int64_t>(1, step / 2);
        }
    }
    clauses_->add({moment.at_least(reached)});
    clauses_->add({moment.at_most(reached)});
    return true;
}

bool Search::settle_people(const EncodedTask& task) {
    for (const Literal person : task.person) {
        if (clauses_->impossible(person)) {
            continue;
        }
        Answer answer = Answer::yes;
        if (!clauses_->holds(person)) {
            answer = ask({person});
        }
        if (answer == Answer::stopped) {
            return false;
        }
        if (answer == Answer::yes) {
            clauses_->add({person});
            return true;
        }
        clauses_->add({-person});
    }
    return true;
}

} // namespace loafwright::schedule::sat

// SPDX-License-Identifier: Apache-2.0
//
// Serial schedule generation with the priority "least latest start first", first plain, then
// shaken (Kolisch, Hartmann, "Heuristic algorithms for the resource-constrained project scheduling
// problem", 1999), each time justified: everything as late as it can be, then as early again
// (Valls, Ballestin, Quintanilla, "Justification and RCPSP", European Journal of Operational
// Research 165, 2005). Activities tied by lags both ways are one rigid block, as in the contraction
// method for greatest lags (Neumann, Zhan, "Heuristics for the minimum project-duration problem
// with minimal and maximal time lags under fixed resource constraints", 1995).
#include "engine/schedule/project_serial.hpp"

#include <algorithm>
#include <limits>

namespace loafwright::schedule::projects {

Serial::Serial(const Project& project, std::vector<Block> blocks)
    : project_(project), blocks_(std::move(blocks)), before_(blocks_.size()),
      after_(blocks_.size()), starts_(blocks_.size(), 0) {
    std::vector<std::size_t> block_of(project.activities.size());
    std::vector<std::int64_t> offset_of(project.activities.size());
    for (std::size_t b = 0; b < blocks_.size(); ++b) {
        std::int64_t span = 0;
        for (std::size_t k = 0; k < blocks_[b].members.size(); ++k) {
            const std::size_t i = blocks_[b].members[k];
            block_of[i] = b;
            offset_of[i] = blocks_[b].offsets[k];
            span = std::max(span, offset_of[i] + project.activities[i].duration);
        }
        spans_.push_back(span);
        profiles_.push_back(profile_of(blocks_[b], span));
    }
    for (const TimeLag& lag : project.lags) {
        connect(block_of[lag.from],
                block_of[lag.to],
                offset_of[lag.from] + lag.least - offset_of[lag.to]);
    }
    for (std::size_t b = 0; b < blocks_.size(); ++b) {
        connect(block_of[0], b, 0); // nothing is earlier than the first activity
    }
    weigh_tails();
}

std::vector<std::int32_t> Serial::profile_of(const Block& block, std::int64_t span) const {
    const std::size_t resources = project_.capacities.size();
    std::vector<std::int32_t> used(static_cast<std::size_t>(span) * resources, 0);
    for (std::size_t k = 0; k < block.members.size(); ++k) {
        const Activity& activity = project_.activities[block.members[k]];
        for (std::int64_t t = 0; t < activity.duration; ++t) {
            for (std::size_t r = 0; r < resources; ++r) {
                used[static_cast<std::size_t>(block.offsets[k] + t) * resources + r] +=
                    static_cast<std::int32_t>(activity.demands[r]);
            }
        }
    }
    return used;
}

void Serial::connect(std::size_t from, std::size_t to, std::int64_t least) {
    if (from != to) {
        after_[from].push_back({to, least});
        before_[to].push_back({from, least});
    }
}

void Serial::weigh_tails() {
    tails_ = spans_;
    std::vector<std::size_t> open(blocks_.size());
    std::vector<std::size_t> ready;
    for (std::size_t b = 0; b < blocks_.size(); ++b) {
        open[b] = after_[b].size();
        if (open[b] == 0) {
            ready.push_back(b);
        }
    }
    while (!ready.empty()) {
        const std::size_t block = ready.back();
        ready.pop_back();
        for (const Arc& arc : before_[block]) {
            tails_[arc.block] = std::max(tails_[arc.block], arc.lag + tails_[block]);
            if (--open[arc.block] == 0) {
                ready.push_back(arc.block);
            }
        }
    }
}

std::int64_t Serial::end_of(std::size_t block) const {
    return starts_[block] + spans_[block];
}

std::int64_t Serial::length() const {
    std::int64_t end = 0;
    for (std::size_t b = 0; b < blocks_.size(); ++b) {
        end = std::max(end, end_of(b));
    }
    return end;
}

// Where the block must move to pass by what it meets; none where it fits.
std::optional<std::int64_t>
Serial::meets(std::size_t block, std::int64_t start, Direction direction) {
    const auto resources = static_cast<std::int64_t>(project_.capacities.size());
    const std::int64_t span = spans_[block];
    const auto needed = static_cast<std::size_t>((start + span) * resources);
    if (used_.size() < needed) {
        used_.resize(needed, 0);
    }
    // Whether what the block needs at one of its times, or past its ends, is there at another.
    const auto fits = [&](std::int64_t own, std::int64_t time) {
        if (own < 0 || own >= span) {
            return true;
        }
        const std::int32_t* mine = profiles_[block].data() + own * resources;
        const std::int32_t* theirs = used_.data() + time * resources;
        for (std::int64_t r = 0; r < resources; ++r) {
            if (mine[r] + theirs[r] > project_.capacities[static_cast<std::size_t>(r)]) {
                return false;
            }
        }
        return true;
    };
    looks_ += 4 + span * resources;
    // The farthest one in the way first, so that the block moves far.
    const bool forwards = direction == Direction::forwards;
    for (std::int64_t step = 0; step < span; ++step) {
        std::int64_t own = forwards ? span - 1 - step : step;
        const std::int64_t time = start + own;
        std::int64_t moved = 0;
        while (!fits(own, time)) {
            own += forwards ? -1 : 1;
            ++moved;
        }
        if (moved > 0) {
            return forwards ? start + moved : start - moved;
        }
    }
    return std::nullopt;
}

bool Serial::place(Direction direction, std::size_t block) {
    std::int64_t start = 0;
    if (direction == Direction::forwards) {
        for (const Arc& arc : before_[block]) {
            start = std::max(start, starts_[arc.block] + arc.lag);
        }
    } else {
        start = latest_end_ - spans_[block];
        for (const Arc& arc : after_[block]) {
            start = std::min(start, starts_[arc.block] - arc.lag);
        }
    }
    while (start >= 0) {
        const std::optional<std::int64_t> elsewhere = meets(block, start, direction);
        if (!elsewhere) {
            break;
        }
        start = *elsewhere;
    }
    if (start < 0) {
        return false;
    }
    starts_[block] = start;
    const std::size_t first = static_cast<std::size_t>(start) * project_.capacities.size();
    for (std::size_t k = 0; k < profiles_[block].size(); ++k) {
        used_[first + k] += profiles_[block][k];
    }
    return true;
}

// Every block once, among those whose turn it may be the one with the least key.
bool Serial::pass(Direction direction, const std::vector<std::int64_t>& keys) {
    const auto& first = direction == Direction::forwards ? before_ : after_;
    const auto& then = direction == Direction::forwards ? after_ : before_;
    std::fill(used_.begin(), used_.end(), 0);
    std::vector<std::size_t> open(blocks_.size());
    waiting_.clear();
    for (std::size_t b = 0; b < blocks_.size(); ++b) {
        open[b] = first[b].size();
        if (open[b] == 0) {
            waiting_.push_back(b);
        }
    }
    while (!waiting_.empty()) {
        std::size_t next = 0;
        for (std::size_t k = 1; k < waiting_.size(); ++k) {
            if (keys[waiting_[k]] < keys[waiting_[next]] ||
                (keys[waiting_[k]] == keys[waiting_[next]] && waiting_[k] < waiting_[next])) {
                next = k;
            }
        }
        looks_ += static_cast<std::int64_t>(waiting_.size());
        const std::size_t block = waiting_[next];
        waiting_[next] = waiting_.back();
        waiting_.pop_back();
        if (!place(direction, block)) {
            return false;
        }
        for (const Arc& arc : then[block]) {
            if (--open[arc.block] == 0) {
                waiting_.push_back(arc.block);
            }
        }
    }
    return true;
}

void Serial::keep_if_better() {
    if (best_.empty() || length() < best_length_) {
        best_length_ = length();
        best_.assign(project_.activities.size(), 0);
        for (std::size_t b = 0; b < blocks_.size(); ++b) {
            for (std::size_t k = 0; k < blocks_[b].members.size(); ++k) {
                best_[blocks_[b].members[k]] = starts_[b] + blocks_[b].offsets[k];
            }
        }
    }
}

std::vector<std::int64_t> Serial::run(std::int64_t goal, std::int64_t work) {
    looks_ = 0;
    const std::int64_t longest = *std::max_element(tails_.begin(), tails_.end());
    for (int round = 0; best_.empty() || (best_length_ > goal && looks_ < work); ++round) {
        // Shaken by nothing, then by an eighth, a quarter, half of the project, and by all of it.
        const std::int64_t shake = round == 0 ? 1 : 1 + (longest >> (3 - (round - 1) % 4));
        std::vector<std::int64_t> keys;
        for (const std::int64_t tail : tails_) {
            keys.push_back(static_cast<std::int64_t>(dice_()) % shake - tail);
        }
        if (!pass(Direction::forwards, keys)) {
            continue;
        }
        keep_if_better();
        std::int64_t before = std::numeric_limits<std::int64_t>::max();
        while (length() < before && best_length_ > goal && looks_ < work) {
            before = length();
            latest_end_ = before;
            for (std::size_t b = 0; b < blocks_.size(); ++b) {
                keys[b] = -end_of(b);
            }
            if (!pass(Direction::backwards, keys)) {
                break;
            }
            keys = starts_;
            pass(Direction::forwards, keys);
            keep_if_better();
        }
    }
    return best_;
}

} // namespace loafwright::schedule::projects

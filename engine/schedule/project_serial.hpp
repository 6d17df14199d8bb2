// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/schedule/project.hpp"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <random>
#include <vector>

/// Good schedules of a project without any promise of the best. Other rooms use project_solve.hpp.
namespace loafwright::schedule::projects {

/// Activities that keep their distances: members[k] starts `offsets[k]` after the block.
///
/// Invariants: offsets >= 0, and one of them is 0.
struct Block {
    std::vector<std::size_t> members;
    std::vector<std::int64_t> offsets;
};

/// Places blocks one after the other, as early as what is placed already allows.
class Serial {
public:
    /// Needs: every activity in one block, the lags between blocks without a circle; in each block
    ///        all rules are kept; the block of activity 0 has offset 0 for it.
    Serial(const Project& project, std::vector<Block> blocks);

    /// The shortest schedule that some tries find.
    ///
    /// Promises: keeps every rule; the same every time; stops at a makespan of `goal`, or after
    ///           about `work` looks at a resource.
    std::vector<std::int64_t> run(std::int64_t goal, std::int64_t work);

private:
    struct Arc {
        std::size_t block; // the one at the other end
        std::int64_t lag;  // between the starts of the blocks
    };
    enum class Direction { forwards, backwards };

    [[nodiscard]] std::vector<std::int32_t> profile_of(const Block& block, std::int64_t span) const;
    void connect(std::size_t from, std::size_t to, std::int64_t least);
    void weigh_tails();
    bool pass(Direction direction, const std::vector<std::int64_t>& keys);
    bool place(Direction direction, std::size_t block);
    std::optional<std::int64_t> meets(std::size_t block, std::int64_t start, Direction direction);
    [[nodiscard]] std::int64_t end_of(std::size_t block) const;
    [[nodiscard]] std::int64_t length() const;
    void keep_if_better();

    const Project& project_;
    std::vector<Block> blocks_;
    std::vector<std::vector<Arc>> before_;
    std::vector<std::vector<Arc>> after_;
    std::vector<std::int64_t> spans_;                 // from the block's start to its end
    std::vector<std::vector<std::int32_t>> profiles_; // what it needs, as in `used_`
    std::vector<std::int64_t> tails_; // from the block's start to the end of the project
    std::vector<std::int64_t> starts_;
    std::vector<std::int32_t> used_; // time by time, resource by resource
    std::vector<std::size_t> waiting_;
    std::int64_t latest_end_ = 0; // what a pass backwards starts from
    std::int64_t looks_ = 0;
    std::int64_t best_length_ = 0;
    std::vector<std::int64_t> best_;
    std::minstd_rand dice_{20240917};
};

} // namespace loafwright::schedule::projects

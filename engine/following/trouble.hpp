// SPDX-License-Identifier: Apache-2.0
#pragma once

namespace loafwright {

/// What may happen at a bake. What to do then is a row of data/remedies.toml.
enum class Trouble {
    no_salt,      // forgotten, and the dough is made
    no_yeast,     // forgotten, and the dough is made
    too_sticky,   // more than the recipe says
    not_rising,   // nothing to be seen when there should be
    gone_too_far, // risen beyond its best
    going_out,    // nobody is there until `until`
    oven_taken    // somebody else bakes until `until`
};

} // namespace loafwright

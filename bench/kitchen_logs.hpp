// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/following/bake_log.hpp"

#include <cstddef>

namespace loafwright::bench {

/// An invented bake: kneading and both rises a quarter slower than planned, each a little otherwise
/// by its number.
BakeLog slow_bake(std::size_t number);

} // namespace loafwright::bench

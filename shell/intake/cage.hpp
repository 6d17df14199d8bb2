// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "shell/intake/take_in.hpp"

namespace loafwright::intake {

/// False in a build with the address sanitizer, which needs more address space than any limit.
bool memory_is_limited();

/// The first wall, before anything of the request is looked at: memory, time, no files written, no
/// cores, no more processes, and an end when the parent ends.
///
/// Promises: false when the system refuses.
bool set_limits(const Limits& limits);

/// The second wall, when all that will be needed has been loaded: from here on the process can
/// compute, read and write what is open already, ask for memory and leave. Everything else, opening
/// a file among it, is refused by the kernel.
///
/// Promises: false when the system refuses.
bool close_the_door();

} // namespace loafwright::intake

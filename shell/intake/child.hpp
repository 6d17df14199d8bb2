// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "shell/intake/take_in.hpp"

#include <string>
#include <string_view>

namespace loafwright::intake {

/// How a child came to its end.
enum class End {
    answered,    // it left with 0; `said` is whole
    missing,     // it could not be started
    stopped,     // the caller asked for it
    out_of_time, // wall clock or processor time
    out_of_room, // it said so, or said too much
    fell         // anything else
};

struct ChildRun {
    End end = End::fell;
    std::string said;   // its standard output
    std::string reason; // of the system, where it could not be started
};

/// The status with which the child says that its memory was used up.
inline constexpr int memory_used_up = 9;

/// Runs the program with `message` as its standard input until it ends or must end.
///
/// Promises: the child has an empty environment, no open files of ours, a session of its own and a
///           working folder that is already gone; it has been waited for when this returns.
ChildRun run_child(const std::string& program, std::string_view message, const Wish& wish);

} // namespace loafwright::intake

// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "shell/cli/heavy_parts.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace loafwright::cli {

inline constexpr int exit_done = 0;
inline constexpr int exit_impossible = 1; // an honest no, on standard output
inline constexpr int exit_input = 2;      // the input or the call is wrong
inline constexpr int exit_our_fault = 3;

/// One of the two programs.
struct Program {
    std::string_view version;
    const HeavyParts* parts =
        nullptr; // none: the light program, which hands over when one is asked for
};

/// Does what the words on the command line say, the program's name left out.
///
/// Promises: results on standard output, messages on standard error; with --json anywhere in the
///           words, errors stand on standard output in their JSON form; returns one of the four
///           above. What escapes as an exception is a fault of ours and is said so in one line.
int run(const std::vector<std::string>& words, const Program& program);

} // namespace loafwright::cli

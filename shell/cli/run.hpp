// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace loafwright::cli {

inline constexpr int exit_done = 0;
inline constexpr int exit_impossible = 1; // an honest no, on standard output
inline constexpr int exit_input = 2;      // the input or the call is wrong
inline constexpr int exit_our_fault = 3;

/// Does what the words on the command line say, the program's name left out.
///
/// Promises: results on standard output, messages on standard error; with --json anywhere in the
/// words, errors stand on
///           standard output in their JSON form; returns one of the four above.
int run(const std::vector<std::string>& words, std::string_view version);

} // namespace loafwright::cli

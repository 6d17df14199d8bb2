// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/faults/find_faults.hpp"

#include <string>
#include <vector>

namespace loafwright::faults {

/// How likely a finding is, in words: the first "most likely" from 0.4 on, the others "also
/// possible" from 0.1 on; below that "less likely".
std::string likely_words(const Findings& findings, std::size_t index);

/// The findings as a person would tell them, one paragraph an entry; at most four causes.
///
/// Promises: no numbers for how likely; where nothing speaks for any cause it says that.
std::vector<std::string> words_of(const Findings& findings);

} // namespace loafwright::faults

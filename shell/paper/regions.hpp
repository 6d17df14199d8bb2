// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "shell/paper/pix.hpp"
#include "shell/paper/seen.hpp"

#include <vector>

namespace loafwright::paper {

/// The columns of print on a straightened page, in reading order, each with a little room around
/// it. A page without columns is one region.
///
/// Why: Tesseract's own analysis takes the numbers of a list for a column of their own and reads
/// them as one strange word.
std::vector<Box> regions_of(const Picture& page);

} // namespace loafwright::paper

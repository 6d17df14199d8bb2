// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "shell/paper/seen.hpp"

namespace loafwright::paper {

/// Mends what the shape and the place of a mark alone tell: the bullets of a list, which are read
/// as letters, the sign of degrees, which is read as one too, and the number of a step between two
/// others.
void mend_marks(SeenPage& page);

} // namespace loafwright::paper

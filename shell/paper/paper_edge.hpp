// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "shell/paper/pix.hpp"

namespace loafwright::paper {

/// The sheet of paper without the table it lies on, its four corners pulled to those of a
/// rectangle.
///
/// Promises: where no sheet with four edges stands out from its surroundings, the photo as it came.
Picture paper_alone(Picture photo);

} // namespace loafwright::paper

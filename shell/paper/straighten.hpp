// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "shell/paper/pix.hpp"

namespace loafwright::paper {

/// How high a small letter is on a straightened page, and what is ink there.
inline constexpr int letter_pixels = 22;
inline constexpr int ink_below = 150;

/// A page as a flatbed would have given it: light paper, letters of the size that the recogniser
/// likes, lines level, right way up, as far as that can be seen.
///
/// Needs:    8 bits of grey.
/// Promises: never empty where `photo` is not; nothing is cut off but what is no paper.
Picture straightened(Picture photo);

/// The same page, had its lines run along it and not across; the right way up again.
Picture turned_to_its_side(const Picture& page);

/// Turned by so many quarters, clockwise.
Picture quarter_turned(const Picture& picture, int quarters);

} // namespace loafwright::paper

// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/diagnostic/diagnostic.hpp"
#include "shell/intake/take_in.hpp"
#include "shell/paper/pix.hpp"

#include <tl/expected.hpp>

#include <string_view>
#include <vector>

namespace loafwright::paper {

/// The pictures in a JPEG, PNG, WebP or TIFF file: upright as the camera says, 8 bits of grey, none
/// longer than what is needed to read a page.
///
/// Promises: sizes are taken from the headers and compared with the limits before anything is
///           decoded.
/// Errors:   picture_too_large, too_many_pages, file_damaged.
tl::expected<std::vector<Picture>, Diagnostic> pictures_of(std::string_view bytes,
                                                           const intake::Limits& limits);

} // namespace loafwright::paper

// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/diagnostic/diagnostic.hpp"
#include "shell/intake/taken_in.hpp"

#include <tl/expected.hpp>

#include <string_view>

namespace loafwright::paper {

/// The words of a saved web page. The one place where HTML is handed on.
tl::expected<intake::TakenIn, Diagnostics> words_of_page(std::string_view html);

} // namespace loafwright::paper

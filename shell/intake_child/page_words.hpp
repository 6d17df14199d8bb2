// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/diagnostic/diagnostic.hpp"
#include "shell/intake/taken_in.hpp"

#include <tl/expected.hpp>

#include <string>
#include <string_view>

namespace loafwright::intake_child {

/// The recipe of a web page. What its data say of the times stands below the title, as a person
/// would type it: "Cook time: 45 minutes".
///
/// Promises: of several recipes the first, and a remark that names the others.
/// Errors:   as web_page::words_of, with `name` for the place.
tl::expected<intake::TakenIn, Diagnostics> page_words(std::string_view html,
                                                      const std::string& name);

} // namespace loafwright::intake_child

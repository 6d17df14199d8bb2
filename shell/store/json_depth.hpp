// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <string_view>

namespace loafwright::store {

/// No request and no export of ours is half as deep.
inline constexpr std::size_t deepest_json = 64;

/// True when the text opens more than `deepest_json` brackets and braces inside one another.
/// Whoever copies or prints a JSON value goes as deep as it is, so this is asked before any is.
///
/// Never: minds whether the text is JSON.
bool is_nested_too_deeply(std::string_view text);

} // namespace loafwright::store

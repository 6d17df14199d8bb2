// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/quantity/time.hpp"

#include <optional>
#include <string_view>

namespace loafwright::settings {

/// The offsets between `from` and `to` of the zone in a compiled time zone file (TZif, RFC 8536),
/// versions 1 to 4.
///
/// Promises: changes strictly inside (from, to], each to another offset than the one before; the
/// zone is called `name`. Errors:   nothing for bytes that are no TZif file, or one that counts
/// leap seconds (a "right/" zone). Never:    throws on input.
std::optional<Zone>
zone_from_tzif(std::string_view bytes, std::string_view name, Instant from, Instant to);

/// The same from a yearly rule in the notation of the environment variable TZ, such as
/// "GMT0BST,M3.5.0/1,M10.5.0".
std::optional<Zone>
zone_from_rule(std::string_view rule, std::string_view name, Instant from, Instant to);

} // namespace loafwright::settings

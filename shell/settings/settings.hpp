// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/diagnostic/diagnostic.hpp"
#include "engine/kitchen/kitchen.hpp"
#include "engine/quantity/time.hpp"
#include "engine/recipe/recipe.hpp"

#include <tl/expected.hpp>

#include <optional>
#include <string>
#include <string_view>

namespace loafwright::settings {

/// A kitchen from TOML text; `name` is the file's name for messages.
///
/// Promises: keys as documented in shell/settings/README.md; all mistakes are reported in one go,
///           sorted by line, each with "name:line key".
/// Errors:   settings_unreadable, key_unknown (suggests the near one), value_wrong_kind,
///           value_unknown, value_out_of_range, key_missing, time_unreadable, said_twice (room and
///           room_c, c and feels).
/// Never:    throws on input, whatever its bytes.
tl::expected<Kitchen, Diagnostics> kitchen_from_toml(std::string_view text, std::string_view name);

/// The answers that stand beside a recipe, from TOML text: `oven-c = 220`, `which-bread = "rolls"`.
///
/// Promises: in byte order of their keys; a number is written as it stands.
/// Errors:   settings_unreadable, value_wrong_kind (neither text nor a number).
/// Never:    throws on input, whatever its bytes.
tl::expected<Answers, Diagnostics> answers_from_toml(std::string_view text, std::string_view name);

/// A day file laid over the calendar.
struct DayFile {
    Day day;
    /// Warnings and notes; never errors. time_past: a window or claim that is over was left out.
    Diagnostics remarks;
};

/// A day from TOML text. `zone` is used when the file names none, and outranks the file's when
/// `zone_is_told`. Clock times without a day are laid over every day from now to ten days later,
/// or to three days after the file's start or eat_by.
///
/// Promises: what is over by `now` is not in the day; windows and claims are sorted by `from`;
///           `sleep_known` is true where somebody sleeps in it.
/// Errors:   as for a kitchen, and zone_unknown, time_skipped, both_start_and_eat_by. A start or
///           eat_by that has passed is none of them: an option may outrank it, so the caller asks.
/// Never:    throws on input, whatever its bytes.
tl::expected<DayFile, Diagnostics> day_from_toml(
    std::string_view text, std::string_view name, const Zone& zone, bool zone_is_told, Instant now);

/// The zone named, with its clock changes from ten days before to thirty days after `around`, from
/// the system's tz data.
///
/// Errors: zone_unknown, with the nearest names.
tl::expected<Zone, Diagnostic> zone_named(std::string_view name, Instant around);

/// The zone to use when nobody names one: TZ, the system's, else UTC with the warning zone_unset. A
/// TZ that names no zone is passed over with the warning zone_unknown.
struct FoundZone {
    Zone zone;
    std::optional<Diagnostic> warning;
};
FoundZone zone_found(Instant around);

/// Words for a time: "13:00" (today), "tomorrow 07:30", "sat 13:00" (the next one, today while
/// still ahead), RFC 3339.
///
/// Errors: time_unreadable, time_skipped.
tl::expected<Instant, Diagnostic>
time_from_words(std::string_view words, const Zone& zone, Instant now);

/// True when `words` looks like a time rather than a file, so that a forgotten quote can be named.
bool looks_like_a_time(std::string_view words);

} // namespace loafwright::settings

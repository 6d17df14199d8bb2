// SPDX-License-Identifier: Apache-2.0
//
// Time zones from the system's data. One zone is one small file, named after the zone, so that is
// all that is read; the list of all names is opened only to say which one was probably meant. UTC
// is known even where no data is installed.
#include "shell/settings/settings.hpp"
#include "shell/settings/suggest.hpp"
#include "shell/settings/tzif.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <system_error>
#include <vector>

namespace loafwright::settings {

namespace {

constexpr std::string_view zone_folder = "/usr/share/zoneinfo/";
constexpr std::int64_t minutes_per_day = 1440;
constexpr std::size_t largest_file = 1048576;

struct Window {
    Instant from;
    Instant to;
};

Window window_around(Instant around) {
    return {later_by_minutes(around, -10 * minutes_per_day),
            later_by_minutes(around, 30 * minutes_per_day)};
}

// The bytes of a file, or none when it cannot be read or is too long to be what is wanted.
std::string bytes_of(const std::string& path) {
    std::error_code failure;
    if (!std::filesystem::is_regular_file(path, failure) ||
        std::filesystem::file_size(path, failure) > largest_file || failure) {
        return {};
    }
    std::ifstream file(path, std::ios::binary);
    return std::string((std::istreambuf_iterator<char>(file)), std::istreambuf_iterator<char>());
}

// Letters, digits and the signs that zone names have; in particular nothing that climbs out of the
// folder.
bool is_plausible_name(std::string_view name) {
    return !name.empty() && name.size() <= 64 && name.front() != '/' && name.back() != '/' &&
           std::all_of(name.begin(), name.end(), [](char c) {
               return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') ||
                      c == '/' || c == '_' || c == '+' || c == '-';
           });
}

std::optional<Zone> zone_read(std::string_view name, Instant around) {
    const Window window = window_around(around);
    if (is_plausible_name(name)) {
        const std::string bytes = bytes_of(std::string(zone_folder) + std::string(name));
        if (auto zone = zone_from_tzif(bytes, name, window.from, window.to)) {
            return zone;
        }
    }
    if (name == "UTC" || name == "Etc/UTC" || name == "Z") {
        Zone utc;
        utc.name = "UTC";
        return utc;
    }
    return std::nullopt;
}

// Every zone name in the system's list of rules: "Z Europe/London …" and the links, "L
// Europe/London Europe/Jersey".
std::vector<std::string> all_names() {
    std::vector<std::string> names;
    std::ifstream file(std::string(zone_folder) + "tzdata.zi");
    std::string line;
    while (std::getline(file, line)) {
        const bool zone = line.rfind("Z ", 0) == 0;
        const bool link = line.rfind("L ", 0) == 0;
        if (!zone && !link) {
            continue;
        }
        const std::size_t begin = link ? line.find(' ', 2) + 1 : 2;
        names.push_back(line.substr(begin, line.find(' ', begin) - begin));
    }
    std::sort(names.begin(), names.end());
    return names;
}

// What a person wrote, in the shape of a zone name.
std::string as_zone_name(std::string_view words) {
    std::string name(words);
    std::replace(name.begin(), name.end(), ' ', '_');
    return name;
}

std::string place_in(const std::string& name) {
    return name.substr(name.rfind('/') + 1);
}

// Up to three names that were probably meant, the likeliest first.
std::vector<std::string> near_names(std::string_view words) {
    const std::string wanted = as_zone_name(words);
    std::vector<std::string> near;
    if (wanted.empty() || wanted.size() > 64) {
        return near;
    }
    std::vector<std::string> names = all_names();
    const std::string place = place_in(wanted);
    const auto distance = [&](const std::string& name) {
        // "London" and "England/London" mean the place, whatever stands before it.
        return std::min(letters_apart(wanted, name), letters_apart(place, place_in(name)) + 1);
    };
    std::vector<std::pair<std::size_t, std::string>> ranked;
    for (std::string& name : names) {
        const std::size_t apart = distance(name);
        if (apart <= 1 + place.size() / 4) {
            ranked.emplace_back(apart, std::move(name));
        }
    }
    std::sort(ranked.begin(), ranked.end());
    for (const auto& [apart, name] : ranked) {
        if (near.size() == 3 || apart > ranked.front().first + 1) {
            break;
        }
        near.push_back(name);
    }
    return near;
}

Diagnostic unknown(std::string_view name) {
    Diagnostic diagnostic;
    diagnostic.code = "zone_unknown";
    diagnostic.what = fmt::format(
        "{} is not a time zone here, expected a name such as Europe/London", in_quotes(name));
    std::error_code failure;
    if (!std::filesystem::exists(zone_folder, failure)) {
        diagnostic.do_this = "This system has no time zone data: install the package tzdata.";
        return diagnostic;
    }
    const std::vector<std::string> near = near_names(name);
    diagnostic.do_this = near.empty()
                             ? "Name the zone by its region and largest city, or write UTC."
                             : fmt::format("Did you mean {}?", fmt::join(near, " or "));
    return diagnostic;
}

// The part of a path after the folder of zones, which is the zone's name.
std::string name_in_path(const std::string& path) {
    constexpr std::string_view folder = "zoneinfo/";
    const std::size_t at = path.rfind(folder);
    std::string name = at == std::string::npos ? std::string() : path.substr(at + folder.size());
    constexpr std::string_view same_again = "posix/";
    return name.rfind(same_again, 0) == 0 ? name.substr(same_again.size()) : name;
}

// What the environment variable TZ may hold: a name, a path to a file of the zone folder, or a
// yearly rule.
std::optional<Zone> zone_of_variable(std::string_view text, Instant around) {
    if (!text.empty() && text.front() == ':') {
        text.remove_prefix(1);
    }
    if (!text.empty() && text.front() == '/') {
        return zone_read(name_in_path(std::string(text)), around);
    }
    if (auto zone = zone_read(text, around)) {
        return zone;
    }
    const Window window = window_around(around);
    return zone_from_rule(text, text, window.from, window.to);
}

std::optional<Zone> zone_of_system(Instant around) {
    const std::string clock_file = "/etc/localtime";
    std::error_code failure;
    const std::filesystem::path target = std::filesystem::read_symlink(clock_file, failure);
    if (!failure) {
        if (auto zone = zone_read(name_in_path(target.string()), around)) {
            return zone;
        }
    }
    std::string named = bytes_of("/etc/timezone");
    named.erase(
        std::find_if(named.begin(), named.end(), [](char c) { return c == '\n' || c == ' '; }),
        named.end());
    if (auto zone = zone_read(named, around)) {
        return zone;
    }
    const Window window = window_around(around);
    return zone_from_tzif(bytes_of(clock_file), "local time", window.from, window.to);
}

} // namespace

tl::expected<Zone, Diagnostic> zone_named(std::string_view name, Instant around) {
    if (auto zone = zone_read(name, around)) {
        return *zone;
    }
    return tl::unexpected(unknown(name));
}

FoundZone zone_found(Instant around) {
    FoundZone found;
    const char* variable = std::getenv("TZ");
    if (variable != nullptr && *variable != '\0') {
        if (auto zone = zone_of_variable(variable, around)) {
            found.zone = *zone;
            return found;
        }
        found.warning = unknown(variable);
        found.warning->severity = Severity::warning;
        found.warning->where = "TZ";
    }
    if (auto zone = zone_of_system(around)) {
        found.zone = *zone;
        return found;
    }
    if (!found.warning) {
        Diagnostic warning;
        warning.code = "zone_unset";
        warning.severity = Severity::warning;
        warning.what = "no time zone was given and the system names none, so times are in UTC";
        warning.do_this = "Give one with --zone, such as --zone Europe/London, or in the day file.";
        found.warning = warning;
    }
    return found;
}

} // namespace loafwright::settings

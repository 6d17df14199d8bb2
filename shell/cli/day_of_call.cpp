// SPDX-License-Identifier: Apache-2.0
#include "shell/cli/day_of_call.hpp"

#include "engine/breads/known_breads.hpp"
#include "shell/cli/bread_files.hpp"
#include "shell/cli/files.hpp"
#include "shell/cli/kitchen_file.hpp"
#include "shell/settings/settings.hpp"

#include <algorithm>
#include <chrono>
#include <iterator>
#include <utility>

namespace loafwright::cli {

namespace {

Instant system_now() {
    const auto since = std::chrono::system_clock::now().time_since_epoch();
    return Instant{std::chrono::duration_cast<std::chrono::seconds>(since).count()};
}

void add(Diagnostics& all, Diagnostics more) {
    std::move(more.begin(), more.end(), std::back_inserter(all));
}

/// A named zone, or the one found, for the time around `moment`.
struct ChosenZone {
    Zone zone;
    bool is_told = false;
    std::optional<Diagnostic> warning;
};

tl::expected<ChosenZone, Diagnostic> zone_for(const DayArguments& arguments, Instant moment) {
    if (arguments.zone) {
        auto zone = settings::zone_named(*arguments.zone, moment);
        if (!zone) {
            return tl::make_unexpected(std::move(zone.error()));
        }
        return ChosenZone{std::move(*zone), true, std::nullopt};
    }
    settings::FoundZone found = settings::zone_found(moment);
    return ChosenZone{std::move(found.zone), false, std::move(found.warning)};
}

tl::expected<When, Diagnostics> when_from(const DayArguments& arguments) {
    Diagnostics wrong;
    Instant now = system_now();
    auto zone = zone_for(arguments, now);
    if (!zone) {
        return tl::make_unexpected(Diagnostics{std::move(zone.error())});
    }
    if (arguments.now) {
        if (const auto exact = parse_rfc3339(*arguments.now)) {
            now = *exact;
        } else if (const auto told = settings::time_from_words(*arguments.now, zone->zone, now)) {
            now = *told;
        } else {
            return tl::make_unexpected(Diagnostics{told.error()});
        }
        // Another time may fall under other clock changes.
        zone = zone_for(arguments, now);
        if (!zone) {
            return tl::make_unexpected(Diagnostics{std::move(zone.error())});
        }
    }
    When when;
    when.day.zone = zone->zone;
    when.day.now = now;
    bool zone_from_file = false;
    if (arguments.day) {
        auto bytes = file_bytes(*arguments.day);
        if (!bytes) {
            return tl::make_unexpected(std::move(bytes.error()));
        }
        auto file = settings::day_from_toml(
            *bytes, name_for_messages(*arguments.day), zone->zone, zone->is_told, now);
        if (!file) {
            return tl::make_unexpected(std::move(file.error()));
        }
        zone_from_file = file->day.zone.name != zone->zone.name;
        when.day = std::move(file->day);
        when.day.now = now;
        add(when.messages, std::move(file->remarks));
    }
    if (zone->warning && !zone_from_file) {
        when.messages.push_back(*zone->warning);
    }
    const auto time = [&](const std::optional<std::string>& words) -> std::optional<Instant> {
        if (!words) {
            return std::nullopt;
        }
        auto told = settings::time_from_words(*words, when.day.zone, now);
        if (!told) {
            wrong.push_back(std::move(told.error()));
            return std::nullopt;
        }
        return *told;
    };
    const auto start = time(arguments.start);
    const auto eat_by = time(arguments.eat_by);
    if (start || eat_by) {
        when.day.start = start;
        when.day.eat_by = eat_by;
    }
    // Within the minute that runs, now is now; an earlier start is an honest no with ways out.
    if (when.day.start && when.day.start->seconds < now.seconds &&
        when.day.start->seconds + 60 > now.seconds) {
        when.day.start = now;
    }
    if (!wrong.empty()) {
        return tl::make_unexpected(std::move(wrong));
    }
    return when;
}

tl::expected<Kitchen, Diagnostics> kitchen_from(const DayArguments& arguments,
                                                const Answers& answers) {
    auto read = kitchen_in(arguments.kitchen);
    if (!read) {
        return tl::make_unexpected(std::move(read.error()));
    }
    Kitchen kitchen = std::move(*read);
    if (arguments.room_c) {
        kitchen.room = {RoomPeriod{ClockTime{}, Celsius(*arguments.room_c)}};
        return kitchen;
    }
    // The question about the room is the kitchen's, so its answer is one too, and outranks the
    // file.
    const bool answered = std::any_of(answers.begin(), answers.end(), [](const Answer& answer) {
        return answer.key == breads::room_key;
    });
    if (answered) {
        kitchen.room.clear();
    }
    return breads::kitchen_as_answered(std::move(kitchen), answers);
}

} // namespace

tl::expected<BreadsOfCall, Diagnostics> breads_of_call(const std::vector<std::string>& files,
                                                       const Answers& answers,
                                                       const breads::Wanted& wanted,
                                                       const DayArguments& arguments) {
    Diagnostics wrong;
    std::vector<breads::BreadText> texts = bread_texts(files, answers, wrong);
    Answers all = answers;
    for (breads::BreadText& text : texts) {
        text.wanted = wanted;
        all.insert(all.end(), text.answers.begin(), text.answers.end());
    }
    auto kitchen = kitchen_from(arguments, all);
    auto when = when_from(arguments);
    if (!kitchen) {
        add(wrong, std::move(kitchen.error()));
    }
    if (!when) {
        add(wrong, std::move(when.error()));
    }
    if (!wrong.empty()) {
        return tl::make_unexpected(std::move(wrong));
    }
    return BreadsOfCall{std::move(texts), std::move(*kitchen), std::move(*when)};
}

} // namespace loafwright::cli

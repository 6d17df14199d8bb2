// SPDX-License-Identifier: Apache-2.0
#include "tests/output/calendar_reader.hpp"

#include <libical/ical.h>

#include <algorithm>
#include <memory>

namespace loafwright::output {

namespace {

std::string words(const char* text) {
    return text == nullptr ? "" : text;
}

// A time by its own zone: UTC, or the VTIMEZONE in the file that its TZID names.
Instant moment_of(icaltimetype time) {
    return Instant{icaltime_as_timet_with_zone(
        time, time.zone == nullptr ? icaltimezone_get_utc_timezone() : time.zone)};
}

ReadEvent event_of(icalcomponent* component) {
    ReadEvent event;
    event.uid = words(icalcomponent_get_uid(component));
    event.summary = words(icalcomponent_get_summary(component));
    event.description = words(icalcomponent_get_description(component));
    event.sequence = icalcomponent_get_sequence(component);
    event.start = moment_of(icalcomponent_get_dtstart(component));
    event.end = moment_of(icalcomponent_get_dtend(component));
    event.called_off = icalcomponent_get_status(component) == ICAL_STATUS_CANCELLED;
    icalproperty* transparency = icalcomponent_get_first_property(component, ICAL_TRANSP_PROPERTY);
    event.busy =
        transparency == nullptr || icalproperty_get_transp(transparency) == ICAL_TRANSP_OPAQUE;
    for (icalcomponent* alarm = icalcomponent_get_first_component(component, ICAL_VALARM_COMPONENT);
         alarm != nullptr;
         alarm = icalcomponent_get_next_component(component, ICAL_VALARM_COMPONENT)) {
        const icaltriggertype trigger = icalproperty_get_trigger(
            icalcomponent_get_first_property(alarm, ICAL_TRIGGER_PROPERTY));
        const bool is_fixed = icaltime_is_null_time(trigger.time) == 0;
        event.alarms.push_back(
            {is_fixed ? moment_of(trigger.time)
                      : Instant{event.start.seconds + icaldurationtype_as_int(trigger.duration)},
             words(icalcomponent_get_description(alarm))});
    }
    return event;
}

} // namespace

ReadCalendar read_calendar(const std::string& bytes) {
    ReadCalendar calendar;
    const std::unique_ptr<icalcomponent, decltype(&icalcomponent_free)> file(
        icalparser_parse_string(bytes.c_str()), &icalcomponent_free);
    if (!file || icalcomponent_isa(file.get()) != ICAL_VCALENDAR_COMPONENT) {
        calendar.faults = 1;
        return calendar;
    }
    calendar.faults = icalcomponent_count_errors(file.get());
    for (icalcomponent* part = icalcomponent_get_first_component(file.get(), ICAL_ANY_COMPONENT);
         part != nullptr;
         part = icalcomponent_get_next_component(file.get(), ICAL_ANY_COMPONENT)) {
        if (icalcomponent_isa(part) == ICAL_VEVENT_COMPONENT) {
            calendar.events.push_back(event_of(part));
        }
    }
    icalcomponent* zone = icalcomponent_get_first_component(file.get(), ICAL_VTIMEZONE_COMPONENT);
    for (icalcomponent* part = zone == nullptr
                                   ? nullptr
                                   : icalcomponent_get_first_component(zone, ICAL_ANY_COMPONENT);
         part != nullptr;
         part = icalcomponent_get_next_component(zone, ICAL_ANY_COMPONENT)) {
        calendar.observances.push_back(
            {icalproperty_get_tzoffsetfrom(
                 icalcomponent_get_first_property(part, ICAL_TZOFFSETFROM_PROPERTY)),
             icalproperty_get_tzoffsetto(
                 icalcomponent_get_first_property(part, ICAL_TZOFFSETTO_PROPERTY))});
    }
    // What must and may stand in which part, by RFC 5545 and 5546 as libical has them.
    if (!icalrestriction_check(file.get())) {
        ++calendar.faults;
    }
    return calendar;
}

ContentLines content_lines(std::string_view bytes) {
    ContentLines content;
    while (!bytes.empty()) {
        const std::size_t end = bytes.find("\r\n");
        if (end == std::string_view::npos) {
            content.every_line_ends_in_crlf = false;
            break;
        }
        std::string_view line = bytes.substr(0, end);
        content.longest_octets = std::max(content.longest_octets, line.size());
        content.every_line_ends_in_crlf =
            content.every_line_ends_in_crlf && line.find_first_of("\r\n") == std::string_view::npos;
        const bool goes_on = !line.empty() && (line.front() == ' ' || line.front() == '\t');
        if (goes_on) {
            line.remove_prefix(1);
        }
        // The first byte of a line is never one from the middle of a letter (RFC 3629 section 3).
        content.no_letter_is_parted =
            content.no_letter_is_parted &&
            (line.empty() || (static_cast<unsigned char>(line.front()) & 0xC0U) != 0x80U);
        if (goes_on && !content.lines.empty()) {
            content.lines.back() += line;
        } else {
            content.lines.emplace_back(line);
        }
        bytes.remove_prefix(end + 2);
    }
    return content;
}

std::string text_value(std::string_view escaped) {
    std::string text;
    for (std::size_t i = 0; i < escaped.size(); ++i) {
        if (escaped[i] == '\\' && i + 1 < escaped.size()) {
            ++i;
            text += escaped[i] == 'n' || escaped[i] == 'N' ? '\n' : escaped[i];
        } else {
            text += escaped[i];
        }
    }
    return text;
}

std::vector<std::string> values_of(const ContentLines& content, std::string_view name) {
    std::vector<std::string> values;
    for (const std::string& line : content.lines) {
        const std::size_t end = line.find_first_of(";:");
        if (end != std::string::npos && line.substr(0, end) == name) {
            values.push_back(line.substr(line.find(':') + 1));
        }
    }
    return values;
}

} // namespace loafwright::output

// SPDX-License-Identifier: Apache-2.0
#include "engine/following/troubles.hpp"
#include "engine/quantity/plain_id.hpp"
#include "engine/wire/bake_json.hpp"
#include "engine/wire/event_words.hpp"
#include "engine/wire/json_fields.hpp"
#include "engine/wire/json_values.hpp"

#include <algorithm>
#include <array>

namespace loafwright::wire {

namespace {

// In the order of the enumerations.
const std::vector<std::string_view>& kind_words() {
    static const std::vector<std::string_view> words{"begun",
                                                     "done",
                                                     "not_ready",
                                                     "taken_back",
                                                     "act_done",
                                                     "grown",
                                                     "note",
                                                     "photo",
                                                     "temperature",
                                                     "trouble",
                                                     "told"};
    return words;
}

constexpr std::int64_t most_breads_of_a_bake = 64;
constexpr std::int64_t most_lines = 200;
class EventReader {
public:
    EventReader(JsonFields& fields, Complaints& complaints)
        : fields_(fields), complaints_(complaints) {}

    Event all() {
        Event event;
        event.id = id("id");
        event.at = time("at").value_or(Instant{});
        event.kind = static_cast<EventKind>(fields_.one_of("kind", kind_words()));
        event.bread = static_cast<std::size_t>(
            fields_.whole_if_any("bread", {0, most_breads_of_a_bake}).value_or(0));
        event.stage = static_cast<int>(fields_.whole_if_any("stage", {1, most_lines}).value_or(1));
        if (fields_.has("until")) {
            event.until = time("until");
        }
        rest(event);
        fields_.refuse_others();
        return event;
    }

private:
    void rest(Event& event) {
        switch (event.kind) {
        case EventKind::taken_back:
            event.undoes = id("undoes");
            break;
        case EventKind::act_done:
            event.act = static_cast<std::size_t>(fields_.whole("act", {0, most_lines}));
            break;
        case EventKind::grown:
            event.growth = static_cast<Growth>(fields_.one_of("how", growth_words()));
            break;
        case EventKind::note:
            event.text = fields_.text("text");
            if (event.text.size() > longest_note) {
                out_of_range("text", "a note of at most 4000 bytes", "Make two of it.");
            }
            break;
        case EventKind::photo:
            event.text = fields_.text("photo");
            if (!is_content_hash(event.text)) {
                out_of_range("photo", "64 hexadecimal digits", "Send the photo first.");
            }
            break;
        case EventKind::temperature:
            event.measured = static_cast<Measured>(fields_.one_of("of", measured_words()));
            event.celsius = Celsius(static_cast<double>(fields_.whole("c", {-30, 400})));
            break;
        case EventKind::trouble:
            event.trouble = static_cast<Trouble>(fields_.one_of("what", trouble_words()));
            break;
        case EventKind::told:
            event.told = told_from(fields_);
            break;
        case EventKind::begun:
        case EventKind::done:
        case EventKind::not_ready:
            break;
        }
    }

    std::string id(std::string_view key) {
        std::string found = fields_.text(key);
        if (fields_.has(key) && !is_plain_id(found)) {
            out_of_range(key, "1 to 64 letters, digits, - and _", "Make a new id for each event.");
        }
        return found;
    }

    std::optional<Instant> time(std::string_view key) {
        const std::string words = fields_.text(key);
        const auto found = parse_rfc3339(words);
        if (!found && fields_.has(key)) {
            complaints_.error("time_unreadable",
                              fields_.path_of(key),
                              "found no time, expected one such as 2026-11-28T18:30:00Z",
                              "Write date, clock time and offset.");
        }
        return found;
    }

    void out_of_range(std::string_view key, const std::string& expected, const char* do_this) {
        complaints_.error(
            "value_out_of_range", fields_.path_of(key), "expected " + expected, do_this);
    }

    JsonFields& fields_;
    Complaints& complaints_;
};

// What was not said is left out, as with every other key of an event.
void add_told(Json& json, const Told& told) {
    const Json said = told_value(told);
    for (const auto& [key, value] : said.items()) {
        if (!value.is_null()) {
            json[key] = value;
        }
    }
}

const Zone& utc() {
    static const Zone zone;
    return zone;
}

} // namespace

std::string event_json(const Event& event) {
    Json json;
    json["id"] = event.id;
    json["at"] = rfc3339(utc(), event.at);
    json["kind"] = text(kind_words().at(static_cast<std::size_t>(event.kind)));
    json["bread"] = event.bread;
    json["stage"] = event.stage;
    if (event.until) {
        json["until"] = rfc3339(utc(), *event.until);
    }
    switch (event.kind) {
    case EventKind::taken_back:
        json["undoes"] = event.undoes;
        break;
    case EventKind::act_done:
        json["act"] = event.act;
        break;
    case EventKind::grown:
        json["how"] = text(growth_words().at(static_cast<std::size_t>(event.growth)));
        break;
    case EventKind::note:
        json["text"] = event.text;
        break;
    case EventKind::photo:
        json["photo"] = event.text;
        break;
    case EventKind::temperature:
        json["of"] = text(measured_words().at(static_cast<std::size_t>(event.measured)));
        json["c"] = number(event.celsius.degrees());
        break;
    case EventKind::trouble:
        json["what"] = text(following::name_of(event.trouble));
        break;
    case EventKind::told:
        add_told(json, event.told);
        break;
    case EventKind::begun:
    case EventKind::done:
    case EventKind::not_ready:
        break;
    }
    return compact(json);
}

tl::expected<std::vector<Event>, Diagnostics> events_from_json(std::string_view bytes,
                                                               std::string_view name) {
    Complaints complaints(name);
    auto top = json_object(bytes, name, complaints);
    if (!top) {
        return tl::make_unexpected(std::move(top.error()));
    }
    std::vector<Event> events;
    for (JsonFields& item : top->objects("events", most_events_at_once)) {
        events.push_back(EventReader(item, complaints).all());
    }
    if (complaints.any_error()) {
        return tl::make_unexpected(complaints.take_errors());
    }
    return events;
}

tl::expected<Event, Diagnostics> event_from_json(std::string_view bytes, std::string_view name) {
    Complaints complaints(name);
    auto top = json_object(bytes, name, complaints);
    if (!top) {
        return tl::make_unexpected(std::move(top.error()));
    }
    Event event = EventReader(*top, complaints).all();
    if (complaints.any_error()) {
        return tl::make_unexpected(complaints.take_errors());
    }
    return event;
}

} // namespace loafwright::wire

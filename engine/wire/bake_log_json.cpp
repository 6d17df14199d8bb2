// SPDX-License-Identifier: Apache-2.0
//
// The log of one bread's bake as it is kept and handed on. It is read strictly: what somebody's
// hand has changed either fits or is named, and nothing is guessed.
#include "engine/wire/bake_log_json.hpp"

#include "engine/wire/event_words.hpp"
#include "engine/wire/json_fields.hpp"
#include "engine/wire/json_values.hpp"

#include <algorithm>

namespace loafwright::wire {

namespace {

constexpr std::size_t most_lines = 200;
constexpr std::size_t most_readings = 100;
constexpr std::size_t most_notes = 100;
constexpr std::size_t longest_words = 4000;
constexpr std::int64_t most_minutes = 20160; // two weeks
constexpr NumberRange degrees{-30.0, 400.0};
constexpr NumberRange percent{0.0, 1000.0};

const Zone& utc() {
    static const Zone zone;
    return zone;
}

template <typename Enum>
std::vector<std::string_view> names_up_to(Enum last) {
    std::vector<std::string_view> names;
    for (int k = 0; k <= static_cast<int>(last); ++k) {
        names.push_back(name_of(static_cast<Enum>(k)));
    }
    return names;
}

// ---- writing

Json time(Instant at) {
    return rfc3339(utc(), at);
}

Json degrees_json(const std::optional<Celsius>& celsius) {
    return or_null(celsius, [](Celsius c) { return number(c.degrees()); });
}

Json number_or_null(const std::optional<double>& value) {
    return or_null(value, [](double found) { return number(found); });
}

Json line_json(const LoggedLine& line) {
    Json json;
    json["stage"] = line.stage;
    json["title"] = line.title;
    json["kind"] = text(name_of(line.kind));
    json["place"] = text(name_of(line.place));
    json["attention"] = text(name_of(line.attention));
    json["minutes"] = {{"low", line.minutes.low},
                       {"likely", line.minutes.likely},
                       {"high", line.minutes.high},
                       {"basis", text(name_of(line.basis))}};
    json["usual_minutes"] = number(line.usual_minutes);
    json["chosen"] = line.chosen;
    json["begun"] = or_null(line.begun, time);
    json["done"] = or_null(line.done, time);
    json["timed"] = line.timed;
    json["stands_c"] = degrees_json(line.stands);
    json["setting_c"] = degrees_json(line.setting);
    json["wanted_growth"] = number_or_null(line.wanted_growth);
    json["grown"] = or_null(line.grown, [](const LoggedGrowth& grown) {
        return Json{{"at", time(grown.at)},
                    {"how", text(growth_words().at(static_cast<std::size_t>(grown.growth)))}};
    });
    json["temperatures"] = list(line.temperatures, [](const LoggedTemperature& read) {
        return Json{{"at", time(read.at)},
                    {"of", text(measured_words().at(static_cast<std::size_t>(read.measured)))},
                    {"c", number(read.celsius.degrees())}};
    });
    json["troubles"] = list(line.troubles, [](Trouble trouble) {
        return text(trouble_words().at(static_cast<std::size_t>(trouble)));
    });
    return json;
}

// ---- reading

class LogReader {
public:
    explicit LogReader(Complaints& complaints) : complaints_(complaints) {}

    BakeLog log(JsonFields fields) {
        BakeLog log;
        log.bread = words(fields, "bread");
        log.family =
            static_cast<DoughFamily>(fields.one_of("family", names_up_to(DoughFamily::quick)));
        log.leaven = words(fields, "leaven");
        if (auto dough = fields.object_if_any("dough")) {
            log.dough = {dough->number_if_any("water_percent", percent),
                         dough->number_if_any("salt_percent", percent),
                         dough->number_if_any("sugar_percent", percent),
                         dough->number_if_any("fat_percent", percent),
                         dough->number_if_any("yeast_percent", percent)};
            dough->refuse_others();
        }
        for (JsonFields& item : fields.objects("lines", most_lines)) {
            log.lines.push_back(line(item));
        }
        if (auto told = fields.object_if_any("told")) {
            log.told = told_from(*told);
            told->refuse_others();
        }
        log.notes = fields.texts_if_any("notes", most_notes, longest_words);
        fields.refuse_others();
        return log;
    }

private:
    std::string words(JsonFields& fields, std::string_view key) {
        std::string found = fields.text(key);
        if (found.size() > longest_words) {
            wrong(fields, key, "expected at most 4000 bytes", "Shorten it.");
        }
        return found;
    }

    std::optional<Instant> time(JsonFields& fields, std::string_view key) {
        const auto found = fields.text_if_any(key);
        if (!found) {
            return std::nullopt;
        }
        const auto at = parse_rfc3339(*found);
        if (!at) {
            complaints_.error("time_unreadable",
                              fields.path_of(key),
                              "found no time, expected one such as 2026-11-28T18:30:00Z",
                              "Write date, clock time and offset.");
        }
        return at;
    }

    static std::optional<Celsius> celsius(JsonFields& fields, std::string_view key) {
        const auto found = fields.number_if_any(key, degrees);
        return found ? std::optional(Celsius(*found)) : std::nullopt;
    }

    LoggedLine line(JsonFields& fields) {
        LoggedLine line;
        line.stage =
            static_cast<int>(fields.whole("stage", {1, static_cast<std::int64_t>(most_lines)}));
        line.title = words(fields, "title");
        line.kind = static_cast<StepKind>(fields.one_of("kind", names_up_to(StepKind::store)));
        line.place = static_cast<Place>(fields.one_of("place", names_up_to(Place::hob)));
        line.attention =
            static_cast<Attention>(fields.one_of("attention", names_up_to(Attention::none)));
        minutes(fields, line);
        line.usual_minutes =
            fields.number("usual_minutes", {0.0, static_cast<double>(most_minutes)});
        line.chosen = fields.truth("chosen");
        line.begun = time(fields, "begun");
        line.done = time(fields, "done");
        line.timed = fields.truth("timed");
        if (line.begun && line.done && *line.done < *line.begun) {
            wrong(fields, "done", "expected no time before the begin", "Swap them.");
        }
        if (line.timed && (!line.begun || !line.done)) {
            wrong(fields, "timed", "expected false without a begin and an end", "Write false.");
        }
        line.stands = celsius(fields, "stands_c");
        line.setting = celsius(fields, "setting_c");
        line.wanted_growth = fields.number_if_any("wanted_growth", {0.05, 10.0});
        if (auto grown = fields.object_if_any("grown")) {
            LoggedGrowth growth;
            growth.at = needed_time(*grown, "at");
            growth.growth = static_cast<Growth>(grown->one_of("how", growth_words()));
            grown->refuse_others();
            line.grown = growth;
        }
        for (JsonFields& read : fields.objects("temperatures", most_readings)) {
            LoggedTemperature temperature;
            temperature.at = needed_time(read, "at");
            temperature.measured = static_cast<Measured>(read.one_of("of", measured_words()));
            temperature.celsius = Celsius(read.number("c", degrees));
            read.refuse_others();
            line.temperatures.push_back(temperature);
        }
        troubles(fields, line);
        fields.refuse_others();
        return line;
    }

    void minutes(JsonFields& fields, LoggedLine& line) {
        JsonFields band = fields.object("minutes");
        line.minutes = {band.whole("low", {0, most_minutes}),
                        band.whole("likely", {0, most_minutes}),
                        band.whole("high", {0, most_minutes})};
        line.basis = static_cast<Basis>(band.one_of("basis", names_up_to(Basis::open)));
        band.refuse_others();
        if (line.minutes.low > line.minutes.likely || line.minutes.likely > line.minutes.high) {
            wrong(fields, "minutes", "expected low <= likely <= high", "Put them in order.");
        }
    }

    Instant needed_time(JsonFields& fields, std::string_view key) {
        if (!fields.has(key)) {
            fields.text(key); // complains
            return {};
        }
        return time(fields, key).value_or(Instant{});
    }

    void troubles(JsonFields& fields, LoggedLine& line) {
        const auto& known = trouble_words();
        for (const std::string& word :
             fields.texts_if_any("troubles", most_readings, longest_told)) {
            const auto found = std::find(known.begin(), known.end(), word);
            if (found == known.end()) {
                complaints_.error("value_unknown",
                                  fields.path_of("troubles"),
                                  "found a word that is no trouble",
                                  "Use one of those of the page, such as not_rising.");
            } else {
                line.troubles.push_back(static_cast<Trouble>(found - known.begin()));
            }
        }
    }

    void wrong(const JsonFields& fields,
               std::string_view key,
               const std::string& what,
               const char* do_this) {
        complaints_.error("value_out_of_range", fields.path_of(key), what, do_this);
    }

    Complaints& complaints_;
};

} // namespace

std::string bake_log_json(const BakeLog& log) {
    Json bake;
    bake["bread"] = log.bread;
    bake["family"] = text(name_of(log.family));
    bake["leaven"] = log.leaven;
    bake["dough"] = {{"water_percent", number_or_null(log.dough.water)},
                     {"salt_percent", number_or_null(log.dough.salt)},
                     {"sugar_percent", number_or_null(log.dough.sugar)},
                     {"fat_percent", number_or_null(log.dough.fat)},
                     {"yeast_percent", number_or_null(log.dough.yeast)}};
    bake["lines"] = list(log.lines, line_json);
    bake["told"] = told_value(log.told);
    bake["notes"] = texts(log.notes);
    return printed(Json{{"version", 1}, {"bake", std::move(bake)}});
}

tl::expected<BakeLog, Diagnostics> bake_log_from_json(std::string_view bytes,
                                                      std::string_view name) {
    Complaints complaints(name);
    auto top = json_object(bytes, name, complaints);
    if (!top) {
        return tl::make_unexpected(std::move(top.error()));
    }
    top->whole("version", {1, 1});
    BakeLog log = LogReader(complaints).log(top->object("bake"));
    top->refuse_others();
    Diagnostics found = complaints.take_errors();
    for (Diagnostic& unknown : complaints.take_warnings()) {
        unknown.severity = Severity::error;
        unknown.what = unknown.what.substr(0, unknown.what.find(" and was left out"));
        found.push_back(std::move(unknown));
    }
    if (!found.empty()) {
        return tl::make_unexpected(std::move(found));
    }
    return log;
}

} // namespace loafwright::wire

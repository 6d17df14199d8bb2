// SPDX-License-Identifier: Apache-2.0
//
// A kitchen file becomes a Kitchen. Every key may be left out and then keeps the default of
// engine/kitchen/kitchen.hpp; a key that stands there is checked against what kitchens are like.
// All mistakes are gathered before any is reported. The ranges are common practice, wide enough for
// a larder in winter and a terrace in August.
#include "engine/kitchen/felt_room.hpp"
#include "shell/settings/fields.hpp"
#include "shell/settings/said_time.hpp"
#include "shell/settings/settings.hpp"
#include "shell/settings/suggest.hpp"
#include "shell/settings/tree.hpp"
#include "shell/settings/tree_readers.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <utility>

namespace loafwright::settings {

namespace {

using Kind = TreeValue::Kind;

constexpr Range room_range{0.0, 45.0, Measure::celsius};
constexpr Range flour_range{-20.0, 45.0, Measure::celsius};
constexpr Range tap_range{0.0, 40.0, Measure::celsius};
constexpr Range fridge_range{0.0, 15.0, Measure::celsius};
constexpr Range warm_spot_range{15.0, 50.0, Measure::celsius};
constexpr Range altitude_range{-430.0, 5500.0, Measure::metres};
constexpr Range oven_max_range{100.0, 350.0, Measure::celsius};
constexpr Range heat_up_range{1.0, 120.0, Measure::minutes};
constexpr Range shelves_range{1.0, 10.0, Measure::count};
constexpr Range oven_offset_range{-60.0, 60.0, Measure::difference};
constexpr Range length_range{50.0, 600.0, Measure::millimetres};
constexpr Range width_range{30.0, 600.0, Measure::millimetres};
constexpr Range height_range{20.0, 300.0, Measure::millimetres};
constexpr std::size_t most_periods = 48;
constexpr std::size_t most_tins = 50;

const std::vector<std::string>& top_keys() {
    static const std::vector<std::string> keys = {"room",
                                                  "room_c",
                                                  "flour_c",
                                                  "tap_c",
                                                  "fridge_c",
                                                  "altitude_m",
                                                  "warm_spot_c",
                                                  "warm_spot_is_oven",
                                                  "mixing",
                                                  "yeast",
                                                  "oven",
                                                  "tin"};
    return keys;
}

void read_celsius(Fields& fields, std::string_view key, Range range, Celsius& into) {
    if (const auto number = fields.number(key, range)) {
        into = Celsius(*number);
    }
}

void read_celsius(Fields& fields, std::string_view key, Range range, std::optional<Celsius>& into) {
    if (const auto number = fields.number(key, range)) {
        into = Celsius(*number);
    }
}

// The clock time from which a period of the day lasts: "07:00", or TOML's own 07:00:00.
std::optional<ClockTime> period_start(Fields& fields) {
    const TreeValue* from = fields.value("from");
    if (from == nullptr) {
        fields.missing("from", "{from = \"07:00\", c = 19}");
        return std::nullopt;
    }
    if (from->kind == Kind::clock) {
        return from->civil.clock;
    }
    if (from->kind == Kind::text) {
        const auto said = said_time(from->text);
        if (said && said->day == SaidTime::Day::unsaid) {
            return said->clock;
        }
        fields.complain("time_unreadable",
                        *from,
                        "from",
                        fmt::format(" is {}, expected a clock time", in_quotes(from->text)),
                        said ? "Write only the clock time, such as 07:00." : said.error().do_this);
        return std::nullopt;
    }
    fields.complain("value_wrong_kind",
                    *from,
                    "from",
                    fmt::format(" is {}, expected a clock time", value_words(*from)),
                    "Write it as \"07:00\".");
    return std::nullopt;
}

std::vector<std::string> felt_words() {
    std::vector<std::string> words;
    words.reserve(felt_rooms.size());
    for (const FeltRoom& room : felt_rooms) {
        words.emplace_back(room.word);
    }
    return words;
}

// The warmth that `key` names by one of the words; a number there belongs to `key_in_degrees`.
std::optional<Celsius>
felt_room(Fields& fields, std::string_view key, std::string_view key_in_degrees) {
    const TreeValue* felt = fields.value(key);
    if (felt != nullptr && (felt->kind == Kind::whole || felt->kind == Kind::number)) {
        fields.complain("value_wrong_kind",
                        *felt,
                        key,
                        fmt::format(" is {}, expected a word in quotation marks: {}",
                                    value_words(*felt),
                                    fmt::join(felt_words(), ", ")),
                        fmt::format("For degrees write {} = {}.", key_in_degrees, felt->number));
        return std::nullopt;
    }
    const auto word = fields.one_of(key, felt_words());
    return word ? std::optional(felt_rooms.at(*word).temperature) : std::nullopt;
}

// True, with a complaint, when the same thing stands there as a word and as a number.
bool said_twice(Fields& fields, std::string_view word_key, std::string_view number_key) {
    const TreeValue* word = fields.value(word_key);
    const TreeValue* number = fields.value(number_key);
    if (word == nullptr || number == nullptr) {
        return false;
    }
    fields.complain("said_twice",
                    *number,
                    number_key,
                    fmt::format(" stands beside {}{}, expected one of the two",
                                fields.path(word_key),
                                word->line == number->line
                                    ? std::string()
                                    : fmt::format(" in line {}", word->line)),
                    "Leave one of the two out.");
    return true;
}

std::optional<Celsius> period_temperature(Fields& period) {
    if (said_twice(period, "feels", "c")) {
        return std::nullopt;
    }
    if (period.value("feels") != nullptr) {
        return felt_room(period, "feels", "c");
    }
    const auto degrees = period.number("c", room_range);
    if (period.value("c") == nullptr) {
        period.missing("c", R"({from = "07:00", c = 19}, or {from = "07:00", feels = "jumper"})");
    }
    return degrees ? std::optional(Celsius(*degrees)) : std::nullopt;
}

std::vector<RoomPeriod> room_of(Fields& fields, std::string_view file, Diagnostics& complaints) {
    std::vector<RoomPeriod> periods;
    if (said_twice(fields, "room", "room_c")) {
        return periods;
    }
    const TreeValue* room = fields.value("room_c");
    if (room == nullptr) {
        if (const auto felt = felt_room(fields, "room", "room_c")) {
            periods.push_back({ClockTime{}, *felt});
        }
        return periods;
    }
    if (room->kind != Kind::array) {
        if (room->kind != Kind::whole && room->kind != Kind::number) {
            fields.complain(
                "value_wrong_kind",
                *room,
                "room_c",
                fmt::format(" is {}, expected a number or a list of times of day",
                            value_words(*room)),
                room->kind == Kind::text && felt_temperature(room->text)
                    ? fmt::format("Without a thermometer write room = {}.", in_quotes(room->text))
                    : R"(Write room_c = 19, or [{from = "07:00", c = 19}, {from = "23:00", c = 16}].)");
        } else if (fields.check_range(*room, "room_c", room_range)) {
            periods.push_back({ClockTime{}, Celsius(room->number)});
        }
        return periods;
    }
    if (room->items.empty() || room->items.size() > most_periods) {
        fields.complain("value_out_of_range",
                        *room,
                        "room_c",
                        fmt::format(" lists {} times of day, expected 1 to {}",
                                    room->items.size(),
                                    most_periods),
                        "Leave the line out when you do not know how warm it is.");
        return periods;
    }
    for (const TreeValue& item : room->items) {
        if (item.kind != Kind::table) {
            fields.complain("value_wrong_kind",
                            item,
                            "room_c",
                            fmt::format(" lists {}, expected a time of day with a temperature",
                                        value_words(item)),
                            "Write {from = \"07:00\", c = 19}.");
            continue;
        }
        Fields period(item, "room_c", file, complaints);
        const auto from = period_start(period);
        const auto degrees = period_temperature(period);
        period.refuse_others();
        if (!from || !degrees) {
            continue;
        }
        const bool twice =
            std::any_of(periods.begin(), periods.end(), [&](const RoomPeriod& other) {
                return other.from == *from;
            });
        if (twice) {
            period.complain("value_out_of_range",
                            item,
                            "from",
                            fmt::format(" is {} a second time, expected each time of day once",
                                        clock_text(*from)),
                            "Leave one of the two out.");
        } else {
            periods.push_back({*from, *degrees});
        }
    }
    std::sort(periods.begin(), periods.end(), [](const RoomPeriod& a, const RoomPeriod& b) {
        return std::pair(a.from.hour, a.from.minute) < std::pair(b.from.hour, b.from.minute);
    });
    return periods;
}

Oven oven_of(Fields& top, std::string_view file, Diagnostics& complaints) {
    Oven oven;
    const TreeValue* table = top.table("oven");
    if (table == nullptr) {
        return oven;
    }
    Fields fields(*table, "oven", file, complaints);
    read_celsius(fields, "max_c", oven_max_range, oven.max);
    if (const auto minutes = fields.number("heat_up_minutes", heat_up_range)) {
        oven.heat_up = Minutes(*minutes);
    }
    oven.fan = fields.truth("fan").value_or(oven.fan);
    if (const auto shelves = fields.number("shelves", shelves_range)) {
        oven.shelves = static_cast<int>(*shelves);
    }
    if (const auto offset = fields.number("offset_c", oven_offset_range)) {
        oven.offset = CelsiusDifference(*offset);
    }
    fields.refuse_others(top_keys());
    return oven;
}

std::optional<double>
side_of(Fields& fields, std::string_view key, Range range, std::string_view example) {
    const auto side = fields.number(key, range);
    if (fields.value(key) == nullptr) {
        fields.missing(key, example);
    }
    return side;
}

std::vector<Tin> tins_of(Fields& top, std::string_view file, Diagnostics& complaints) {
    std::vector<Tin> tins;
    for (const TreeValue* table : top.tables("tin", most_tins)) {
        Fields fields(*table, "tin", file, complaints);
        const auto name = fields.text("name");
        if (fields.value("name") == nullptr) {
            fields.missing("name", "name = \"2 lb tin\"");
        }
        const auto length = side_of(fields, "length_mm", length_range, "length_mm = 210");
        const auto width = side_of(fields, "width_mm", width_range, "width_mm = 110");
        const auto height = side_of(fields, "height_mm", height_range, "height_mm = 70");
        fields.refuse_others(top_keys());
        if (name && length && width && height) {
            tins.push_back(
                {*name, Millimetres(*length), Millimetres(*width), Millimetres(*height)});
        }
    }
    return tins;
}

// The usual short names of the three yeasts, in the words of the ingredient table. Anything else
// stays as it was written.
std::string yeast_named(const std::string& text) {
    constexpr std::array<std::pair<std::string_view, std::string_view>, 9> names = {{
        {"instant", "instant yeast"},
        {"fast-action", "instant yeast"},
        {"fast-action dried", "instant yeast"},
        {"easy-blend", "instant yeast"},
        {"active dry", "active dry yeast"},
        {"active dried", "active dry yeast"},
        {"dried", "active dry yeast"},
        {"dry", "active dry yeast"},
        {"fresh", "fresh yeast"},
    }};
    for (const auto& [written, item] : names) {
        if (text == written) {
            return std::string(item);
        }
    }
    return text;
}

} // namespace

tl::expected<Kitchen, Diagnostics> kitchen_from_toml(std::string_view text, std::string_view name) {
    const auto tree = parse_toml(text, name);
    if (!tree) {
        return tl::unexpected(Diagnostics{tree.error()});
    }
    return kitchen_from_tree(*tree, "", name);
}

tl::expected<Kitchen, Diagnostics>
kitchen_from_tree(const TreeValue& tree, std::string heading, std::string_view name) {
    Diagnostics complaints;
    Fields fields(tree, std::move(heading), name, complaints);
    Kitchen kitchen;
    kitchen.room = room_of(fields, name, complaints);
    read_celsius(fields, "flour_c", flour_range, kitchen.flour);
    read_celsius(fields, "tap_c", tap_range, kitchen.tap);
    read_celsius(fields, "fridge_c", fridge_range, kitchen.fridge);
    if (const auto metres = fields.number("altitude_m", altitude_range)) {
        kitchen.altitude = Metres(*metres);
    }
    read_celsius(fields, "warm_spot_c", warm_spot_range, kitchen.warm_spot);
    kitchen.warm_spot_is_oven = fields.truth("warm_spot_is_oven").value_or(false);
    if (const auto method = fields.one_of("mixing", {"hand", "mixer"})) {
        kitchen.mixing = *method == 0 ? MixingMethod::hand : MixingMethod::mixer;
    }
    if (const auto yeast = fields.text("yeast")) {
        kitchen.yeast = yeast_named(*yeast);
    }
    kitchen.oven = oven_of(fields, name, complaints);
    kitchen.tins = tins_of(fields, name, complaints);
    fields.refuse_others();
    if (!complaints.empty()) {
        sort_by_line(complaints, name);
        return tl::unexpected(complaints);
    }
    return kitchen;
}

} // namespace loafwright::settings

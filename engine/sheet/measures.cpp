// SPDX-License-Identifier: Apache-2.0
//
// Units for the page. Numbers come typed wherever the engine has them so; the few sentences that it
// hands on as text hold clock times as "13:05" and temperatures as "5 °C", and nothing else that
// looks like one, because we wrote them.
#include "engine/sheet/measures.hpp"

#include "engine/fitting/words.hpp"
#include "engine/planning/words.hpp"
#include "engine/quantity/conversion.hpp"

#include <fmt/format.h>

#include <array>
#include <cmath>
#include <cstdint>
#include <cstdlib>

namespace loafwright::sheet {

namespace {

constexpr std::string_view celsius_sign = " °C";
constexpr double coolest_oven_c = 100.0; // below it nobody reads a dial in fives

bool is_digit(char c) {
    return c >= '0' && c <= '9';
}

long long whole(double number) {
    return static_cast<long long>(std::floor(number + 0.5));
}

// To the nearest five, as the dials of ovens in °F are marked (common practice).
long long fahrenheit_of_oven(Celsius temperature) {
    return 5 * whole(fahrenheit_from_celsius(temperature) / 5.0);
}

long long fahrenheit_number(Celsius temperature) {
    return temperature.degrees() >= coolest_oven_c ? fahrenheit_of_oven(temperature)
                                                   : whole(fahrenheit_from_celsius(temperature));
}

std::string clock_of(ClockTime time, ClockForm form) {
    if (form == ClockForm::hours_24) {
        return clock_text(time);
    }
    if (time.minute == 0 && time.hour % 12 == 0) {
        return time.hour == 0 ? "12 midnight" : "12 noon";
    }
    const int hour = time.hour % 12 == 0 ? 12 : time.hour % 12;
    return fmt::format("{}:{:02} {}", hour, time.minute, time.hour < 12 ? "am" : "pm");
}

// Grams as kitchen scales show them: whole from ten up, one decimal below where it is not zero.
std::string grams_text(double grams, bool about) {
    if (grams < 10.0) {
        const double marks = about && grams >= 2.0 ? 2.0 : 10.0;
        const double shown = std::floor(grams * marks + 0.5) / marks;
        return shown == std::floor(shown) ? fmt::format("{:.0f} g", shown)
                                          : fmt::format("{:.1f} g", shown);
    }
    const double step = !about ? 1.0 : grams < 50.0 ? 1.0 : grams < 200.0 ? 5.0 : 10.0;
    return fmt::format("{:.0f} g", step * std::floor(grams / step + 0.5));
}

std::string ounces_text(double grams, bool about) {
    const double ounces = grams / grams_per_ounce.count();
    const std::int64_t hundredths =
        about && ounces >= 0.1 ? 5 * whole(ounces * 20.0) : std::max(1LL, whole(ounces * 100.0));
    if (hundredths < 100) {
        // "0.5", not "0.50".
        return hundredths % 10 == 0 ? fmt::format("0.{} oz", hundredths / 10)
                                    : fmt::format("0.{:02} oz", hundredths);
    }
    static constexpr std::array<std::string_view, 4> quarter_marks = {"", "¼", "½", "¾"};
    const std::int64_t quarters = whole(ounces * 4.0);
    const std::int64_t pounds = quarters / 64;
    const std::int64_t rest = quarters % 64;
    const std::string small = (rest >= 4 ? std::to_string(rest / 4) : std::string()) +
                              std::string(quarter_marks[static_cast<std::size_t>(rest % 4)]) +
                              " oz";
    return pounds == 0 ? small
           : rest == 0 ? fmt::format("{} lb", pounds)
                       : fmt::format("{} lb {}", pounds, small);
}

// Where the number begins that ends before `end`; `end` where there is none.
std::size_t number_before(std::string_view text, std::size_t end) {
    std::size_t at = end;
    while (at > 0 && (is_digit(text[at - 1]) || text[at - 1] == '.')) {
        --at;
    }
    if (at < end && at > 0 && text[at - 1] == '-' && (at == 1 || text[at - 2] == ' ')) {
        --at;
    }
    return at;
}

Celsius celsius_in(std::string_view number) {
    return Celsius(std::strtod(std::string(number).c_str(), nullptr));
}

// "5 °C", "0 and 5 °C" and "180 to 190 °C" at the end of `text`, in °F.
void end_in_fahrenheit(std::string& text) {
    const std::size_t begin = number_before(text, text.size());
    if (begin == text.size()) {
        text += celsius_sign;
        return;
    }
    std::string shown = fmt::format("{} °F", fahrenheit_number(celsius_in(text.substr(begin))));
    text.erase(begin);
    for (const std::string_view between : {" to ", " and "}) {
        const bool is_range =
            text.size() > between.size() &&
            text.compare(text.size() - between.size(), between.size(), between) == 0;
        const std::size_t end = text.size() - between.size();
        const std::size_t first = is_range ? number_before(text, end) : end;
        if (is_range && first < end) {
            const Celsius low = celsius_in(text.substr(first, end - first));
            shown = fmt::format("{}{}{}", fahrenheit_number(low), between, shown);
            text.erase(first);
            break;
        }
    }
    text += shown;
}

// The clock time at `at`, "13:05" with nothing but words around it.
bool is_clock_at(std::string_view text, std::size_t at) {
    constexpr std::size_t length = 5;
    if (at + length > text.size() || (at > 0 && (is_digit(text[at - 1]) || text[at - 1] == ':'))) {
        return false;
    }
    const bool digits = is_digit(text[at]) && is_digit(text[at + 1]) && text[at + 2] == ':' &&
                        is_digit(text[at + 3]) && is_digit(text[at + 4]);
    const bool ends =
        at + length == text.size() || (!is_digit(text[at + length]) && text[at + length] != ':');
    return digits && ends && text.substr(at, 2) < "24" && text[at + 3] < '6';
}

struct QuoteMarks {
    std::string_view open;
    std::string_view close;
};
constexpr std::array<QuoteMarks, 2> quote_marks = {QuoteMarks{"\"", "\""}, QuoteMarks{"“", "”"}};

// How many bytes at `at` are a quotation, marks and all; 0 where none begins.
std::size_t quotation_at(std::string_view text, std::size_t at) {
    for (const QuoteMarks& marks : quote_marks) {
        if (text.substr(at, marks.open.size()) == marks.open) {
            const std::size_t end = text.find(marks.close, at + marks.open.size());
            return end == std::string_view::npos ? 0 : end + marks.close.size() - at;
        }
    }
    return 0;
}

} // namespace

std::string clock(const Zone& zone, Instant moment, ClockForm form) {
    return clock_of(civil_of(zone, moment).clock, form);
}

std::string degrees(Celsius temperature, TemperatureScale scale) {
    return scale == TemperatureScale::celsius
               ? fitting::degrees_text(temperature)
               : fmt::format("{} °F", fahrenheit_number(temperature));
}

std::string oven_setting(Celsius temperature, TemperatureScale scale) {
    if (scale == TemperatureScale::celsius) {
        return planning::words::oven(temperature);
    }
    return fmt::format("{} °F (fan {}, gas {})",
                       fahrenheit_of_oven(temperature),
                       fahrenheit_of_oven(temperature - fan_allowance),
                       gas_mark_text(gas_mark_from_celsius(temperature)));
}

std::string weight(Grams grams, bool about, WeightUnit unit) {
    return unit == WeightUnit::grams ? grams_text(grams.count(), about)
                                     : ounces_text(grams.count(), about);
}

std::string act_text(const Act& act, const SheetOptions& options) {
    if (!act.oven || options.temperature == TemperatureScale::celsius) {
        return act.text;
    }
    const std::string written = planning::words::oven(*act.oven);
    const std::size_t at = act.text.rfind(written);
    return at == std::string::npos
               ? act.text
               : act.text.substr(0, at) + oven_setting(*act.oven, options.temperature);
}

std::string words_of(const Phrase& phrase, const SheetOptions& options) {
    struct Words {
        const SheetOptions& options;
        std::string operator()(const std::string& words) const { return words; }
        std::string operator()(Celsius temperature) const {
            return degrees(temperature, options.temperature);
        }
        std::string operator()(CelsiusDifference difference) const {
            if (options.temperature == TemperatureScale::celsius) {
                return fitting::degrees_text(Celsius(difference.count()));
            }
            return fmt::format("{} °F", whole(difference.count() * 9.0 / 5.0));
        }
        std::string operator()(Grams grams) const { return weight(grams, false, options.weight); }
    };
    std::string text;
    for (const Phrase::Part& part : phrase.parts) {
        text += std::visit(Words{options}, part);
    }
    return text;
}

std::string our_sentence(std::string_view text, const SheetOptions& options, Quoted quoted) {
    std::string out;
    std::size_t at = 0;
    while (at < text.size()) {
        const std::size_t kept = quoted == Quoted::recipes ? quotation_at(text, at) : 0;
        if (kept > 0) {
            out += text.substr(at, kept);
            at += kept;
        } else if (options.clock == ClockForm::hours_12 && is_clock_at(text, at)) {
            const ClockTime time{10 * (text[at] - '0') + (text[at + 1] - '0'),
                                 10 * (text[at + 3] - '0') + (text[at + 4] - '0')};
            out += clock_of(time, options.clock);
            at += 5;
        } else if (options.temperature == TemperatureScale::fahrenheit &&
                   text.substr(at, celsius_sign.size()) == celsius_sign) {
            end_in_fahrenheit(out);
            at += celsius_sign.size();
        } else {
            out += text[at];
            ++at;
        }
    }
    return out;
}

} // namespace loafwright::sheet

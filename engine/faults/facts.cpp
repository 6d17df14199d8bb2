// SPDX-License-Identifier: Apache-2.0
//
// What a log shows, as facts that rows of data speak of. A fact is stronger the farther the log is
// from where it begins to hold: 40 minutes in place of 95 say more than 80 do.
#include "engine/faults/facts.hpp"

#include "engine/fitting/words.hpp"
#include "engine/following/growth.hpp"
#include "engine/following/troubles.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <utility>

namespace loafwright::faults {

namespace {

constexpr double short_from = 0.87;
constexpr double long_from = 1.15;
constexpr double full_at = 1.6;
constexpr double least_strength = 0.25;
constexpr double near_the_end = 0.8;

double strength(double beyond, double full) {
    return std::clamp(beyond / full, least_strength, 1.0);
}

std::string percent_text(double percent) {
    return percent < 10.0 ? fmt::format("{:.1f} %", percent) : fmt::format("{:.0f} %", percent);
}

std::string rounded_degrees(Celsius celsius) {
    return fitting::degrees_text(Celsius(std::round(celsius.degrees())));
}

/// Gathers the facts of one log.
class Facts {
public:
    explicit Facts(const BakeLog& log) : log_(log) {}

    std::vector<Fact> all() {
        rises();
        hands_and_rests();
        bakes();
        temperatures();
        percents();
        raised_by();
        troubles();
        return std::move(facts_);
    }

private:
    Fact& add(std::string_view key, double how_much = 1.0) {
        Fact fact;
        fact.key = key;
        fact.strength = how_much;
        facts_.push_back(std::move(fact));
        return facts_.back();
    }

    // The real minutes over the planned ones, where they tell something.
    static std::optional<double> ratio_of(const LoggedLine* line) {
        if (line == nullptr || !line->timed || line->chosen || line->minutes.likely <= 0) {
            return std::nullopt;
        }
        return static_cast<double>(std::max<std::int64_t>(1, real_minutes(*line).value_or(1))) /
               static_cast<double>(line->minutes.likely);
    }

    void in_words(Fact& fact, const LoggedLine& line) const {
        fact.real = fitting::duration_text(real_minutes(line).value_or(0));
        fact.wanted = fitting::duration_text(line.minutes.likely);
        if (const auto stood = where_it_stood(line)) {
            fact.place = " at " + rounded_degrees(*stood);
        }
    }

    // Where the dough stood: what was measured in that line goes before what was planned.
    static std::optional<Celsius> where_it_stood(const LoggedLine& line) {
        for (const LoggedTemperature& read : line.temperatures) {
            if (read.measured == Measured::room) {
                return read.celsius;
            }
        }
        return line.stands;
    }

    /// Keys for shorter, as planned and longer; an empty one says nothing.
    struct Keys {
        std::string_view less;
        std::string_view same;
        std::string_view more;
    };

    void against_plan(const LoggedLine* line, Keys keys, double less_from, double more_from) {
        const auto ratio = ratio_of(line);
        if (!ratio) {
            return;
        }
        const bool less = *ratio <= less_from;
        const bool more = *ratio >= more_from;
        const std::string_view key = less ? keys.less : more ? keys.more : keys.same;
        if (!key.empty()) {
            in_words(
                add(key,
                    less || more ? strength(std::fabs(std::log(*ratio)), std::log(full_at)) : 1.0),
                *line);
        }
    }

    void growth(const LoggedLine* line, std::string_view little, std::string_view past) {
        if (line == nullptr || !line->grown || !line->wanted_growth || !line->begun) {
            return;
        }
        const auto looked = static_cast<double>(minutes_between(*line->begun, line->grown->at));
        const auto length = static_cast<double>(real_minutes(*line).value_or(line->minutes.likely));
        const double share = following::gain_of(line->grown->growth) / *line->wanted_growth;
        if (looked < near_the_end * length) {
            return;
        }
        if (share <= 0.75) {
            add(little, strength(0.75 - share, 0.5)).grown =
                line->grown->growth == Growth::little         ? "a little"
                : line->grown->growth == Growth::half_as_much ? "by half"
                                                              : "to double";
        } else if (share >= 1.5) {
            add(past, strength(share - 1.4, 0.5)).grown =
                line->grown->growth == Growth::more ? "more than doubled" : "doubled";
        }
    }

    void rises() {
        const LoggedLine* prove = line_of(log_, StepKind::prove);
        against_plan(
            prove, {"prove_short", "prove_as_planned", "prove_long"}, short_from, long_from);
        growth(prove, "prove_grew_little", "prove_grew_past");
        const LoggedLine* rise = line_of(log_, StepKind::rise);
        against_plan(rise, {"rise_short", "", "rise_long"}, short_from, long_from);
        growth(rise, "rise_grew_little", "rise_grew_past");
    }

    void hands_and_rests() {
        const LoggedLine* knead = line_of(log_, StepKind::knead);
        knead = knead != nullptr ? knead : line_of(log_, StepKind::mix);
        against_plan(knead, {"knead_short", "", "knead_long"}, 0.7, 1.2);
        against_plan(line_of(log_, StepKind::rest), {"rest_short", "", ""}, 0.7, 1e9);
        against_plan(line_of(log_, StepKind::cool),
                     {"cooled_short", "cooled_enough", "cooled_enough"},
                     0.6,
                     1e9);
    }

    void bakes() {
        against_plan(line_of(log_, StepKind::bake),
                     {"bake_short", "bake_as_planned", "bake_long"},
                     0.87,
                     1.15);
    }

    void temperatures() {
        std::optional<Celsius> dough;
        std::optional<Celsius> room;
        std::optional<Celsius> middle;
        double oven_off = 0.0;
        int oven_reads = 0;
        const LoggedLine* baked = nullptr;
        for (const LoggedLine& line : log_.lines) {
            for (const LoggedTemperature& read : line.temperatures) {
                switch (read.measured) {
                case Measured::dough:
                    dough = dough ? dough : read.celsius; // the first, after mixing
                    break;
                case Measured::room:
                    room = read.celsius;
                    break;
                case Measured::loaf:
                    middle = read.celsius;
                    break;
                case Measured::oven:
                    if (line.setting) {
                        oven_off += (read.celsius - *line.setting).count();
                        ++oven_reads;
                        baked = &line;
                    }
                    break;
                }
            }
            if (!room && line.kind == StepKind::rise && line.place == Place::counter) {
                room = line.stands;
            }
        }
        if (dough) {
            of_dough(*dough);
        }
        if (room && room->degrees() < 19.0) {
            add("room_cold", strength(19.0 - room->degrees(), 4.0)).measured =
                rounded_degrees(*room);
        } else if (room && room->degrees() > 26.0) {
            add("room_warm", strength(room->degrees() - 26.0, 4.0)).measured =
                rounded_degrees(*room);
        }
        if (middle) {
            of_middle(*middle);
        }
        if (baked != nullptr) {
            of_oven(oven_off / oven_reads, *baked->setting);
        }
    }

    void of_dough(Celsius dough) {
        const double c = dough.degrees();
        if (c < 22.5) {
            add("dough_cold", strength(22.5 - c, 4.0)).measured = rounded_degrees(dough);
        } else if (c > 29.5) {
            add("dough_warm", strength(c - 29.5, 4.0)).measured = rounded_degrees(dough);
        } else if (c >= 23.0 && c <= 28.0) {
            add("dough_usual").measured = rounded_degrees(dough);
        }
    }

    void of_middle(Celsius middle) {
        const double lower = log_.family == DoughFamily::enriched ? 5.0 : 0.0;
        const double c = middle.degrees();
        if (c < 93.0 - lower) {
            add("middle_low", strength(93.0 - lower - c, 6.0)).measured = rounded_degrees(middle);
        } else if (c >= 95.0 - lower) {
            add("middle_done").measured = rounded_degrees(middle);
        }
    }

    void of_oven(double off, Celsius setting) {
        const bool right = std::fabs(off) <= 8.0;
        if (!right && std::fabs(off) < 12.0) {
            return;
        }
        Fact& fact = add(right       ? "oven_right"
                         : off < 0.0 ? "oven_cool"
                                     : "oven_hot",
                         right ? 1.0 : strength(std::fabs(off), 25.0));
        fact.measured = rounded_degrees(setting + CelsiusDifference(off));
        fact.wanted = rounded_degrees(setting);
    }

    void percents() {
        const DoughPercents& dough = log_.dough;
        const bool enriched = log_.family == DoughFamily::enriched;
        if (dough.salt) {
            add(*dough.salt < 1.4   ? "salt_low"
                : *dough.salt > 2.6 ? "salt_high"
                                    : "salt_usual")
                .measured = percent_text(*dough.salt);
        }
        if (dough.sugar && *dough.sugar >= 8.0) {
            add("sugar_high", strength(*dough.sugar - 6.0, 10.0)).measured =
                percent_text(*dough.sugar);
        } else if (dough.sugar && *dough.sugar < 2.0) {
            add("sugar_low");
        }
        if (dough.fat && *dough.fat < 2.0) {
            add("fat_low");
        }
        const bool plain =
            log_.family == DoughFamily::lean || log_.family == DoughFamily::wholegrain;
        if (dough.water && plain && *dough.water < 57.0) {
            add("water_low", strength(57.0 - *dough.water, 8.0)).measured =
                percent_text(*dough.water);
        } else if (dough.water && plain && *dough.water > 76.0) {
            add("water_high", strength(*dough.water - 76.0, 8.0)).measured =
                percent_text(*dough.water);
        }
        const LoggedLine* rise = line_of(log_, StepKind::rise);
        const bool quick = rise != nullptr && !rise->chosen && rise->minutes.likely < 180;
        if (dough.yeast && *dough.yeast < 0.7 && quick) {
            add("yeast_low").measured = percent_text(*dough.yeast);
        } else if (dough.yeast && *dough.yeast > (enriched ? 6.0 : 4.5)) {
            add("yeast_high").measured = percent_text(*dough.yeast);
        }
    }

    void raised_by() {
        if (!log_.leaven.empty()) {
            add(log_.leaven == "yeast" ? "by_yeast" : "by_leaven");
        }
    }

    void troubles() {
        for (const LoggedLine& line : log_.lines) {
            for (const Trouble trouble : line.troubles) {
                for (const auto& [told, key] : told_keys) {
                    if (told == trouble) {
                        add(key);
                    }
                }
            }
        }
    }

    static constexpr std::array<std::pair<Trouble, std::string_view>, 5> told_keys{
        {{Trouble::no_salt, "told_no_salt"},
         {Trouble::no_yeast, "told_no_yeast"},
         {Trouble::too_sticky, "told_too_sticky"},
         {Trouble::not_rising, "told_not_rising"},
         {Trouble::gone_too_far, "told_gone_too_far"}}};

    const BakeLog& log_;
    std::vector<Fact> facts_;
};

void replace_all(std::string& text, std::string_view what, const std::string& with) {
    for (std::size_t at = text.find(what); at != std::string::npos;
         at = text.find(what, at + with.size())) {
        text.replace(at, what.size(), with);
    }
}

} // namespace

const std::vector<std::string_view>& fact_keys() {
    static const std::vector<std::string_view> keys{
        "prove_short",     "prove_as_planned", "prove_long",      "prove_grew_little",
        "prove_grew_past", "rise_short",       "rise_long",       "rise_grew_little",
        "rise_grew_past",  "dough_cold",       "dough_usual",     "dough_warm",
        "room_cold",       "room_warm",        "oven_cool",       "oven_hot",
        "oven_right",      "middle_low",       "middle_done",     "bake_as_planned",
        "bake_short",      "bake_long",        "cooled_short",    "cooled_enough",
        "knead_short",     "knead_long",       "rest_short",      "salt_low",
        "salt_high",       "salt_usual",       "sugar_high",      "sugar_low",
        "fat_low",         "water_low",        "water_high",      "yeast_low",
        "yeast_high",      "by_leaven",        "by_yeast",        "told_no_salt",
        "told_no_yeast",   "told_too_sticky",  "told_not_rising", "told_gone_too_far"};
    return keys;
}

std::vector<Fact> facts_of(const BakeLog& log) {
    return Facts(log).all();
}

std::string sentence_of(std::string_view says, const Fact& fact) {
    std::string sentence(says);
    replace_all(sentence, "{real}", fact.real);
    replace_all(sentence, "{wanted}", fact.wanted);
    replace_all(sentence, "{place}", fact.place);
    replace_all(sentence, "{measured}", fact.measured);
    replace_all(sentence, "{grown}", fact.grown);
    return sentence;
}

} // namespace loafwright::faults

// SPDX-License-Identifier: Apache-2.0
//
// The length of one step in one kitchen. The recipe's own time comes first: it knows its dough.
// Physics only carries it over to a room of another temperature (engine/dough). Where the text has
// no time, common practice stands in, smaller where a step is one of several of its kind done in
// one go, and for bread of many pieces by the piece.
#include "engine/fitting/steps.hpp"

#include "engine/dough/altitude.hpp"
#include "engine/dough/fermentation.hpp"
#include "engine/dough/yeast.hpp"
#include "engine/fitting/words.hpp"
#include "engine/recipe/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace loafwright::fitting {

namespace {

/// A length before it is made whole, and where it comes from.
struct Length {
    Band<Minutes> minutes;
    Basis basis = Basis::assumed;
    std::string reason;
};

// For a second step of the same kind in one go of work: "stir in the salt" after "mix".
constexpr Band<Minutes> a_moment{Minutes(1.0), Minutes(2.0), Minutes(3.0)};
// Dividing and shaping by the piece, at a beginner's pace (common practice).
constexpr Band<Minutes> a_piece{Minutes(0.5), Minutes(1.0), Minutes(2.0)};
// Greasing a tin or drying seeds beside other work; half the table's figure for preparing on its
// own.
constexpr Band<Minutes> prepare_beside{Minutes(1.0), Minutes(3.0), Minutes(5.0)};
constexpr Band<Minutes> knead_by_mixer{Minutes(5.0), Minutes(8.0), Minutes(12.0)};
constexpr Band<Minutes> bake_rolls{Minutes(12.0), Minutes(18.0), Minutes(25.0)};
constexpr Band<Minutes> weigh_five{Minutes(5.0), Minutes(10.0), Minutes(15.0)};
constexpr std::size_t weighed_in_that_time = 5;
constexpr double most_extra_weighing = 10.0;
constexpr Minutes shortest_heat{5.0};
// From here on a stated range outside the fridge is a choice and no longer a doubt.
constexpr Minutes long_wait{240.0};
// A text's own "overnight" is about sleep; it does not grow in a cold kitchen.
constexpr Minutes overnight_from{360.0};

Band<Minutes> plus(const Band<Minutes>& band, Minutes more) {
    return {band.low + more, band.likely + more, band.high + more};
}

Band<Minutes> times(const Band<Minutes>& band, double factor) {
    return {band.low * factor, band.likely * factor, band.high * factor};
}

Band<Minutes> at_least(const Band<Minutes>& band, const Band<Minutes>& floor) {
    return {std::max(band.low, floor.low),
            std::max(band.likely, floor.likely),
            std::max(band.high, floor.high)};
}

// Low and high may come crossed from a careless table or text; the page never shows that.
Band<Minutes> in_order(Band<Minutes> band) {
    band.low = std::max(band.low, Minutes(0.0));
    band.likely = std::max(band.likely, band.low);
    band.high = std::max(band.high, band.likely);
    return band;
}

// "90", "90 min", "1 h 30", "2 hours", "60 to 90 min": what an open question is answered with
// meanwhile.
std::optional<Minutes> minutes_of_answer(std::string_view answer) {
    const auto number = first_number(answer);
    if (!number || *number <= 0.0) {
        return std::nullopt;
    }
    const std::string words = lower_case(answer);
    const std::size_t digits = words.find_first_of("0123456789");
    const std::size_t after = words.find_first_not_of("0123456789. ", digits);
    const bool hours = after != std::string::npos && words[after] == 'h';
    if (!hours) {
        return Minutes(*number);
    }
    const std::size_t more = words.find_first_of("0123456789", after);
    const auto rest = more != std::string::npos ? first_number(words.substr(more)) : std::nullopt;
    return Minutes(60.0 * *number + rest.value_or(0.0));
}

// True when another step of this kind without a time of its own stands before it in the same go of
// work.
bool goes_on_with_the_same(const std::vector<Step>& steps, std::size_t index) {
    for (std::size_t i = index; i > 0; --i) {
        const Step& before = steps[i - 1];
        if (attention_of(before.kind) != Attention::hands) {
            return false;
        }
        if (before.kind == steps[index].kind && before.part == steps[index].part) {
            return true;
        }
    }
    return false;
}

bool stands_beside_work(const std::vector<Step>& steps, std::size_t index) {
    const auto is_work = [&steps](std::size_t i) {
        return i < steps.size() && attention_of(steps[i].kind) == Attention::hands;
    };
    return (index > 0 && is_work(index - 1)) || is_work(index + 1);
}

// What the text states for the other heats of the same bake: "10 minutes at 230, then turn down
// until golden".
Minutes baked_otherwise(const std::vector<Step>& steps, std::size_t index) {
    Minutes sum(0.0);
    for (std::size_t i = 0; i < steps.size(); ++i) {
        if (i != index && steps[i].kind == StepKind::bake && steps[i].minutes) {
            sum += steps[i].minutes->minutes.likely;
        }
    }
    return sum;
}

Band<Minutes>
usual_minutes(const Surroundings& here, std::size_t index, const StageDefaultRow* row) {
    const Recipe& recipe = here.reading.recipe;
    const Step& step = recipe.steps[index];
    Band<Minutes> minutes = row != nullptr ? row->minutes : exactly(Minutes(0.0));
    const double pieces = recipe.pieces.value_or(1.0);
    switch (step.kind) {
    case StepKind::weigh: {
        const std::size_t items = recipe.ingredients.size();
        const double extra =
            items > weighed_in_that_time ? static_cast<double>(items - weighed_in_that_time) : 0.0;
        return plus(minutes, Minutes(std::min(extra, most_extra_weighing)));
    }
    case StepKind::prepare:
        if (stands_beside_work(recipe.steps, index)) {
            minutes = prepare_beside;
        }
        break;
    case StepKind::knead:
        if (here.kitchen.mixing == MixingMethod::mixer) {
            minutes = knead_by_mixer;
        }
        break;
    case StepKind::divide:
    case StepKind::shape:
        // Past a tray or two the pieces are small and quick.
        if (pieces >= 4.0 && !goes_on_with_the_same(recipe.steps, index)) {
            return at_least(minutes, times(a_piece, std::min(pieces, 24.0)));
        }
        break;
    case StepKind::bake: {
        if (here.form == Form::rolls && here.family != DoughFamily::flatbread) {
            minutes = bake_rolls;
        }
        const Minutes otherwise = baked_otherwise(recipe.steps, index);
        if (otherwise > Minutes(0.0)) {
            const Minutes least = shortest_heat;
            return {std::max(least, minutes.low - otherwise),
                    std::max(least, minutes.likely - otherwise),
                    std::max(least, minutes.high - otherwise)};
        }
        break;
    }
    default:
        break;
    }
    if (attention_of(step.kind) == Attention::hands && goes_on_with_the_same(recipe.steps, index)) {
        return a_moment;
    }
    return minutes;
}

Length length_of(const Surroundings& here, std::size_t index, const StageDefaultRow* row) {
    const Step& step = here.reading.recipe.steps[index];
    Length length;
    if (step.minutes) {
        length.minutes = in_order(step.minutes->minutes);
        length.basis = step.minutes->basis;
        if (!step.because_made.empty()) {
            length.reason = (length.basis == Basis::computed ? "worked out " : "our guess ") +
                            step.because_made;
            return length;
        }
        length.reason = length.basis == Basis::stated ? "from the recipe"
                        : length.basis == Basis::open ? "our guess until you say"
                                                      : "our guess from the recipe's words";
        return length;
    }
    length.minutes = in_order(usual_minutes(here, index, row));
    length.reason = "our guess: the recipe gives no time";
    if (step.minutes_question) {
        length.basis = Basis::open;
        length.reason = "our guess until you say";
        const Question* question = question_named(here.reading.questions, *step.minutes_question);
        const auto answer =
            question != nullptr ? minutes_of_answer(question->default_answer) : std::nullopt;
        if (answer && *answer > length.minutes.high) {
            length.minutes.high = *answer;
        }
        if (answer && *answer < length.minutes.low) {
            length.minutes.low = *answer;
        }
        if (answer) {
            length.minutes.likely = *answer;
        }
    }
    return length;
}

// In thin air less gas fills the same loaf.
double thin_air_factor(const Kitchen& kitchen) {
    constexpr Metres matters_from{300.0};
    if (kitchen.altitude < matters_from) {
        return 1.0;
    }
    const double ratio = dough::air_pressure(kitchen.altitude) / dough::air_pressure(Metres(0.0));
    return dough::gas_needed(ratio).likely;
}

std::string sentence_of(std::int64_t longer, const Transfer& transfer) {
    const std::string change = longer > 0   ? duration_text(longer) + " longer"
                               : longer < 0 ? duration_text(-longer) + " shorter"
                                            : "as long as in the recipe";
    return fmt::format("{}: {}, {}", change, plain_text(transfer.here), plain_text(transfer.there));
}

// "and the dough cools as it stands", where it is far enough from its place to matter.
std::string on_its_way(const DoughCourse& course) {
    constexpr double far_c = 3.0;
    if (!(course.time_constant > Minutes(0.0))) {
        return "";
    }
    const double above = (course.here_start - course.here_place).count();
    return above > far_c    ? ", and the dough cools as it stands"
           : above < -far_c ? ", and the dough comes cold"
                            : "";
}

/// Carries a length over to where the dough stands here, along its own temperature.
std::optional<Transfer>
carry_over(const Surroundings& here, std::size_t index, Length& length, bool stretch) {
    const Step& step = here.reading.recipe.steps[index];
    const auto place = place_here(here.kitchen, step.place);
    const std::optional<DoughCourse>& course = here.courses[index];
    const double thin_air = thin_air_factor(here.kitchen);
    if (!place || !course || (course->is_alike() && thin_air == 1.0)) {
        return std::nullopt;
    }
    const WrittenFor written = written_for(step, here.knowledge);
    const Band<Minutes> old = length.minutes;
    const Band<Celsius>& there = place->temperature;
    const dough::Curve curve = curve_of(here.family);
    const auto likely = course->carried(old.likely, curve);
    const auto quickest = course->carried(old.low, curve, there.high - there.likely);
    const auto slowest = course->carried(old.high, curve, there.low - there.likely);
    if (!likely || !quickest || !slowest) {
        return std::nullopt;
    }
    // A range that is a choice stays the choice it was; a doubt gets the doubt of the transfer on
    // top.
    length.minutes = stretch ? Band<Minutes>{quickest->likely, likely->likely, slowest->likely}
                             : Band<Minutes>{quickest->low, likely->likely, slowest->high};
    length.minutes = times(length.minutes, thin_air);
    const auto five = [](Minutes minutes) {
        return Minutes(static_cast<double>(nearest_five(minutes)));
    };
    length.minutes = in_order(
        {five(length.minutes.low), five(length.minutes.likely), five(length.minutes.high)});
    if (length.basis != Basis::open) {
        length.basis = Basis::computed;
    }
    Transfer transfer;
    // In fives, as the wait itself is: nobody wants to read "7 min longer".
    const double longer = (length.minutes.likely - old.likely).count();
    transfer.longer_minutes = 5 * static_cast<std::int64_t>(std::lround(longer / 5.0));
    transfer.here = phrase("{} is {}", {place->name, there.likely});
    transfer.there = written.name;
    if (thin_air != 1.0) {
        transfer.there += phrase(
            fmt::format("; at {:.0f} m dough rises with less gas", here.kitchen.altitude.count()));
    }
    length.reason = sentence_of(transfer.longer_minutes, transfer) + on_its_way(*course);
    return transfer;
}

Band<std::int64_t> whole(const Band<Minutes>& band) {
    return {whole_minutes(band.low), whole_minutes(band.likely), whole_minutes(band.high)};
}

// The dough's patience is given for 24 °C; in a colder place it lasts as much longer as the gas
// comes slower.
std::optional<std::int64_t>
patience(const Surroundings& here, const Step& step, const StageDefaultRow* row) {
    if (row == nullptr || !row->holds) {
        return std::nullopt;
    }
    const Minutes at_24 = row->holds->likely;
    std::optional<Celsius> place;
    if (step.place == Place::fridge) {
        // A row about the fridge holds its own figure.
        if (!row->place) {
            place = here.kitchen.fridge;
        }
    } else if (const auto stands = place_here(here.kitchen, step.place)) {
        place = stands->temperature.likely;
    }
    const auto carried =
        place ? dough::transferred(at_24, Celsius(24.0), *place) : std::optional<Band<Minutes>>{};
    return carried ? nearest_five(carried->likely) : whole_minutes(at_24);
}

// The recipe's bake in this tin, this oven and at this height.
void carry_over_bake(const Surroundings& here, Length& length) {
    if (!here.bake || length.basis == Basis::open) {
        return;
    }
    const Band<double>& factor = here.bake->factor;
    const Band<Minutes> old = length.minutes;
    length.minutes =
        in_order({old.low * factor.low, old.likely * factor.likely, old.high * factor.high});
    length.basis = Basis::computed;
    const std::int64_t longer = whole_minutes(length.minutes.likely) - whole_minutes(old.likely);
    length.reason = fmt::format("{}: {}",
                                longer > 0   ? duration_text(longer) + " longer"
                                : longer < 0 ? duration_text(-longer) + " shorter"
                                             : "as long as in the recipe",
                                here.bake->reason);
    if (!here.bake->advice.empty()) {
        length.reason += "; " + here.bake->advice;
    }
}

void heat_here(const Surroundings& here, const OvenHeat& heat, FittedStep& fitted) {
    fitted.oven = heat.setting;
    if (here.bake) {
        return; // the shorter reach of the oven is reckoned in already
    }
    if (fitted.kind == StepKind::bake && heat.is_limited) {
        // Common practice: a cooler oven takes up to a fifth longer for the same colour.
        fitted.minutes.high = std::max(
            fitted.minutes.high,
            static_cast<std::int64_t>(std::ceil(1.2 * static_cast<double>(fitted.minutes.likely))));
        fitted.reason += fmt::format("; your oven stops at {}, so it may take a little longer",
                                     degrees_text(here.kitchen.oven.max));
    }
}

} // namespace

StepHere step_here(const Surroundings& here, std::size_t index) {
    const Step& step = here.reading.recipe.steps[index];
    StepHere out;
    FittedStep& fitted = out.fitted;
    fitted.step = index;
    fitted.kind = step.kind;
    fitted.place = step.place;
    fitted.attention = attention_of(step.kind);

    if (step.kind == StepKind::serve || step.kind == StepKind::store) {
        fitted.minutes = exactly<std::int64_t>(0);
        fitted.basis = Basis::assumed;
        fitted.reason = "takes no time in the plan";
        return out;
    }
    const StageDefaultRow* row = stage_default(here.knowledge, step.kind, here.family, step.place);
    Length length = length_of(here, index, row);
    const std::optional<OvenHeat>& heat = here.heats[index];
    if (step.kind == StepKind::preheat && !step.minutes && heat) {
        const auto minutes =
            heat_up_minutes(here.kitchen, heat->setting, heats_a_stone(step.text, step.kind));
        fitted.minutes = exactly(minutes);
        fitted.basis = Basis::computed;
        fitted.reason = fmt::format(
            "{} until your oven has {}", duration_text(minutes), degrees_text(heat->setting));
        fitted.oven = heat->setting;
        return out;
    }

    const bool is_range = length.minutes.low < length.minutes.high;
    const bool is_wait = fitted.attention == Attention::wait;
    const bool dough_decides = depends_on_room(step.kind, step.place);
    fitted.stretch = is_wait && is_range && step.kind != StepKind::cool &&
                     (step.place == Place::fridge ||
                      (step.minutes && length.minutes.low >= long_wait &&
                       (step.because_made.empty() || step.kind == StepKind::ferment)));
    const bool is_night =
        step.minutes && length.basis == Basis::assumed && length.minutes.likely >= overnight_from;
    if (dough_decides && !is_night) {
        out.transfer = carry_over(here, index, length, fitted.stretch);
        out.wants_room =
            here.kitchen.room.empty() && !(step.place == Place::warm && here.kitchen.warm_spot);
    }
    if (step.kind == StepKind::bake) {
        carry_over_bake(here, length);
    }
    fitted.minutes = whole(length.minutes);
    fitted.basis = length.basis;
    fitted.reason = length.reason;
    fitted.cue = step.cue;
    if (is_wait && step.kind != StepKind::cool) {
        fitted.holds_minutes = patience(here, step, row);
    }
    if (heat) {
        heat_here(here, *heat, fitted);
    }
    return out;
}

FittedStep our_weighing(const Surroundings& here) {
    const StageDefaultRow* row =
        stage_default(here.knowledge, StepKind::weigh, here.family, Place::counter);
    const std::size_t items = here.reading.recipe.ingredients.size();
    const double extra =
        items > weighed_in_that_time ? static_cast<double>(items - weighed_in_that_time) : 0.0;
    FittedStep fitted;
    fitted.kind = StepKind::weigh;
    fitted.attention = Attention::hands;
    fitted.minutes = whole(plus(in_order(row != nullptr ? row->minutes : weigh_five),
                                Minutes(std::min(extra, most_extra_weighing))));
    fitted.basis = Basis::assumed;
    fitted.reason = "our guess: getting everything out and weighing it";
    return fitted;
}

FittedStep our_preheat(const Surroundings& here, const OvenHeat& heat, bool with_stone) {
    FittedStep fitted;
    fitted.kind = StepKind::preheat;
    fitted.place = Place::oven;
    fitted.attention = attention_of(StepKind::preheat);
    const auto minutes = heat_up_minutes(here.kitchen, heat.setting, with_stone);
    fitted.minutes = exactly(minutes);
    fitted.basis = Basis::computed;
    fitted.reason = fmt::format(
        "{} until your oven has {}", duration_text(minutes), degrees_text(heat.setting));
    fitted.oven = heat.setting;
    return fitted;
}

FittedStep our_cooling(const Surroundings& here, std::int64_t minutes) {
    FittedStep fitted;
    fitted.kind = StepKind::cool;
    fitted.attention = attention_of(StepKind::cool);
    fitted.minutes = exactly(minutes);
    fitted.basis = Basis::assumed;
    fitted.reason = here.cooling.reason;
    return fitted;
}

} // namespace loafwright::fitting

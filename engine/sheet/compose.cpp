// SPDX-License-Identifier: Apache-2.0
//
// What stands on the page. The order is the order of need: when do I eat and when do I begin, what
// to weigh, what to do when, and last what happens if the dough is slow. The clock plans and the
// dough decides, so every wait shows when to look, how it looks when it is ready, and the latest
// time that still suits; our own sign is called ours. Minutes are rounded as a person would: work
// to five, baking exact.
#include "engine/sheet/compose.hpp"

#include "engine/fitting/words.hpp"
#include "engine/recipe/words.hpp"
#include "engine/sheet/asides.hpp"
#include "engine/sheet/lines.hpp"
#include "engine/sheet/measures.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <utility>

namespace loafwright {

namespace {

using fitting::duration_text;
using sheet::moment_text;

constexpr std::int64_t shortest_free = 30;
constexpr std::size_t most_free = 3;
constexpr std::size_t longest_reminder_words = 9;
// Waking hours, as planning has them for a day that nobody has described.
constexpr int first_awake_minute = 6 * 60 + 30;
constexpr int first_asleep_minute = 22 * 60 + 30;
constexpr std::size_t most_cautions_of_few_words = 1;
constexpr std::int64_t longest_spare = 240; // minutes; more is no news to somebody who waits for it

std::int64_t to_five(std::int64_t minutes) {
    return std::max<std::int64_t>(5, 5 * ((minutes + 2) / 5));
}

// A wait is looked at and left at round times: not before the first, by the last.
Instant rounded_down(Instant moment) {
    return Instant{moment.seconds - (moment.seconds % 300 + 300) % 300};
}
Instant rounded_up(Instant moment) {
    return rounded_down(Instant{moment.seconds + 299});
}

// "230C", "425 F": a heat without its sign.
bool names_degrees(const std::string& text) {
    for (std::size_t at = 1; at + 1 <= text.size(); ++at) {
        const bool letter = text[at] == 'c' || text[at] == 'f';
        const std::size_t digit = at > 1 && text[at - 1] == ' ' ? at - 2 : at - 1;
        const bool ends = at + 1 == text.size() || text[at + 1] == ' ' || text[at + 1] == ')' ||
                          text[at + 1] == ',';
        if (letter && ends && text[digit] >= '0' && text[digit] <= '9') {
            return true;
        }
    }
    return false;
}

/// Knows the plan, the recipe and the zone, so that the parts below need not be handed them one by
/// one.
class Composer {
public:
    Composer(const Plan& plan,
             const FittedRecipe& recipe,
             const Day& day,
             const SheetOptions& options)
        : plan_(plan), recipe_(recipe), day_(day), options_(options) {}

    [[nodiscard]] SaidTime begin() const;
    [[nodiscard]] std::string free() const;
    [[nodiscard]] std::vector<SheetStage> stages() const;
    [[nodiscard]] std::vector<std::string> slow_notes() const;
    [[nodiscard]] std::string ahead(const Ahead& ahead) const;

private:
    [[nodiscard]] std::string time(Instant moment, Instant beside) const {
        return moment_text(day_.zone, moment, beside, options_.clock);
    }
    [[nodiscard]] bool is_cooling(const Stage& stage) const;
    [[nodiscard]] std::string length(const Stage& stage) const;
    [[nodiscard]] std::string cue_line(const Stage& stage) const;
    [[nodiscard]] std::vector<std::string> reminders(const Stage& stage) const;
    [[nodiscard]] std::vector<SheetAct> acts(const Stage& stage) const;

    const Plan& plan_;
    const FittedRecipe& recipe_;
    const Day& day_;
    const SheetOptions& options_;
};

SaidTime Composer::begin() const {
    const bool today = civil_of(day_.zone, plan_.start).date == civil_of(day_.zone, day_.now).date;
    return {today ? "Begin" : "Begin " + day_text(day_.zone, plan_.start) + ",",
            sheet::clock(day_.zone, plan_.start, options_.clock)};
}

std::string Composer::free() const {
    if (options_.wording == Wording::few) {
        return "";
    }
    std::string text;
    const std::int64_t hands = to_five(plan_.hands_on_minutes);
    text += hands < 60 ? fmt::format("{} minutes", hands) : duration_text(hands);
    text += " of your hands";

    std::vector<FreeSpan> longest;
    for (const FreeSpan& span : plan_.free) {
        if (minutes_between(span.from, span.to) >= shortest_free) {
            longest.push_back(span);
        }
    }
    std::stable_sort(longest.begin(), longest.end(), [](const FreeSpan& a, const FreeSpan& b) {
        return minutes_between(a.from, a.to) > minutes_between(b.from, b.to);
    });
    if (longest.size() > most_free) {
        longest.resize(most_free);
    }
    std::sort(longest.begin(), longest.end(), [](const FreeSpan& a, const FreeSpan& b) {
        return a.from < b.from;
    });
    std::vector<std::string> spans;
    spans.reserve(longest.size());
    for (const FreeSpan& span : longest) {
        spans.push_back(time(rounded_up(span.from), plan_.start) + " to " +
                        time(rounded_down(span.to), span.from));
    }
    if (!spans.empty()) {
        text += "; you are free " + sheet::joined(spans);
    }
    return text + ".";
}

bool Composer::is_cooling(const Stage& stage) const {
    if (stage.attention != Attention::wait || stage.start < plan_.out_of_oven) {
        return false;
    }
    return std::all_of(stage.steps.begin(), stage.steps.end(), [this](std::size_t index) {
        return index < recipe_.recipe.steps.size() &&
               recipe_.recipe.steps[index].kind == StepKind::cool;
    });
}

std::string Composer::length(const Stage& stage) const {
    const std::int64_t likely = minutes_between(stage.start, stage.end.likely);
    if (is_cooling(stage)) {
        const std::int64_t least = minutes_between(stage.start, plan_.cut_from);
        return least > 0 ? duration_text(least) + " at least" : "";
    }
    switch (stage.attention) {
    case Attention::hands:
        return (stage.who.empty() ? "" : stage.who + ", ") + duration_text(to_five(likely));
    case Attention::wait:
        if (stage.look_from && *stage.look_from > stage.start && stage.end.low < stage.end.high) {
            return "look from " + time(rounded_down(*stage.look_from), stage.start);
        }
        return duration_text(likely);
    case Attention::near: {
        // Counted from its own start, because paper cannot move; where work comes first, from the
        // oven.
        const auto& oven = stage.oven_minutes;
        const std::int64_t low = oven ? oven->low : minutes_between(stage.start, stage.end.low);
        const std::int64_t high = oven ? oven->high : minutes_between(stage.start, stage.end.high);
        const std::string where = oven ? " in the oven" : "";
        if (low >= high || low <= 0) {
            return duration_text(oven ? oven->likely : likely) + where;
        }
        return (high < 60 ? fmt::format("{} to {} min", low, high)
                          : duration_text(low) + " to " + duration_text(high)) +
               where;
    }
    case Attention::none:
        return "";
    }
    return "";
}

std::string Composer::cue_line(const Stage& stage) const {
    if (!stage.cue || stage.cue->text.empty() || is_cooling(stage)) {
        return "";
    }
    const std::string own = sheet::without_loose_end(sheet::bare_cue(stage.cue->text));
    std::string line = stage.cue->span
                           ? "ready when " + own
                           : "our sign: " + sheet::our_sentence(own, options_, sheet::Quoted::ours);
    if (options_.wording == Wording::full && stage.attention == Attention::wait &&
        stage.end.low < stage.end.high) {
        line += ", about " + time(stage.end.likely, stage.start);
        if (stage.end.likely < stage.end.high) {
            line += ", by " + time(rounded_up(stage.end.high), stage.start) + " at the latest";
        }
    }
    return line;
}

std::vector<std::string> Composer::reminders(const Stage& stage) const {
    std::vector<std::string> lines;
    if (is_cooling(stage) && plan_.best_from > plan_.cut_from) {
        const std::int64_t best = minutes_between(plan_.out_of_oven, plan_.best_from);
        lines.push_back("at its best after " + duration_text(best));
    }
    // What the title, the sign and the acts say already is not said again.
    const std::string title = lower_case(stage.title);
    const std::string cue = stage.cue ? lower_case(sheet::bare_cue(stage.cue->text)) : "";
    const bool acts_on_oven = std::any_of(stage.acts.begin(), stage.acts.end(), [](const Act& act) {
        return has_word(lower_case(act.text), "oven");
    });
    const std::size_t most = options_.wording == Wording::few
                                 ? std::min<std::size_t>(1, options_.reminders_a_stage)
                                 : options_.reminders_a_stage;
    for (const Reminder& reminder : stage.reminders) {
        if (lines.size() >= most) {
            break;
        }
        const std::string words =
            reminder.span ? reminder.text
                          : sheet::our_sentence(reminder.text, options_, sheet::Quoted::ours);
        if (sheet::is_torn_off(words)) {
            continue;
        }
        const std::string line = sheet::without_loose_end(
            sheet::without_lone_bracket(sheet::at_most_words(words, longest_reminder_words)));
        const std::string bare = sheet::bare_sign(line);
        // The act has the heat, the title the cover, the weighing list the weights.
        const bool heat_said = acts_on_oven && (bare.find("\xC2\xB0") != std::string::npos ||
                                                has_word(bare, "gas") || names_degrees(bare));
        const bool cover_said = has_word(title, "covered") && bare.rfind("cover", 0) == 0;
        const bool in_cue = stage.cue && stage.cue->span && reminder.span &&
                            reminder.span->begin < stage.cue->span->end &&
                            stage.cue->span->begin < reminder.span->end;
        const bool said =
            heat_said || cover_said || in_cue || title.find(bare) != std::string::npos ||
            cue.find(bare) != std::string::npos || (acts_on_oven && has_word(bare, "oven")) ||
            std::find(lines.begin(), lines.end(), uncapitalised(line)) != lines.end();
        if (!bare.empty() && !said) {
            lines.push_back(uncapitalised(line));
        }
    }
    return lines;
}

std::vector<SheetAct> Composer::acts(const Stage& stage) const {
    std::vector<SheetAct> lines;
    for (const Act& act : stage.acts) {
        SheetAct line;
        line.time = stage.attention == Attention::near
                        ? fmt::format("+ {}", act.after_start_minutes)
                        : time(act.at, stage.start);
        line.text = sheet::act_text(act, options_);
        lines.push_back(std::move(line));
    }
    return lines;
}

std::vector<SheetStage> Composer::stages() const {
    std::vector<SheetStage> lines;
    Instant before = plan_.start;
    const bool today =
        civil_of(day_.zone, plan_.start).date == civil_of(day_.zone, plan_.eat.likely).date;
    for (const Stage& stage : plan_.stages) {
        SheetStage line;
        line.number = stage.number;
        // On a page of two days the first line names its day as well.
        line.time = !today && lines.empty()
                        ? day_text(day_.zone, stage.start).substr(0, 3) + " " +
                              sheet::clock(day_.zone, stage.start, options_.clock)
                        : time(stage.start, before);
        line.title = capitalised(stage.title);
        line.length = length(stage);
        line.box = stage.attention != Attention::none;
        line.acts = acts(stage);
        line.cue = cue_line(stage);
        line.cue_is_ours = !line.cue.empty() && !stage.cue->span;
        line.reminders = reminders(stage);
        before = stage.start;
        lines.push_back(std::move(line));
    }
    return lines;
}

std::vector<std::string> Composer::slow_notes() const {
    std::vector<std::string> notes;
    const Band<Instant>& eat = plan_.eat;
    if (eat.high > eat.likely) {
        // A time to reckon with is a round one.
        const Instant late_by{300 * ((eat.high.seconds + 299) / 300)};
        const std::string late = time(late_by, eat.likely);
        if (day_.eat_by && eat.high <= *day_.eat_by) {
            notes.push_back("If the dough is slow it can be eaten at " + late + ": still in time.");
        } else {
            notes.push_back("If the dough is slow you eat at " + late + ".");
        }
    } else if (day_.eat_by && plan_.cut_from < eat.likely &&
               minutes_between(plan_.cut_from, eat.likely) <= longest_spare) {
        const std::int64_t spare = minutes_between(plan_.cut_from, eat.likely);
        notes.push_back(
            fmt::format("It can be cut {} before you eat; a slow dough may use that time.",
                        duration_text(spare)));
    }
    return notes;
}

// Leaven is fed and butter taken out before anybody stands in the kitchen, and nobody gets up for
// it at night.
std::string Composer::ahead(const Ahead& ahead) const {
    const auto minutes = static_cast<std::int64_t>(std::lround(ahead.hours_before * 60.0));
    const Instant when = rounded_down(later_by_minutes(plan_.start, -minutes));
    if (when < day_.now) {
        return fmt::format(
            "Now: {}. {} before you begin is best.", ahead.what, duration_text(minutes));
    }
    const ClockTime clock = civil_of(day_.zone, when).clock;
    const int minute = clock.hour * 60 + clock.minute;
    if (minute < first_awake_minute || minute >= first_asleep_minute) {
        return fmt::format("The evening before: {}.", ahead.what);
    }
    return fmt::format("{}, {} before you begin: {}.",
                       time(when, plan_.start),
                       duration_text(minutes),
                       ahead.what);
}

SaidTime eating(const Plan& plan, const Day& day, ClockForm form) {
    const Instant eat = rounded_up(plan.eat.likely);
    const bool today = civil_of(day.zone, eat).date == civil_of(day.zone, day.now).date;
    return {today ? "eat at" : "eat on " + day_text(day.zone, eat) + " at",
            sheet::clock(day.zone, eat, form)};
}

} // namespace

std::string full_title(const SheetStage& stage) {
    return stage.bread.empty() ? stage.title : stage.bread + ": " + uncapitalised(stage.title);
}

std::string said(const SaidTime& when) {
    return when.words + (when.words.empty() || when.time.empty() ? "" : " ") + when.time;
}

std::string opening(const Sheet& sheet) {
    const std::string begin = said(sheet.begin);
    const std::string stop = begin.empty() ? "" : sheet.free.empty() ? "." : ". ";
    return begin + stop + sheet.free;
}

Sheet compose(const Plan& plan,
              const FittedRecipe& recipe,
              const Provisions& provisions,
              const Day& day,
              const SheetOptions& options) {
    const Composer composer(plan, recipe, day, options);
    Sheet sheet;
    sheet.title = recipe.recipe.title.empty() ? "Bread" : recipe.recipe.title;
    sheet.eat = eating(plan, day, options.clock);
    sheet.begin = composer.begin();
    sheet.free = composer.free();
    for (const ToBuy& bought : provisions.buy) {
        const bool water = recipe.water && has_word(lower_case(bought.item), "water");
        sheet.weigh.push_back(sheet::weigh_line(
            bought,
            options.weight,
            water ? " at " + sheet::degrees(recipe.water->temperature, options.temperature) : ""));
    }
    const bool says_all = options.wording == Wording::full;
    if (says_all) {
        sheet.ready = provisions.kit;
    }
    sheet.stages = composer.stages();
    if (options.practice == Practice::first_bake) {
        sheet::add_what_is_normal(sheet.stages, plan.stages, provisions.normal);
    }

    for (const Ahead& ahead : provisions.ahead) {
        sheet.ahead.push_back(composer.ahead(ahead));
    }
    for (std::string& note : composer.slow_notes()) {
        sheet.notes.push_back(std::move(note));
    }
    for (const Phrase& note : recipe.notes) {
        if (says_all) {
            sheet.notes.push_back(sheet::words_of(note, options));
        }
    }
    for (const Diagnostic& warning : plan.warnings) {
        sheet.warnings.push_back(sheet::warning_line(warning, options));
    }
    for (const Caution& caution : provisions.cautions) {
        if (sheet.cautions.size() >= (says_all ? options.cautions : most_cautions_of_few_words)) {
            break;
        }
        sheet.cautions.push_back(sheet::our_sentence(caution.text, options, sheet::Quoted::ours));
    }
    for (const Question& question : says_all ? recipe.questions : std::vector<Question>{}) {
        if (sheet.questions.size() == options.questions) {
            const std::size_t more = recipe.questions.size() - options.questions;
            sheet.questions.push_back(fmt::format("{} more; `loafwright read` lists them.", more));
            break;
        }
        sheet.questions.push_back(sheet::question_line(question, options));
    }
    sheet.day_line = day_line(plan, day.zone, options.clock);
    return sheet;
}

} // namespace loafwright

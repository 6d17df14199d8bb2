// SPDX-License-Identifier: Apache-2.0
//
// Any text all the way to the page: read, fit, gather, plan, compose, text, on two fixed days. One
// has no sleep and begins at ten; the other has a sleeper, a busy hour, somebody else's oven
// and a time to eat by. Whatever the text says, the page has one to nine lines in order of time and
// fits its width, and a no has its reasons.
#include "engine/planning/plan.hpp"

#include "engine/fitting/fit.hpp"
#include "engine/knowledge/knowledge.hpp"
#include "engine/provisions/gather.hpp"
#include "engine/reading/read.hpp"
#include "engine/sheet/compose.hpp"
#include "engine/wire/wire.hpp"
#include "fuzz/promise.hpp"
#include "fuzz/zones.hpp"
#include "shell/output/text_lines.hpp"
#include "shell/output/text_page.hpp"

#include <algorithm>
#include <string>
#include <string_view>
#include <variant>

namespace loafwright::fuzz {
namespace {

constexpr std::size_t most_stages = 9;

Instant in_hours(int hours) {
    return later_by_minutes(now(), std::int64_t{60} * hours);
}

Day open_day() {
    Day day;
    day.zone = london();
    day.now = now();
    day.start = in_hours(1);
    return day;
}

Day full_day() {
    Day day;
    day.zone = london();
    day.now = now();
    day.eat_by = in_hours(34);
    day.sleep_known = true;
    day.windows = {{0, Presence::busy, in_hours(3), in_hours(4)},
                   {0, Presence::asleep, in_hours(14), in_hours(22)}};
    day.oven_claims = {{in_hours(26), in_hours(27), Celsius(160.0)}};
    return day;
}

void check_fitted(const FittedRecipe& fitted) {
    for (const FittedStep& step : fitted.steps) {
        promise(step.minutes.low >= 0 && step.minutes.low <= step.minutes.likely &&
                    step.minutes.likely <= step.minutes.high,
                "fitted: 0 <= low <= likely <= high");
        promise(!step.reason.empty(), "fitted: every length has a reason");
        promise(!step.step || *step.step < fitted.recipe.steps.size(), "fitted: steps exist");
    }
}

void check_plan(const Plan& plan, const Day& day) {
    promise(!plan.stages.empty() && plan.stages.size() <= most_stages, "one to nine stages");
    promise(plan.start >= day.now, "nothing begins before now");
    promise(plan.stages.front().start >= plan.start, "no stage is before the start");
    int number = 1;
    Instant before = plan.start;
    for (const Stage& stage : plan.stages) {
        promise(stage.number == number, "stages are numbered in order");
        promise(before <= stage.start, "stages start in order");
        promise(stage.start <= stage.end.likely && stage.end.low <= stage.end.likely &&
                    stage.end.likely <= stage.end.high,
                "a stage ends after it starts, low <= likely <= high");
        promise(!stage.title.empty(), "a stage has a title");
        for (const Act& act : stage.acts) {
            promise(act.at >= day.now && !act.text.empty(), "an act has words and is ahead");
        }
        before = stage.start;
        ++number;
    }
    promise(plan.eat.low <= plan.eat.likely && plan.eat.likely <= plan.eat.high,
            "eat: low <= likely <= high");
    promise(plan.start <= plan.out_of_oven && plan.out_of_oven <= plan.cut_from &&
                plan.cut_from <= plan.best_from,
            "start, out of the oven, cut, best: in this order");
    promise(plan.total_minutes >= 0 && plan.hands_on_minutes >= 0 &&
                plan.hands_on_minutes <= plan.total_minutes,
            "hands-on time is a part of the whole");
    for (const FreeSpan& span : plan.free) {
        promise(minutes_between(span.from, span.to) >= 20, "free time is twenty minutes or more");
    }
    promise(!has_errors(plan.warnings), "warnings are no errors");
}

// Every byte is looked at: a control character from the text could steer the terminal.
void check_page(std::string_view page, std::size_t columns) {
    promise(!page.empty() && page.back() == '\n', "a page ends with a line end");
    promise(check_text(std::string(page), "page").has_value(), "a page is UTF-8 without controls");
    promise(page.find('\t') == std::string_view::npos && page.find('\r') == std::string_view::npos,
            "a page has no tabs and carriage returns");
    std::size_t at = 0;
    while (at < page.size()) {
        const std::size_t stop = page.find('\n', at);
        const std::string_view line = page.substr(at, stop - at);
        promise(output::columns_of(line) <= columns, "no line is wider than the page");
        // Counted here once more where each byte is one column.
        const bool plain = std::all_of(line.begin(), line.end(), [](char c) { return c > 0; });
        promise(!plain || line.size() <= columns, "no line is wider than the page");
        at = stop + 1;
    }
}

void one_day(const FittedRecipe& fitted, const Provisions& provisions, const Day& day) {
    const Kitchen kitchen;
    const PlanOutcome outcome = plan(fitted, kitchen, day);
    if (const auto* impossible = std::get_if<Impossible>(&outcome)) {
        promise(!impossible->why.empty(), "a no has a sentence");
        const Refusal refusal = compose_refusal(*impossible, day);
        for (const std::size_t columns : {std::size_t{80}, std::size_t{40}}) {
            check_page(output::text_page(refusal, columns), columns);
        }
        return;
    }
    const Plan& made = std::get<Plan>(outcome);
    check_plan(made, day);
    const Sheet sheet = compose(made, fitted, provisions, day, SheetOptions{});
    promise(sheet.stages.size() == made.stages.size(), "a sheet has the stages of the plan");
    for (const std::size_t columns : {std::size_t{80}, std::size_t{40}}) {
        check_page(output::text_page(sheet, columns, output::Weight::plain), columns);
    }
    promise(!wire::plan_json(made, provisions, fitted.questions, day.zone).empty(),
            "a plan can be written as JSON");
}

void one_text(const std::string& text) {
    static const Knowledge knowledge = built_in_knowledge();
    const auto checked = check_text(text, "input");
    if (!checked) {
        return;
    }
    const Reading reading = read(*checked, knowledge);
    if (reading.recipe.steps.empty()) {
        return;
    }
    const Kitchen kitchen;
    const FittedRecipe fitted = fit(reading, kitchen, knowledge);
    check_fitted(fitted);
    const Provisions provisions = gather(reading.recipe, kitchen, knowledge);
    one_day(fitted, provisions, open_day());
    one_day(fitted, provisions, full_day());
}

} // namespace
} // namespace loafwright::fuzz

int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    loafwright::fuzz::one_text(std::string(loafwright::fuzz::text_of(data, size)));
    return 0;
}

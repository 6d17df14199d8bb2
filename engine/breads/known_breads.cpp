// SPDX-License-Identifier: Apache-2.0
//
// From texts to breads that can be planned. Every text is read before the first is complained
// about.
#include "engine/breads/known_breads.hpp"

#include "engine/fitting/heat.hpp"
#include "engine/fitting/otherwise.hpp"
#include "engine/kitchen/felt_room.hpp"
#include "engine/knowledge/knowledge.hpp"

#include <algorithm>
#include <iterator>
#include <utility>

namespace loafwright::breads {

namespace {

void add(Diagnostics& all, Diagnostics more) {
    std::move(more.begin(), more.end(), std::back_inserter(all));
}

Diagnostic not_made_so(const FittedRecipe& bread, const Kitchen& kitchen, const Answer& answer) {
    std::string names;
    for (const fitting::Otherwise how : fitting::all_otherwise) {
        if (fitting::made_otherwise(bread, kitchen, how)) {
            names += (names.empty() ? "" : ", ") + std::string(fitting::name_of(how));
        }
    }
    const std::string title = bread.recipe.title.empty() ? "this bread" : bread.recipe.title;
    return {"answer_unreadable",
            Severity::error,
            answer.key + " was answered '" + answer.value + "', and " + title +
                (names.empty() ? " is made as written only" : " can be made so: " + names),
            "",
            names.empty()
                ? "Leave the answer out."
                : "Write one of these, or leave the answer out for the bread as written."};
}

// The bread as written, or made otherwise where somebody asked for it.
tl::expected<FittedRecipe, Diagnostic>
made_as_asked(FittedRecipe fitted, const Kitchen& kitchen, const Answers& answers) {
    const auto asked = std::find_if(answers.begin(), answers.end(), [](const Answer& answer) {
        return answer.key == fitting::otherwise_key;
    });
    if (asked == answers.end()) {
        return fitted;
    }
    const auto how = fitting::otherwise_named(asked->value);
    auto made = how ? fitting::made_otherwise(fitted, kitchen, *how) : std::nullopt;
    if (!made) {
        return tl::make_unexpected(not_made_so(fitted, kitchen, *asked));
    }
    return std::move(made->recipe);
}

// Before everything else that the stage reminds of: one change at a time is what tells.
void add_change(Recipe& recipe, const Answers& answers) {
    constexpr int heaviest = 100;
    for (const Answer& answer : answers) {
        if (answer.key != next_time_key || answer.value.empty() || recipe.steps.empty()) {
            continue;
        }
        const std::size_t colon = answer.value.find(": ");
        const auto named = colon == std::string::npos
                               ? std::nullopt
                               : step_kind_named(std::string_view(answer.value).substr(0, colon));
        Step* at = &recipe.steps.front();
        if (named) {
            const StepKind kind = *named;
            for (Step& step : recipe.steps) {
                if (step.kind == kind) {
                    at = &step;
                    break;
                }
            }
        }
        at->reminders.insert(
            at->reminders.begin(),
            {"this time: " + (named ? answer.value.substr(colon + 2) : answer.value),
             std::nullopt,
             heaviest});
    }
}

} // namespace

std::vector<Question> KnownBreads::questions() const {
    std::vector<Question> all;
    for (const FittedRecipe& bread : fitted) {
        for (const Question& question : bread.questions) {
            const bool known =
                std::any_of(all.begin(), all.end(), [&question](const Question& other) {
                    return other.key == question.key && other.ask == question.ask;
                });
            if (!known) {
                all.push_back(question);
            }
        }
    }
    return all;
}

Provisions KnownBreads::cautions() const {
    Provisions all = provisions.front();
    for (std::size_t b = 1; b < provisions.size(); ++b) {
        for (const Caution& caution : provisions[b].cautions) {
            const bool known = std::any_of(
                all.cautions.begin(), all.cautions.end(), [&caution](const Caution& other) {
                    return other.code == caution.code;
                });
            if (!known) {
                all.cautions.push_back(caution);
            }
        }
    }
    return all;
}

std::vector<Sheet>
KnownBreads::pages(const Plan& plan, const Day& day, const SheetOptions& options) const {
    if (plan.breads.empty()) {
        return {compose(plan, fitted.front(), provisions.front(), day, options)};
    }
    return compose(plan, fitted, provisions, day, options);
}

tl::expected<KnownBreads, Diagnostics> read_breads(const std::vector<BreadText>& texts,
                                                   const Kitchen& kitchen,
                                                   const Knowledge& knowledge) {
    return read_breads(texts, kitchen, knowledge, Reader(knowledge));
}

tl::expected<KnownBreads, Diagnostics> read_breads(const std::vector<BreadText>& texts,
                                                   const Kitchen& kitchen,
                                                   const Knowledge& knowledge,
                                                   const Reader& reader) {
    KnownBreads known;
    Diagnostics wrong;
    for (const BreadText& text : texts) {
        auto read = read_as_wanted(text, knowledge, reader);
        if (!read) {
            add(wrong, std::move(read.error()));
            continue;
        }
        Reading& reading = *read;
        if (reading.recipe.steps.empty()) {
            wrong.push_back({"no_recipe_found",
                             Severity::error,
                             "no step of a bread recipe could be read, expected sentences such as "
                             "\"knead for ten minutes\"",
                             text.name,
                             "Check that the file holds the method and not only the ingredients."});
            continue;
        }
        add_change(reading.recipe, text.answers);
        auto made = made_as_asked(fit(reading, kitchen, knowledge), kitchen, text.answers);
        if (!made) {
            wrong.push_back(std::move(made.error()));
            continue;
        }
        known.fitted.push_back(std::move(*made));
        known.provisions.push_back(gather(known.fitted.back().recipe, kitchen, knowledge));
        add(known.remarks, text.remarks);
        add(known.remarks, reading.remarks);
    }
    if (!wrong.empty()) {
        return tl::make_unexpected(std::move(wrong));
    }
    return known;
}

tl::expected<Reading, Diagnostics>
read_as_wanted(const BreadText& text, const Knowledge& knowledge, const Reader& reader) {
    Reading reading = reader.read(text.text, recipe_answers(text.answers), text.doubts);
    if (reading.recipe.steps.empty()) {
        return reading; // there is no bread to change
    }
    auto wanted = as_wanted(std::move(reading), text.wanted, knowledge);
    if (!wanted) {
        for (Diagnostic& fault : wanted.error()) {
            fault.where = text.name;
        }
    }
    return wanted;
}

Answers recipe_answers(const Answers& answers) {
    Answers others;
    std::copy_if(
        answers.begin(), answers.end(), std::back_inserter(others), [](const Answer& answer) {
            return answer.key != room_key && answer.key != fitting::otherwise_key &&
                   answer.key != next_time_key;
        });
    return others;
}

std::string felt_words() {
    std::string words;
    for (std::size_t i = 0; i < felt_rooms.size(); ++i) {
        words += i == 0 ? "" : i + 1 == felt_rooms.size() ? " or " : ", ";
        words += felt_rooms.at(i).word;
    }
    return words;
}

tl::expected<Kitchen, Diagnostics> kitchen_as_answered(Kitchen kitchen, const Answers& answers) {
    for (const Answer& answer : answers) {
        if (answer.key != room_key || !kitchen.room.empty()) {
            continue;
        }
        const auto felt = felt_temperature(answer.value);
        const auto room = felt ? felt->degrees() : fitting::first_number(answer.value);
        if (!room || *room > 45.0) {
            return tl::make_unexpected(
                Diagnostics{{"answer_unreadable",
                             Severity::error,
                             "room-c was answered '" + answer.value +
                                 "', expected a number of °C up to 45, or " + felt_words(),
                             "",
                             "Write it as in --answer room-c=19 or room-c=jumper."}});
        }
        kitchen.room = {RoomPeriod{ClockTime{}, Celsius(*room)}};
    }
    return kitchen;
}

} // namespace loafwright::breads

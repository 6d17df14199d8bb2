// SPDX-License-Identifier: Apache-2.0
#include "engine/reading/correction.hpp"

#include "engine/reading/told.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <iterator>
#include <string_view>
#include <unordered_map>
#include <unordered_set>
#include <utility>

namespace loafwright::reading {
namespace {

constexpr std::array<std::string_view, 5> corrected = {
    "kind-at-", "place-at-", "minutes-at-", "heat-at-", "grams-at-"};
constexpr std::string_view nothing = "none";

bool corrects(const Answer& answer) {
    return std::any_of(corrected.begin(), corrected.end(), [&](std::string_view beginning) {
        return std::string_view(answer.key).substr(0, beginning.size()) == beginning;
    });
}

template <typename Things>
void name_each(Things& things) {
    std::unordered_map<std::size_t, std::size_t> beginning_at;
    for (auto& thing : things) {
        const std::optional<Span> span = thing.span;
        if (span) {
            const std::size_t here = ++beginning_at[span->begin];
            thing.at = std::to_string(span->begin);
            if (here > 1) {
                thing.at += "-" + std::to_string(here);
            }
        }
    }
}

// "First rise" is no StepKind, "knock back" is one.
std::string as_name(std::string words) {
    for (char& c : words) {
        c = c == ' ' || c == '-'   ? '_'
            : c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a')
                                   : c;
    }
    return words;
}

bool in_the_oven(StepKind kind) {
    return kind == StepKind::bake || kind == StepKind::preheat;
}

Place usual_place(StepKind kind, Place now) {
    if (in_the_oven(kind)) {
        return Place::oven;
    }
    if (kind == StepKind::cook) {
        return now == Place::oven ? now : Place::hob;
    }
    return now == Place::oven || now == Place::hob ? Place::counter : now;
}

class Corrector {
public:
    Corrector(const Answers& answers, std::vector<FoundIngredient>& found, Reading& reading)
        : found_(found), reading_(reading) {
        for (const Answer& answer : answers) {
            if (corrects(answer)) {
                words_[answer.key] = {answer.value, false}; // the last word counts
                keys_.push_back(answer.key);
            } else {
                others_.push_back(answer);
            }
        }
    }

    void steps() {
        take_in_unread();
        for (std::size_t index = 0; index < recipe().steps.size(); ++index) {
            correct(index);
        }
        leave_out_steps();
    }

    // `weighed`: "2 tsp" of an ingredient in grams.
    template <typename Weighed>
    void amounts(const Weighed& weighed) {
        std::vector<Ingredient> kept;
        std::vector<FoundIngredient> found;
        for (std::size_t index = 0; index < recipe().ingredients.size(); ++index) {
            Ingredient& ingredient = recipe().ingredients[index];
            const std::string* told =
                ingredient.at.empty() ? nullptr : said("grams-at-", ingredient.at);
            if (told != nullptr && *told == nothing) {
                leave_aside(ingredient.text,
                            *ingredient.span,
                            "you said it is no ingredient",
                            ingredient.at);
                continue;
            }
            if (told != nullptr) {
                const auto grams = grams_told(*told);
                const auto band =
                    grams ? std::optional(exactly(*grams)) : weighed(*told, ingredient);
                if (band) {
                    ingredient.as_read = AmountAsRead{ingredient.grams};
                    ingredient.grams = band;
                    ingredient.about = false;
                    found_[index].by_region = false;
                    found_[index].vague_yeast = false;
                    found_[index].disagreement.reset();
                } else {
                    not_understood("grams-at-" + ingredient.at, *told, "an amount such as 500 g");
                }
            }
            kept.push_back(std::move(ingredient));
            found.push_back(std::move(found_[index]));
        }
        recipe().ingredients = std::move(kept);
        found_ = std::move(found);
    }

    // The answers that correct nothing; corrections of what is not there become remarks.
    Answers others() {
        std::stable_sort(
            reading_.unread.begin(), reading_.unread.end(), [](const Unread& a, const Unread& b) {
                return a.span.begin < b.span.begin;
            });
        for (const std::string& key : keys_) {
            bool& used = words_[key].second;
            if (!used) {
                used = true;
                reading_.remarks.push_back(
                    {"correction_misplaced",
                     Severity::warning,
                     fmt::format("\"{}\" is for nothing that was read in this text", key),
                     key,
                     "Take it back. If the text has changed since, correct it again there."});
            }
        }
        return std::move(others_);
    }

private:
    [[nodiscard]] Recipe& recipe() const { return reading_.recipe; }

    // What was said of a thing, if anything.
    const std::string* said(std::string_view what, const std::string& place) {
        const auto words = words_.find(std::string(what) + place);
        if (words == words_.end()) {
            return nullptr;
        }
        words->second.second = true;
        return &words->second.first;
    }

    void
    not_understood(const std::string& key, const std::string& value, std::string_view expected) {
        reading_.remarks.push_back(
            {"answer_unreadable",
             Severity::warning,
             fmt::format("\"{}\" could not be understood, expected {}", value, expected),
             key,
             "Give it again, or take it back and the text stands."});
    }

    void correct(std::size_t index) {
        Step& step = recipe().steps[index];
        const std::string& place = step.at;
        const StepAsRead before{step.kind, step.place, step.minutes, step.temperature};
        bool changed = false;
        if (const std::string* told = said("kind-at-", place);
            told != nullptr && *told != nothing) {
            if (const auto kind = step_kind_named(as_name(*told))) {
                changed = true;
                make_it(index, *kind);
            } else {
                not_understood(
                    "kind-at-" + place, *told, "a kind of step such as rise, prove or bake");
            }
        }
        if (const std::string* told = said("place-at-", place)) {
            if (const auto there = place_named(as_name(*told))) {
                changed = true;
                step.place = *there;
            } else {
                not_understood(
                    "place-at-" + place, *told, "one of counter, warm, fridge, oven, hob");
            }
        }
        if (const std::string* told = said("minutes-at-", place)) {
            if (const auto minutes = minutes_told(*told)) {
                changed = true;
                step.minutes = TimedBand{*minutes, Basis::stated};
                // The other bread's time for it is none of ours any more.
                step.alternatives.erase(std::remove_if(step.alternatives.begin(),
                                                       step.alternatives.end(),
                                                       [&step](const Alternative& other) {
                                                           return other.kind == step.kind &&
                                                                  other.place == step.place;
                                                       }),
                                        step.alternatives.end());
            } else {
                not_understood("minutes-at-" + place, *told, "a length of time such as 45 minutes");
            }
        }
        if (const std::string* told = said("heat-at-", place)) {
            const bool hot = step.place == Place::oven || step.place == Place::hob;
            if (const auto heat = hot ? oven_told(*told) : warmth_told(*told)) {
                changed = true;
                step.temperature = heat;
                step.oven_words.reset();
            } else {
                not_understood("heat-at-" + place,
                               *told,
                               hot ? "a temperature such as 220 or gas 7"
                                   : "a temperature such as 26 °C");
            }
        }
        if (changed) {
            step.as_read = before;
        }
    }

    void make_it(std::size_t index, StepKind kind) {
        Step& step = recipe().steps[index];
        const bool was_hot = in_the_oven(step.kind);
        step.kind = kind;
        step.place = usual_place(kind, step.place);
        if (was_hot != in_the_oven(kind)) {
            step.temperature.reset();
            step.oven_words.reset();
        }
        const Attention attention = attention_of(kind);
        if (attention != Attention::wait && attention != Attention::near) {
            for (Step& other : recipe().steps) {
                if (other.during == index) {
                    other.during.reset();
                }
            }
        }
    }

    // "left aside", and yet a step.
    void take_in_unread() {
        std::unordered_set<std::size_t> beginnings; // a step's own correction comes first
        for (const Step& step : recipe().steps) {
            beginnings.insert(step.span.begin);
        }
        std::vector<Step> more;
        std::vector<Unread> still;
        for (Unread& phrase : reading_.unread) {
            const std::string* told =
                beginnings.count(phrase.span.begin) != 0 ? nullptr : said("kind-at-", phrase.at);
            const auto kind = told == nullptr || *told == nothing ? std::nullopt
                                                                  : step_kind_named(as_name(*told));
            if (kind) {
                Step step;
                step.kind = *kind;
                step.place = usual_place(*kind, Place::counter);
                step.text = phrase.text;
                step.span = phrase.span;
                step.at = phrase.at;
                more.push_back(std::move(step));
                continue;
            }
            if (told != nullptr && *told != nothing) {
                not_understood(
                    "kind-at-" + phrase.at, *told, "a kind of step such as rise, prove or bake");
            }
            still.push_back(std::move(phrase));
        }
        reading_.unread = std::move(still);
        put_between(std::move(more));
    }

    // Each before the first step that begins behind it.
    void put_between(std::vector<Step> more) {
        if (more.empty()) {
            return;
        }
        std::vector<Step> all;
        std::vector<std::size_t> moved;
        std::vector<std::size_t> old;
        auto next = more.begin();
        for (Step& step : recipe().steps) {
            for (; next != more.end() && next->span.begin < step.span.begin; ++next) {
                all.push_back(std::move(*next));
            }
            moved.push_back(all.size());
            old.push_back(all.size());
            all.push_back(std::move(step));
        }
        all.insert(all.end(), std::make_move_iterator(next), std::make_move_iterator(more.end()));
        for (const std::size_t index : old) {
            for (std::size_t& before : all[index].after) {
                before = moved[before];
            }
            if (all[index].during) {
                all[index].during = moved[*all[index].during];
            }
        }
        recipe().steps = std::move(all);
    }

    void leave_out_steps() {
        auto& steps = recipe().steps;
        std::vector<bool> out(steps.size(), false);
        std::vector<std::size_t> moved(steps.size(), 0);
        std::size_t count = 0;
        for (std::size_t index = 0; index < steps.size(); ++index) {
            const std::string* told = said("kind-at-", steps[index].at);
            out[index] = told != nullptr && *told == nothing;
            moved[index] = count;
            count += out[index] ? 0U : 1U;
        }
        if (count == steps.size()) {
            return;
        }
        for (std::size_t index = 0; index < steps.size(); ++index) {
            if (!out[index]) {
                steps[index].after = without(steps[index].after, steps, out);
            }
        }
        std::vector<Step> left;
        left.reserve(count);
        for (std::size_t index = 0; index < steps.size(); ++index) {
            Step& step = steps[index];
            if (out[index]) {
                leave_aside(step.text, step.span, "you said it is no step", step.at);
                continue;
            }
            for (std::size_t& before : step.after) {
                before = moved[before];
            }
            if (step.during) {
                step.during = out[*step.during] ? std::nullopt
                                                : std::optional<std::size_t>(moved[*step.during]);
            }
            left.push_back(std::move(step));
        }
        steps = std::move(left);
    }

    // What came after a step that is none comes after those that were before it.
    static std::vector<std::size_t> without(const std::vector<std::size_t>& after,
                                            const std::vector<Step>& steps,
                                            const std::vector<bool>& out) {
        std::vector<std::size_t> kept;
        std::vector<std::size_t> open(after.rbegin(), after.rend());
        while (!open.empty()) {
            const std::size_t before = open.back();
            open.pop_back();
            if (!out[before]) {
                if (std::find(kept.begin(), kept.end(), before) == kept.end()) {
                    kept.push_back(before);
                }
            } else if (steps[before].after.empty()) {
                if (before > 0) {
                    open.push_back(before - 1);
                }
            } else {
                open.insert(open.end(), steps[before].after.rbegin(), steps[before].after.rend());
            }
        }
        return kept;
    }

    void leave_aside(const std::string& words, Span span, const char* why, const std::string& at) {
        reading_.unread.push_back({words, span, why, at});
    }

    std::vector<FoundIngredient>& found_;
    Reading& reading_;
    std::unordered_map<std::string, std::pair<std::string, bool>> words_; // by key; taken?
    std::vector<std::string> keys_;                                       // in the order given
    Answers others_;
};

} // namespace

void name_places(Reading& reading) {
    name_each(reading.recipe.steps);
    name_each(reading.recipe.ingredients);
    name_each(reading.unread);
}

Answers take_corrections(const Knowledge& knowledge,
                         const Lexicon& lexicon,
                         const Units& units,
                         std::optional<Region> region,
                         const Answers& answers,
                         std::vector<FoundIngredient>& found,
                         Reading& reading) {
    if (std::none_of(answers.begin(), answers.end(), corrects)) {
        return answers;
    }
    Corrector corrector(answers, found, reading);
    corrector.steps();
    corrector.amounts([&](const std::string& words, const Ingredient& ingredient) {
        const std::string line = "- " + words + " " + ingredient.item;
        const Layout layout = lay_out(line, lexicon);
        const IngredientReader reader(knowledge, lexicon, units, line, layout, region);
        std::optional<Band<Grams>> grams;
        for (const Block& block : layout.blocks) {
            const auto one = grams ? std::nullopt : reader.line(block);
            if (one) {
                grams = one->ingredient.grams;
            }
        }
        return grams;
    });
    return corrector.others();
}

} // namespace loafwright::reading

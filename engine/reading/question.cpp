// SPDX-License-Identifier: Apache-2.0
//
// What the text leaves open: oven temperature, lengths of bakes and waits, flour and salt without
// an amount, liquid yeast of old books, pints of an unknown country, amounts that disagree. Each
// question has a default, so nothing ever stands still for want of an answer.
#include "engine/reading/question.hpp"

#include "engine/quantity/conversion.hpp"
#include "engine/reading/told.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace loafwright::reading {
namespace {

std::string degrees(TemperatureRange range) {
    const int low = static_cast<int>(std::lround(range.low.degrees()));
    const int high = static_cast<int>(std::lround(range.high.degrees()));
    return low == high ? fmt::format("{} °C", low) : fmt::format("{} to {} °C", low, high);
}

class Asker {
public:
    Asker(const Knowledge& knowledge,
          const Layout& layout,
          const Answers& answers,
          Reading& reading)
        : knowledge_(knowledge), layout_(layout), answers_(answers), reading_(reading),
          used_(answers.size(), false) {}

    void run(const std::vector<FoundIngredient>& found,
             const std::vector<std::string>& kinds_of_bread) {
        if (reading_.recipe.steps.empty()) {
            left_over_answers();
            return;
        }
        if (kinds_of_bread.size() == 2) {
            const std::string* told = answer("which-bread");
            if (told != nullptr && told->find(kinds_of_bread[0]) != std::string::npos) {
                make_the_other_bread();
                told = nullptr;
            }
            ask("which-bread",
                fmt::format("{} or {}", kinds_of_bread[0], kinds_of_bread[1]),
                fmt::format("Which will it be: {} or {}? The text gives times for both.",
                            kinds_of_bread[0],
                            kinds_of_bread[1]),
                kinds_of_bread[1]);
        }
        oven_words();
        oven();
        bake_time();
        wait_times();
        amounts(found);
        left_over_answers();
    }

private:
    // The answer to a key, if given. Marks it as used.
    const std::string* answer(std::string_view key) {
        for (std::size_t index = 0; index < answers_.size(); ++index) {
            if (answers_[index].key == key) {
                used_[index] = true;
                return &answers_[index].value;
            }
        }
        return nullptr;
    }

    void ask(std::string key, std::string about, std::string words, std::string standard) {
        reading_.questions.push_back(
            {std::move(key), std::move(about), std::move(words), std::move(standard)});
    }

    void not_understood(std::string_view key, const std::string& value, std::string_view expected) {
        reading_.remarks.push_back(
            {"answer_unreadable",
             Severity::warning,
             fmt::format("\"{}\" could not be understood, expected {}", value, expected),
             std::string(key),
             "Give it again, or leave it out and the usual is used."});
    }

    // "a moderate oven": what the words suggest is kept beside the step, and asked.
    void oven_words() {
        for (Step& step : reading_.recipe.steps) {
            if (step.kind != StepKind::bake && step.kind != StepKind::preheat) {
                continue;
            }
            const OvenWordRow* best = nullptr;
            for (const OvenWordRow& row : knowledge_.oven_words) {
                // "a slower oven" is a slow one.
                const std::string with_oven(row.words);
                const std::size_t noun = row.words.rfind(" oven");
                const std::string with_heat = std::string(row.words.substr(0, noun)) + "er oven";
                const bool named = step.text.find(with_oven) != std::string::npos ||
                                   step.text.find(with_heat) != std::string::npos;
                if (named && (best == nullptr || row.words.size() > best->words.size())) {
                    best = &row;
                }
            }
            if (best != nullptr) {
                step.oven_words = best->oven;
                oven_word_ = best->words;
            }
        }
    }

    void oven() {
        Step* bake = nullptr;
        bool known = false;
        for (Step& step : reading_.recipe.steps) {
            const bool heats = step.kind == StepKind::bake ||
                               (step.kind == StepKind::preheat && step.place == Place::oven);
            known = known || (heats && step.temperature.has_value());
            if (step.kind == StepKind::bake && bake == nullptr) {
                bake = &step;
            }
        }
        const bool cooks =
            std::any_of(reading_.recipe.steps.begin(),
                        reading_.recipe.steps.end(),
                        [](const Step& step) { return step.kind == StepKind::cook; });
        if (bake == nullptr) {
            for (Step& step : reading_.recipe.steps) {
                known = known || step.kind == StepKind::preheat;
                if (step.kind == StepKind::preheat && step.place == Place::oven &&
                    !step.temperature) {
                    bake = &step;
                }
            }
            const bool dough = std::any_of(
                reading_.recipe.steps.begin(), reading_.recipe.steps.end(), [](const Step& step) {
                    return step.kind == StepKind::knead || is_wait(step.kind);
                });
            if (bake == nullptr) {
                if (!cooks && !known && dough && reading_.recipe.steps.size() >= 3) {
                    if (const std::string* told = answer("bake");
                        told != nullptr && add_bake(*told)) {
                        return;
                    }
                    ask("bake",
                        "bake: oven temperature and baking time",
                        "The text stops before the oven. How hot, and how long, will you bake it?",
                        "not planned");
                }
                return;
            }
        }
        if (known && bake->temperature) {
            return;
        }
        if (known && bake->kind == StepKind::bake) {
            return; // the preheat tells it
        }
        if (const std::string* told = answer("oven-c")) {
            if (const auto range = oven_told(*told)) {
                bake->temperature = range;
                return;
            }
            not_understood("oven-c", *told, "a temperature such as 220 or gas 7");
        }
        const std::optional<TemperatureRange> words = bake->oven_words;
        const std::string standard =
            words
                ? fmt::format("{}", std::lround((words->low.degrees() + words->high.degrees()) / 2))
                : std::string("usual for the bread");
        const std::string asked =
            words ? fmt::format("How hot is the oven? The text says \"{}\"; usual is {}.",
                                oven_word_,
                                degrees(*words))
                  : std::string("How hot is the oven? The text does not say.");
        bake->temperature_question = "oven-c";
        ask("oven-c", "oven temperature", asked, standard);
    }

    static bool is_wait(StepKind kind) {
        return kind == StepKind::rise || kind == StepKind::prove || kind == StepKind::ferment ||
               kind == StepKind::rest || kind == StepKind::chill || kind == StepKind::soak ||
               kind == StepKind::activate;
    }

    void bake_time() {
        std::size_t count = 0;
        for (Step& step : reading_.recipe.steps) {
            if ((step.kind != StepKind::bake && step.kind != StepKind::cook) || step.minutes) {
                continue;
            }
            const bool bake = step.kind == StepKind::bake;
            const std::string key = fmt::format("{}{}",
                                                bake ? "minutes-bake" : "minutes-cook",
                                                count == 0 ? "" : fmt::format("-{}", count + 1));
            ++count;
            if (take_minutes(key, step)) {
                continue;
            }
            if (count == 1) { // one question for all of them; the others get the usual
                step.minutes_question = key;
                const std::string sign = step.cue
                                             ? fmt::format(" The text says \"{}\".", step.cue->text)
                                             : std::string();
                ask(key,
                    bake ? "baking time (bake)" : "cooking time (cook)",
                    fmt::format("How long does it {}?{}", bake ? "bake" : "cook", sign),
                    "usual for the bread");
            }
        }
    }

    bool take_minutes(const std::string& key, Step& step) {
        const std::string* told = answer(key);
        if (told == nullptr) {
            return false;
        }
        const auto minutes = minutes_told(*told);
        if (!minutes) {
            not_understood(key, *told, "a length of time such as 45 minutes");
            return false;
        }
        step.minutes = TimedBand{*minutes, Basis::stated};
        return true;
    }

    void wait_times() {
        std::size_t rises = 0;
        for (Step& step : reading_.recipe.steps) {
            const bool rising = step.kind == StepKind::rise || step.kind == StepKind::prove ||
                                step.kind == StepKind::ferment || step.kind == StepKind::chill ||
                                step.kind == StepKind::rest;
            if (!rising || step.during) {
                continue;
            }
            if (step.minutes) {
                continue;
            }
            ++rises;
            const std::string key = fmt::format("minutes-{}-{}", name_of(step.kind), rises);
            if (take_minutes(key, step)) {
                continue;
            }
            step.minutes_question = key;
            const std::string_view words = step.kind == StepKind::prove     ? "the final prove"
                                           : step.kind == StepKind::ferment ? "the sponge"
                                           : step.kind == StepKind::chill ? "the time in the fridge"
                                           : step.kind == StepKind::rest  ? "the rest"
                                                                          : "the rise";
            const std::string sign = step.cue
                                         ? fmt::format(" The text says \"{}\".", step.cue->text)
                                         : std::string(" The text does not say.");
            ask(key,
                fmt::format("{} time", name_of(step.kind)),
                fmt::format("How long does {} take?{}", words, sign),
                "usual for the bread");
        }
    }

    void amounts(const std::vector<FoundIngredient>& found) {
        bool flour_named = false;
        bool flour_weighed = false;
        bool salt_weighed = false;
        for (const Ingredient& ingredient : reading_.recipe.ingredients) {
            const IngredientRow* row = ingredient_named(knowledge_, ingredient.known_as);
            const bool flour = row != nullptr && row->role == "flour";
            flour_named = flour_named || flour;
            flour_weighed = flour_weighed || (flour && ingredient.grams.has_value());
            salt_weighed = salt_weighed ||
                           (row != nullptr && row->role == "salt" && ingredient.grams.has_value());
        }
        const bool flour_in_text = flour_named || said("flour");
        const bool any_weighed =
            std::any_of(reading_.recipe.ingredients.begin(),
                        reading_.recipe.ingredients.end(),
                        [](const Ingredient& ingredient) { return ingredient.grams.has_value(); });
        if (!flour_weighed && flour_in_text && (any_weighed || reading_.recipe.steps.size() > 3)) {
            ask_grams("grams-flour",
                      "flour",
                      "flour",
                      "how much flour",
                      "How much flour? The text gives no amount.",
                      "until it feels right");
        }
        if (!salt_weighed && said("salt") && (flour_weighed || any_weighed)) {
            ask_grams("grams-salt",
                      "salt",
                      "salt",
                      "salt",
                      "How much salt? The text gives no amount; bread usually has about 2 % of the "
                      "flour.",
                      "2 % of the flour");
        }
        const auto any_found = [&found](const auto& test) {
            return std::any_of(found.begin(), found.end(), test);
        };
        if (any_found([](const FoundIngredient& one) { return one.vague_yeast; })) {
            ask_grams("yeast-form",
                      "yeast",
                      "dried yeast",
                      "yeast",
                      "Which yeast, and how much? A book of that age means liquid yeast by the "
                      "spoon or cup, not today's.",
                      "7 g dried yeast for 500 g flour");
        }
        const bool regional = any_found([](const FoundIngredient& one) { return one.regional; });
        const bool told_region = regional && answer("region") != nullptr;
        if (!told_region && any_found([](const FoundIngredient& one) { return one.by_region; })) {
            ask("region",
                "pint, ounce or cup",
                "Is it a British or an American book? A British pint is a fifth larger.",
                "American");
        }
        for (const FoundIngredient& one : found) {
            if (!one.disagreement) {
                continue;
            }
            const std::string& item = one.ingredient.item;
            const std::string key = "amount-" + key_of(item);
            if (const std::string* told = answer(key)) {
                if (set_grams(*told, [&item](const Ingredient& ingredient) {
                        return ingredient.item == item;
                    })) {
                    continue;
                }
                not_understood(key, *told, "an amount such as 300 g");
            }
            ask(key,
                "amount of " + item,
                fmt::format("Which amount of {}? The text gives two that differ: \"{}\".",
                            item,
                            one.ingredient.text),
                "the weight");
        }
    }

    template <typename Test>
    bool set_grams(const std::string& value, const Test& test) {
        const auto grams = grams_told(value);
        if (!grams) {
            return false;
        }
        for (Ingredient& ingredient : reading_.recipe.ingredients) {
            if (test(ingredient)) {
                ingredient.grams = exactly(*grams);
                return true;
            }
        }
        return false;
    }

    // Asks for a weight of the ingredient of a role, or takes the answer; one that the text never
    // lists is added.
    void ask_grams(const std::string& key,
                   std::string_view role,
                   const std::string& item,
                   std::string about,
                   std::string words,
                   std::string standard) {
        if (const std::string* told = answer(key)) {
            const bool set = set_grams(*told, [&](const Ingredient& ingredient) {
                const IngredientRow* row = ingredient_named(knowledge_, ingredient.known_as);
                return row != nullptr && row->role == role && !ingredient.grams;
            });
            if (set) {
                return;
            }
            if (const auto grams = grams_told(*told)) {
                Ingredient ingredient;
                ingredient.text = *told;
                ingredient.item = item;
                ingredient.grams = exactly(*grams);
                reading_.recipe.ingredients.push_back(std::move(ingredient));
                return;
            }
            not_understood(key, *told, "an amount such as 500 g");
        }
        ask(key, std::move(about), std::move(words), std::move(standard));
    }

    // "220 °C for 30 minutes": the bake that the text leaves out.
    bool add_bake(const std::string& told) {
        const auto heat = oven_told(told);
        const auto minutes = minutes_told(told);
        if (!heat || !minutes) {
            not_understood("bake", told, "a heat and a time, such as 220 for 30 minutes");
            return false;
        }
        Step bake;
        bake.kind = StepKind::bake;
        bake.place = Place::oven;
        bake.text = told;
        bake.temperature = heat;
        bake.minutes = TimedBand{*minutes, Basis::stated};
        const std::size_t end = reading_.recipe.steps.back().span.end;
        bake.span = Span{end, end};
        reading_.recipe.steps.push_back(std::move(bake));
        return true;
    }

    // The lengths of the bread that was asked for instead of the one read first.
    void make_the_other_bread() {
        for (Step& step : reading_.recipe.steps) {
            if (step.kind == StepKind::bake && step.minutes && !step.alternatives.empty() &&
                step.alternatives.front().minutes) {
                std::swap(*step.minutes, *step.alternatives.front().minutes);
            }
        }
    }

    static std::string key_of(const std::string& item) {
        std::string key;
        for (const char c : item) {
            key += (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') ? c : '-';
        }
        return key.substr(0, 40);
    }

    [[nodiscard]] bool said(std::string_view word) const {
        return std::any_of(layout_.blocks.begin(), layout_.blocks.end(), [&](const Block& block) {
            if (block.role != BlockRole::method && block.role != BlockRole::ingredients) {
                return false;
            }
            for (std::size_t at = block.tokens.begin; at < block.tokens.end; ++at) {
                if (is_word(layout_.tokens[at], word)) {
                    return true;
                }
            }
            return false;
        });
    }

    void left_over_answers() {
        for (std::size_t index = 0; index < answers_.size(); ++index) {
            if (!used_[index]) {
                reading_.remarks.push_back(
                    {"answer_unknown",
                     Severity::warning,
                     fmt::format("\"{}\" is not asked by this text", answers_[index].key),
                     answers_[index].key,
                     "Leave it out, or use one of the keys that read lists."});
            }
        }
    }

    const Knowledge& knowledge_;
    const Layout& layout_;
    const Answers& answers_;
    Reading& reading_;
    std::vector<bool> used_;
    std::string_view oven_word_;
};

} // namespace

void ask_and_answer(const Knowledge& knowledge,
                    const Layout& layout,
                    const std::vector<FoundIngredient>& found,
                    const std::vector<std::string>& kinds_of_bread,
                    const Answers& answers,
                    Reading& reading) {
    Asker(knowledge, layout, answers, reading).run(found, kinds_of_bread);
}

} // namespace loafwright::reading

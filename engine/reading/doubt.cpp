// SPDX-License-Identifier: Apache-2.0
#include "engine/reading/doubt.hpp"

#include <algorithm>
#include <cstddef>
#include <iterator>
#include <string_view>
#include <utility>

namespace loafwright {
namespace {

bool has_figure(std::string_view word) {
    // Figures, and the fractions of Latin-1 and of the number forms: C2 BC to BE, E2 85 90 to 9E.
    for (std::size_t at = 0; at < word.size(); ++at) {
        const auto byte = [&](std::size_t ahead) {
            return at + ahead < word.size() ? static_cast<unsigned char>(word[at + ahead]) : 0U;
        };
        const bool latin = byte(0) == 0xC2U && byte(1) >= 0xBCU && byte(1) <= 0xBEU;
        const bool form =
            byte(0) == 0xE2U && byte(1) == 0x85U && byte(2) >= 0x90U && byte(2) <= 0x9EU;
        if ((word[at] >= '0' && word[at] <= '9') || latin || form) {
            return true;
        }
    }
    return false;
}

bool inside(Span part, Span whole) {
    return whole.begin <= part.begin && part.end <= whole.end;
}

std::string other_readings(const std::vector<std::string>& maybe) {
    std::string words;
    for (std::size_t index = 0; index < maybe.size(); ++index) {
        words += index == 0 ? " It may be \"" : index + 1 == maybe.size() ? "\" or \"" : "\", \"";
        words += maybe[index];
    }
    return words.empty() ? words : words + "\".";
}

// The reader's own question about the same words, taken out.
std::optional<Question> taken_out(Span words, std::vector<Question>& questions) {
    const auto found = std::find_if(questions.begin(), questions.end(), [&](const Question& one) {
        return one.span && one.span->begin < words.end && words.begin < one.span->end;
    });
    if (found == questions.end()) {
        return std::nullopt;
    }
    Question question = std::move(*found);
    questions.erase(found);
    return question;
}

} // namespace

std::string word_key(std::size_t begin) {
    return "word-at-" + std::to_string(begin);
}

bool hangs_on(Span words, const Recipe& recipe) {
    return std::any_of(recipe.steps.begin(),
                       recipe.steps.end(),
                       [words](const Step& step) { return inside(words, step.span); }) ||
           std::any_of(recipe.ingredients.begin(),
                       recipe.ingredients.end(),
                       [words](const Ingredient& ingredient) {
                           return ingredient.span && inside(words, *ingredient.span);
                       });
}

Settled settle(const std::string& text, const std::vector<Doubt>& doubts, const Answers& answers) {
    Settled settled;
    std::vector<bool> used(answers.size(), false);
    std::size_t copied = 0;
    for (const Doubt& doubt : doubts) {
        const std::string key = word_key(doubt.span.begin);
        settled.text.append(text, copied, doubt.span.begin - copied);
        copied = doubt.span.end;
        const std::string* said = nullptr;
        for (std::size_t index = 0; index < answers.size(); ++index) {
            if (answers[index].key == key) {
                used[index] = true;
                said = &answers[index].value;
            }
        }
        if (said != nullptr) {
            settled.text += *said;
            continue;
        }
        const std::size_t begin = settled.text.size();
        settled.text.append(text, doubt.span.begin, doubt.span.end - doubt.span.begin);
        settled.open.push_back({key, Doubt{Span{begin, settled.text.size()}, doubt.maybe}});
    }
    settled.text += text.substr(copied);
    for (std::size_t index = 0; index < answers.size(); ++index) {
        if (!used[index]) {
            settled.others.push_back(answers[index]);
        }
    }
    return settled;
}

void ask_about_doubts(std::string_view text,
                      const std::vector<OpenDoubt>& doubts,
                      Reading& reading) {
    std::vector<Question> questions;
    for (const OpenDoubt& open : doubts) {
        const Span span = open.doubt.span;
        const std::string word(text.substr(span.begin, span.end - span.begin));
        const bool figure = has_figure(word) ||
                            std::any_of(open.doubt.maybe.begin(),
                                        open.doubt.maybe.end(),
                                        [](const std::string& other) { return has_figure(other); });
        if (!figure || !hangs_on(span, reading.recipe)) {
            continue;
        }
        Question question;
        question.key = open.key;
        question.about = "a word in the picture";
        question.ask = "Does the picture say \"" + word + "\"? It is not clear there." +
                       other_readings(open.doubt.maybe);
        question.default_answer = word;
        if (const auto own = taken_out(span, reading.questions)) {
            question.default_answer = own->default_answer;
        }
        question.span = span;
        questions.push_back(std::move(question));
    }
    reading.questions.insert(reading.questions.begin(),
                             std::make_move_iterator(questions.begin()),
                             std::make_move_iterator(questions.end()));
}

} // namespace loafwright

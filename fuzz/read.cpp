// SPDX-License-Identifier: Apache-2.0
//
// Any bytes through check_text and read. A text is either refused with reasons, or becomes a
// reading whose spans lie in the text and leave no word out. The judge below knows nothing of how
// the reader cuts a text: it marks the bytes that the spans cover and looks at what is left.
#include "engine/reading/read.hpp"

#include "engine/knowledge/knowledge.hpp"
#include "engine/wire/wire.hpp"
#include "fuzz/promise.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace loafwright::fuzz {
namespace {

bool is_digit(char c) {
    return c >= '0' && c <= '9';
}

bool is_ascii_letter(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

// A byte of a word: ASCII letters and digits, and the accented letters of U+00C0 to U+024F, whose
// first byte is 0xC3 to 0xC9. Signs of other scripts are left to the reader's own judgement.
bool is_word_byte(std::string_view text, std::size_t at) {
    const char c = text[at];
    const auto byte = static_cast<unsigned char>(c);
    const bool times_or_divided =
        byte == 0xC3 && at + 1 < text.size() && (text[at + 1] == '\x97' || text[at + 1] == '\xB7');
    return is_digit(c) || is_ascii_letter(c) || (byte >= 0xC3 && byte <= 0xC9 && !times_or_divided);
}

// Mark-up that is nobody's words: the number of a list's item, and the address of a link.
std::vector<bool> mark_up_in(std::string_view text) {
    std::vector<bool> mark_up(text.size(), false);
    std::size_t line = 0;
    while (line < text.size()) {
        const std::size_t stop = std::min(text.find('\n', line), text.size());
        std::size_t at = line;
        while (at < stop && (text[at] == ' ' || text[at] == '\t' || text[at] == '\r')) {
            ++at;
        }
        std::size_t end = at;
        while (end < stop && is_digit(text[end])) {
            ++end;
        }
        if (end > at && end < stop && (text[end] == '.' || text[end] == ')')) {
            std::fill(mark_up.begin() + static_cast<std::ptrdiff_t>(at),
                      mark_up.begin() + static_cast<std::ptrdiff_t>(end),
                      true);
        }
        for (std::size_t open = text.find("](", line); open < stop;
             open = text.find("](", open + 1)) {
            const std::size_t close = text.find(')', open);
            if (close < stop) {
                std::fill(mark_up.begin() + static_cast<std::ptrdiff_t>(open),
                          mark_up.begin() + static_cast<std::ptrdiff_t>(close),
                          true);
            }
        }
        line = stop + 1;
    }
    return mark_up;
}

class Judge {
public:
    explicit Judge(std::string_view text) : text_(text), covered_(text.size(), false) {}

    void reading(const Reading& reading) {
        const Recipe& recipe = reading.recipe;
        for (std::size_t index = 0; index < recipe.steps.size(); ++index) {
            step(recipe, index);
        }
        for (const Ingredient& ingredient : recipe.ingredients) {
            promise(!ingredient.item.empty(), "an ingredient has a name");
            if (ingredient.span) {
                cover(*ingredient.span);
            }
            if (ingredient.grams) {
                band(ingredient.grams->low.count(),
                     ingredient.grams->likely.count(),
                     ingredient.grams->high.count());
            }
        }
        for (const Unread& unread : reading.unread) {
            cover(unread.span);
            promise(!unread.text.empty() && !unread.why.empty(), "what is unread says why");
        }
        if (recipe.pieces) {
            promise(std::isfinite(*recipe.pieces) && *recipe.pieces > 0, "pieces can be counted");
        }
        questions(reading);
        for (const Diagnostic& remark : reading.remarks) {
            promise(is_known_code(remark.code), "every remark stands in the catalogue");
        }
        nothing_is_left_out();
        size_follows_text(reading);
    }

private:
    void in_range(Span span) const {
        promise(span.begin < span.end && span.end <= text_.size(), "spans lie in the text");
        promise(is_between_characters(text_, span.begin) && is_between_characters(text_, span.end),
                "spans begin and end between characters");
    }

    void cover(Span span) {
        in_range(span);
        std::fill(covered_.begin() + static_cast<std::ptrdiff_t>(span.begin),
                  covered_.begin() + static_cast<std::ptrdiff_t>(span.end),
                  true);
    }

    static void band(double low, double likely, double high) {
        promise(std::isfinite(low) && std::isfinite(likely) && std::isfinite(high),
                "amounts are finite");
        promise(0.0 <= low && low <= likely && likely <= high, "0 <= low <= likely <= high");
    }

    static void minutes(const std::optional<TimedBand>& timed) {
        if (timed) {
            band(timed->minutes.low.count(),
                 timed->minutes.likely.count(),
                 timed->minutes.high.count());
        }
    }

    static void minutes(const std::optional<Minutes>& length) {
        promise(!length || (std::isfinite(length->count()) && length->count() >= 0.0),
                "minutes are finite and not negative");
    }

    static void temperature(const std::optional<TemperatureRange>& range) {
        promise(!range || (std::isfinite(range->low.degrees()) &&
                           std::isfinite(range->high.degrees()) && range->low <= range->high),
                "temperatures are finite and in order");
    }

    void step(const Recipe& recipe, std::size_t index) {
        const Step& step = recipe.steps[index];
        cover(step.span);
        promise(!step.text.empty(), "a step has words");
        minutes(step.minutes);
        temperature(step.temperature);
        temperature(step.oven_words);
        minutes(step.repeat);
        minutes(step.after_start);
        minutes(step.before_next);
        for (const std::size_t before : step.after) {
            promise(before < recipe.steps.size() && before != index, "`after` names other steps");
        }
        if (step.during) {
            promise(*step.during < recipe.steps.size() && *step.during != index,
                    "`during` names another step");
            const StepKind kind = recipe.steps[*step.during].kind;
            const Attention attention = attention_of(kind);
            promise(attention == Attention::wait || attention == Attention::near,
                    "`during` names a wait or a bake");
        }
        if (step.clock) {
            promise(step.clock->hour >= 0 && step.clock->hour <= 23 && step.clock->minute >= 0 &&
                        step.clock->minute <= 59,
                    "a clock time is on the clock");
        }
        for (const Use& use : step.uses) {
            promise(!use.share || (std::isfinite(*use.share) && *use.share > 0),
                    "shares are amounts");
        }
        for (const Alternative& other : step.alternatives) {
            minutes(other.minutes);
            temperature(other.temperature);
        }
        if (step.cue && step.cue->span) {
            in_range(*step.cue->span);
        }
        for (const Reminder& reminder : step.reminders) {
            promise(!reminder.text.empty(), "a reminder has words");
            promise(reminder.weight >= 0 && reminder.weight <= 100, "weights are 0 to 100");
            if (reminder.span) {
                in_range(*reminder.span);
            }
        }
    }

    static void questions(const Reading& reading) {
        std::vector<std::string> keys;
        for (const Question& question : reading.questions) {
            promise(!question.key.empty() && !question.ask.empty() &&
                        !question.default_answer.empty(),
                    "a question has a key, words and a default");
            keys.push_back(question.key);
        }
        std::sort(keys.begin(), keys.end());
        promise(std::adjacent_find(keys.begin(), keys.end()) == keys.end(),
                "no question is asked twice");
        const auto is_asked = [&keys](const std::optional<std::string>& key) {
            return !key || std::binary_search(keys.begin(), keys.end(), *key);
        };
        for (const Step& step : reading.recipe.steps) {
            promise(is_asked(step.minutes_question) && is_asked(step.temperature_question),
                    "a step names open questions only");
        }
    }

    void nothing_is_left_out() const {
        const std::vector<bool> mark_up = mark_up_in(text_);
        for (std::size_t at = 0; at < text_.size(); ++at) {
            if (is_word_byte(text_, at) && !covered_[at] && !mark_up[at]) {
                const std::size_t begin = at - std::min<std::size_t>(at, 20);
                promise(false,
                        "no word is left out, byte " + std::to_string(at) +
                            ", near: " + std::string(text_.substr(begin, 40)));
            }
        }
    }

    // Work that grows faster than the text shows first in what it leaves behind.
    void size_follows_text(const Reading& reading) const {
        const std::size_t size = text_.size();
        promise(reading.recipe.steps.size() <= size, "steps are fewer than bytes");
        promise(reading.recipe.ingredients.size() <= size, "ingredients are fewer than bytes");
        promise(reading.unread.size() <= size, "unread phrases are fewer than bytes");
        std::size_t kept = 0;
        for (const Step& step : reading.recipe.steps) {
            kept += step.text.size();
        }
        for (const Unread& unread : reading.unread) {
            kept += unread.text.size();
        }
        promise(kept <= 4 * size + 64, "words are kept a few times at most");
    }

    std::string_view text_;
    std::vector<bool> covered_;
};

// The first few things that were read, each corrected to something else.
Answers corrections_of(const Reading& reading) {
    static const std::vector<std::string> kinds = {"none", "rise", "bake", "knead", "serve"};
    constexpr std::size_t most = 10;
    Answers answers;
    for (std::size_t index = 0; index < std::min(most, reading.recipe.steps.size()); ++index) {
        const std::string& at = reading.recipe.steps[index].at;
        answers.push_back({"kind-at-" + at, kinds[(index + at.size()) % kinds.size()]});
        answers.push_back({"minutes-at-" + at, "45"});
        answers.push_back({"heat-at-" + at, "220"});
    }
    for (std::size_t index = 0; index < std::min(most, reading.unread.size()); ++index) {
        answers.push_back({"kind-at-" + reading.unread[index].at, kinds[index % kinds.size()]});
    }
    for (std::size_t index = 0; index < std::min(most, reading.recipe.ingredients.size());
         ++index) {
        const std::string& at = reading.recipe.ingredients[index].at;
        answers.push_back({"grams-at-" + at, index % 2 == 0 ? "2 tsp" : "none"});
    }
    return answers;
}

void one_text(const std::string& text) {
    static const Knowledge knowledge = built_in_knowledge();
    const auto checked = check_text(text, "input");
    if (!checked) {
        promise_told(checked.error());
        return;
    }
    promise(checked->view() == text, "a checked text is the text");
    const Reading reading = read(*checked, knowledge);
    Judge(text).reading(reading);
    const std::string json = wire::reading_json(reading);
    promise(json == wire::reading_json(read(*checked, knowledge)), "reading twice reads the same");
    const Reading corrected = read(*checked, knowledge, corrections_of(reading));
    Judge(text).reading(corrected);
}

} // namespace
} // namespace loafwright::fuzz

int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    loafwright::fuzz::one_text(std::string(loafwright::fuzz::text_of(data, size)));
    return 0;
}

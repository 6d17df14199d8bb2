// SPDX-License-Identifier: Apache-2.0
//
// A reading laid out for a person to check: the recipe's words on the right as they stand, what was
// made of them in the margin on the left, so that a slip is seen at a glance.
#include "shell/cli/read_page.hpp"

#include "engine/fitting/words.hpp"
#include "shell/output/text_lines.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <string_view>
#include <vector>

namespace loafwright::cli {

namespace {

using output::padded;
using output::printable;
using output::wrapped;

constexpr std::size_t narrowest = 40;
constexpr std::size_t margin_wide = 24;
constexpr std::size_t margin_narrow = 14;

// The trade's words for the kinds, as the page uses them.
std::string_view kind_words(StepKind kind) {
    switch (kind) {
    case StepKind::prepare:
        return "prepare";
    case StepKind::weigh:
        return "weigh";
    case StepKind::mix:
        return "mix";
    case StepKind::knead:
        return "knead";
    case StepKind::fold:
        return "fold";
    case StepKind::knock_back:
        return "knock back";
    case StepKind::divide:
        return "divide";
    case StepKind::shape:
        return "shape";
    case StepKind::finish:
        return "finish";
    case StepKind::activate:
        return "wake the yeast";
    case StepKind::soak:
        return "soak";
    case StepKind::ferment:
        return "leaven or sponge";
    case StepKind::rise:
        return "first rise";
    case StepKind::rest:
        return "rest";
    case StepKind::prove:
        return "prove";
    case StepKind::chill:
        return "chill";
    case StepKind::preheat:
        return "oven on";
    case StepKind::bake:
        return "bake";
    case StepKind::cook:
        return "cook";
    case StepKind::cool:
        return "cool";
    case StepKind::serve:
        return "eat";
    case StepKind::store:
        return "keep";
    }
    return "";
}

std::string_view basis_words(Basis basis) {
    switch (basis) {
    case Basis::stated:
        return "from the recipe";
    case Basis::computed:
        return "for your kitchen";
    case Basis::assumed:
    case Basis::open:
        return "our guess";
    case Basis::learned:
        return "from your bakes";
    }
    return "";
}

std::string minutes_words(const Band<Minutes>& minutes) {
    const auto low = fitting::whole_minutes(minutes.low);
    const auto high = fitting::whole_minutes(minutes.high);
    if (low == high) {
        return fitting::duration_text(low);
    }
    return high < 60 ? fmt::format("{} to {} min", low, high)
                     : fitting::duration_text(low) + " to " + fitting::duration_text(high);
}

std::string degrees_words(const TemperatureRange& range) {
    if (range.low == range.high) {
        return fitting::degrees_text(range.low);
    }
    return fmt::format("{:.0f} to {}", range.low.degrees(), fitting::degrees_text(range.high));
}

std::string grams_words(const Band<Grams>& grams) {
    const auto rounded = [](Grams amount) {
        const double count = amount.count();
        return count < 10.0 ? std::floor(count * 10.0 + 0.5) / 10.0 : std::floor(count + 0.5);
    };
    return fmt::format("{}{} g", grams.low == grams.high ? "" : "about ", rounded(grams.likely));
}

/// Two columns: the margin, and the recipe's words.
class Page {
public:
    Page(std::size_t columns, output::Weight weight)
        : columns_(std::max(columns, narrowest)),
          margin_(columns_ >= 64 ? margin_wide : margin_narrow), weight_(weight) {}

    void heading(std::string_view words) {
        if (!text_.empty()) {
            text_ += "\n";
        }
        for (const std::string& line : wrapped(printable(words), columns_)) {
            text_ += weight_ == output::Weight::bold ? "\033[1m" + line + "\033[0m\n" : line + "\n";
        }
    }
    void row(const std::vector<std::string>& margin, const std::vector<std::string>& words) {
        std::vector<std::string> left;
        for (const std::string& line : margin) {
            for (std::string& part : wrapped(printable(line), margin_ - 4)) {
                left.push_back(std::move(part));
            }
        }
        std::vector<std::string> right;
        for (const std::string& line : words) {
            for (std::string& part : wrapped(printable(line), columns_ - margin_)) {
                right.push_back(std::move(part));
            }
        }
        for (std::size_t i = 0; i < std::max(left.size(), right.size()); ++i) {
            std::string line = padded("  " + (i < left.size() ? left[i] : std::string()), margin_);
            line += i < right.size() ? right[i] : std::string();
            line.erase(line.find_last_not_of(' ') + 1);
            text_ += line + "\n";
        }
    }
    void sentence(std::string_view words, std::size_t indent) {
        for (const std::string& line : wrapped(printable(words), columns_ - indent)) {
            text_ += std::string(indent, ' ') + line + "\n";
        }
    }
    [[nodiscard]] std::string text() const { return text_; }

private:
    std::size_t columns_;
    std::size_t margin_;
    output::Weight weight_;
    std::string text_;
};

std::string place_words(const Step& step) {
    switch (step.place) {
    case Place::fridge:
        return "in the fridge";
    case Place::warm:
        return "somewhere warm";
    case Place::counter:
    case Place::oven:
    case Place::hob:
        break;
    }
    return "";
}

std::string as_read_words(const StepAsRead& before) {
    std::string words(kind_words(before.kind));
    if (before.minutes) {
        words += ", " + minutes_words(before.minutes->minutes);
    }
    if (before.temperature) {
        words += ", " + degrees_words(*before.temperature);
    }
    return words;
}

void add_step(Page& page, const Recipe& recipe, std::size_t index, Why why) {
    const Step& step = recipe.steps[index];
    std::string kind = fmt::format("{} {}", index + 1, kind_words(step.kind));
    if (step.optional) {
        kind += ", if you like";
    }
    std::vector<std::string> margin{kind};
    const auto note = [&margin](const std::string& words) {
        if (!words.empty()) {
            margin.push_back("· " + words);
        }
    };
    if (step.minutes) {
        note(minutes_words(step.minutes->minutes));
    }
    if (step.temperature) {
        note(degrees_words(*step.temperature));
    }
    note(place_words(step));
    if (step.as_read) {
        note("you said so");
    }
    if (step.repeat) {
        note("every " + fitting::duration_text(fitting::whole_minutes(*step.repeat)));
    }
    if (step.clock) {
        note("at " + clock_text(*step.clock));
    }
    if (step.during) {
        note(fmt::format("during {}", *step.during + 1));
    }
    if (step.part) {
        note("for the " + *step.part);
    }

    std::vector<std::string> words{step.text};
    if (step.as_read) {
        words.push_back("→ read first as: " + as_read_words(*step.as_read));
    }
    if (step.cue) {
        words.push_back((step.cue->span ? "→ ready: " : "→ our sign: ") + step.cue->text);
    }
    for (const Reminder& reminder : step.reminders) {
        words.push_back("→ mind: " + reminder.text);
    }
    for (const Alternative& other : step.alternatives) {
        std::string line = fmt::format("→ or: {}", kind_words(other.kind));
        if (other.minutes) {
            line += " " + minutes_words(other.minutes->minutes);
        }
        if (other.place == Place::fridge) {
            line += " in the fridge";
        }
        words.push_back(line);
    }
    if (why == Why::shown) {
        const std::string length = step.minutes ? std::string(basis_words(step.minutes->basis))
                                                : std::string("the text gives no length");
        words.push_back(fmt::format(
            "→ why: {}; read from bytes {} to {}", length, step.span.begin, step.span.end));
        if (!step.at.empty()) {
            words.push_back("→ place " + step.at);
        }
        std::string after;
        for (const std::size_t before : step.after) {
            after += fmt::format("{}{}", after.empty() ? "" : ", ", before + 1);
        }
        if (!after.empty()) {
            words.push_back("→ after step " + after);
        }
    }
    page.row(margin, words);
}

} // namespace

std::string read_page(const Reading& reading, std::size_t columns, output::Weight weight, Why why) {
    const Recipe& recipe = reading.recipe;
    Page page(columns, weight);
    page.heading(recipe.title.empty() ? "A recipe without a title" : recipe.title);
    if (recipe.pieces) {
        page.sentence(fmt::format("makes {}", *recipe.pieces), 2);
    }
    if (!recipe.ingredients.empty()) {
        page.heading("Ingredients");
        for (const Ingredient& ingredient : recipe.ingredients) {
            std::string amount =
                ingredient.grams ? grams_words(*ingredient.grams) : std::string("unweighed");
            if (ingredient.optional) {
                amount += ", if you like";
            }
            std::vector<std::string> words{ingredient.text};
            if (ingredient.text.find(ingredient.item) == std::string::npos) {
                words.push_back("→ " + ingredient.item);
            }
            if (ingredient.as_read) {
                amount += ", you said so";
                words.push_back("→ read first as: " + (ingredient.as_read->grams
                                                           ? grams_words(*ingredient.as_read->grams)
                                                           : std::string("unweighed")));
            }
            if (why == Why::shown && !ingredient.at.empty()) {
                words.push_back("→ place " + ingredient.at);
            }
            page.row({amount}, words);
        }
    }
    page.heading(recipe.steps.empty() ? "No step could be read." : "Steps");
    for (std::size_t i = 0; i < recipe.steps.size(); ++i) {
        add_step(page, recipe, i, why);
    }
    if (!reading.unread.empty()) {
        page.heading("Not used");
        for (const Unread& unread : reading.unread) {
            page.row({unread.why}, {unread.text});
        }
    }
    if (why == Why::shown) {
        page.heading("To put right what was read");
        page.sentence(
            "--answer WHAT-at-PLACE=VALUE, where WHAT is minutes, heat, kind or place for a "
            "step, grams for an amount: --answer minutes-at-187=45. A kind of none is no "
            "step.",
            2);
    }
    if (!reading.questions.empty()) {
        page.heading("Left open by the recipe");
        for (const Question& question : reading.questions) {
            page.row({question.key}, {question.ask, "→ until you say: " + question.default_answer});
        }
    }
    return page.text();
}

} // namespace loafwright::cli

// SPDX-License-Identifier: Apache-2.0
//
// Titles are made from the kinds of the steps, in the trade's words, with a few details that the
// text itself names (the tin, the cover, the leaven). Words of the recipe are used as they are;
// ours are British.
#include "engine/planning/words.hpp"

#include "engine/quantity/conversion.hpp"
#include "engine/recipe/part_word.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace loafwright::planning::words {

namespace {

std::string lower(std::string_view text) {
    std::string out(text);
    for (char& c : out) {
        if (c >= 'A' && c <= 'Z') {
            c = static_cast<char>(c - 'A' + 'a');
        }
    }
    return out;
}

bool is_letter(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') ||
           (static_cast<unsigned char>(c) & 0x80U) != 0;
}

std::string_view text_of(const FittedRecipe& recipe, std::size_t fitted) {
    const auto step = recipe.steps[fitted].step;
    return step && *step < recipe.recipe.steps.size()
               ? std::string_view(recipe.recipe.steps[*step].text)
               : std::string_view();
}

std::string preferment_of(const FittedRecipe& recipe, std::size_t fitted) {
    const auto& step = recipe.steps[fitted].step;
    return step && *step < recipe.recipe.steps.size()
               ? preferment_word(recipe.recipe, recipe.recipe.steps[*step])
               : std::string("leaven");
}

std::string_view part_of(const FittedRecipe& recipe, std::size_t fitted) {
    const auto step = recipe.steps[fitted].step;
    return step && *step < recipe.recipe.steps.size() && recipe.recipe.steps[*step].part
               ? std::string_view(*recipe.recipe.steps[*step].part)
               : std::string_view();
}

bool is_one_of(std::string_view word, std::initializer_list<std::string_view> words) {
    return std::find(words.begin(), words.end(), word) != words.end();
}

std::string capitalised(std::string text) {
    if (!text.empty() && text.front() >= 'a' && text.front() <= 'z') {
        text.front() = static_cast<char>(text.front() - 'a' + 'A');
    }
    return text;
}

std::string covered(std::string_view text) {
    return has_word(text, {"cover"}) ? ", covered" : "";
}

// Where the shaped dough goes, when the text says.
std::string_view into(std::string_view text) {
    if (has_word(text, {"tin", "tins"})) {
        return "into the tin";
    }
    if (has_word(text, {"basket", "banneton"})) {
        return "into the basket";
    }
    if (has_word(text, {"tray", "sheet"})) {
        return "on to the tray";
    }
    return {};
}

bool goes_into_a_tin(const FittedRecipe& recipe) {
    return std::any_of(
        recipe.recipe.steps.begin(), recipe.recipe.steps.end(), [](const Step& step) {
            return step.kind != StepKind::cool && into(step.text) == "into the tin";
        });
}

} // namespace

std::string duration(std::int64_t minutes) {
    if (minutes < 60) {
        return fmt::format("{} min", minutes);
    }
    return minutes % 60 == 0 ? fmt::format("{} h", minutes / 60)
                             : fmt::format("{} h {:02}", minutes / 60, minutes % 60);
}

std::string day(const Zone& zone, Instant now, Instant then) {
    const std::int64_t days =
        days_from_civil(civil_of(zone, then).date) - days_from_civil(civil_of(zone, now).date);
    return days == 0    ? "today"
           : days == 1  ? "tomorrow"
           : days == -1 ? "yesterday"
                        : "on " + day_text(zone, then);
}

std::string clock_and_day(const Zone& zone, Instant now, Instant then) {
    return clock_text(zone, then) + " " + day(zone, now, then);
}

std::string clock_unless_today(const Zone& zone, Instant now, Instant then) {
    const std::string named = day(zone, now, then);
    return clock_text(zone, then) + (named == "today" ? "" : " " + named);
}

std::string oven(Celsius temperature) {
    const auto whole = [](double degrees) {
        return static_cast<long long>(std::floor(degrees + 0.5));
    };
    return fmt::format("{} °C (fan {}, gas {})",
                       whole(temperature.degrees()),
                       whole((temperature - fan_allowance).degrees()),
                       gas_mark_text(gas_mark_from_celsius(temperature)));
}

bool has_word(std::string_view text, std::initializer_list<std::string_view> stems) {
    const std::string low = lower(text);
    for (const std::string_view stem : stems) {
        for (std::size_t at = low.find(stem); at != std::string::npos;
             at = low.find(stem, at + 1)) {
            // "tin" is a word and "cover" begins one; "tint" and "recover" are neither.
            const bool begins = at == 0 || !is_letter(low[at - 1]);
            const std::size_t end = at + stem.size();
            const bool ends =
                stem.size() > 4 || end >= low.size() || !is_letter(low[end]) ||
                (low[end] == 's' && (end + 1 >= low.size() || !is_letter(low[end + 1])));
            if (begins && ends) {
                return true;
            }
        }
    }
    return false;
}

std::optional<std::int64_t> times_said(std::string_view text) {
    const std::string low = lower(text);
    if (has_word(low, {"twice"})) {
        return 2;
    }
    static constexpr std::array<std::string_view, 7> names = {
        "zero", "one", "two", "three", "four", "five", "six"};
    for (std::int64_t n = 1; n <= 6; ++n) {
        const auto index = static_cast<std::size_t>(n);
        for (const std::string& number : {std::string(names[index]), std::to_string(n)}) {
            for (const std::string_view what : {" times", " sets", " folds", " more times"}) {
                const std::string phrase = number + std::string(what);
                const std::size_t at = low.find(phrase);
                const bool begins = at != std::string::npos &&
                                    (at == 0 || (!is_letter(low[at - 1]) && low[at - 1] != '.' &&
                                                 (low[at - 1] < '0' || low[at - 1] > '9')));
                if (begins) {
                    return n;
                }
            }
        }
    }
    return std::nullopt;
}

std::string first_words(std::string_view text) {
    std::vector<std::string> found;
    std::string word;
    const auto close = [&] {
        // "And then" lead on from a sentence that does not stand here.
        const bool leads_on =
            found.empty() &&
            is_one_of(lower(word), {"and", "then", "now", "next", "also", "meanwhile"});
        if (!word.empty() && !leads_on) {
            found.push_back(word);
        }
        word.clear();
    };
    for (const char c : text) {
        const bool stops = c == '.' || c == ',' || c == ';' || c == ':' || c == '(' || c == '\n';
        if (c == ' ' || stops) {
            close();
            if (stops && !found.empty()) {
                break;
            }
        } else {
            word += c;
        }
    }
    close();
    constexpr std::size_t most_words = 8;
    if (found.size() > most_words) {
        found.resize(most_words);
        while (found.size() > 2 &&
               is_one_of(lower(found.back()),
                         {"a",    "an",    "the",  "to",   "of", "in",   "on",   "at",
                          "and",  "or",    "with", "for",  "it", "is",   "has",  "its",
                          "your", "until", "into", "from", "as", "that", "more", "by"})) {
            found.pop_back();
        }
    }
    std::string out;
    for (const std::string& one : found) {
        out += (out.empty() ? "" : " ") + one;
    }
    if (out.size() > 1 && out[0] >= 'A' && out[0] <= 'Z' && !(out[1] >= 'A' && out[1] <= 'Z')) {
        out[0] = static_cast<char>(out[0] - 'A' + 'a');
    }
    return out;
}

std::string verb(StepKind kind, std::string_view text) {
    switch (kind) {
    case StepKind::prepare:
        return "get ready";
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
        if (has_word(text, {"slash", "score", "scoring"})) {
            return "slash the top";
        }
        if (has_word(text, {"glaze", "brush", "egg wash"})) {
            return "brush the top";
        }
        if (has_word(text, {"seed", "sprinkle", "scatter"})) {
            return "scatter the top";
        }
        return "finish";
    case StepKind::cook:
        if (has_word(text, {"boil", "poach", "simmer"})) {
            return "boil";
        }
        if (has_word(text, {"steam"})) {
            return "steam";
        }
        return has_word(text, {"fry", "fries", "frying"}) ? "fry" : "cook";
    default:
        return "rest";
    }
}

std::string hands_title(const FittedRecipe& recipe, const std::vector<std::size_t>& fitted) {
    std::vector<std::string> verbs;
    std::string_view where;
    bool all_preferment = true;
    std::string preferment = "leaven";
    for (const std::size_t f : fitted) {
        const std::string_view text = text_of(recipe, f);
        const std::string word = verb(recipe.steps[f].kind, text);
        // Getting ready goes without saying beside other work.
        if (word == "get ready" && fitted.size() > 1) {
            continue;
        }
        if (std::find(verbs.begin(), verbs.end(), word) == verbs.end()) {
            verbs.push_back(word);
        }
        const bool moves =
            recipe.steps[f].kind == StepKind::shape || recipe.steps[f].kind == StepKind::mix;
        if (moves && !into(text).empty()) {
            where = into(text);
        }
        if (recipe.steps[f].kind != StepKind::weigh) {
            const std::string_view part = part_of(recipe, f);
            const bool is_preferment = names_a_leaven(part) || part == "starter";
            all_preferment = all_preferment && is_preferment;
            preferment = is_preferment ? preferment_of(recipe, f) : preferment;
        }
    }
    if (verbs.empty()) {
        verbs.emplace_back("get ready");
    }
    // At most four words of work stand in a title; the rest is in the lines below.
    while (verbs.size() > 4) {
        verbs.erase(verbs.begin() + 1);
    }
    if (all_preferment && !fitted.empty() && verbs.back() == "mix") {
        verbs.back() = fmt::format("mix the {}", preferment);
        where = {};
    }
    std::string title;
    for (std::size_t k = 0; k < verbs.size(); ++k) {
        if (k > 0) {
            title += k + 1 == verbs.size() && where.empty() ? " and " : ", ";
        }
        title += verbs[k];
    }
    if (!where.empty()) {
        title += fmt::format(", {}", where);
    }
    return capitalised(title);
}

std::string wait_title(const FittedRecipe& recipe, std::size_t fitted, const WaitPlace& place) {
    const FittedStep& step = recipe.steps[fitted];
    const std::string_view text = text_of(recipe, fitted);
    if (step.place == Place::fridge && place.night) {
        return "Night in the fridge";
    }
    const std::string in_fridge = step.place == Place::fridge ? " in the fridge" : "";
    static constexpr std::array<std::string_view, 5> numbers = {
        "", "First", "Second", "Third", "Fourth"};
    switch (step.kind) {
    case StepKind::rise:
        if (place.rises == 1 && !place.later_prove) {
            return "Rise" + in_fridge + covered(text);
        }
        return std::string(place.number < 5 ? numbers[static_cast<std::size_t>(place.number)]
                                            : "Next") +
               " rise" + in_fridge + covered(text);
    case StepKind::prove:
        return "Prove" + in_fridge + covered(text);
    case StepKind::activate:
        return "Wake the yeast";
    case StepKind::soak:
        return "Soak" + covered(text);
    case StepKind::ferment:
        return capitalised(preferment_of(recipe, fitted)) + in_fridge + covered(text);
    case StepKind::chill:
        return "Chill" + covered(text);
    case StepKind::cool:
        return "Leave to cool";
    default:
        return "Rest" + in_fridge + covered(text);
    }
}

std::string out_title(const FittedRecipe& recipe) {
    const bool bakes =
        std::any_of(recipe.steps.begin(), recipe.steps.end(), [](const FittedStep& step) {
            return step.kind == StepKind::bake;
        });
    if (!bakes) {
        return "Off the heat, on to the rack";
    }
    return goes_into_a_tin(recipe) ? "Out of the tin, on to the rack"
                                   : "Out of the oven, on to the rack";
}

std::string bake_act(const FittedRecipe& recipe, std::size_t before, std::size_t fitted) {
    const std::string_view text = text_of(recipe, fitted);
    const bool takes_off = has_word(text, {"remove", "take", "lift", "without", "uncover", "off"});
    std::string act;
    if (has_word(text, {"lid", "uncover"}) && takes_off) {
        act = "lid off";
    } else if (has_word(text, {"foil"}) && takes_off) {
        act = "foil off";
    } else if (has_word(
                   text,
                   {"turn the tin", "turn the tray", "turn the loaf", "turn it round", "rotate"})) {
        act = "turn it round";
    }
    const auto& from = recipe.steps[before].oven;
    const auto& to = recipe.steps[fitted].oven;
    if (to && (!from || *from != *to)) {
        const std::string way = !from ? "oven at " : *to < *from ? "oven down to " : "oven up to ";
        act = (act.empty() ? "" : act + ", ") + way + oven(*to);
    }
    return act;
}

} // namespace loafwright::planning::words

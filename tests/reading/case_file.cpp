// SPDX-License-Identifier: Apache-2.0
//
// Reads text cases and compares them with what the reader makes of them. The comparison looks only
// at what a case names, so a case tells one phenomenon and does not break for another.
#include "tests/reading/case_file.hpp"

#include "engine/reading/read.hpp"

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <fstream>
#include <optional>
#include <sstream>

namespace loafwright::tests {
namespace {

std::vector<std::string> words_of(const std::string& line) {
    std::istringstream in(line);
    std::vector<std::string> words;
    std::string word;
    while (in >> word) {
        words.push_back(word);
    }
    return words;
}

std::string lower(std::string text) {
    std::transform(text.begin(), text.end(), text.begin(), [](unsigned char c) {
        return static_cast<char>(std::tolower(c));
    });
    return text;
}

std::string rest_of(const std::vector<std::string>& words, std::size_t from) {
    std::string out;
    for (std::size_t at = from; at < words.size(); ++at) {
        out += (at == from ? "" : " ");
        out += words[at];
    }
    return lower(out);
}

struct Range {
    double low = 0.0;
    double high = 0.0;
};

std::optional<Range> range_in(const std::string& word) {
    try {
        std::size_t used = 0;
        Range range;
        range.low = range.high = std::stod(word, &used);
        if (used < word.size()) {
            if (word[used] != '-') {
                return std::nullopt;
            }
            std::size_t more = 0;
            range.high = std::stod(word.substr(used + 1), &more);
            if (used + 1 + more != word.size()) {
                return std::nullopt;
            }
        }
        return range;
    } catch (const std::exception&) {
        return std::nullopt;
    }
}

bool near(double a, double b) {
    return std::fabs(a - b) <= std::max(0.6, 0.01 * std::fabs(b));
}

struct WantedStep {
    std::vector<StepKind> kinds;
    std::optional<Range> minutes;
    std::optional<Range> celsius;
    std::optional<Place> place;
    std::optional<Basis> basis;
    bool optional = false;
    std::optional<double> every;
    std::optional<double> before;
    std::optional<StepKind> inside;
};

std::optional<WantedStep> wanted_in(const std::vector<std::string>& words) {
    WantedStep wanted;
    std::istringstream names(words.size() > 1 ? words[1] : "");
    for (std::string name; std::getline(names, name, '|');) {
        const auto kind = step_kind_named(name);
        if (!kind) {
            return std::nullopt;
        }
        wanted.kinds.push_back(*kind);
    }
    if (wanted.kinds.empty()) {
        return std::nullopt;
    }
    for (std::size_t at = 2; at < words.size(); ++at) {
        const std::string& word = words[at];
        const bool more = at + 1 < words.size();
        if (const auto minutes = range_in(word)) {
            wanted.minutes = minutes;
        } else if (word[0] == '@') {
            wanted.celsius = range_in(word.substr(1));
        } else if (word == "optional") {
            wanted.optional = true;
        } else if ((word == "every" || word == "before") && more) {
            const auto value = range_in(words[++at]);
            (word == "every" ? wanted.every : wanted.before) =
                value ? std::optional<double>(value->low) : std::nullopt;
        } else if (word == "inside" && more) {
            wanted.inside = step_kind_named(words[++at]);
        } else if (const auto place = place_named(word)) {
            wanted.place = place;
        } else if (const auto basis = basis_named(word)) {
            wanted.basis = basis;
        } else {
            return std::nullopt;
        }
    }
    return wanted;
}

bool same(const WantedStep& wanted, const Step& step, const Recipe& recipe) {
    const bool kind =
        std::find(wanted.kinds.begin(), wanted.kinds.end(), step.kind) != wanted.kinds.end();
    if (!kind || (wanted.place && step.place != *wanted.place) ||
        (wanted.optional && !step.optional)) {
        return false;
    }
    if (wanted.minutes) {
        const Basis basis = wanted.basis.value_or(Basis::stated);
        if (!step.minutes || step.minutes->basis != basis ||
            !near(step.minutes->minutes.low.count(), wanted.minutes->low) ||
            !near(step.minutes->minutes.high.count(), wanted.minutes->high)) {
            return false;
        }
    }
    if (wanted.celsius &&
        (!step.temperature || !near(step.temperature->low.degrees(), wanted.celsius->low) ||
         !near(step.temperature->high.degrees(), wanted.celsius->high))) {
        return false;
    }
    if (wanted.every && (!step.repeat || !near(step.repeat->count(), *wanted.every))) {
        return false;
    }
    if (wanted.before && (!step.before_next || !near(step.before_next->count(), *wanted.before))) {
        return false;
    }
    if (wanted.inside && (!step.during || *step.during >= recipe.steps.size() ||
                          recipe.steps[*step.during].kind != *wanted.inside)) {
        return false;
    }
    return true;
}

bool holds(const std::string& text, const std::string& words) {
    return lower(text).find(words) != std::string::npos;
}

// "none", a figure or a band that holds the likely grams.
bool grams_are(const std::optional<Band<Grams>>& grams, const std::string& wanted) {
    const auto band = range_in(wanted);
    if (!band || !grams) {
        return !grams && wanted == "none";
    }
    // One per cent; half a gram where that is little, less where half a gram is much.
    const auto slack = [](double value) {
        return std::max(std::min(0.6, value * 0.1), value * 0.01);
    };
    const double likely = grams->likely.count();
    return likely >= band->low - slack(band->low) && likely <= band->high + slack(band->high);
}

std::string in_grams(double grams) {
    std::ostringstream out;
    out << " " << grams << " g,";
    return out.str();
}

std::string told(const Reading& reading) {
    std::string out = "read:";
    for (const Ingredient& one : reading.recipe.ingredients) {
        out += " " + one.item;
        if (one.grams) {
            out += in_grams(one.grams->likely.count());
        }
    }
    for (const Step& step : reading.recipe.steps) {
        out += " ";
        out += name_of(step.kind);
        if (step.minutes) {
            out += "(" + std::to_string(static_cast<int>(step.minutes->minutes.low.count())) + "-" +
                   std::to_string(static_cast<int>(step.minutes->minutes.high.count())) + ")";
        }
    }
    return out;
}

std::optional<std::string>
failure(const std::string& expectation, const Reading& reading, std::size_t& next_step) {
    const std::vector<std::string> words = words_of(expectation);
    if (words.empty()) {
        return std::nullopt;
    }
    const Recipe& recipe = reading.recipe;
    const std::string& verb = words[0];
    const std::string rest = rest_of(words, 1);
    const auto any_step = [&](const auto& test) {
        return std::any_of(recipe.steps.begin(), recipe.steps.end(), test);
    };
    bool good = false;
    if (verb == "step") {
        const auto wanted = wanted_in(words);
        for (; wanted && next_step < recipe.steps.size() && !good; ++next_step) {
            good = same(*wanted, recipe.steps[next_step], recipe);
        }
    } else if (verb == "no" && words.size() == 2) {
        const auto kind = step_kind_named(words[1]);
        good = kind && !any_step([&](const Step& step) { return step.kind == *kind; });
    } else if (verb == "never" && words.size() == 2) {
        const auto length = range_in(words[1]);
        good = length && !any_step([&](const Step& step) {
                   return step.minutes && near(step.minutes->minutes.low.count(), length->low) &&
                          near(step.minutes->minutes.high.count(), length->high);
               });
    } else if (verb == "steps" && words.size() == 2) {
        good = std::to_string(recipe.steps.size()) == words[1];
    } else if ((verb == "item" || verb == "instead") && words.size() >= 3) {
        const std::string item =
            lower(rest_of(std::vector<std::string>(words.begin(), words.end() - 1), 1));
        const auto is = [&](const auto& one) {
            return holds(one.item, item) && grams_are(one.grams, words.back());
        };
        const bool instead = verb == "instead";
        good = std::any_of(
            recipe.ingredients.begin(), recipe.ingredients.end(), [&](const Ingredient& one) {
                return instead ? std::any_of(one.substitutes.begin(), one.substitutes.end(), is)
                               : is(one);
            });
    } else if (verb == "optional" || verb == "needed") {
        good = std::any_of(
            recipe.ingredients.begin(), recipe.ingredients.end(), [&](const Ingredient& one) {
                return holds(one.item, rest) && one.optional == (verb == "optional");
            });
    } else if (verb == "use" && words.size() >= 3) {
        const std::string item =
            lower(rest_of(std::vector<std::string>(words.begin(), words.end() - 1), 1));
        const auto share = range_in(words.back());
        good = share && any_step([&](const Step& step) {
                   return std::any_of(step.uses.begin(), step.uses.end(), [&](const Use& use) {
                       return holds(use.item, item) && use.share &&
                              std::fabs(*use.share - share->low) < 0.01;
                   });
               });
    } else if (verb == "or" && words.size() >= 2) {
        std::vector<std::string> as_step = words;
        as_step[0] = "step";
        const auto wanted = wanted_in(as_step);
        good = wanted && any_step([&](const Step& step) {
                   return std::any_of(step.alternatives.begin(),
                                      step.alternatives.end(),
                                      [&](const Alternative& other) {
                                          Step like;
                                          like.kind = other.kind;
                                          like.place = other.place;
                                          like.minutes = other.minutes;
                                          like.temperature = other.temperature;
                                          return same(*wanted, like, recipe);
                                      });
               });
    } else if (verb == "cue") {
        good = any_step([&](const Step& step) { return step.cue && holds(step.cue->text, rest); });
    } else if (verb == "remind") {
        good = any_step([&](const Step& step) {
            return std::any_of(
                step.reminders.begin(), step.reminders.end(), [&](const Reminder& reminder) {
                    return holds(reminder.text, rest);
                });
        });
    } else if (verb == "ask" || verb == "unasked") {
        const bool asked = std::any_of(
            reading.questions.begin(), reading.questions.end(), [&](const Question& question) {
                return holds(question.about + " " + question.ask, rest);
            });
        good = asked == (verb == "ask");
    } else if (verb == "unread") {
        good = std::any_of(reading.unread.begin(), reading.unread.end(), [&](const Unread& unread) {
            return holds(unread.text, rest);
        });
    } else if (verb == "title") {
        good = lower(recipe.title) == rest;
    } else if (verb == "pieces" && words.size() == 2) {
        const auto count = range_in(words[1]);
        good = count && recipe.pieces && near(*recipe.pieces, count->low);
    } else {
        return "not an expectation: " + expectation;
    }
    return good ? std::nullopt
                : std::optional<std::string>("expected \"" + expectation + "\", " + told(reading));
}

} // namespace

std::vector<ReadingCase> cases_in(const std::string& path) {
    std::vector<ReadingCase> cases;
    std::ifstream in(path);
    std::string line;
    int number = 0;
    bool in_text = false;
    while (std::getline(in, line)) {
        ++number;
        if (line.rfind("== ", 0) == 0) {
            const std::string mark = "not yet: ";
            const bool not_yet = line.compare(3, mark.size(), mark) == 0;
            const std::string name = line.substr(3 + (not_yet ? mark.size() : 0));
            cases.push_back({name, "", {}, path, number, not_yet});
            in_text = true;
        } else if (cases.empty() || (!in_text && line.rfind("#", 0) == 0)) {
            continue; // the head of the file, and remarks between expectations
        } else if (line == "--") {
            in_text = false;
        } else if (in_text) {
            cases.back().text += line + "\n";
        } else if (!line.empty()) {
            cases.back().expectations.push_back(line);
        }
    }
    if (cases.empty()) {
        cases.push_back({"this_file_has_no_cases", "", {"a case"}, path, number, false});
    }
    return cases;
}

std::vector<ReadingCase> all_cases() {
    std::vector<std::string> files;
    for (const auto& entry :
         std::filesystem::directory_iterator(LOAFWRIGHT_ROOT "/tests/cases/reading")) {
        files.push_back(entry.path().string());
    }
    std::sort(files.begin(), files.end());
    std::vector<ReadingCase> all;
    for (const std::string& file : files) {
        const std::vector<ReadingCase> some = cases_in(file);
        all.insert(all.end(), some.begin(), some.end());
    }
    return all;
}

std::vector<std::string> failures_of(const ReadingCase& one) {
    static const Knowledge knowledge = built_in_knowledge();
    static const Reader reader(knowledge);
    if (one.expectations.empty()) {
        return {"the case expects nothing"};
    }
    auto text = check_text(one.text, one.name);
    if (!text) {
        return {"the text cannot be read: " + text.error().front().what};
    }
    const Reading reading = reader.read(*text);
    std::vector<std::string> failures;
    std::size_t next_step = 0;
    for (const std::string& expectation : one.expectations) {
        if (auto wrong = failure(expectation, reading, next_step)) {
            failures.push_back(*wrong);
        }
    }
    return failures;
}

} // namespace loafwright::tests

// SPDX-License-Identifier: Apache-2.0
//
// Two breads cannot be followed from two pages at once: whoever works by the clock needs one list.
#include "engine/sheet/shared_page.hpp"

#include "engine/recipe/words.hpp"
#include "engine/sheet/lines.hpp"
#include "engine/sheet/measures.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstddef>
#include <iterator>
#include <string_view>
#include <utility>

namespace loafwright {

namespace {

constexpr std::size_t longest_name_words = 4;

// "Soft rolls for the soup lunch" is called soft rolls when there are other breads about.
std::string short_name(const std::string& title) {
    std::string name;
    std::size_t words = 0;
    for (std::size_t at = 0; at < title.size() && words < longest_name_words;) {
        const std::size_t end = std::min(title.find(' ', at), title.size());
        const std::string word = title.substr(at, end - at);
        at = end + 1;
        if (word.empty()) {
            continue;
        }
        if (words > 0 &&
            has_any_word(lower_case(word), {"for", "with", "of", "from", "in", "on"})) {
            break;
        }
        name += (words > 0 ? " " : "") + word;
        ++words;
    }
    while (!name.empty() && (name.back() == ',' || name.back() == ':' || name.back() == ';')) {
        name.pop_back();
    }
    return name.empty() ? "Bread" : name;
}

// Two loaves of one name are told apart by number.
std::vector<std::string> short_names(const std::vector<Sheet>& sheets) {
    std::vector<std::string> names;
    for (const Sheet& sheet : sheets) {
        names.push_back(short_name(sheet.title));
    }
    std::vector<std::string> told = names;
    for (std::size_t b = 0; b < names.size(); ++b) {
        if (std::count(names.begin(), names.end(), names[b]) > 1) {
            const auto before =
                std::count(names.begin(), names.begin() + static_cast<std::ptrdiff_t>(b), names[b]);
            told[b] = fmt::format("{} {}", names[b], before + 1);
        }
    }
    return told;
}

struct Row {
    Instant at;
    bool eats = false;
    SheetStage line;
};

// The oven is one for all: "Oven on, 230 °C", for the hall loaf.
SheetStage act_line(const std::string& name, const std::string& words) {
    constexpr std::string_view oven = "oven ";
    SheetStage line;
    if (words.compare(0, oven.size(), oven) == 0) {
        line.title = capitalised(words);
        const bool has_article = name.rfind("The ", 0) == 0 || name.rfind("A ", 0) == 0;
        line.also = "for " + (has_article ? lower_case(name.substr(0, 1)) + name.substr(1) : name);
    } else {
        line.title = capitalised(words);
        line.bread = name;
    }
    return line;
}

// The dough is left alone as the hands leave it, so nobody has to come for that.
bool begins_by_itself(const std::vector<Stage>& stages, std::size_t s) {
    return s > 0 && stages[s].attention == Attention::wait &&
           stages[s - 1].attention == Attention::hands &&
           stages[s].start <= stages[s - 1].end.likely;
}

std::string then(const SheetStage& wait) {
    const std::string title = wait.title.substr(0, wait.title.find(','));
    return "then " + uncapitalised(title) +
           (wait.length.empty() ? std::string() : ", " + wait.length);
}

// Folds come in a rhythm: from three on they are one line with a box for each time.
std::size_t end_of_repeats(const std::vector<Act>& acts, std::size_t first) {
    constexpr std::size_t fewest = 3;
    std::size_t end = first + 1;
    while (end < acts.size() && acts[end].text == acts[first].text) {
        ++end;
    }
    return end - first < fewest ? first + 1 : end;
}

void add_rows(std::vector<Row>& rows,
              const Plan& plan,
              const Sheet& own,
              const std::string& name,
              Instant last_eaten,
              const SheetOptions& options) {
    std::size_t before = rows.size(); // the row of the stage before
    for (std::size_t s = 0; s < plan.stages.size() && s < own.stages.size(); ++s) {
        const Stage& stage = plan.stages[s];
        if (begins_by_itself(plan.stages, s)) {
            rows[before].line.also = then(own.stages[s]);
        } else {
            Row row;
            row.at = stage.start;
            row.eats = stage.attention == Attention::none;
            row.line.title = own.stages[s].title;
            row.line.bread = name;
            row.line.length = own.stages[s].length;
            row.line.box = own.stages[s].box;
            // A bread that is eaten before the last one needs no line for it: nobody does anything.
            if (row.eats && row.at < last_eaten && s > 0) {
                std::string& also = rows[before].line.also;
                also += (also.empty() ? "then eat at " : ", then eat at ") + own.stages[s].time;
                continue;
            }
            if (row.eats) {
                const auto same = std::find_if(rows.begin(), rows.end(), [&row](const Row& other) {
                    return other.eats && other.at == row.at;
                });
                if (same != rows.end()) {
                    same->line.bread.clear();
                    continue;
                }
            }
            before = rows.size();
            rows.push_back(std::move(row));
        }
        for (std::size_t a = 0; a < stage.acts.size();) {
            const Act& act = stage.acts[a];
            const std::size_t end = end_of_repeats(stage.acts, a);
            const std::string words = sheet::act_text(act, options);
            // What is done as the bread goes in is on its line: "first slash the top".
            if (stage.attention == Attention::near && act.at == stage.start && !act.oven) {
                std::string& also = rows[before].line.also;
                also += (also.empty() ? "first " : " and ") + words;
                ++a;
                continue;
            }
            Row done;
            done.at = act.at;
            done.line = act_line(name, words);
            for (std::size_t again = a + 1; again < end; ++again) {
                done.line.acts.push_back({own.stages[s].acts[again].time, words + " again"});
            }
            rows.push_back(std::move(done));
            a = end;
        }
    }
}

std::vector<std::string> without_repeats(const std::vector<std::string>& all) {
    std::vector<std::string> once;
    for (const std::string& text : all) {
        if (std::find(once.begin(), once.end(), text) == once.end()) {
            once.push_back(text);
        }
    }
    return once;
}

} // namespace

std::vector<Sheet> compose(const Plan& plan,
                           const std::vector<FittedRecipe>& recipes,
                           const std::vector<Provisions>& provisions,
                           const Day& day,
                           const SheetOptions& options) {
    std::vector<Sheet> own;
    std::vector<Row> rows;
    std::vector<std::string> ready;
    std::vector<std::string> ahead;
    std::vector<std::string> cautions;
    std::vector<std::string> questions;
    for (std::size_t b = 0; b < plan.breads.size(); ++b) {
        own.push_back(compose(plan.breads[b], recipes[b], provisions[b], day, options));
        const Sheet& sheet = own.back();
        ready.insert(ready.end(), sheet.ready.begin(), sheet.ready.end());
        cautions.insert(cautions.end(), sheet.cautions.begin(), sheet.cautions.end());
        questions.insert(questions.end(), sheet.questions.begin(), sheet.questions.end());
    }
    const std::vector<std::string> names = short_names(own);
    for (std::size_t b = 0; b < own.size(); ++b) {
        // Hours count from where this bread begins.
        for (const std::string& line : own[b].ahead) {
            ahead.push_back(names[b] + ": " + uncapitalised(line));
        }
        add_rows(rows, plan.breads[b], own[b], names[b], plan.eat.likely, options);
    }
    std::stable_sort(rows.begin(), rows.end(), [](const Row& a, const Row& b) {
        return std::make_pair(a.at, a.eats) < std::make_pair(b.at, b.eats);
    });
    // The opening and the notes of the whole day are those of any plan.
    FittedRecipe together;
    together.recipe.title = sheet::joined(names);
    Sheet clock = compose(plan, together, Provisions{}, day, options);
    clock.kind = SheetKind::shared_clock;
    clock.stages.clear();
    clock.day_line = {}; // its stretches would lie over each other
    const bool one_day =
        civil_of(day.zone, plan.start).date == civil_of(day.zone, plan.eat.likely).date;
    Instant before = plan.start;
    for (std::size_t r = 0; r < rows.size(); ++r) {
        SheetStage line = std::move(rows[r].line);
        line.number = static_cast<int>(r) + 1;
        line.time = !one_day && r == 0
                        ? day_text(day.zone, rows[r].at).substr(0, 3) + " " +
                              sheet::clock(day.zone, rows[r].at, options.clock)
                        : sheet::moment_text(day.zone, rows[r].at, before, options.clock);
        before = rows[r].at;
        clock.stages.push_back(std::move(line));
    }
    clock.ready = without_repeats(ready);
    clock.ahead = without_repeats(ahead);
    clock.cautions = without_repeats(cautions);
    clock.cautions.resize(std::min(clock.cautions.size(), options.cautions));
    clock.questions = without_repeats(questions);
    clock.questions.resize(std::min(clock.questions.size(), options.questions));
    std::vector<Sheet> pages{std::move(clock)};
    std::move(own.begin(), own.end(), std::back_inserter(pages));
    return pages;
}

Sheet compose_lines(const Plan& plan, const std::vector<Sheet>& pages) {
    Sheet lines = pages.front();
    if (plan.breads.empty()) {
        return lines;
    }
    const std::vector<Sheet> own(pages.begin() + 1, pages.end());
    const std::vector<std::string> names = short_names(own);
    lines.stages.clear();
    for (const Stage& stage : plan.stages) {
        const std::size_t b = stage.bread_index;
        const auto line = static_cast<std::size_t>(stage.own_number) - 1;
        SheetStage shown = own[b].stages[line];
        shown.number = stage.number;
        shown.title =
            stage.bread.empty() ? shown.title : names[b] + ": " + uncapitalised(shown.title);
        lines.stages.push_back(std::move(shown));
    }
    return lines;
}

} // namespace loafwright

// SPDX-License-Identifier: Apache-2.0
//
// The page for the ear. A list says first how long it is, so that one knows what is coming; a stage
// says its number and its time before its name, because that is what one listens for. Lines are as
// long as they need be: whoever shows them breaks them, and whoever speaks them need not.
#include "shell/output/linear_page.hpp"

#include "engine/recipe/words.hpp"
#include "engine/sheet/lines.hpp"
#include "shell/output/text_lines.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <string_view>
#include <utility>
#include <vector>

namespace loafwright::output {

namespace {

struct Spoken {
    std::string_view written;
    std::string_view one;
    std::string_view many;
};
constexpr std::array<Spoken, 5> units = {Spoken{"min", "minute", "minutes"},
                                         Spoken{"h", "hour", "hours"},
                                         Spoken{"g", "gram", "grams"},
                                         Spoken{"oz", "ounce", "ounces"},
                                         Spoken{"lb", "pound", "pounds"}};
constexpr std::array<std::pair<std::string_view, std::string_view>, 7> days = {
    std::pair<std::string_view, std::string_view>{"Mon", "Monday"},
    {"Tue", "Tuesday"},
    {"Wed", "Wednesday"},
    {"Thu", "Thursday"},
    {"Fri", "Friday"},
    {"Sat", "Saturday"},
    {"Sun", "Sunday"}};

bool begins_with_digit(std::string_view word) {
    return !word.empty() && word.front() >= '0' && word.front() <= '9';
}

std::vector<std::string> words_of(std::string_view text) {
    std::vector<std::string> words;
    for (std::size_t at = 0; at < text.size();) {
        const std::size_t end = std::min(text.find(' ', at), text.size());
        if (end > at) {
            words.emplace_back(text.substr(at, end - at));
        }
        at = end + 1;
    }
    return words;
}

// "min," into "min" and ",".
std::pair<std::string, std::string> parted_from_marks(const std::string& word) {
    const std::size_t end = word.find_last_not_of(",.;:)");
    const std::size_t length = end == std::string::npos ? 0 : end + 1;
    return {word.substr(0, length), word.substr(length)};
}

std::string_view full_unit(std::string_view unit, std::string_view number) {
    for (const Spoken& spoken : units) {
        if (unit == spoken.written) {
            return number == "1" ? spoken.one : spoken.many;
        }
    }
    return {};
}

// Our words with units and weekdays in full: "1 h 35" becomes "1 hour 35 minutes".
std::string spoken(std::string_view text) {
    std::vector<std::string> words = words_of(printable(text));
    std::string out;
    for (std::size_t i = 0; i < words.size(); ++i) {
        const auto [word, marks] = parted_from_marks(words[i]);
        std::string shown = words[i];
        const bool follows_number = i > 0 && words[i - 1].find_first_of("0123456789\xC2") == 0;
        if (const auto unit = full_unit(word, i > 0 ? words[i - 1] : "");
            follows_number && !unit.empty()) {
            shown = std::string(unit) + marks;
            const bool and_minutes = word == "h" && marks.empty() && i + 1 < words.size() &&
                                     parted_from_marks(words[i + 1]).first.size() == 2 &&
                                     begins_with_digit(words[i + 1]);
            if (and_minutes) {
                const auto [minutes, behind] = parted_from_marks(words[i + 1]);
                const std::string bare = minutes.front() == '0' ? minutes.substr(1) : minutes;
                shown += ' ';
                shown += bare;
                shown += bare == "1" ? " minute" : " minutes";
                shown += behind;
                ++i;
            }
        } else if (i + 1 < words.size() && begins_with_digit(words[i + 1])) {
            for (const auto& [written, full] : days) {
                if (word == written && marks.empty()) {
                    shown = full;
                }
            }
        }
        out += (out.empty() ? "" : " ") + shown;
    }
    return out;
}

/// The page as it grows, a sentence a line.
class Lines {
public:
    void sentence(std::string words) {
        while (!words.empty() && (words.back() == ' ' || words.back() == ',' ||
                                  words.back() == ';' || words.back() == ':')) {
            words.pop_back();
        }
        if (words.empty()) {
            return;
        }
        text_ += capitalised(std::move(words));
        if (text_.back() != '.' && text_.back() != '?' && text_.back() != '!') {
            text_ += '.';
        }
        text_ += '\n';
    }
    void list(std::string_view name, const std::vector<std::string>& items) {
        const auto count = items.size();
        if (count == 0) {
            return;
        }
        sentence(std::string(name) + ", " + std::to_string(count) +
                 (count == 1 ? " thing" : " things"));
        for (const std::string& item : items) {
            sentence(spoken(item));
        }
    }
    [[nodiscard]] std::string text() const { return text_; }

private:
    std::string text_;
};

// "at 13:00", "on Sunday at 07:30".
std::string when(const std::string& time) {
    const std::string full = spoken(time);
    const std::size_t blank = full.find(' ');
    const bool has_day = !begins_with_digit(full) && blank != std::string::npos;
    return has_day ? "on " + full.substr(0, blank) + " at " + full.substr(blank + 1) : "at " + full;
}

// "+ 10" counts from the start of its stage.
std::string act_line(const SheetAct& act) {
    const std::string words = spoken(act.text);
    const std::string time = printable(act.time);
    if (time.rfind("+ ", 0) == 0) {
        return time == "+ 0" ? "At the start: " + words
                             : "After " + spoken(time.substr(2) + " min") + ": " + words;
    }
    return when(time) + ": " + words;
}

void add_stage(Lines& page, const SheetStage& stage, std::size_t stages) {
    const std::string title = uncapitalised(printable(full_title(stage)));
    if (stage.box) {
        page.sentence("Stage " + std::to_string(stage.number) + " of " + std::to_string(stages) +
                      ", " + when(stage.time) + ": " + title);
    } else {
        page.sentence("Last, " + when(stage.time) + ": " + title);
    }
    const std::string length = spoken(stage.length);
    page.sentence(length.empty() || length.rfind("look", 0) == 0 ? length : "It takes " + length);
    page.sentence(spoken(stage.also));
    for (const std::string& reminder : stage.reminders) {
        page.sentence(spoken(reminder));
    }
    for (const SheetAct& act : stage.acts) {
        page.sentence(act_line(act));
    }
    page.sentence(spoken(stage.cue));
    if (!stage.normal.empty()) {
        page.sentence("This is normal: " + spoken(stage.normal));
    }
}

} // namespace

std::string linear_page(const Sheet& sheet) {
    Lines page;
    page.sentence(printable(sheet.title));
    page.sentence(spoken(said(sheet.eat)));
    page.sentence(spoken(opening(sheet)));
    page.list("To weigh", sheet.weigh);
    page.list("Have ready", sheet.ready);
    for (const std::string& sentence : sheet.ahead) {
        page.sentence(spoken(sentence));
    }
    const auto stages = static_cast<std::size_t>(
        std::count_if(sheet.stages.begin(), sheet.stages.end(), [](const SheetStage& stage) {
            return stage.box;
        }));
    for (const SheetStage& stage : sheet.stages) {
        add_stage(page, stage, stages);
    }
    for (const auto* sentences : {&sheet.warnings, &sheet.notes}) {
        for (const std::string& sentence : *sentences) {
            page.sentence(spoken(sentence));
        }
    }
    for (const std::string& caution : sheet.cautions) {
        page.sentence("Take care. " + capitalised(spoken(caution)));
    }
    for (const std::string& question : sheet.questions) {
        page.sentence("Not known yet: " + spoken(question));
    }
    return page.text();
}

std::string linear_page(const Refusal& refusal) {
    Lines page;
    page.sentence(spoken(refusal.why));
    for (const std::string& reason : refusal.reasons) {
        page.sentence(spoken(reason));
    }
    for (const std::string& way : refusal.ways_out) {
        page.sentence("This would work: " + spoken(way));
    }
    return page.text();
}

} // namespace loafwright::output

// SPDX-License-Identifier: Apache-2.0
//
// The small phrases a page is made of: moments, amounts and lists as a person would write them.
#include "engine/sheet/lines.hpp"

#include "engine/fitting/words.hpp"
#include "engine/recipe/words.hpp"

#include <fmt/format.h>

#include <cmath>
#include <initializer_list>

namespace loafwright::sheet {

namespace {

// Grams as kitchen scales show them: whole from ten up, one decimal below where it is not zero.
// What is known roughly is not written finely.
std::string grams_text(double grams, bool about) {
    if (grams < 10.0) {
        const double marks = about && grams >= 2.0 ? 2.0 : 10.0;
        const double shown = std::floor(grams * marks + 0.5) / marks;
        return shown == std::floor(shown) ? fmt::format("{:.0f} g", shown)
                                          : fmt::format("{:.1f} g", shown);
    }
    const double step = !about ? 1.0 : grams < 50.0 ? 1.0 : grams < 200.0 ? 5.0 : 10.0;
    return fmt::format("{:.0f} g", step * std::floor(grams / step + 0.5));
}

std::string without_leads(std::string_view words, std::initializer_list<std::string_view> leads) {
    std::string text(words);
    bool changed = true;
    while (changed) {
        changed = false;
        for (const std::string_view lead : leads) {
            if (lower_case(text.substr(0, lead.size())) == lead) {
                text.erase(0, lead.size());
                changed = true;
            }
        }
    }
    return text;
}

} // namespace

std::string moment_text(const Zone& zone, Instant moment, Instant beside) {
    const std::string clock = clock_text(zone, moment);
    if (civil_of(zone, moment).date == civil_of(zone, beside).date) {
        return clock;
    }
    // The first three letters of "Sat 28 Nov".
    return day_text(zone, moment).substr(0, 3) + " " + clock;
}

std::string weigh_line(const ToBuy& bought) {
    std::string line;
    if (bought.grams) {
        const Band<Grams>& grams = *bought.grams;
        const bool about = grams.low != grams.high;
        line = about ? "about " : "";
        line += grams_text(grams.likely.count(), about);
        if (!bought.as_written.empty()) {
            line += " (" + bought.as_written + ")";
        }
        line += " ";
    } else if (!bought.as_written.empty()) {
        line = bought.as_written + " ";
    }
    line += bought.item;
    if (bought.optional) {
        line += ", if you like";
    }
    return line;
}

std::string joined(const std::vector<std::string>& parts) {
    std::string text;
    for (std::size_t i = 0; i < parts.size(); ++i) {
        if (i > 0) {
            text += i + 1 == parts.size() ? " and " : ", ";
        }
        text += parts[i];
    }
    return text;
}

std::string bare_cue(std::string_view cue) {
    std::string text = without_leads(
        cue, {"until ", "till ", "'til ", "when ", "ready when ", "once ", "or ", "and "});
    while (!text.empty() && (text.back() == '.' || text.back() == ',' || text.back() == ' ')) {
        text.pop_back();
    }
    return text;
}

std::string bare_sign(std::string_view words) {
    return without_leads(
        lower_case(bare_cue(words)),
        {"it ", "they ", "the dough ", "dough ", "is ", "are ", "has ", "have ", "should ", "be "});
}

std::string at_most_words(const std::string& text, std::size_t most) {
    std::size_t words = 0;
    std::size_t clause_end = std::string::npos; // behind the last clause that fits
    std::size_t word_end = 0;                   // behind the last word that fits
    std::size_t at = 0;
    while (at < text.size()) {
        const std::size_t begin = text.find_first_not_of(' ', at);
        if (begin == std::string::npos) {
            break;
        }
        at = text.find(' ', begin);
        if (at == std::string::npos) {
            at = text.size();
        }
        if (words == most) {
            if (clause_end != std::string::npos) {
                return text.substr(0, clause_end);
            }
            return text.substr(0, word_end) + " …";
        }
        ++words;
        word_end = at;
        const char last = text[at - 1];
        if (last == ',' || last == ';' || last == '.') {
            clause_end = at - 1;
        }
    }
    return text;
}

} // namespace loafwright::sheet

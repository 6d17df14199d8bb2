// SPDX-License-Identifier: Apache-2.0
//
// The small phrases a page is made of: moments, amounts and lists as a person would write them.
#include "engine/sheet/lines.hpp"

#include "engine/fitting/words.hpp"
#include "engine/recipe/words.hpp"
#include "engine/sheet/measures.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <initializer_list>

namespace loafwright::sheet {

namespace {

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

template <std::size_t Count>
bool is_one_of(const std::array<std::string_view, Count>& words, std::string_view word) {
    return std::find(words.begin(), words.end(), word) != words.end();
}

// "2", "1 1/2", "one": a number and nothing that it is a number of.
bool is_bare_count(std::string_view written) {
    static constexpr std::array<std::string_view, 15> numbers = {"a",
                                                                 "an",
                                                                 "one",
                                                                 "two",
                                                                 "three",
                                                                 "four",
                                                                 "five",
                                                                 "six",
                                                                 "seven",
                                                                 "eight",
                                                                 "nine",
                                                                 "ten",
                                                                 "half",
                                                                 "and",
                                                                 "+"};
    const std::string words = lower_case(written);
    std::size_t at = 0;
    while (at < words.size()) {
        const std::size_t end = std::min(words.find(' ', at), words.size());
        const std::string_view word = std::string_view(words).substr(at, end - at);
        if (word.find_first_not_of("0123456789./") != std::string_view::npos &&
            !is_one_of(numbers, word)) {
            return false;
        }
        at = end + 1;
    }
    return !words.empty();
}

bool can_be_counted(std::string_view item) {
    static constexpr std::array<std::string_view, 9> counted = {
        "egg", "yolk", "potato", "banana", "apple", "lemon", "orange", "onion", "clove"};
    const std::string words = lower_case(item);
    return std::any_of(counted.begin(), counted.end(), [&words](std::string_view name) {
        const std::string one(name);
        return has_word(words, one) || has_word(words, one + "s") || has_word(words, one + "es");
    });
}

// What several lists say of one part, added up.
std::vector<PartShare> by_part(const ToBuy& bought) {
    std::vector<PartShare> all;
    for (const PartShare& share : bought.shares) {
        if (!share.grams) {
            return {}; // nobody knows how it is shared out
        }
        const auto known = std::find_if(all.begin(), all.end(), [&share](const PartShare& one) {
            return one.part == share.part && one.item == share.item;
        });
        if (known == all.end()) {
            all.push_back(share);
        } else {
            known->grams->low += share.grams->low;
            known->grams->likely += share.grams->likely;
            known->grams->high += share.grams->high;
        }
    }
    return all;
}

std::string for_part(const std::string& part) {
    return " for the " + (part.empty() ? std::string("dough") : part);
}

// "boiling" of "boiling water", where the whole is called water.
std::string told_apart(const std::string& item, const std::string& whole) {
    const bool ends_alike = item.size() > whole.size() + 1 &&
                            item.compare(item.size() - whole.size(), whole.size(), whole) == 0 &&
                            item[item.size() - whole.size() - 1] == ' ';
    return ends_alike ? " " + item.substr(0, item.size() - whole.size() - 1) : "";
}

} // namespace

std::string moment_text(const Zone& zone, Instant moment, Instant beside, ClockForm form) {
    std::string time = clock(zone, moment, form);
    if (civil_of(zone, moment).date == civil_of(zone, beside).date) {
        return time;
    }
    // The first three letters of "Sat 28 Nov".
    return day_text(zone, moment).substr(0, 3) + " " + time;
}

std::string weigh_line(const ToBuy& bought, WeightUnit unit, const std::string& of_dough) {
    std::string line;
    if (bought.grams) {
        const Band<Grams>& grams = *bought.grams;
        const bool about = grams.low != grams.high;
        line = about ? "about " : "";
        line += weight(grams.likely, about, unit);
        if (!bought.as_written.empty() && !is_bare_count(bought.as_written)) {
            line += " (" + bought.as_written + ")";
        }
        line += " ";
    } else if (!bought.as_written.empty()) {
        line = bought.as_written + " ";
    }
    const std::vector<PartShare> shares = by_part(bought);
    line += bought.item;
    if (shares.size() < 2) {
        line += of_dough;
    }
    if (bought.grams && is_bare_count(bought.as_written) && can_be_counted(bought.item)) {
        line += " (" + bought.as_written + ")";
    }
    if (bought.optional) {
        line += ", if you like";
    }
    if (shares.size() == 1 && !shares.front().part.empty()) {
        line += "," + for_part(shares.front().part);
    }
    for (std::size_t i = 0; shares.size() > 1 && i < shares.size(); ++i) {
        const PartShare& share = shares[i];
        line += i == 0 ? ": " : ", ";
        line += weight(share.grams->likely, share.grams->low != share.grams->high, unit) +
                told_apart(share.item, bought.item) + (share.part.empty() ? of_dough : "") +
                for_part(share.part);
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

bool is_torn_off(std::string_view words) {
    static constexpr std::array<std::string_view, 8> leads = {
        "of ", "been ", "being ", "has been ", "have been ", "had been ", "than ", "which "};
    const std::string text = lower_case(words);
    return std::any_of(leads.begin(), leads.end(), [&text](std::string_view lead) {
        return text.rfind(lead, 0) == 0;
    });
}

std::string without_loose_end(std::string text) {
    static constexpr std::array<std::string_view, 16> leading_on = {"a",
                                                                    "an",
                                                                    "the",
                                                                    "of",
                                                                    "with",
                                                                    "into",
                                                                    "to",
                                                                    "its",
                                                                    "your",
                                                                    "and",
                                                                    "or",
                                                                    "for",
                                                                    "from",
                                                                    "by",
                                                                    "is",
                                                                    "be"};
    while (true) {
        const std::size_t blank = text.rfind(' ');
        if (blank == std::string::npos ||
            !is_one_of(leading_on, lower_case(std::string_view(text).substr(blank + 1)))) {
            return text;
        }
        text.erase(blank);
    }
}

std::string without_lone_bracket(std::string text) {
    const auto opened = std::count(text.begin(), text.end(), '(');
    const auto closed = std::count(text.begin(), text.end(), ')');
    if (opened == closed) {
        return text;
    }
    // A pair that is whole stays; of the rest, the last to open or the first to close goes.
    const std::size_t at = opened > closed ? text.rfind('(') : text.find(')');
    text.erase(at, 1);
    return without_lone_bracket(std::move(text));
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

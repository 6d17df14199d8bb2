// SPDX-License-Identifier: Apache-2.0
//
// Which letters scanners give for which figures is from memory, and from what Tesseract makes of
// the pages of scripts/score-intake.
#include "engine/reading/look_alike.hpp"

#include "engine/reading/doubt.hpp"

#include <algorithm>
#include <array>
#include <iterator>
#include <utility>

namespace loafwright::reading {
namespace {

constexpr std::size_t longest = 8;

constexpr std::array<std::string_view, 38> units = {
    "min",  "mins", "minute", "minutes", "hour",        "hours",    "hr",        "hrs",
    "h",    "sec",  "secs",   "second",  "seconds",     "g",        "gram",      "grams",
    "kg",   "ml",   "cl",     "oz",      "ounce",       "ounces",   "lb",        "lbs",
    "pint", "cup",  "cups",   "tsp",     "tbsp",        "teaspoon", "teaspoons", "tablespoon",
    "c",    "f",    "cm",     "degrees", "tablespoons", "pounds"};

// "I cup the dough", "I pound it": what a person does is no measure. "I hour" nobody says.
constexpr std::array<std::string_view, 7> after_one = {
    "hour", "hr", "minute", "tsp", "tbsp", "teaspoon", "tablespoon"};

constexpr std::array<std::string_view, 14> halved = {"tsp",
                                                     "teaspoon",
                                                     "teaspoons",
                                                     "tbsp",
                                                     "tablespoon",
                                                     "tablespoons",
                                                     "cup",
                                                     "cups",
                                                     "pint",
                                                     "pints",
                                                     "lb",
                                                     "oz",
                                                     "hour",
                                                     "hours"};

char at_or_end(std::string_view text, std::size_t at) {
    return at < text.size() ? text[at] : '\0';
}

bool is_digit(char c) {
    return c >= '0' && c <= '9';
}

bool is_letter(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') ||
           static_cast<unsigned char>(c) >= 0xC3;
}

char figure_like(char c) {
    switch (c) {
    case 'l':
    case 'I':
    case '|':
        return '1';
    case 'o':
    case 'O':
        return '0';
    case 'S':
        return '5';
    default:
        return '\0';
    }
}

std::string word_from(std::string_view text, std::size_t at) {
    std::string word;
    while (word.size() < 12 && is_letter(at_or_end(text, at))) {
        const char c = text[at++];
        word += c >= 'A' && c <= 'Z' ? static_cast<char>(c + 32) : c;
    }
    return word;
}

template <std::size_t count>
bool is_any(const std::string& word, const std::array<std::string_view, count>& of) {
    return std::find(of.begin(), of.end(), word) != of.end();
}

std::size_t after_blanks(std::string_view text, std::size_t at) {
    while (at_or_end(text, at) == ' ') {
        ++at;
    }
    return at;
}

bool degree_at(std::string_view text, std::size_t at) {
    return text.substr(at, 2) == "\xC2\xB0" || text.substr(at, 2) == "\xC2\xBA";
}

bool unit_at(std::string_view text, std::size_t at) {
    return degree_at(text, at) || is_any(word_from(text, at), units);
}

// "-35 minutes", " to 40": a range goes on.
bool range_goes_on(std::string_view text, std::size_t at) {
    at = after_blanks(text, at);
    if (text.substr(at, 3) == "to ") {
        at += 2;
    } else if (text.substr(at, 3) == "\xE2\x80\x93") {
        at += 3;
    } else if (at_or_end(text, at) == '-') {
        at += 1;
    } else {
        return false;
    }
    at = after_blanks(text, at);
    const std::size_t begin = at;
    while (is_digit(at_or_end(text, at)) || figure_like(at_or_end(text, at)) != '\0') {
        ++at;
    }
    return at > begin && unit_at(text, after_blanks(text, at));
}

// The degree sign as a last nought: "2200C" is 220 °C, as no oven has thousands of degrees. A wood
// fire has 1000 °F.
std::optional<LookAlike> with_degree(std::string_view text, std::size_t at) {
    std::size_t end = at;
    while (is_digit(at_or_end(text, end))) {
        ++end;
    }
    const char scale = at_or_end(text, end);
    if (end - at != 4 || text[end - 1] != '0' || (scale != 'C' && scale != 'F') ||
        is_letter(at_or_end(text, end + 1)) || text.substr(at, 4) == "1000") {
        return std::nullopt;
    }
    return LookAlike{end, std::string(text.substr(at, 3)), "", 0};
}

// "1% tsp": a scanner's ½, most often; nobody measures out a hundredth of a spoon.
std::optional<LookAlike> with_half(std::string_view text, std::size_t at) {
    std::size_t end = at;
    while (end - at < 3 && is_digit(at_or_end(text, end))) {
        ++end;
    }
    if (at_or_end(text, end) != '%') {
        return std::nullopt;
    }
    const std::size_t unit = after_blanks(text, end + 1);
    if (!is_any(word_from(text, unit), halved)) {
        return std::nullopt;
    }
    return LookAlike{end + 1, std::string(text.substr(at, end - at)) + "½", "", 0};
}

struct UnitShape {
    std::string_view seen;
    std::string_view meant;
};

constexpr std::array<UnitShape, 7> unit_shapes = {{{"0z", "oz"},
                                                   {"0Z", "oz"},
                                                   {"1bs", "lbs"},
                                                   {"1b", "lb"},
                                                   {"m1", "ml"},
                                                   {"mI", "ml"},
                                                   {"m|", "ml"}}};

// "20z" is 2 oz. "1b" that opens a line is 1 lb, whose two strokes ran together; elsewhere it may
// be a step.
std::optional<LookAlike> with_unit(std::string_view text, std::size_t at, bool opens) {
    for (const UnitShape& shape : unit_shapes) {
        std::size_t end = at;
        while (end - at < 4 && is_digit(at_or_end(text, end)) &&
               text.substr(end, shape.seen.size()) != shape.seen) {
            ++end;
        }
        const std::size_t behind = end + shape.seen.size();
        if (text.substr(end, shape.seen.size()) != shape.seen ||
            is_letter(at_or_end(text, behind)) || is_digit(at_or_end(text, behind))) {
            continue;
        }
        if (end > at) {
            return LookAlike{
                end, std::string(text.substr(at, end - at)), std::string(shape.meant), behind};
        }
        if (opens && shape.meant == "lb") {
            return LookAlike{at + 1, "1", "lb", behind};
        }
    }
    return std::nullopt;
}

} // namespace

std::optional<LookAlike> look_alike(std::string_view text, std::size_t at, bool opens) {
    if (auto found = with_degree(text, at)) {
        return found;
    }
    if (auto found = with_half(text, at)) {
        return found;
    }
    if (auto found = with_unit(text, at, opens)) {
        return found;
    }
    LookAlike found;
    std::size_t digits = 0;
    std::size_t letters = 0;
    std::size_t end = at;
    for (; end < text.size() && end - at <= longest; ++end) {
        const char c = text[end];
        const char next = at_or_end(text, end + 1);
        const bool mark = (c == '.' || c == ',' || c == '/') && end > at &&
                          (is_digit(next) || figure_like(next) != '\0');
        if (is_digit(c)) {
            ++digits;
            found.figures += c;
        } else if (const char meant = figure_like(c); meant != '\0') {
            // "200oC" is a degree sign.
            if ((c == 'o' || c == 'O') && (next == 'C' || next == 'F')) {
                break;
            }
            ++letters;
            found.figures += meant;
        } else if (mark) {
            found.figures += c;
        } else {
            break;
        }
    }
    found.end = end;
    if (letters == 0 || end - at > longest) {
        return std::nullopt;
    }
    if (digits == 0) {
        const bool one = end - at == 1 && found.figures == "1" && at_or_end(text, end) == ' ';
        const std::string next = one ? word_from(text, after_blanks(text, end)) : "";
        // Nobody is called "l" or "|".
        const bool small = one && text[at] != 'I' &&
                           ((next.size() > 1 && is_any(next, units)) || range_goes_on(text, end));
        return small || is_any(next, after_one) ? std::optional(found) : std::nullopt;
    }
    const bool litre = letters == 1 && text[end - 1] == 'l';
    if (litre || is_digit(at_or_end(text, end))) {
        return std::nullopt;
    }
    return unit_at(text, after_blanks(text, end)) || range_goes_on(text, end) ? std::optional(found)
                                                                              : std::nullopt;
}

std::optional<Token> one_number(std::string_view words) {
    std::vector<Token> tokens = tokenise(words);
    const auto is_number = [](const Token& token) { return token.kind == TokenKind::number; };
    if (tokens.empty() || tokens.size() > 2 ||
        !std::all_of(tokens.begin(), tokens.end(), is_number) ||
        (tokens.size() == 2 && (tokens[0].fraction || !tokens[1].fraction))) {
        return std::nullopt;
    }
    if (tokens.size() == 2) {
        tokens[0].value += tokens[1].value;
    }
    return tokens[0];
}

Answers settle_look_alikes(std::vector<Token>& tokens, const Answers& answers) {
    Answers others;
    for (const Answer& answer : answers) {
        const auto token = std::find_if(tokens.begin(), tokens.end(), [&](const Token& one) {
            return one.look_alike && answer.key == word_key(one.span.begin);
        });
        if (token == tokens.end()) {
            others.push_back(answer);
            continue;
        }
        if (const auto said = one_number(answer.value)) {
            token->value = said->value;
            token->fraction = said->fraction;
            token->text = answer.value;
            token->look_alike = false;
        } else {
            others.push_back(answer); // told further on that it was not understood
        }
    }
    return others;
}

std::string tidy_figures(std::string_view text, const std::vector<Token>& tokens, Span span) {
    std::string words;
    std::size_t copied = span.begin;
    auto token = std::lower_bound(
        tokens.begin(), tokens.end(), span.begin, [](const Token& one, std::size_t at) {
            return one.span.begin < at;
        });
    for (; token != tokens.end() && token->span.end <= span.end; ++token) {
        // A unit that begins with a figure: "0z".
        const bool unit = token->kind == TokenKind::word && is_digit(text[token->span.begin]);
        if (token->look_alike || unit) {
            words += text.substr(copied, token->span.begin - copied);
            words += token->text;
            copied = token->span.end;
        }
    }
    words += text.substr(copied, span.end - copied);
    return tidy(words, Span{0, words.size()});
}

void ask_about_look_alikes(std::string_view text,
                           const std::vector<Token>& tokens,
                           Reading& reading) {
    std::vector<Question> questions;
    for (const Token& token : tokens) {
        if (!token.look_alike || !hangs_on(token.span, reading.recipe)) {
            continue;
        }
        const std::string seen(text.substr(token.span.begin, token.span.end - token.span.begin));
        Question question;
        question.key = word_key(token.span.begin);
        question.about = "a number";
        question.ask = "The text has \"" + seen + "\". Is that " + token.text + "?";
        question.default_answer = token.text;
        question.span = token.span;
        questions.push_back(std::move(question));
    }
    reading.questions.insert(reading.questions.begin(),
                             std::make_move_iterator(questions.begin()),
                             std::make_move_iterator(questions.end()));
}

} // namespace loafwright::reading

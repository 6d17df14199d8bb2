// SPDX-License-Identifier: Apache-2.0
//
// A line goes on in the next one when the next one's first word would not have fitted: then the
// width broke it, not the writer. It does not go on before a list item, across a larger space, or
// into letters of another size.
#include "shell/paper/prose.hpp"

#include "shell/paper/columns.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <string_view>

namespace loafwright::paper {

namespace {

constexpr double usual_space = 1.45; // of the middle distance between lines
constexpr double same_size = 1.18;

bool is_digit(char c) {
    return c >= '0' && c <= '9';
}

// "1.", "2)", "•", "-", "*" and their like, alone as the first word.
bool is_bullet(const std::string& word) {
    if (word == "-" || word == "*" || word == "•" || word == "–" || word == "·" || word == "▪" ||
        word == "◦" || word == "■" || word == "●" || word == "○" || word == "+") {
        return true;
    }
    return word.size() >= 2 && word.size() <= 3 && is_digit(word.front()) &&
           (word.back() == '.' || word.back() == ')');
}

bool is_letter(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

// "one-" before "half": a hyphen that is written wherever the line ends.
bool has_own_hyphen(const std::string& end) {
    constexpr std::array<std::string_view, 16> before_hyphens = {"one-",
                                                                 "two-",
                                                                 "three-",
                                                                 "four-",
                                                                 "twenty-",
                                                                 "thirty-",
                                                                 "forty-",
                                                                 "fifty-",
                                                                 "sixty-",
                                                                 "half-",
                                                                 "well-",
                                                                 "self-",
                                                                 "all-",
                                                                 "non-",
                                                                 "quick-",
                                                                 "semi-"};
    std::string small;
    for (const char c : end) {
        small += c >= 'A' && c <= 'Z' ? static_cast<char>(c + 32) : c;
    }
    return std::find(before_hyphens.begin(), before_hyphens.end(), small) != before_hyphens.end();
}

// "knead-" before "ing": one word in two pieces.
bool broken_word(const std::string& end, const std::string& next) {
    return end.size() > 2 && end.back() == '-' && is_letter(end[end.size() - 2]) &&
           !has_own_hyphen(end) && !next.empty() && next.front() >= 'a' && next.front() <= 'z';
}

bool begins_with_number(const SeenLine& line) {
    const std::string& word = line.words.front().text;
    return is_digit(word.front()) || word.rfind("½", 0) == 0 || word.rfind("¼", 0) == 0 ||
           word.rfind("¾", 0) == 0;
}

// "for 4" before "- 5 hours".
bool is_range(const SeenLine& line, const SeenLine& next) {
    const std::string& dash = next.words.front().text;
    return (dash == "-" || dash == "–") && next.words.size() > 1 &&
           is_digit(next.words[1].text.front()) && is_digit(line.words.back().text.back());
}

class Writer {
public:
    explicit Writer(Prose& prose) : prose_(prose) {}

    void page(const SeenPage& page, std::size_t number) {
        page_ = number;
        picture_ = page.picture;
        for (const Column& column : columns_of(page.lines)) {
            write(column);
        }
    }

    void end() {
        if (!prose_.text.empty()) {
            prose_.text += '\n';
        }
    }

private:
    // The middle distance from line to line of neighbouring lines of one size.
    static double usual_distance(const Column& column) {
        std::vector<double> distances;
        for (std::size_t i = 1; i < column.lines.size(); ++i) {
            distances.push_back(column.lines[i].box.middle() - column.lines[i - 1].box.middle());
        }
        if (distances.empty()) {
            return 0.0;
        }
        std::sort(distances.begin(), distances.end());
        return distances[distances.size() / 3];
    }

    static bool sizes_differ(const SeenLine& a, const SeenLine& b) {
        return a.size > 0 && b.size > 0 &&
               std::max(a.size, b.size) > same_size * std::min(a.size, b.size);
    }

    static double first_word_width(const SeenLine& line) { return line.words.front().box.width(); }

    static bool goes_on(const Column& column, const SeenLine& line, const SeenLine& next) {
        if ((is_bullet(next.words.front().text) && !is_range(line, next)) ||
            sizes_differ(line, next)) {
            return false;
        }
        // Amounts under each other are a list, however wide its lines are.
        if (begins_with_number(line) && begins_with_number(next)) {
            return false;
        }
        const double space = 0.3 * line.box.height();
        const bool full = line.box.right + space + first_word_width(next) >
                          column.box.right - 0.5 * line.box.height();
        // The first line of a paragraph is set in.
        const bool set_in = next.box.left > line.box.left + 0.9 * line.box.height() &&
                            !is_bullet(line.words.front().text);
        return full && !set_in;
    }

    void write(const Column& column) {
        const double distance = usual_distance(column);
        begin_block();
        for (std::size_t i = 0; i < column.lines.size(); ++i) {
            const SeenLine& line = column.lines[i];
            if (i > 0) {
                const SeenLine& before = column.lines[i - 1];
                const double step = line.box.middle() - before.box.middle();
                if (step > usual_space * distance || sizes_differ(before, line)) {
                    begin_block();
                } else if (goes_on(column, before, line)) {
                    join(line.words.front().text);
                } else {
                    prose_.text += '\n';
                }
            }
            write(line);
        }
    }

    void begin_block() {
        if (!prose_.text.empty()) {
            prose_.text += "\n\n";
        }
    }

    void join(const std::string& next) {
        if (broken_word(last_word_, next)) {
            prose_.text.pop_back();
        } else if (last_word_.size() < 2 || last_word_.back() != '-') { // "½-" before "inch"
            prose_.text += ' ';
        }
    }

    void write(const SeenLine& line) {
        bool first = true;
        for (const SeenWord& word : line.words) {
            if (!first) {
                prose_.text += ' ';
            }
            first = false;
            const std::size_t begin = prose_.text.size();
            prose_.text += word.text;
            last_word_ = word.text;
            if (word.doubted) {
                doubt(word, begin);
            }
        }
    }

    void doubt(const SeenWord& word, std::size_t begin) {
        intake::UnsureWord unsure;
        unsure.span = {begin, prose_.text.size()};
        unsure.confidence = word.confidence;
        unsure.maybe = word.maybe;
        if (picture_) {
            unsure.clipping = intake::Clipping{page_,
                                               static_cast<int>(word.box.left),
                                               static_cast<int>(word.box.top),
                                               static_cast<int>(std::ceil(word.box.width())),
                                               static_cast<int>(std::ceil(word.box.height()))};
        }
        prose_.unsure.push_back(std::move(unsure));
    }

    Prose& prose_;
    std::string last_word_;
    std::size_t page_ = 0;
    bool picture_ = false;
};

} // namespace

Prose prose_of(const std::vector<SeenPage>& pages) {
    Prose prose;
    Writer writer(prose);
    for (std::size_t i = 0; i < pages.size(); ++i) {
        writer.page(pages[i], i);
    }
    writer.end();
    return prose;
}

} // namespace loafwright::paper

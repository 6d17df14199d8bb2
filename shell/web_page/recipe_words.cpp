// SPDX-License-Identifier: Apache-2.0
#include "shell/web_page/recipe_words.hpp"

#include "shell/web_page/line_marks.hpp"
#include "shell/web_page/tags.hpp"

#include <algorithm>
#include <array>
#include <set>
#include <string_view>
#include <utility>
#include <vector>

namespace loafwright::web_page {
namespace {

// Data with less than this is at most a hint at the prose.
constexpr std::size_t longest_hint = 160;

// Builds a text of blocks with blank lines between them.
class Page {
public:
    void block() {
        if (!text_.empty() && text_.back() == '\n' &&
            (text_.size() < 2 || text_[text_.size() - 2] != '\n')) {
            text_ += '\n';
        }
    }

    void line(std::string_view words) {
        text_ += words;
        text_ += '\n';
    }

    void paragraph(std::string_view words) {
        if (!words.empty()) {
            block();
            line(words);
        }
    }

    std::string take() {
        while (!text_.empty() && text_.back() == '\n') {
            text_.pop_back();
        }
        if (!text_.empty()) {
            text_ += '\n';
        }
        return std::move(text_);
    }

private:
    std::string text_;
};

std::string makes_line(const std::string& makes) {
    if (makes.empty()) {
        return {};
    }
    std::string words = makes;
    for (const std::string_view label : {"yield", "yields", "quantity"}) {
        const std::size_t colon = label.size();
        if (is_same_name(std::string_view(words).substr(0, colon), label) &&
            words.size() > colon + 1 && (words[colon] == ':' || words[colon] == ' ')) {
            words.erase(0, words.find_first_not_of(": ", colon));
            break;
        }
    }
    for (const std::string_view verb : {"makes", "serves", "gives", "enough", "for "}) {
        if (is_same_name(std::string_view(words).substr(0, verb.size()), verb)) {
            return words;
        }
    }
    return "Makes " + words;
}

void head(Page& page, const RecipeData& data) {
    page.paragraph(data.title);
    page.paragraph(makes_line(data.makes));
    if (data.ingredients.empty()) {
        return;
    }
    // Without the two headings a reader takes "salt" in a list for anything but an ingredient.
    page.paragraph("Ingredients");
    page.block();
    for (const NamedLines& part : data.ingredients) {
        if (!part.name.empty() && !is_same_name(part.name, "ingredients")) {
            page.paragraph(part.name + ":");
        }
        for (const std::string& line : part.lines) {
            page.line("- " + line);
        }
    }
}

// What follows is the method; said only where something else stands in front of it and the page
// does not say so itself.
void method_heading(Page& page, const RecipeData& data) {
    constexpr std::array<std::string_view, 5> said{
        "method", "instructions", "directions", "preparation", "steps"};
    const std::string name = data.method.empty() ? "" : small_letters(data.method.front().name);
    if (!data.ingredients.empty() && std::find(said.begin(), said.end(), name) == said.end()) {
        page.paragraph("Method");
    }
    page.block();
}

void method(Page& page, const RecipeData& data) {
    const bool is_one_paragraph = data.method.size() == 1 && data.method.front().lines.size() == 1;
    if (!data.method.empty()) {
        method_heading(page, data);
    }
    for (const NamedLines& part : data.method) {
        page.paragraph(part.name);
        page.block();
        std::size_t number = 0;
        for (const std::string& line : part.lines) {
            page.line(is_one_paragraph ? line : std::to_string(++number) + ". " + line);
        }
        page.block();
    }
}

void body(Page& page, const std::vector<Line>& lines) {
    std::size_t number = 0;
    LineKind last = LineKind::paragraph;
    page.block();
    for (const Line& line : lines) {
        const bool is_list = line.kind == LineKind::bullet || line.kind == LineKind::numbered;
        if (line.kind != last || (!is_list && !line.is_broken)) {
            page.block();
        }
        if (line.kind == LineKind::numbered) {
            number = last == LineKind::numbered ? number + 1 : 1;
            page.line(std::to_string(number) + ". " + without_step_number(line.text));
        } else if (line.kind == LineKind::bullet) {
            page.line("- " + without_bullet(line.text));
        } else {
            const std::string plain = without_bullet(line.text);
            page.line(plain.size() < line.text.size() ? "- " + plain : plain);
        }
        last = line.kind;
    }
}

// The letters and digits of a line alone, so that it is known again with other blanks and marks.
std::string bare(std::string_view line) {
    std::string letters;
    for (const char c : line) {
        if (is_ascii_letter(c) || (c >= '0' && c <= '9') || static_cast<unsigned char>(c) >= 0x80) {
            letters += c;
        }
    }
    return small_letters(letters);
}

std::set<std::string> bare_ingredients(const RecipeData& data) {
    std::set<std::string> known;
    for (const NamedLines& part : data.ingredients) {
        for (const std::string& line : part.lines) {
            known.insert(bare(line));
        }
    }
    return known;
}

// The main text without the list that the data has already, and without its headings.
std::vector<Line> prose_of(const RecipeData& data, const MainText& main) {
    std::set<std::string> known = bare_ingredients(data);
    known.insert(bare(data.title));
    known.insert(bare(main.title));
    std::vector<Line> kept;
    for (const Line& line : main.lines) {
        const std::string letters = bare(line.text);
        const bool is_label = letters == "ingredients" || letters == "method";
        if (known.count(letters) == 0 && !is_label && letters != bare(makes_line(data.makes))) {
            kept.push_back(line);
        }
    }
    return kept;
}

std::size_t bytes_of(const std::vector<Line>& lines) {
    std::size_t bytes = 0;
    for (const Line& line : lines) {
        bytes += line.text.size();
    }
    return bytes;
}

bool is_cut_short(const RecipeData& data) {
    if (data.method.empty()) {
        return true;
    }
    const std::string& last = data.method.back().lines.back();
    const auto ends = [&](std::string_view with) {
        return last.size() >= with.size() &&
               last.compare(last.size() - with.size(), with.size(), with) == 0;
    };
    return ends("...") || ends("\xE2\x80\xA6");
}

} // namespace

std::string typed(const RecipeData& data) {
    if (data.bytes() == 0) {
        return {};
    }
    Page page;
    head(page, data);
    method(page, data);
    return page.take();
}

std::string typed(const MainText& main) {
    if (main.lines.empty()) {
        return {};
    }
    Page page;
    page.paragraph(main.title);
    body(page, main.lines);
    return page.take();
}

std::string typed(const RecipeData& data, const MainText& main) {
    Page page;
    head(page, data);
    method_heading(page, data);
    body(page, prose_of(data, main));
    return page.take();
}

bool needs_prose(const RecipeData& data, const MainText& main) {
    // A long method that ends in three dots only ends lightly.
    const std::size_t longest = is_cut_short(data) ? 4 * longest_hint : longest_hint;
    if (data.method_bytes() > longest) {
        return false;
    }
    return bytes_of(prose_of(data, main)) > 4 * data.method_bytes();
}

void name_parts(RecipeData& data, const MainText& main) {
    if (data.ingredients.size() != 1 || !data.ingredients.front().name.empty()) {
        return;
    }
    const std::vector<std::string>& lines = data.ingredients.front().lines;
    std::vector<NamedLines> parts;
    std::size_t next = 0; // of the data's lines
    std::string name;
    for (const Line& line : main.lines) {
        if (next == lines.size()) {
            break;
        }
        if (bare(line.text) == bare(lines[next])) {
            if (parts.empty() || parts.back().name != name) {
                parts.push_back({name, {}});
            }
            parts.back().lines.push_back(lines[next++]);
        } else if (line.kind == LineKind::heading || is_part_name(line.text)) {
            name = without_colon(line.text);
        } else if (next > 0 && line.kind == LineKind::bullet) {
            return; // the list of the page is another one
        }
    }
    // One name over all is the name of the list.
    if (next == lines.size() && parts.size() > 1) {
        if (bare(parts.front().name) == "ingredients") {
            parts.front().name.clear();
        }
        data.ingredients = std::move(parts);
    }
}

} // namespace loafwright::web_page

// SPDX-License-Identifier: Apache-2.0
#include "shell/web_page/main_text.hpp"

#include "shell/web_page/line_marks.hpp"
#include "shell/web_page/plain.hpp"
#include "shell/web_page/surroundings.hpp"

#include <algorithm>
#include <cstddef>
#include <string_view>
#include <utility>

namespace loafwright::web_page {
namespace {

// A line of a list says as much as a short sentence, however few its letters.
constexpr std::size_t weight_of_item = 60;
// Shorter lines outside lists are mostly labels.
constexpr std::size_t shortest_sentence = 25;
constexpr std::size_t fewest_items = 3;

bool is_item(const Line& line) {
    return line.kind == LineKind::bullet || line.kind == LineKind::numbered || line.is_broken;
}

// Elements that are text themselves; the text beside them belongs to them.
bool is_of_text(Element element) {
    switch (element) {
    case Element::text:
    case Element::inside:
    case Element::link:
    case Element::heading:
    case Element::paragraph:
    case Element::item:
    case Element::ordered:
    case Element::unordered:
    case Element::pre:
        return true;
    default:
        return false;
    }
}

bool is_link(const Line& line) {
    return line.link_bytes * 5 > line.text.size() * 3 && (is_item(line) || line.text.size() < 80);
}

std::size_t weight(const Line& line) {
    if (is_link(line)) {
        return 0;
    }
    const std::size_t words = line.text.size() - line.link_bytes;
    if (is_item(line)) {
        return std::max(words, weight_of_item);
    }
    return words < shortest_sentence ? 0 : words;
}

class Chooser {
public:
    Chooser(const Tree& tree, std::vector<Line> lines)
        : nodes_(tree.nodes()), tree_(tree), lines_(std::move(lines)),
          weight_before_(nodes_.size() + 1, 0), items_before_(nodes_.size() + 1, 0),
          lines_before_(nodes_.size() + 1, 0), is_row_(nodes_.size(), false) {
        for (const Line& line : lines_) {
            lines_before_[line.node + 1] += is_link(line) ? 0U : 1U;
            for (std::size_t i = line.node; line.is_row && i > 0 && !is_row_[i];
                 i = nodes_[i].parent) {
                is_row_[i] = true;
                if (nodes_[i].element == Element::table) {
                    break;
                }
            }
            weight_before_[line.node + 1] += weight(line);
            items_before_[line.node + 1] += is_item(line) && !is_link(line) ? 1U : 0U;
        }
        for (std::size_t i = 0; i < nodes_.size(); ++i) {
            weight_before_[i + 1] += weight_before_[i];
            items_before_[i + 1] += items_before_[i];
            lines_before_[i + 1] += lines_before_[i];
        }
    }

    // The lines of the smallest element that holds nearly all of the words and every list.
    std::vector<Line> chosen() {
        std::size_t root = 0;
        while (true) {
            const std::size_t inner = heaviest_child(root);
            if (inner == root) {
                break;
            }
            root = inner;
        }
        std::vector<Line> kept;
        for (Line& line : lines_) {
            if (line.node >= root && line.node < nodes_[root].end && !is_link(line)) {
                kept.push_back(std::move(line));
            }
        }
        return kept;
    }

private:
    [[nodiscard]] std::size_t in(const std::vector<std::size_t>& before, std::size_t i) const {
        return before[nodes_[i].end] - before[i];
    }

    // An element that says by itself that the words are there needs fewer of them.
    [[nodiscard]] bool is_named_main(std::size_t i) const {
        return nodes_[i].element == Element::article || nodes_[i].element == Element::main ||
               tree_.attribute(i, "role").value_or("") == "main" ||
               tree_.attribute(i, "itemprop").value_or("") == "articleBody";
    }

    [[nodiscard]] std::size_t heaviest_child(std::size_t at) const {
        std::size_t best = at;
        for (std::size_t i = at + 1; i < nodes_[at].end; i = nodes_[i].end) {
            if (!is_of_text(nodes_[i].element) &&
                (best == at || in(weight_before_, i) > in(weight_before_, best))) {
                best = i;
            }
        }
        if (best == at) {
            return at;
        }
        const std::size_t all = in(weight_before_, at);
        const std::size_t own = in(weight_before_, best);
        const std::size_t lost_items = in(items_before_, at) - in(items_before_, best);
        const bool is_line = in(lines_before_, best) < 2 || is_row_[best];
        const bool is_enough = is_named_main(best) ? own * 2 >= all : own * 5 >= all * 4;
        return own > 0 && is_enough && !is_line &&
                       (lost_items < fewest_items || is_named_main(best))
                   ? best
                   : at;
    }

    const std::vector<Node>& nodes_;
    const Tree& tree_;
    std::vector<Line> lines_;
    std::vector<std::size_t> weight_before_;
    std::vector<std::size_t> items_before_;
    std::vector<std::size_t> lines_before_;
    std::vector<bool> is_row_; // rows that are lines, and their tables
};

// Cuts off the parts that come behind the text, and headings under which nothing is left.
std::vector<Line> without_appendices(std::vector<Line> lines) {
    std::vector<Line> kept;
    int left_out_level = 0;
    for (Line& line : lines) {
        if (line.kind == LineKind::heading) {
            if (left_out_level > 0 && line.level > left_out_level) {
                continue;
            }
            left_out_level = heads_an_appendix(line.text) ? line.level : 0;
        }
        if (left_out_level == 0) {
            kept.push_back(std::move(line));
        }
    }
    lines.clear();
    int next_level = 1; // at the end nothing comes any more
    for (auto line = kept.rbegin(); line != kept.rend(); ++line) {
        const bool is_heading = line->kind == LineKind::heading;
        if (is_heading && next_level > 0 && next_level <= line->level) {
            continue;
        }
        next_level = is_heading ? line->level : 0;
        lines.push_back(std::move(*line));
    }
    std::reverse(lines.begin(), lines.end());
    return lines;
}

// "Step 3" as a heading numbers what follows.
std::vector<Line> with_steps_numbered(std::vector<Line> lines) {
    std::vector<Line> made;
    bool is_step = false;
    for (Line& line : lines) {
        if (line.kind == LineKind::heading || line.text.size() < 10) {
            std::string words = without_step_number(line.text);
            if (words.empty()) {
                is_step = true;
                continue;
            }
            if (line.kind == LineKind::heading) {
                line.text = std::move(words);
            }
        } else if (is_step && line.kind == LineKind::paragraph) {
            line.kind = LineKind::numbered;
        }
        is_step = false;
        made.push_back(std::move(line));
    }
    return made;
}

// What stands in front of the name of the site: "Hall loaf | A kitchen".
std::string_view own_part(std::string_view title) {
    for (const std::string_view bar : {" | ", " - ", " \xE2\x80\x93 ", " \xE2\x80\x94 ", " :: "}) {
        const std::size_t at = title.find(bar);
        if (at != std::string_view::npos && at > 0) {
            title = title.substr(0, at);
        }
    }
    return title;
}

std::string title_of_head(const Tree& tree) {
    std::string title;
    for (std::size_t i = 0; i < tree.nodes().size(); ++i) {
        const Node& node = tree.nodes()[i];
        if (node.element == Element::meta &&
            tree.attribute(i, "property").value_or("") == "og:title") {
            return one_line_of(tree.attribute(i, "content").value_or(""));
        }
        if (node.element == Element::title && title.empty() && i + 1 < node.end) {
            title = one_line_of(own_part(tree.nodes()[i + 1].text));
        }
    }
    return title;
}

} // namespace

MainText main_text(const Tree& tree) {
    MainText main;
    std::vector<Line> all = lines_of(tree, 0, surroundings(tree));
    const auto first = std::find_if(all.begin(), all.end(), [](const Line& line) {
        return line.kind == LineKind::heading && line.level == 1;
    });
    main.title = first == all.end() ? title_of_head(tree) : first->text;
    if (first != all.end()) {
        all.erase(first);
    }
    main.lines = with_steps_numbered(without_appendices(Chooser(tree, std::move(all)).chosen()));
    // A heading of the second rank that says the title again.
    main.lines.erase(std::remove_if(main.lines.begin(),
                                    main.lines.end(),
                                    [&](const Line& line) {
                                        return line.kind == LineKind::heading &&
                                               line.text == main.title;
                                    }),
                     main.lines.end());
    return main;
}

} // namespace loafwright::web_page

// SPDX-License-Identifier: Apache-2.0
#include "shell/web_page/lines.hpp"

#include "shell/web_page/lean_page.hpp"
#include "shell/web_page/plain.hpp"

#include <algorithm>
#include <optional>
#include <utility>

namespace loafwright::web_page {
namespace {

// The longest row of a table that is one line; what is longer is a table that makes a layout.
constexpr std::size_t longest_row = 300;
// Entities that were written as entities again ("&amp;frac12;"), at most so many times.
constexpr int most_rewritings = 3;

bool is_inside_a_line(Element element) {
    return element == Element::text || element == Element::inside || element == Element::link;
}

/// What a row of a table says, when it is one line.
struct Row {
    std::vector<std::string> cells;
    bool is_heading = true; // names the columns
};

class Reader {
public:
    Reader(const Tree& tree, const std::vector<bool>* left_out)
        : tree_(tree), nodes_(tree.nodes()), left_out_(left_out) {}

    std::vector<Line> lines(std::size_t root) {
        std::size_t i = root;
        const std::size_t end = nodes_[root].end;
        while (i < end) {
            leave_until(i);
            i = enter(i);
        }
        leave_until(end);
        flush(Break::block);
        return std::move(lines_);
    }

private:
    enum class Break { block, soft };

    struct List {
        std::size_t end;
        bool is_ordered;
    };

    struct Item {
        std::size_t end;
        bool is_ordered;
        std::optional<std::size_t> line; // where its words stand
    };

    void leave_until(std::size_t at) {
        while (!open_.empty() && open_.back() <= at) {
            flush(Break::block);
            open_.pop_back();
            while (!items_.empty() && items_.back().end <= at) {
                items_.pop_back();
            }
            while (!lists_.empty() && lists_.back().end <= at) {
                lists_.pop_back();
            }
        }
        if (heading_end_ <= at) {
            heading_level_ = 0;
        }
        if (pre_end_ <= at) {
            pre_end_ = 0;
        }
    }

    // Takes one node; answers with the next one to take.
    std::size_t enter(std::size_t i) {
        const Node& node = nodes_[i];
        if (node.element == Element::text) {
            text(i);
            return i + 1;
        }
        if (node.element == Element::meta || node.element == Element::title ||
            is_hidden(tree_, i) || (left_out_ != nullptr && (*left_out_)[i])) {
            return node.end;
        }
        if (node.element == Element::br) {
            flush(Break::soft);
            return i + 1;
        }
        if (node.element == Element::link) {
            link_end_ = std::max<std::size_t>(link_end_, node.end);
        }
        if (is_inside_a_line(node.element)) {
            return i + 1;
        }
        flush(Break::block);
        if (node.element == Element::row) {
            if (auto row = simple_row(i)) {
                take_row(std::move(*row), i);
                return node.end;
            }
        }
        open_.push_back(node.end);
        switch (node.element) {
        case Element::heading:
            heading_end_ = node.end;
            heading_level_ = node.level;
            break;
        case Element::ordered:
        case Element::unordered:
            lists_.push_back({node.end, node.element == Element::ordered});
            break;
        case Element::item:
            items_.push_back({node.end, !lists_.empty() && lists_.back().is_ordered, std::nullopt});
            break;
        case Element::pre:
            pre_end_ = node.end;
            break;
        default:
            break;
        }
        return i + 1;
    }

    void text(std::size_t i) {
        std::string_view words = nodes_[i].text;
        if (line_.empty()) {
            line_node_ = i;
        }
        if (pre_end_ > i) {
            for (std::size_t end = words.find('\n'); end != std::string_view::npos;
                 end = words.find('\n')) {
                line_ += words.substr(0, end);
                flush(Break::soft);
                line_node_ = i;
                words.remove_prefix(end + 1);
            }
        }
        line_ += words;
        if (link_end_ > i) {
            link_bytes_ += words.size();
        }
    }

    void flush(Break why) {
        if (line_.empty()) {
            if (why == Break::block) {
                last_break_ = why;
            }
            return;
        }
        std::string words = plain_words(line_);
        const std::size_t link_bytes = std::min(link_bytes_, words.size());
        line_.clear();
        link_bytes_ = 0;
        if (words.empty()) {
            return;
        }
        Line line;
        line.link_bytes = link_bytes;
        line.node = static_cast<std::uint32_t>(line_node_);
        if (heading_level_ > 0) {
            line.kind = LineKind::heading;
            line.level = heading_level_;
        } else if (!items_.empty()) {
            Item& item = items_.back();
            const bool is_first = !item.line.has_value();
            const bool goes_on = !is_first && *item.line + 1 == lines_.size();
            const bool is_broken = last_break_ == Break::soft && !item.is_ordered;
            if (goes_on && !is_broken) {
                lines_.back().text += ' ';
                lines_.back().text += words;
                lines_.back().link_bytes += link_bytes;
                last_break_ = why;
                return;
            }
            if (is_first || is_broken) {
                line.kind = item.is_ordered ? LineKind::numbered : LineKind::bullet;
                item.line = lines_.size();
            }
        }
        line.is_broken = last_break_ == Break::soft;
        line.text = std::move(words);
        lines_.push_back(std::move(line));
        last_break_ = why;
    }

    // A row of short cells, one line each; nothing for a row that only makes a layout.
    [[nodiscard]] std::optional<Row> simple_row(std::size_t at) const {
        Row row;
        std::size_t bytes = 0;
        std::size_t blocks = 0;
        std::size_t cell_end = at;
        std::string cell;
        const auto close_cell = [&] {
            std::string words = plain_words(cell);
            if (!words.empty()) {
                row.cells.push_back(std::move(words));
            }
            cell.clear();
            blocks = 0;
        };
        for (std::size_t i = at + 1; i < nodes_[at].end;) {
            const Node& node = nodes_[i];
            if (node.element == Element::cell || node.element == Element::heading_cell) {
                row.is_heading = row.is_heading && node.element == Element::heading_cell;
                close_cell();
                cell_end = node.end;
            } else if (node.element == Element::text) {
                if (i >= cell_end) {
                    return std::nullopt;
                }
                bytes += node.text.size();
                cell += node.text;
            } else if (is_hidden(tree_, i)) {
                i = node.end;
                continue;
            } else if (!is_inside_a_line(node.element)) {
                const bool is_plain =
                    node.element == Element::paragraph || node.element == Element::block;
                if (!is_plain || ++blocks > 1) {
                    return std::nullopt;
                }
            }
            if (bytes > longest_row) {
                return std::nullopt;
            }
            ++i;
        }
        close_cell();
        if (row.cells.size() < 2) {
            return std::nullopt;
        }
        return row;
    }

    void take_row(Row row, std::size_t at) {
        if (row.is_heading) {
            return;
        }
        const auto begins_with_digit = [](const std::string& words) {
            return words[0] >= '0' && words[0] <= '9';
        };
        // "flour | 500 g" is said the other way round.
        if (row.cells.size() == 2 && begins_with_digit(row.cells[1]) &&
            row.cells[0].find_first_of("0123456789") == std::string::npos) {
            std::swap(row.cells[0], row.cells[1]);
        }
        Line line;
        line.kind = LineKind::bullet;
        line.is_row = true;
        line.node = static_cast<std::uint32_t>(at);
        for (const std::string& cell : row.cells) {
            line.text += line.text.empty() ? "" : " ";
            line.text += cell;
        }
        lines_.push_back(std::move(line));
        last_break_ = Break::block;
    }

    const Tree& tree_;
    const std::vector<Node>& nodes_;
    const std::vector<bool>* left_out_;
    std::vector<Line> lines_;
    std::string line_;
    std::size_t line_node_ = 0;
    std::size_t link_bytes_ = 0;
    std::size_t link_end_ = 0;
    std::size_t heading_end_ = 0;
    std::uint8_t heading_level_ = 0;
    std::size_t pre_end_ = 0;
    Break last_break_ = Break::block;
    std::vector<std::size_t> open_; // ends of the blocks that are open
    std::vector<List> lists_;
    std::vector<Item> items_;
};

std::vector<Line> split_lines(std::string_view text) {
    std::vector<Line> lines;
    while (true) {
        const std::size_t end = std::min(text.find('\n'), text.size());
        std::string words = plain_words(text.substr(0, end));
        if (!words.empty()) {
            Line line;
            line.text = std::move(words);
            lines.push_back(std::move(line));
        }
        if (end == text.size()) {
            return lines;
        }
        text.remove_prefix(end + 1);
    }
}

bool has_blocks(std::string_view lean) {
    for (std::size_t i = lean.find('<'); i != std::string_view::npos; i = lean.find('<', i + 1)) {
        if (lean.substr(i, 5) != "<span" && lean.substr(i, 6) != "</span") {
            return true;
        }
    }
    return false;
}

std::vector<Line> lines_of_html(std::string_view text) {
    std::string lean = lean_page(text).html;
    if (text.find('\n') != std::string_view::npos && !has_blocks(lean)) {
        std::string broken;
        broken.reserve(text.size() * 2);
        for (const char c : text) {
            if (c == '\n') {
                broken += "<br>";
            } else {
                broken += c;
            }
        }
        lean = lean_page(broken).html;
    }
    const auto tree = Tree::of(lean);
    return tree ? Reader(*tree, nullptr).lines(0) : split_lines(text);
}

std::string joined(const std::vector<Line>& lines, char between) {
    std::string all;
    for (const Line& line : lines) {
        if (!all.empty()) {
            all += between;
        }
        all += line.text;
    }
    return all;
}

bool any_has_markup(const std::vector<Line>& lines) {
    return std::any_of(
        lines.begin(), lines.end(), [](const Line& line) { return has_markup(line.text); });
}

// The lines without tags and entities that were written as text.
std::vector<Line> without_rewritten(std::vector<Line> lines) {
    for (Line& line : lines) {
        if (has_markup(line.text)) {
            line.text = one_line_of(line.text);
            line.link_bytes = std::min(line.link_bytes, line.text.size());
        }
    }
    lines.erase(std::remove_if(
                    lines.begin(), lines.end(), [](const Line& line) { return line.text.empty(); }),
                lines.end());
    return lines;
}

} // namespace

bool is_hidden(const Tree& tree, std::size_t node) {
    return tree.has(node, "hidden");
}

std::vector<Line> lines_of(const Tree& tree, std::size_t node) {
    return without_rewritten(Reader(tree, nullptr).lines(node));
}

std::vector<Line> lines_of(const Tree& tree, std::size_t node, const std::vector<bool>& left_out) {
    return without_rewritten(Reader(tree, &left_out).lines(node));
}

std::vector<Line> lines_of_text(std::string_view text) {
    if (text.find_first_of("<&") == std::string_view::npos) {
        return split_lines(text);
    }
    std::vector<Line> lines = lines_of_html(text);
    for (int i = 1; i < most_rewritings && any_has_markup(lines); ++i) {
        lines = lines_of_html(joined(lines, '\n'));
    }
    return any_has_markup(lines) ? split_lines(without_markup(joined(lines, '\n'))) : lines;
}

std::string one_line_of(std::string_view text) {
    return joined(lines_of_text(text), ' ');
}

} // namespace loafwright::web_page

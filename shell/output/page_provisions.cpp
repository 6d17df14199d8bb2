// SPDX-License-Identifier: Apache-2.0
//
// What to weigh, amounts under each other, and what to have ready.
#include "shell/output/page_block.hpp"

#include <algorithm>
#include <string_view>
#include <utility>

namespace loafwright::output {

namespace {

constexpr std::size_t longest_single_column = 4;

// The number and the unit at the front of "500 g flour", so that amounts can stand under each
// other.
std::size_t amount_bytes(std::string_view item) {
    constexpr std::string_view about = "about ";
    std::size_t at = item.rfind(about, 0) == 0 ? about.size() : 0;
    const std::size_t digits = at;
    while (at < item.size() && ((item[at] >= '0' && item[at] <= '9') || item[at] == '.')) {
        ++at;
    }
    if (at == digits || at >= item.size() || item[at] != ' ') {
        return 0;
    }
    const std::size_t end = std::min(item.find(' ', at + 1), item.size());
    const std::string_view unit = item.substr(at + 1, end - at - 1);
    return unit == "g" || unit == "kg" || unit == "oz" || unit == "lb" || unit == "ml" ? end : 0;
}

struct Item {
    std::string amount;
    std::string name;
};

std::vector<Item> items_of(const std::vector<std::string>& lines) {
    std::vector<Item> items;
    for (const std::string& line : lines) {
        const std::size_t bytes = amount_bytes(line);
        std::string name = for_paper(line.substr(bytes));
        std::string amount = for_paper(line.substr(0, bytes));
        if (!name.empty() || !amount.empty()) {
            items.push_back({std::move(amount), std::move(name)});
        }
    }
    return items;
}

std::string list_of(const std::vector<std::string>& things) {
    std::string list;
    for (const std::string& thing : things) {
        const std::string words = for_paper(thing);
        if (!words.empty()) {
            list += (list.empty() ? "" : ", ") + words;
        }
    }
    return list;
}

// Blocks side by side or under each other are built apart and then put in place.
void put(Block& onto, Block block, double right, double down) {
    for (Part& part : block.parts) {
        shift(part, right, down);
        onto.parts.push_back(std::move(part));
    }
    onto.height = std::max(onto.height, down + block.height);
}

Block label_block(const std::string& label, const Galley& galley) {
    Block block;
    add(block, PartKind::heading, {galley.words(Role::label, label, 0.0, 0.0, -1.0)});
    block.height += galley.measures.line_gap;
    return block;
}

// Amounts flush right in a column of their own, in one or more columns of items.
Block weigh_block(const std::vector<Item>& items,
                  std::size_t columns,
                  double width,
                  const Galley& galley) {
    Block block = label_block("Weigh", galley);
    const double gap = galley.measures.column_gap;
    const double column =
        (width - gap * 2.0 * static_cast<double>(columns - 1)) / static_cast<double>(columns);
    double amount_width = 0.0;
    for (const Item& item : items) {
        amount_width = std::max(amount_width, galley.width_of(Role::body, item.amount));
    }
    const double name_at = amount_width > 0.0 ? amount_width + 0.6 * gap : 0.0;
    const std::size_t rows = (items.size() + columns - 1) / columns;
    const double top = block.height;
    for (std::size_t i = 0; i < columns; ++i) {
        double y = top;
        const double x = static_cast<double>(i) * (column + 2.0 * gap);
        for (std::size_t j = i * rows; j < std::min(items.size(), (i + 1) * rows); ++j) {
            std::vector<Mark> marks;
            const Item& item = items[j];
            if (!item.amount.empty()) {
                const double wide = galley.width_of(Role::body, item.amount);
                marks.emplace_back(
                    galley.words(Role::body, item.amount, x + amount_width - wide, y, -1.0));
            }
            marks.emplace_back(
                galley.words(Role::body, item.name, x + name_at, y, column - name_at));
            add(block, PartKind::item, std::move(marks));
            y = bottom_of(block.parts.back()) + galley.measures.line_gap;
        }
    }
    return block;
}

Block ready_block(const std::string& list, double width, const Galley& galley) {
    Block block = label_block("Have ready", galley);
    add(block, PartKind::paragraph, {galley.words(Role::body, list, 0.0, block.height, width)});
    return block;
}

} // namespace

Block provisions_block(const Sheet& sheet, const Galley& galley) {
    const Measures& measures = galley.measures;
    const double room = measures.room();
    const std::vector<Item> items = items_of(sheet.weigh);
    const std::string list = list_of(sheet.ready);
    if (items.empty()) {
        return list.empty() ? Block{} : ready_block(list, room, galley);
    }
    if (list.empty()) {
        return weigh_block(items, items.size() > longest_single_column ? 2 : 1, room, galley);
    }
    // Side by side, with the second column where the foot of the page has it; anything else only
    // when it saves two lines: weights in two columns, beside or above what to have ready.
    const auto beside = [&](std::size_t columns, double ready_at) {
        const double width = ready_at - 2.0 * measures.column_gap;
        Block block = weigh_block(items, columns, width, galley);
        put(block, ready_block(list, room - ready_at, galley), ready_at, 0.0);
        return block;
    };
    Block best = beside(1, measures.second_column());
    if (measures.ease >= 1.0) {
        return best; // nothing has to be saved
    }
    const double saved = 2.0 * measures.face(Role::body).points;
    const auto take_if_shorter = [&best, saved](Block other) {
        if (other.height + saved < best.height) {
            best = std::move(other);
        }
    };
    take_if_shorter(beside(2, measures.second_column()));
    take_if_shorter(beside(2, 0.7 * room));
    Block under = weigh_block(items, 2, room, galley);
    const double ready_y = under.height + 0.5 * measures.block_gap;
    put(under, ready_block(list, room, galley), 0.0, ready_y);
    take_if_shorter(std::move(under));
    return best;
}

} // namespace loafwright::output

// SPDX-License-Identifier: Apache-2.0
//
// The top of the page: which bread, when it is eaten, when to begin; then what to weigh and what to
// have ready. "Eat at" and "Begin" stand under each other, and so do their times.
#include "shell/output/page_block.hpp"

#include <algorithm>
#include <string_view>

namespace loafwright::output {

namespace {

// "eat on Sat 28 Nov at 18:30" in its words and its time.
struct Told {
    std::string words;
    std::string time;
    std::string rest;
};

std::string with_capital(std::string words) {
    if (!words.empty() && words.front() >= 'a' && words.front() <= 'z') {
        words.front() = static_cast<char>(words.front() - 'a' + 'A');
    }
    return words;
}

Told eating(const std::string& eat) {
    constexpr std::string_view at = " at ";
    const std::size_t found = eat.rfind(at);
    if (found == std::string::npos) {
        return {"", with_capital(eat), ""};
    }
    return {with_capital(eat.substr(0, found + 3)), eat.substr(found + at.size()), ""};
}

// "Begin Sat 28 Nov, 13:00. 40 minutes …" in its words, its time and what follows.
Told beginning(const std::string& opening) {
    constexpr std::string_view begin = "Begin ";
    const std::size_t stop = opening.find(". ");
    if (opening.rfind(begin, 0) != 0 || stop == std::string::npos) {
        return {"", "", opening};
    }
    const std::string first = opening.substr(0, stop);
    const std::size_t comma = first.rfind(", ");
    const std::size_t time = comma == std::string::npos ? begin.size() : comma + 2;
    return {first.substr(0, time - 1), first.substr(time), opening.substr(stop + 2)};
}

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

Block head_block(const Sheet& sheet, const PageOptions& options, const Galley& galley) {
    const Measures& measures = galley.measures;
    Block block;
    double width = measures.room();
    Part code_part;
    if (const auto code = short_code(options.address)) {
        CodeMark mark;
        mark.module_points = measures.module_points;
        mark.code = *code;
        const auto modules = static_cast<double>(code->side);
        mark.x = measures.room() - modules * mark.module_points;
        width = mark.x - quiet_modules * mark.module_points;
        code_part.kind = PartKind::drawing;
        code_part.link = options.address;
        code_part.marks.emplace_back(std::move(mark));
        block.height = modules * measures.module_points + quiet_modules * measures.module_points;
    }
    std::string title = for_paper(sheet.title);
    if (title.empty()) {
        title = "Bread";
    }
    // A title of many lines is set as small as a title may be.
    Words set = galley.words(Role::title, title, 0.0, 0.0, width);
    if (set.extent.height > 2.5 * set.face.points) {
        const Measures least = measures_for(options.paper, options.print, 0.0);
        set = galley.words(least.face(Role::title), Role::title, title, 0.0, 0.0, width);
    }
    double y = set.extent.height;
    add(block, PartKind::title, {set});
    block.parts.back().bookmark = title;

    const Told eat = eating(sheet.eat);
    const Told begin = beginning(sheet.opening);
    const double words_width = std::max(galley.width_of(Role::lead, for_paper(eat.words)),
                                        galley.width_of(Role::lead, for_paper(begin.words)));
    const double time_at = words_width + 0.8 * measures.column_gap;
    const auto line = [&](const Told& told, Role role) {
        if (told.time.empty()) {
            return;
        }
        std::vector<Mark> marks;
        const double x = words_width > 0.0 ? time_at : 0.0;
        Words time = galley.words(role, for_paper(told.time), x, y, width - x);
        // Figures have no descenders, so the room for them is not kept.
        const double tight = 0.1 * time.face.points;
        time.y -= tight;
        if (!told.words.empty()) {
            Words lead = galley.words(Role::lead, for_paper(told.words), 0.0, 0.0, -1.0);
            lead.y = time.y + time.extent.baseline - lead.extent.baseline;
            marks.emplace_back(std::move(lead));
        }
        const double bottom = time.y + time.extent.baseline + 6.0;
        marks.emplace_back(std::move(time));
        add(block, PartKind::paragraph, std::move(marks));
        y = bottom;
    };
    line(eat, Role::eat_time);
    line(begin, Role::begin_time);
    y += measures.line_gap;
    for (const std::string& words :
         {begin.rest,
          options.address.empty() || code_part.marks.empty() ? std::string()
                                                             : "On a screen: " + options.address}) {
        if (!words.empty()) {
            add(block,
                PartKind::paragraph,
                {galley.words(Role::length, for_paper(words), 0.0, y, width)});
            y = bottom_of(block.parts.back()) + measures.line_gap;
        }
    }
    if (!code_part.marks.empty()) {
        block.parts.back().link = options.address;
        block.parts.push_back(std::move(code_part));
    }
    return block;
}

Block provisions_block(const Sheet& sheet, const Galley& galley) {
    const Measures& measures = galley.measures;
    const double room = measures.room();
    const std::vector<Item> items = items_of(sheet.weigh);
    std::string list;
    for (const std::string& thing : sheet.ready) {
        const std::string words = for_paper(thing);
        if (!words.empty()) {
            list += (list.empty() ? "" : ", ") + words;
        }
    }
    if (items.empty()) {
        return list.empty() ? Block{} : ready_block(list, room, galley);
    }
    if (list.empty()) {
        return weigh_block(items, items.size() > 4 ? 2 : 1, room, galley);
    }
    // Side by side, or under each other with the weights in two columns: whichever is shorter.
    const double split = 0.58 * room;
    Block beside;
    put(beside, weigh_block(items, 1, split, galley), 0.0, 0.0);
    const double ready_at = split + 2.0 * measures.column_gap;
    put(beside, ready_block(list, room - ready_at, galley), ready_at, 0.0);
    Block under;
    put(under, weigh_block(items, 2, room, galley), 0.0, 0.0);
    put(under, ready_block(list, room, galley), 0.0, under.height + 0.5 * measures.block_gap);
    return under.height + measures.block_gap < beside.height ? under : beside;
}

} // namespace loafwright::output

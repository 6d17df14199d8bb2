// SPDX-License-Identifier: Apache-2.0
//
// A request has the same kitchen and day as the files, in another form: JSON becomes the tree that
// the files become, and the same readers read it.
#include "shell/settings/bake_request.hpp"

#include "shell/settings/fields.hpp"
#include "shell/settings/tree.hpp"
#include "shell/settings/tree_readers.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <iterator>
#include <utility>

namespace loafwright::settings {

namespace {

using Kind = TreeValue::Kind;

constexpr std::size_t most_answers = 100;
constexpr std::size_t longest_answer = 2000;

void add(Diagnostics& all, Diagnostics more) {
    std::move(more.begin(), more.end(), std::back_inserter(all));
}

// Lists have plural names in JSON and singular ones in TOML.
TreeValue with_file_keys(TreeValue tree) {
    constexpr std::array<std::pair<std::string_view, std::string_view>, 3> names{
        {{"tins", "tin"}, {"windows", "window"}, {"oven_claims", "oven_claim"}}};
    for (TreeEntry& entry : tree.entries) {
        for (const auto& [plural, singular] : names) {
            if (entry.key == plural) {
                entry.key = singular;
            }
        }
    }
    std::sort(tree.entries.begin(), tree.entries.end(), [](const TreeEntry& a, const TreeEntry& b) {
        return a.key < b.key;
    });
    return tree;
}

class Reader {
public:
    Reader(const TreeValue& tree, std::string_view name, Instant now)
        : name_(name), fields_(tree, "", name, wrong_) {
        read_.request.day.now = now;
    }

    tl::expected<ReadRequest, Diagnostics> all() {
        read_time_and_zone();
        breads();
        habits();
        goals();
        page();
        fields_.value("version");
        fields_.refuse_others();
        if (!wrong_.empty()) {
            return tl::make_unexpected(std::move(wrong_));
        }
        return std::move(read_);
    }

    Diagnostics only_habits() {
        read_time_and_zone();
        habits();
        fields_.value("version");
        fields_.refuse_others();
        return std::move(wrong_);
    }

private:
    Day& day() { return read_.request.day; }

    void zone_of_day() {
        const TreeValue* told = fields_.table("day");
        const TreeValue* zone = told != nullptr ? told->find("zone") : nullptr;
        if (zone != nullptr && zone->kind == Kind::text) {
            // What is wrong with it is told where the day is read.
            if (auto named = zone_named(zone->text, day().now)) {
                day().zone = std::move(*named);
            }
            return;
        }
        FoundZone found = zone_found(day().now);
        day().zone = std::move(found.zone);
        if (found.warning) {
            read_.remarks.push_back(std::move(*found.warning));
        }
    }

    std::optional<Instant> time(std::string_view key) {
        const auto words = fields_.text(key);
        if (!words) {
            return std::nullopt;
        }
        auto told = time_from_words(*words, day().zone, day().now);
        if (!told) {
            Diagnostic& fault = told.error();
            fields_.complain(
                fault.code, *fields_.value(key), key, ": " + fault.what, std::move(fault.do_this));
            return std::nullopt;
        }
        return *told;
    }

    void read_time_and_zone() {
        zone_of_day();
        if (const auto told = time("now")) {
            day().now = *told;
            zone_of_day(); // another time may fall under other clock changes
        }
    }

    void breads() {
        if (fields_.value("breads") == nullptr) {
            fields_.missing("breads", R"("breads": [{"name": "my loaf", "text": "…"}])");
            return;
        }
        const auto tables = fields_.tables("breads", breads::most_breads);
        if (tables.empty() && wrong_.empty()) {
            fields_.complain("value_out_of_range",
                             *fields_.value("breads"),
                             "breads",
                             " is empty, expected 1 to 12 breads",
                             "Send at least one recipe.");
        }
        for (std::size_t b = 0; b < tables.size(); ++b) {
            bread(*tables[b], b);
        }
    }

    void bread(const TreeValue& table, std::size_t index) {
        Fields fields(table, fmt::format("breads[{}]", index), name_, wrong_);
        // A name that nobody has given yet is none.
        const TreeValue* told = fields.value("name");
        const bool blank = told != nullptr && told->kind == Kind::text &&
                           told->text.find_first_not_of(" \t\r\n") == std::string::npos;
        const std::string name = (blank ? std::nullopt : fields.text("name"))
                                     .value_or(fmt::format("bread {}", index + 1));
        Answers answers;
        for (const TreeValue* item : fields.tables("answers", most_answers)) {
            Fields answer(*item, fields.path("answers"), name_, wrong_);
            const auto key = answer.text("key");
            const TreeValue* value = answer.value("value");
            const bool good = value != nullptr && value->kind == Kind::text &&
                              value->text.size() <= longest_answer;
            if (!key || !good) {
                answer.missing(key ? "value" : "key", R"({"key": "room-c", "value": "19"})");
            } else {
                answers.push_back({*key, value->text});
            }
            answer.refuse_others();
        }
        const TreeValue* text = fields.value("text");
        if (text == nullptr || text->kind != Kind::text) {
            fields.missing("text", R"("text": "Mix 500 g flour…")");
        } else if (auto checked = check_text(text->text, name)) {
            read_.request.breads.push_back({name,
                                            std::move(*checked),
                                            std::move(answers),
                                            {},
                                            {},
                                            {size(fields), yeast(fields)}});
        } else {
            add(wrong_, std::move(checked.error()));
        }
        fields.refuse_others();
    }

    // {"pieces"}, {"dough_grams"}, {"factor"} or {"tin_mm": {"length", "width", "height"}}.
    std::optional<Target> size(Fields& bread) {
        const TreeValue* table = bread.table("size");
        if (table == nullptr) {
            return std::nullopt;
        }
        const auto range = [](breads::SizeRange size, Measure measure) {
            return Range{size.low, size.high, measure};
        };
        Fields fields(*table, bread.path("size"), name_, wrong_);
        std::vector<Target> told;
        if (const auto pieces =
                fields.number("pieces", range(breads::pieces_range, Measure::count))) {
            told.emplace_back(PiecesWanted{*pieces});
        }
        if (const auto dough =
                fields.number("dough_grams", range(breads::dough_grams_range, Measure::count))) {
            told.emplace_back(DoughWanted{Grams(*dough)});
        }
        if (const auto factor =
                fields.number("factor", range(breads::factor_range, Measure::ratio))) {
            told.emplace_back(FactorWanted{*factor});
        }
        if (const auto tin = tin_size(fields)) {
            told.emplace_back(TinWanted{*tin});
        }
        fields.refuse_others();
        if (told.size() > 1) {
            bread.complain("said_twice",
                           *table,
                           "size",
                           " has more than one size, expected one of them",
                           "Ask for one size at a time.");
        }
        return told.empty() ? std::nullopt : std::optional(told.front());
    }

    std::optional<TinSize> tin_size(Fields& size) {
        const TreeValue* table = size.table("tin_mm");
        if (table == nullptr) {
            return std::nullopt;
        }
        Fields fields(*table, size.path("tin_mm"), name_, wrong_);
        const auto side = [&fields](std::string_view key) {
            const auto told = fields.number(key,
                                            {breads::tin_side_mm_range.low,
                                             breads::tin_side_mm_range.high,
                                             Measure::millimetres});
            if (!told && fields.value(key) == nullptr) {
                fields.missing(key, R"("tin_mm": {"length": 230, "width": 130, "height": 70})");
            }
            return Millimetres(told.value_or(breads::tin_side_mm_range.low));
        };
        const TinSize tin{side("length"), side("width"), side("height")};
        fields.refuse_others();
        return tin;
    }

    static std::optional<RaisedBy> yeast(Fields& bread) {
        std::vector<std::string> names;
        for (const RaisedBy one : all_raised_by) {
            names.emplace_back(name_of(one));
        }
        const auto index = bread.one_of("yeast", names);
        return index ? std::optional(all_raised_by.at(*index)) : std::nullopt;
    }

    void habits() {
        if (const TreeValue* told = fields_.table("kitchen")) {
            auto kitchen = kitchen_from_tree(with_file_keys(*told), "kitchen", name_);
            if (kitchen) {
                read_.request.kitchen = std::move(*kitchen);
            } else {
                add(wrong_, std::move(kitchen.error()));
            }
        }
        if (const TreeValue* learned = fields_.table("learned")) {
            read_.request.kitchen.factors = factors_from_tree(*learned, "learned", name_, wrong_);
            read_.has_learned = true;
        }
        const TreeValue* told = fields_.table("day");
        if (told == nullptr) {
            return;
        }
        auto file =
            day_from_tree(with_file_keys(*told), "day", name_, day().zone, false, day().now);
        if (!file) {
            add(wrong_, std::move(file.error()));
            return;
        }
        read_.request.day = std::move(file->day);
        add(read_.remarks, std::move(file->remarks));
    }

    void goals() {
        const auto start = time("start");
        const auto eat_by = time("eat_by");
        if (start && eat_by) {
            fields_.complain("both_start_and_eat_by",
                             *fields_.value("eat_by"),
                             "eat_by",
                             " stands beside start, expected one of the two",
                             "Leave one of the two out.");
        }
        if (start || eat_by) {
            day().start = start;
            day().eat_by = eat_by;
        }
        // Within the minute that runs, now is now.
        if (day().start && day().start->seconds < day().now.seconds &&
            day().start->seconds + 60 > day().now.seconds) {
            day().start = day().now;
        }
    }

    void page() {
        const TreeValue* table = fields_.table("page");
        if (table == nullptr) {
            return;
        }
        Fields fields(*table, "page", name_, wrong_);
        SheetOptions& page = read_.request.page;
        page.clock =
            fields.one_of("clock", {"24", "12"}) == 1U ? ClockForm::hours_12 : ClockForm::hours_24;
        page.temperature = fields.one_of("temperature", {"c", "f"}) == 1U
                               ? TemperatureScale::fahrenheit
                               : TemperatureScale::celsius;
        page.weight =
            fields.one_of("weight", {"g", "oz"}) == 1U ? WeightUnit::ounces : WeightUnit::grams;
        page.wording = fields.truth("few").value_or(false) ? Wording::few : Wording::full;
        fields.refuse_others();
    }

    std::string_view name_;
    Diagnostics wrong_;
    ReadRequest read_;
    Fields fields_;
};

} // namespace

tl::expected<ReadRequest, Diagnostics>
bake_request_from_json(std::string_view json, std::string_view name, Instant now) {
    const auto tree = parse_json(json, name);
    if (!tree) {
        return tl::make_unexpected(Diagnostics{tree.error()});
    }
    return Reader(*tree, name, now).all();
}

Diagnostics faults_of_habits(std::string_view json, std::string_view name, Instant now) {
    const auto tree = parse_json(json, name);
    if (!tree) {
        return Diagnostics{tree.error()};
    }
    return Reader(*tree, name, now).only_habits();
}

} // namespace loafwright::settings

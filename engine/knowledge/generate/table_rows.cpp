// SPDX-License-Identifier: Apache-2.0
//
// What the writers of the tables share: the words that rows may use, checks of phrases and figures,
// and the frame of a generated source file.

#include "engine/knowledge/generate/table_rows.hpp"

#include "engine/recipe/recipe.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace loafwright::generate {
namespace {

template <typename Enum>
Names names_up_to(Enum last) {
    Names names;
    for (int index = 0; index <= static_cast<int>(last); ++index) {
        names.push_back(name_of(static_cast<Enum>(index)));
    }
    return names;
}

} // namespace

const Names& kind_names() {
    static const Names names = names_up_to(StepKind::store);
    return names;
}

const Names& place_names() {
    static const Names names = names_up_to(Place::hob);
    return names;
}

const Names& family_names() {
    static const Names names = names_up_to(DoughFamily::quick);
    return names;
}

const Names& role_names() {
    static const Names names{"flour",
                             "starch",
                             "liquid",
                             "yeast",
                             "salt",
                             "sugar",
                             "fat",
                             "egg",
                             "dairy",
                             "preferment",
                             "inclusion",
                             "topping",
                             "spice",
                             "flavour",
                             "acid",
                             "enzyme",
                             "improver",
                             "alkali",
                             "chemical leaven"};
    return names;
}

std::string source_file(std::string_view table,
                        std::string_view row_type,
                        const std::string& rows,
                        const WordPool* words) {
    std::string text = "// SPDX-License-Identifier: Apache-2.0\n//\n"
                       "// Written by generate_knowledge out of data/; change the data instead.\n"
                       "#include \"engine/knowledge/tables.hpp\"\n\n"
                       "#include <iterator>\n\n"
                       "namespace loafwright::knowledge {\n";
    const std::string type =
        fmt::format("{}<{}>", words != nullptr ? "ListedTable" : "Table", row_type);
    if (rows.empty()) {
        return text + fmt::format("\n{} {}_table() {{ return {{}}; }}\n\n"
                                  "}} // namespace loafwright::knowledge\n",
                                  type,
                                  table);
    }
    text += "namespace {\n\n";
    const bool listed = words != nullptr && !words->empty();
    if (listed) {
        text += words->definition();
    }
    text += fmt::format("constexpr {} rows[] = {{\n{}}};\n\n}} // namespace\n\n", row_type, rows);
    text += fmt::format("{} {}_table() {{ return {{rows, std::size(rows){}}}; }}\n\n",
                        type,
                        table,
                        words == nullptr ? ""
                        : listed         ? ", words"
                                         : ", nullptr");
    return text + "} // namespace loafwright::knowledge\n";
}

std::string trust_of(const Origin& origin) {
    return "Trust::" + (origin.trust.empty() ? std::string("memory") : origin.trust);
}

std::string lower(std::string_view text) {
    std::string result(text);
    std::transform(result.begin(), result.end(), result.begin(), [](unsigned char letter) {
        return static_cast<char>(std::tolower(letter));
    });
    return result;
}

std::size_t word_count(std::string_view text) {
    std::size_t count = 0;
    bool inside = false;
    for (const char letter : text) {
        const bool blank = letter == ' ';
        count += !blank && !inside ? 1 : 0;
        inside = !blank;
    }
    return count;
}

void want_plain_phrases(const Row& row, std::string_view key, const std::vector<std::string>& all) {
    for (const std::string& phrase : all) {
        if (lower(phrase) != phrase || phrase.front() == ' ' || phrase.back() == ' ' ||
            phrase.find("  ") != std::string::npos) {
            row.fault_at(key,
                         fmt::format("{} has \"{}\", expected lower-case words one blank apart",
                                     key,
                                     phrase));
        }
    }
}

void want_within(const Row& row,
                 std::string_view key,
                 const std::optional<double>& value,
                 double most) {
    if (value && (*value < 0.0 || *value > most)) {
        row.fault_at(key, fmt::format("{} is {}, expected 0 to {}", key, *value, most));
    }
}

} // namespace loafwright::generate

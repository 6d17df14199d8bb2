// SPDX-License-Identifier: Apache-2.0
//
// The tables about steps: their lengths, their cues, what to mind, what to have ready.

#include "engine/knowledge/generate/table_rows.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace loafwright::generate {

std::string stage_defaults(std::vector<DataFile>& files) {
    std::string rows;
    SeenKeys seen;
    for (DataFile& file : files) {
        for (Row& row : file.rows()) {
            const std::string kind = row.word("kind", kind_names());
            const auto family = row.word_if("family", family_names());
            const auto place = row.word_if("place", place_names());
            seen.add(row,
                     "the default of",
                     kind + (family ? " " + *family : "") + (place ? " " + *place : ""));
            const auto minutes = row.figures("minutes");
            const auto holds = row.figures_if("holds_minutes");
            if (minutes && minutes->low <= 0.0) {
                row.fault_at("minutes", "minutes start at 0 or less");
            }
            const Origin origin = row.origin();
            row.finish();
            rows += fmt::format("    {{StepKind::{}, {}, {}, {}, {}, {}, {}}},\n",
                                kind,
                                enumerator("DoughFamily", family),
                                enumerator("Place", place),
                                band("Minutes", minutes),
                                band("Minutes", holds),
                                quoted(origin.cite),
                                trust_of(origin));
        }
    }
    return source_file("stage_defaults", "StageDefaultRow", rows, nullptr);
}

namespace {

// Few words for a kind of step, and for a family of doughs where it is another there.
std::string words_at_steps(std::vector<DataFile>& files,
                           const std::string& name,
                           const std::string& row_type,
                           const std::string& what,
                           std::size_t most_words,
                           std::string_view most_in_words) {
    std::string rows;
    SeenKeys seen;
    for (DataFile& file : files) {
        for (Row& row : file.rows()) {
            const std::string kind = row.word("kind", kind_names());
            const auto family = row.word_if("family", family_names());
            seen.add(row, what, kind + (family ? " " + *family : ""));
            const std::string text = row.text("text");
            if (word_count(text) > most_words) {
                row.fault_at("text",
                             fmt::format("\"{}\" has {} words, expected {} at most",
                                         text,
                                         word_count(text),
                                         most_in_words));
            }
            const Origin origin = row.origin();
            row.finish();
            rows += fmt::format("    {{StepKind::{}, {}, {}, {}, {}}},\n",
                                kind,
                                enumerator("DoughFamily", family),
                                quoted(text),
                                quoted(origin.cite),
                                trust_of(origin));
        }
    }
    return source_file(name, row_type, rows, nullptr);
}

} // namespace

std::string cues(std::vector<DataFile>& files) {
    return words_at_steps(files, "cues", "CueRow", "the cue of", 9, "nine");
}

std::string normal(std::vector<DataFile>& files) {
    return words_at_steps(files, "normal", "NormalRow", "what is normal at", 12, "twelve");
}

std::string cautions(std::vector<DataFile>& files) {
    std::string rows;
    WordPool words;
    SeenKeys codes;
    for (DataFile& file : files) {
        for (Row& row : file.rows()) {
            const std::string code = row.text("code");
            codes.add(row, "the code", code);
            const auto any_item = row.texts("any_item");
            const auto any_role = row.texts("any_role");
            const auto any_word = row.texts("any_word");
            want_plain_phrases(row, "any_item", any_item);
            want_plain_phrases(row, "any_word", any_word);
            for (const std::string& role : any_role) {
                if (std::find(role_names().begin(), role_names().end(), role) ==
                    role_names().end()) {
                    row.fault_at("any_role", fmt::format("no ingredient has the role {}", role));
                }
            }
            const auto stage = row.word_if("stage", kind_names());
            const auto place = row.word_if("place", place_names());
            const auto longer = row.number_if("longer_than_minutes");
            const auto hotter = row.number_if("hotter_than_c");
            const auto room = row.number_if("room_above_c");
            if (any_item.empty() && any_role.empty() && any_word.empty() && !stage && !place &&
                !longer && !hotter) {
                row.fault(
                    fmt::format("nothing calls for {}: give it words, a role or a stage", code));
            }
            const std::string text = row.text("text");
            const auto weight = row.number_if("weight");
            want_within(row, "weight", weight, 100.0);
            const Origin origin = row.origin();
            row.finish();
            const std::string item_range = words.range_of(any_item);
            const std::string role_range = words.range_of(any_role);
            const std::string word_range = words.range_of(any_word);
            rows += fmt::format("    {{{}, {}, {}, {}, {}, {}, {}, {}, {}, {}, {}, {}, {}}},\n",
                                quoted(code),
                                item_range,
                                role_range,
                                word_range,
                                enumerator("StepKind", stage),
                                enumerator("Place", place),
                                tagged("Minutes", longer),
                                tagged("Celsius", hotter),
                                tagged("Celsius", room),
                                quoted(text),
                                static_cast<int>(weight.value_or(50.0)),
                                quoted(origin.cite),
                                trust_of(origin));
        }
    }
    return source_file("cautions", "ListedCaution", rows, &words);
}

std::string remedies(std::vector<DataFile>& files) {
    static const Names waits{"as_it_is", "again", "longer"};
    std::string rows;
    SeenKeys keys;
    for (DataFile& file : files) {
        for (Row& row : file.rows()) {
            const std::string key = row.text("key");
            keys.add(row, "the key", key);
            const std::string tells = row.text("tells");
            const std::string remedy = row.text("remedy");
            const std::string wait = row.word_if("wait", waits).value_or("as_it_is");
            const auto percent = row.number_if("wait_percent");
            want_within(row, "wait_percent", percent, 200.0);
            if ((wait == "as_it_is") == percent.has_value()) {
                row.fault("wait_percent belongs to a wait that begins again or goes on longer");
            }
            const bool asks_until = row.yes("asks_until");
            const Origin origin = row.origin();
            row.finish();
            rows += fmt::format("    {{{}, {}, {}, WaitAfter::{}, {:.1f}, {}, {}, {}}},\n",
                                quoted(key),
                                quoted(tells),
                                quoted(remedy),
                                wait,
                                percent.value_or(0.0),
                                asks_until,
                                quoted(origin.cite),
                                trust_of(origin));
        }
    }
    return source_file("remedies", "RemedyRow", rows, nullptr);
}

std::string skills(std::vector<DataFile>& files) {
    std::string rows;
    WordPool words;
    SeenKeys keys;
    for (DataFile& file : files) {
        for (Row& row : file.rows()) {
            const std::string skill = row.text("skill");
            keys.add(row, "the skill", skill);
            const auto family = row.word_if("family", family_names());
            const auto kind = row.word_if("kind", kind_names());
            const auto any_word = row.texts("any_word");
            const auto unless_word = row.texts("unless_word");
            want_plain_phrases(row, "any_word", any_word);
            want_plain_phrases(row, "unless_word", unless_word);
            if (!family && !kind && any_word.empty()) {
                row.fault(
                    fmt::format("nothing calls for {}: give it words, a kind or a family", skill));
            }
            const auto demand = row.number_if("demand");
            if (!demand || (*demand != 1.0 && *demand != 2.0 && *demand != 3.0)) {
                row.fault_at("demand", "demand is missing or not 1, 2 or 3");
            }
            const std::string says = row.text("says");
            const Origin origin = row.origin();
            row.finish();
            const std::string word_range = words.range_of(any_word);
            const std::string unless_range = words.range_of(unless_word);
            rows += fmt::format("    {{{}, {}, {}, {}, {}, {}, {}, {}, {}}},\n",
                                quoted(skill),
                                enumerator("DoughFamily", family),
                                enumerator("StepKind", kind),
                                word_range,
                                unless_range,
                                static_cast<int>(demand.value_or(1.0)),
                                quoted(says),
                                quoted(origin.cite),
                                trust_of(origin));
        }
    }
    return source_file("skills", "ListedSkill", rows, &words);
}

std::string kit(std::vector<DataFile>& files) {
    std::string rows;
    WordPool words;
    SeenKeys names;
    for (DataFile& file : files) {
        for (Row& row : file.rows()) {
            const std::string name = row.text("kit");
            names.add(row, "the kit", name);
            const auto all = row.texts("words");
            want_plain_phrases(row, "words", all);
            if (all.empty()) {
                row.fault(fmt::format("no word calls for {}, expected words = [\"…\"]", name));
            }
            const Origin origin = row.origin();
            row.finish();
            const std::string range = words.range_of(all);
            rows += fmt::format("    {{{}, {}, {}}},\n", quoted(name), range, quoted(origin.cite));
        }
    }
    return source_file("kit", "ListedKit", rows, &words);
}

std::string ahead(std::vector<DataFile>& files) {
    std::string rows;
    WordPool words;
    SeenKeys seen;
    for (DataFile& file : files) {
        for (Row& row : file.rows()) {
            const std::string what = row.text("what");
            seen.add(row, "the work", what);
            std::string lists;
            bool named = false;
            for (const std::string_view key : {"any_item", "any_role", "any_word", "unless_word"}) {
                const auto all = row.texts(key);
                want_plain_phrases(row, key, all);
                named = named || (!all.empty() && key != "unless_word");
                lists += words.range_of(all) + ", ";
            }
            if (!named) {
                row.fault(fmt::format("nothing calls for \"{}\": give it an item or a role", what));
            }
            const auto before = row.number_if("before_minutes");
            if (!before || *before <= 0.0) {
                row.fault("this row has no before_minutes above 0");
            }
            const Origin origin = row.origin();
            row.finish();
            rows += fmt::format("    {{{}, {}{}, {}}},\n",
                                quoted(what),
                                lists,
                                tagged("Minutes", before.value_or(0.0)),
                                quoted(origin.cite));
        }
    }
    return source_file("ahead", "ListedAhead", rows, &words);
}

} // namespace loafwright::generate

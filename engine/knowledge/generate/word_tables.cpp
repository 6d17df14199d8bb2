// SPDX-License-Identifier: Apache-2.0
//
// The tables about words: the lexicon, and the order in which bread is made.

#include "engine/knowledge/generate/table_rows.hpp"

#include <fmt/format.h>

namespace loafwright::generate {
namespace {

// "~" stands for other words, so it must stand alone.
void want_phrase_of_lexicon(const Row& row, const std::string& phrase) {
    for (std::size_t at = phrase.find('~'); at != std::string::npos;
         at = phrase.find('~', at + 1)) {
        const bool alone = (at == 0 || phrase[at - 1] == ' ') &&
                           (at + 1 == phrase.size() || phrase[at + 1] == ' ');
        if (!alone) {
            row.fault_at("say",
                         fmt::format("say has \"{}\", expected ~ as a word of its own", phrase));
            return;
        }
    }
}

} // namespace

std::string lexicon(std::vector<DataFile>& files) {
    std::string rows;
    SeenKeys seen;
    for (DataFile& file : files) {
        const auto general_role = file.heading("role");
        for (Row& row : file.rows()) {
            const std::string role =
                general_role ? row.text_if("role").value_or(*general_role) : row.text("role");
            const auto say = row.texts("say");
            want_plain_phrases(row, "say", say);
            if (say.empty()) {
                row.fault("this row says nothing, expected say = [\"…\"]");
            }
            const std::string means = row.text("means");
            const double weight = row.number_if("weight").value_or(1.0);
            const Origin origin = row.origin();
            row.finish();
            for (const std::string& phrase : say) {
                want_phrase_of_lexicon(row, phrase);
                seen.add(row, "the phrase", role + ": " + phrase + " = " + means);
                rows += fmt::format("    {{{}, {}, {}, {}, {}}},\n",
                                    quoted(role),
                                    quoted(phrase),
                                    quoted(means),
                                    literal(weight),
                                    quoted(origin.cite));
            }
        }
    }
    return source_file("lexicon", "LexiconRow", rows, nullptr);
}

std::string process(std::vector<DataFile>& files) {
    std::string rows;
    SeenKeys seen;
    for (DataFile& file : files) {
        for (Row& row : file.rows()) {
            const std::string from = row.text("from");
            const std::string kind = row.word("kind", kind_names());
            const std::string to = row.text("to");
            seen.add(row, "the passage", from + " " + kind + " " + to);
            const auto cost = row.number_if("cost");
            if (!cost) {
                row.fault("this row has no cost");
            }
            const Origin origin = row.origin();
            row.finish();
            rows += fmt::format("    {{{}, {}, {}, {}, {}}},\n",
                                quoted(from),
                                quoted(kind),
                                quoted(to),
                                literal(cost.value_or(0.0)),
                                quoted(origin.cite));
        }
    }
    return source_file("process", "ProcessRow", rows, nullptr);
}

} // namespace loafwright::generate

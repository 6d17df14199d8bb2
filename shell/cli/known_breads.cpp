// SPDX-License-Identifier: Apache-2.0
//
// From the files of a call to breads that can be planned. Every file is looked at before the first
// is complained about.
#include "shell/cli/known_breads.hpp"

#include "engine/knowledge/knowledge.hpp"
#include "shell/cli/answers_file.hpp"
#include "shell/cli/files.hpp"

#include <algorithm>
#include <iterator>
#include <utility>

namespace loafwright::cli {

namespace {

void add(Diagnostics& all, Diagnostics more) {
    std::move(more.begin(), more.end(), std::back_inserter(all));
}

Answers without_room(const Answers& answers) {
    Answers others;
    std::copy_if(answers.begin(),
                 answers.end(),
                 std::back_inserter(others),
                 [](const Answer& answer) { return answer.key != room_key; });
    return others;
}

} // namespace

std::vector<BreadText> bread_texts(const std::vector<std::string>& files,
                                   const Answers& answers_given,
                                   Diagnostics& wrong) {
    std::vector<BreadText> texts;
    for (const std::string& file : files) {
        const std::string name = name_for_messages(file);
        auto answers = all_answers(file, answers_given);
        if (!answers) {
            add(wrong, std::move(answers.error()));
        }
        auto bytes = file_bytes(file);
        if (!bytes) {
            add(wrong, std::move(bytes.error()));
            continue;
        }
        auto text = check_text(std::move(*bytes), name);
        if (!text) {
            add(wrong, std::move(text.error()));
        } else if (answers) {
            texts.push_back({name, std::move(*text), std::move(*answers)});
        }
    }
    return texts;
}

std::vector<Question> KnownBreads::questions() const {
    std::vector<Question> all;
    for (const FittedRecipe& bread : fitted) {
        for (const Question& question : bread.questions) {
            const bool known =
                std::any_of(all.begin(), all.end(), [&question](const Question& other) {
                    return other.key == question.key && other.ask == question.ask;
                });
            if (!known) {
                all.push_back(question);
            }
        }
    }
    return all;
}

Provisions KnownBreads::cautions() const {
    Provisions all = provisions.front();
    for (std::size_t b = 1; b < provisions.size(); ++b) {
        for (const Caution& caution : provisions[b].cautions) {
            const bool known = std::any_of(
                all.cautions.begin(), all.cautions.end(), [&caution](const Caution& other) {
                    return other.code == caution.code;
                });
            if (!known) {
                all.cautions.push_back(caution);
            }
        }
    }
    return all;
}

std::vector<Sheet>
KnownBreads::pages(const Plan& plan, const Day& day, const SheetOptions& options) const {
    if (plan.breads.empty()) {
        return {compose(plan, fitted.front(), provisions.front(), day, options)};
    }
    return compose(plan, fitted, provisions, day, options);
}

tl::expected<KnownBreads, Diagnostics> read_breads(const std::vector<BreadText>& texts,
                                                   const Kitchen& kitchen) {
    const Knowledge knowledge = built_in_knowledge();
    KnownBreads known;
    Diagnostics wrong;
    for (const BreadText& text : texts) {
        const Reading reading = read(text.text, knowledge, without_room(text.answers));
        if (reading.recipe.steps.empty()) {
            wrong.push_back({"no_recipe_found",
                             Severity::error,
                             "no step of a bread recipe could be read, expected sentences such as "
                             "\"knead for ten minutes\"",
                             text.name,
                             "Check that the file holds the method and not only the ingredients."});
            continue;
        }
        known.fitted.push_back(fit(reading, kitchen, knowledge));
        known.provisions.push_back(gather(reading.recipe, kitchen, knowledge));
        add(known.remarks, reading.remarks);
    }
    if (!wrong.empty()) {
        return tl::make_unexpected(std::move(wrong));
    }
    return known;
}

} // namespace loafwright::cli

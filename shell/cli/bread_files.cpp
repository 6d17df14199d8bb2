// SPDX-License-Identifier: Apache-2.0
//
// From the files of a call to texts. Every file is looked at before the first is complained about.
#include "shell/cli/bread_files.hpp"

#include "shell/cli/answers_file.hpp"
#include "shell/cli/files.hpp"
#include "shell/cli/source_files.hpp"

#include <iterator>
#include <utility>

namespace loafwright::cli {

namespace {

void add(Diagnostics& all, Diagnostics more) {
    std::move(more.begin(), more.end(), std::back_inserter(all));
}

std::vector<Doubt> doubts_of(const intake::TakenIn& taken) {
    std::vector<Doubt> doubts;
    for (const intake::UnsureWord& word : taken.unsure) {
        doubts.push_back({word.span, word.maybe});
    }
    return doubts;
}

// Nothing can be made of a page that was not read.
void as_errors(Diagnostics& remarks) {
    for (Diagnostic& remark : remarks) {
        remark.severity = Severity::error;
    }
}

} // namespace

std::vector<breads::BreadText> bread_texts(const std::vector<std::string>& files,
                                           const Answers& answers_given,
                                           Diagnostics& wrong) {
    std::vector<breads::BreadText> texts;
    for (const std::string& file : files) {
        const std::string name = name_for_messages(file);
        auto answers = all_answers(file, answers_given);
        if (!answers) {
            add(wrong, std::move(answers.error()));
        }
        auto taken = taken_in({file});
        if (!taken) {
            add(wrong, std::move(taken.error()));
            continue;
        }
        if (taken->handwriting) {
            as_errors(taken->remarks);
            add(wrong, std::move(taken->remarks));
            continue;
        }
        Settled settled = settle(taken->text, doubts_of(*taken), answers.value_or(Answers{}));
        auto text = check_text(std::move(settled.text), name);
        if (!text) {
            add(wrong, std::move(text.error()));
        } else if (answers) {
            texts.push_back({name,
                             std::move(*text),
                             std::move(settled.others),
                             std::move(settled.open),
                             std::move(taken->remarks)});
        }
    }
    return texts;
}

} // namespace loafwright::cli

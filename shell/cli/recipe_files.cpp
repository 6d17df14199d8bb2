// SPDX-License-Identifier: Apache-2.0
#include "shell/cli/recipe_files.hpp"

#include "engine/reading/read.hpp"
#include "shell/cli/bread_files.hpp"

#include <utility>

namespace loafwright::cli {

tl::expected<std::vector<Reading>, Diagnostics> readings_of(const std::vector<std::string>& files,
                                                            const Answers& answers,
                                                            const Knowledge& knowledge) {
    Diagnostics wrong;
    const std::vector<breads::BreadText> texts = bread_texts(files, answers, wrong);
    if (!wrong.empty()) {
        return tl::make_unexpected(std::move(wrong));
    }
    std::vector<Reading> readings;
    readings.reserve(texts.size());
    for (const breads::BreadText& bread : texts) {
        readings.push_back(read(bread.text, knowledge, bread.answers, bread.doubts));
        Diagnostics& remarks = readings.back().remarks;
        remarks.insert(remarks.begin(), bread.remarks.begin(), bread.remarks.end());
    }
    return readings;
}

} // namespace loafwright::cli

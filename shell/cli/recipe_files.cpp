// SPDX-License-Identifier: Apache-2.0
#include "shell/cli/recipe_files.hpp"

#include "engine/reading/read.hpp"
#include "shell/cli/bread_files.hpp"

#include <utility>

namespace loafwright::cli {

tl::expected<std::vector<Reading>, Diagnostics> readings_of(const std::vector<std::string>& files,
                                                            const Answers& answers,
                                                            const breads::Wanted& wanted,
                                                            const Knowledge& knowledge) {
    Diagnostics wrong;
    std::vector<breads::BreadText> texts = bread_texts(files, answers, wrong);
    if (!wrong.empty()) {
        return tl::make_unexpected(std::move(wrong));
    }
    std::vector<Reading> readings;
    readings.reserve(texts.size());
    const Reader reader(knowledge);
    for (breads::BreadText& bread : texts) {
        bread.wanted = wanted;
        auto reading = breads::read_as_wanted(bread, knowledge, reader);
        if (!reading) {
            return tl::make_unexpected(std::move(reading.error()));
        }
        reading->remarks.insert(
            reading->remarks.begin(), bread.remarks.begin(), bread.remarks.end());
        readings.push_back(std::move(*reading));
    }
    return readings;
}

} // namespace loafwright::cli

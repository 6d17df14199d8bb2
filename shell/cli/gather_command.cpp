// SPDX-License-Identifier: Apache-2.0
//
// loafwright gather: from the files of a day's breads to one list.
#include "shell/cli/gather_command.hpp"

#include "engine/knowledge/knowledge.hpp"
#include "engine/provisions/gather.hpp"
#include "engine/wire/wire.hpp"
#include "shell/cli/before_pages.hpp"
#include "shell/cli/kitchen_file.hpp"
#include "shell/cli/recipe_files.hpp"

#include <iterator>
#include <utility>

namespace loafwright::cli {

tl::expected<CommandAnswer, Diagnostics> gather_command(const GatherArguments& arguments) {
    const Knowledge knowledge = built_in_knowledge();
    Diagnostics wrong;
    const auto kitchen = kitchen_in(arguments.kitchen);
    if (!kitchen) {
        wrong = kitchen.error();
    }
    auto readings = readings_of(arguments.files, arguments.answers, arguments.wanted, knowledge);
    if (!readings) {
        std::move(readings.error().begin(), readings.error().end(), std::back_inserter(wrong));
    }
    if (!wrong.empty()) {
        return tl::make_unexpected(std::move(wrong));
    }
    CommandAnswer answer;
    std::vector<Provisions> each;
    std::vector<std::string> titles;
    for (const Reading& reading : *readings) {
        each.push_back(gather(reading.recipe, *kitchen, knowledge));
        titles.push_back(reading.recipe.title);
        if (!arguments.json) {
            std::copy(reading.remarks.begin(),
                      reading.remarks.end(),
                      std::back_inserter(answer.messages));
        }
    }
    const Provisions all = together(each);
    if (arguments.json) {
        answer.text = wire::provisions_json(all);
    } else {
        const Screen out = screen();
        answer.text = gather_page(titles, all, out.columns, out.weight);
    }
    return answer;
}

} // namespace loafwright::cli

// SPDX-License-Identifier: Apache-2.0
#include "shell/cli/intake_command.hpp"

#include "engine/reading/read.hpp"
#include "shell/cli/files.hpp"
#include "shell/cli/source_files.hpp"
#include "shell/intake/message.hpp"

#include <fmt/format.h>

#include <sstream>
#include <utility>

namespace loafwright::cli {

namespace {

std::size_t words_in(const std::string& text) {
    std::istringstream words(text);
    std::size_t count = 0;
    for (std::string word; words >> word;) {
        ++count;
    }
    return count;
}

std::string about(const intake::TakenIn& taken) {
    if (taken.handwriting) {
        return fmt::format("{}, written by hand\n", intake::name_of(taken.kind));
    }
    const std::string unsure =
        taken.kind == intake::Kind::image || !taken.unsure.empty()
            ? fmt::format(", {} of them unsure",
                          taken.unsure.empty() ? "none" : std::to_string(taken.unsure.size()))
            : "";
    return fmt::format(
        "{}, {} words{}\n", intake::name_of(taken.kind), words_in(taken.text), unsure);
}

} // namespace

const std::string_view intake_help = R"(
intake: what words were found in a file of any kind; several photos are one recipe
  --text              the words themselves
  --json              as JSON, with the numbers that may have been read wrongly
)";

tl::expected<CommandAnswer, Diagnostics> intake_command(const IntakeArguments& arguments) {
    auto taken = taken_in(arguments.files);
    if (!taken) {
        return tl::make_unexpected(std::move(taken.error()));
    }
    const std::string name = name_for_messages(arguments.files.front());
    if (!taken->handwriting) {
        auto text = check_text(taken->text, name);
        if (!text) {
            return tl::make_unexpected(std::move(text.error()));
        }
    }
    CommandAnswer answer;
    if (arguments.json) {
        answer.text = intake::json_of(*taken);
        return answer;
    }
    answer.messages = unsure_words(*taken, name);
    answer.text = arguments.text ? taken->text : about(*taken);
    return answer;
}

} // namespace loafwright::cli

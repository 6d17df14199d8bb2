// SPDX-License-Identifier: Apache-2.0
//
// loafwright faults: what was seen, and the log of the bake where there is one, go to the engine;
// its findings come back.
#include "shell/cli/faults_command.hpp"

#include "engine/faults/find_faults.hpp"
#include "engine/faults/words.hpp"
#include "engine/wire/bake_log_json.hpp"
#include "engine/wire/findings_json.hpp"
#include "shell/cli/files.hpp"
#include "shell/cli/paragraphs.hpp"
#include "shell/cli/terminal.hpp"

#include <fmt/format.h>

#include <utility>

namespace loafwright::cli {

namespace {

Diagnostic unknown(const std::string& symptom) {
    constexpr std::size_t longest_shown = 60;
    std::string shown = symptom.substr(0, longest_shown);
    // Not inside a letter of UTF-8: its later bytes are 10xxxxxx.
    while (shown.size() < symptom.size() && !shown.empty() &&
           (static_cast<unsigned char>(symptom[shown.size()]) & 0xC0U) == 0x80U) {
        shown.pop_back();
    }
    for (char& c : shown) {
        c = static_cast<unsigned char>(c) < 0x20U ? ' ' : c;
    }
    return {
        "symptom_unknown",
        Severity::error,
        fmt::format("no sign on a bread was found in '{}'", shown),
        "--symptom",
        "Say it in a few plain words, such as dense, pale crust, burst side, large holes, gummy, "
        "collapsed or sour."};
}

tl::expected<std::optional<BakeLog>, Diagnostics> log_in(const std::optional<std::string>& path) {
    if (!path) {
        return std::optional<BakeLog>();
    }
    const auto bytes = file_bytes(*path);
    if (!bytes) {
        return tl::make_unexpected(bytes.error());
    }
    auto log = wire::bake_log_from_json(*bytes, name_for_messages(*path));
    if (!log) {
        return tl::make_unexpected(std::move(log.error()));
    }
    return std::optional<BakeLog>(std::move(*log));
}

} // namespace

tl::expected<CommandAnswer, Diagnostics> faults_command(const FaultsArguments& arguments) {
    const Knowledge knowledge = built_in_knowledge();
    Diagnostics wrong;
    for (const std::string& symptom : arguments.symptoms) {
        if (symptoms_in(knowledge, symptom).empty()) {
            wrong.push_back(unknown(symptom));
        }
    }
    auto log = log_in(arguments.log);
    if (!log) {
        wrong.insert(wrong.end(), log.error().begin(), log.error().end());
    }
    if (!wrong.empty()) {
        return tl::make_unexpected(std::move(wrong));
    }
    const Findings findings = find_faults(arguments.symptoms, *log ? &**log : nullptr, knowledge);
    CommandAnswer answer;
    answer.exit_status = exit_done;
    answer.text = arguments.json ? wire::findings_json(findings)
                                 : paragraphs(faults::words_of(findings), screen().columns);
    return answer;
}

} // namespace loafwright::cli

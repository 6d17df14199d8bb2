// SPDX-License-Identifier: Apache-2.0
#include "engine/faults/words.hpp"

#include "engine/quantity/phrase.hpp"

#include <fmt/format.h>

namespace loafwright::faults {

namespace {

constexpr std::size_t most_told = 4;

std::string joined(const std::vector<std::string>& sentences) {
    std::string all;
    for (const std::string& sentence : sentences) {
        all += (all.empty() ? "" : " ") + sentence;
    }
    return all;
}

std::string capital(std::string text) {
    if (!text.empty() && text[0] >= 'a' && text[0] <= 'z') {
        text[0] = static_cast<char>(text[0] - 'a' + 'A');
    }
    return text;
}

} // namespace

std::string likely_words(const Findings& findings, std::size_t index) {
    const double probability = findings.findings[index].probability;
    if (index == 0 && probability >= 0.4) {
        return "most likely";
    }
    return probability >= 0.1 ? "also possible" : "less likely";
}

std::vector<std::string> words_of(const Findings& findings) {
    std::vector<std::string> say;
    if (findings.findings.empty()) {
        say.emplace_back(
            "Nothing here points to a cause. Say what you saw in a few plain words, such "
            "as a close crumb or a burst side.");
    }
    for (std::size_t i = 0; i < findings.findings.size() && i < most_told; ++i) {
        const Finding& finding = findings.findings[i];
        std::string how = likely_words(findings, i);
        // Nobody needs "also" where nothing went before.
        how = i == 0 && how == "also possible" ? "possible" : how;
        std::string line = fmt::format("{}: {}.", capital(how), finding.cause);
        if (!finding.speaks_for.empty()) {
            line += " " + joined(finding.speaks_for);
        }
        if (!finding.speaks_against.empty()) {
            line += " Against it: " + joined(finding.speaks_against);
        }
        say.push_back(std::move(line));
    }
    if (!findings.our_time.empty()) {
        say.push_back(findings.our_time);
    }
    if (!findings.cannot_tell.empty()) {
        say.push_back(findings.cannot_tell);
    }
    if (findings.try_next) {
        say.push_back(fmt::format("Change one thing: {}. Because {}.",
                                  findings.try_next->change,
                                  findings.try_next->because));
    }
    return say;
}

} // namespace loafwright::faults

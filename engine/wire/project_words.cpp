// SPDX-License-Identifier: Apache-2.0
#include "engine/wire/project_words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <system_error>
#include <utility>

namespace loafwright::wire {

namespace {

constexpr std::size_t longest_file = 1048576;
constexpr std::size_t longest_shown = 40;

bool is_blank(char c) {
    return c == ' ' || c == '\t' || c == '\f' || c == '\v';
}

bool is_bracket(char c) {
    return c == '[' || c == ']';
}

// Foreign bytes must not steer a terminal, and may be long.
std::string shown(std::string_view word) {
    std::string text;
    for (const char c : word.substr(0, longest_shown)) {
        text += c > ' ' && c <= '~' ? c : '?';
    }
    return text + (word.size() > longest_shown ? "…" : "");
}

bool is_rule(const ProjectLine& line) {
    return std::all_of(line.begin(), line.end(), [](const ProjectWord& word) {
        return word.text.find_first_not_of("*=_-") == std::string_view::npos;
    });
}

ProjectLine words_of(std::string_view text, std::size_t number) {
    ProjectLine line;
    std::size_t at = 0;
    while (at < text.size() && text[at] != '#') {
        if (is_blank(text[at])) {
            ++at;
            continue;
        }
        std::size_t to = at + 1;
        while (!is_bracket(text[at]) && to < text.size() && !is_blank(text[to]) &&
               !is_bracket(text[to])) {
            ++to;
        }
        line.push_back({text.substr(at, to - at), number});
        at = to;
    }
    return line;
}

} // namespace

std::vector<ProjectLine> project_lines(std::string_view bytes) {
    std::vector<ProjectLine> lines;
    std::size_t number = 1;
    std::size_t at = 0;
    while (at < bytes.size()) {
        const std::size_t to = std::min(bytes.find_first_of("\r\n", at), bytes.size());
        ProjectLine line = words_of(bytes.substr(at, to - at), number);
        if (!line.empty() && !is_rule(line)) {
            lines.push_back(std::move(line));
        }
        at = to + (bytes.substr(to, 2) == "\r\n" ? 2 : 1);
        ++number;
    }
    return lines;
}

bool looks_whole(std::string_view word) {
    if (!word.empty() && word.front() == '-') {
        word.remove_prefix(1);
    }
    return !word.empty() && word.find_first_not_of("0123456789") == std::string_view::npos;
}

std::string ProjectWords::found() const {
    return at_end() ? "the end of it" : fmt::format("\"{}\"", shown(words_[next_].text));
}

void ProjectWords::fail(const char* code, const std::string& what, const std::string& do_this) {
    if (!fault_) {
        const std::size_t line = at_end() ? end_line_ : words_[next_].line;
        fault_ =
            Diagnostic{code, Severity::error, what, fmt::format("{}:{}", file_, line), do_this};
    }
}

std::int64_t ProjectWords::number(const std::string& what, std::int64_t low, std::int64_t high) {
    if (failed()) {
        return low;
    }
    const std::string range =
        low == high ? std::to_string(low) : fmt::format("{} to {}", low, high);
    if (at_end() || !looks_whole(words_[next_].text)) {
        fail("project_unreadable",
             fmt::format("found {}, expected {}, {}", found(), what, range),
             "Write a whole number there, and check that nothing before it is missing.");
        return low;
    }
    const std::string_view text = words_[next_].text;
    std::int64_t value = 0;
    const auto [stop, error] = std::from_chars(text.data(), text.data() + text.size(), value);
    if (error != std::errc() || value < low || value > high) {
        fail("value_out_of_range",
             fmt::format("found {}, expected {}, {}", shown(text), what, range),
             "Check the number, and that nothing before it is missing.");
        return low;
    }
    ++next_;
    return value;
}

void ProjectWords::word(std::string_view expected) {
    if (failed()) {
        return;
    }
    if (at_end() || words_[next_].text != expected) {
        fail("project_unreadable",
             fmt::format("found {}, expected \"{}\"", found(), expected),
             "Each activity that follows has its lag in square brackets, as in [3].");
        return;
    }
    ++next_;
}

void ProjectWords::end(const std::string& after) {
    if (!failed() && !at_end()) {
        fail("project_unreadable",
             fmt::format("found {}, expected nothing more after {}", found(), after),
             "Check the counts before it, or take it out.");
    }
}

Diagnostics unreadable_project(std::string_view file, const std::string& what) {
    return {{"project_unreadable",
             Severity::error,
             what,
             std::string(file),
             "Check that this is the right file, and --format."}};
}

std::optional<Diagnostics> fault_of_size(std::string_view bytes, std::string_view file) {
    if (bytes.size() > longest_file) {
        return Diagnostics{{"text_too_long",
                            Severity::error,
                            fmt::format("the file is longer than {} KiB, the most that is read",
                                        longest_file / 1024),
                            std::string(file),
                            "Take a smaller project."}};
    }
    return std::nullopt;
}

tl::expected<schedule::Project, Diagnostics> finished_project(schedule::Project project,
                                                              std::string_view file) {
    const std::size_t last = project.activities.size() - 1;
    for (std::size_t i = 0; i < last; ++i) {
        project.lags.push_back({i, last, project.activities[i].duration});
    }
    Diagnostics faults = schedule::faults_in(project);
    for (Diagnostic& fault : faults) {
        fault.where = std::string(file);
    }
    if (!faults.empty()) {
        return tl::make_unexpected(std::move(faults));
    }
    return project;
}

} // namespace loafwright::wire

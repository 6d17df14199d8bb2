// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/diagnostic/diagnostic.hpp"
#include "engine/schedule/project.hpp"

#include <tl/expected.hpp>

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

/// Files of projects as words with their lines. Other rooms use project_files.hpp.
namespace loafwright::wire {

/// Text that no blank parts; a square bracket is a word of its own.
struct ProjectWord {
    std::string_view text;
    std::size_t line = 1;
};

/// One line with at least one word, rules of stars and dashes left out.
using ProjectLine = std::vector<ProjectWord>;

/// Any of the three line ends; blanks and tabs alike. What follows a '#' is a comment.
std::vector<ProjectLine> project_lines(std::string_view bytes);

/// A whole number with no sign but a minus, and nothing else.
bool looks_whole(std::string_view word);

/// Takes words one after the other and keeps the first thing that is wrong.
class ProjectWords {
public:
    /// Needs: `words` and the text behind them stay.
    ProjectWords(const std::vector<ProjectWord>& words, std::string_view file, std::size_t end_line)
        : words_(words), file_(file), end_line_(end_line) {}

    [[nodiscard]] bool at_end() const { return next_ == words_.size(); }
    [[nodiscard]] bool failed() const { return fault_.has_value(); }
    [[nodiscard]] Diagnostics faults() const { return {*fault_}; }

    /// The next number, `what` it is in messages. After a fault: `low`.
    std::int64_t number(const std::string& what, std::int64_t low, std::int64_t high);
    /// The next number, which has to be this one.
    void exactly(const std::string& what, std::int64_t value) { number(what, value, value); }
    void word(std::string_view expected);
    void end(const std::string& after);

private:
    void fail(const char* code, const std::string& what, const std::string& do_this);
    [[nodiscard]] std::string found() const;

    const std::vector<ProjectWord>& words_;
    std::string_view file_;
    std::size_t end_line_;
    std::size_t next_ = 0;
    std::optional<Diagnostic> fault_;
};

/// A fault of a whole file, in the form of those above.
Diagnostics unreadable_project(std::string_view file, const std::string& what);

/// The first thing to look at.
///
/// Errors: text_too_long.
std::optional<Diagnostics> fault_of_size(std::string_view bytes, std::string_view file);

/// What has been read, with the last activity after all others; or its faults.
tl::expected<schedule::Project, Diagnostics> finished_project(schedule::Project project,
                                                              std::string_view file);

} // namespace loafwright::wire

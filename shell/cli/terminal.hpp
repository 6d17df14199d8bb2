// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/diagnostic/diagnostic.hpp"
#include "shell/output/text_page.hpp"

#include <cstddef>
#include <string>
#include <string_view>

namespace loafwright::cli {

/// What a command gives back when its input was fine.
struct CommandAnswer {
    std::string text;     // for standard output
    Diagnostics messages; // for standard error
    int exit_status = 0;
};

/// Where standard output goes.
struct Screen {
    std::size_t columns = 80;
    output::Weight weight = output::Weight::plain;
};

/// A terminal's own width between 40 and 80 columns, with bold; anything else is 80 columns, plain.
Screen screen();

/// Writes to standard output; false, with one line on standard error, when that failed (a full
/// disk).
bool print(std::string_view text);

/// How far something is, on a line of standard error that is wiped at the end. Only on a terminal.
class ProgressLine {
public:
    explicit ProgressLine(std::string what);
    ProgressLine(const ProgressLine&) = delete;
    ProgressLine& operator=(const ProgressLine&) = delete;
    ~ProgressLine();

    void show(int percent);

private:
    std::string what_;
    bool shown_ = false;
};

/// One line on standard error.
void print_message(const Diagnostic& diagnostic);

} // namespace loafwright::cli

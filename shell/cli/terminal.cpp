// SPDX-License-Identifier: Apache-2.0
//
// The two streams, and what is known about the terminal behind them.
#include "shell/cli/terminal.hpp"

#include "shell/output/text_lines.hpp"

#include <sys/ioctl.h>
#include <unistd.h>

#include <algorithm>
#include <cstdio>
#include <utility>

namespace loafwright::cli {

namespace {

constexpr std::size_t narrowest = 40;
constexpr std::size_t widest = 80;

} // namespace

Screen screen() {
    Screen found;
    if (::isatty(STDOUT_FILENO) == 0) {
        return found;
    }
    found.weight = output::Weight::bold;
    struct winsize size {};
    if (::ioctl(STDOUT_FILENO, TIOCGWINSZ, &size) == 0 && size.ws_col > 0) {
        found.columns = std::clamp<std::size_t>(size.ws_col, narrowest, widest);
    }
    return found;
}

bool print(std::string_view text) {
    const bool written = std::fwrite(text.data(), 1, text.size(), stdout) == text.size();
    if (std::fflush(stdout) == 0 && written) {
        return true;
    }
    print_message({"unwritable",
                   Severity::error,
                   "standard output could not be written",
                   "",
                   "Make room where it goes, or send it elsewhere."});
    return false;
}

ProgressLine::ProgressLine(std::string what) : what_(std::move(what)) {}

ProgressLine::~ProgressLine() {
    if (shown_) {
        std::fputs("\r\033[K", stderr);
    }
}

void ProgressLine::show(int percent) {
    if (::isatty(STDERR_FILENO) == 0) {
        return;
    }
    shown_ = true;
    std::fprintf(stderr, "\r%s: %d %%", what_.c_str(), percent);
    std::fflush(stderr);
}

void print_message(const Diagnostic& diagnostic) {
    std::string line;
    if (diagnostic.severity == Severity::warning) {
        line = "warning: ";
    } else if (diagnostic.severity == Severity::note) {
        line = "note: ";
    }
    // What was found may hold the recipe's own letters, and those must not steer the terminal.
    line += output::printable(one_line(diagnostic)) + "\n";
    std::fputs(line.c_str(), stderr);
}

} // namespace loafwright::cli

// SPDX-License-Identifier: Apache-2.0
//
// The program: arguments in, one of the commands, exit status out. What escapes as an exception is
// a fault of ours and is said so in one line.
#include "engine/diagnostic/diagnostic.hpp"
#include "shell/cli/run.hpp"

#include <cstdio>
#include <exception>
#include <string>
#include <vector>

int main(int argc, char** argv) {
    try {
        const std::vector<std::string> words(argv + 1, argv + argc);
        return loafwright::cli::run(words, LOAFWRIGHT_VERSION);
    } catch (const std::exception& fault) {
        const loafwright::Diagnostic diagnostic{
            "internal",
            loafwright::Severity::error,
            std::string("something went wrong in the program itself: ") + fault.what(),
            "",
            "Tell us what you typed and this line."};
        std::fputs((loafwright::one_line(diagnostic) + "\n").c_str(), stderr);
        return loafwright::cli::exit_our_fault;
    }
}

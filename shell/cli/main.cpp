// SPDX-License-Identifier: Apache-2.0
//
// The light program: everything that answers in letters. It becomes the whole program, beside it,
// when a page is to be drawn or served: those libraries take longer to load than a page to plan.
#include "shell/cli/run.hpp"

#include <string>
#include <vector>

int main(int argc, char** argv) {
    const std::vector<std::string> words(argv + 1, argv + argc);
    return loafwright::cli::run(words, {LOAFWRIGHT_VERSION, nullptr});
}

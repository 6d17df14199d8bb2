// SPDX-License-Identifier: Apache-2.0
//
// The whole program: with fonts and drawing, the databases and the network.
#include "shell/cli/run.hpp"

#include <string>
#include <vector>

int main(int argc, char** argv) {
    const std::vector<std::string> words(argv + 1, argv + argc);
    const loafwright::cli::HeavyParts parts = loafwright::cli::heavy_parts();
    return loafwright::cli::run(words, {LOAFWRIGHT_VERSION, &parts});
}

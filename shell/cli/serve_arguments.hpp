// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/diagnostic/diagnostic.hpp"

#include <cstdint>
#include <string>

namespace CLI {
class App;
}

namespace loafwright::cli {

struct ServeArguments {
    std::string host = "127.0.0.1";
    std::uint16_t port = 8424;
    std::string data;  // empty: the usual folder
    std::string pages; // empty: where LOAFWRIGHT_PAGES says
    bool quiet = false;
    bool json = false;
};

/// Where CLI11 puts the words of the command's options.
struct ServeWords {
    std::string listen;
    std::string data;
    std::string pages;
    bool quiet = false;
};

/// Adds the options of `loafwright serve`; `words` must outlive the command.
void add_serve(CLI::App& command, ServeWords& words);

/// What the words ask for.
///
/// Errors, told in `found`: usage (--listen is no HOST:PORT).
ServeArguments serve_from(const ServeWords& words, Diagnostics& found);

} // namespace loafwright::cli

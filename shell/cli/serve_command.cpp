// SPDX-License-Identifier: Apache-2.0
//
// loafwright serve: finds the folder to keep things in and hands over to the server.
#include "shell/cli/serve_command.hpp"

#include "shell/cli/terminal.hpp"
#include "shell/server/serve.hpp"

#include <cstdlib>
#include <filesystem>

namespace loafwright::cli {

namespace {

std::string variable(const char* name) {
    const char* value = std::getenv(name);
    return value == nullptr ? std::string() : std::string(value);
}

// As the XDG base directory specification has it.
std::string usual_folder() {
    const std::string data = variable("XDG_DATA_HOME");
    if (!data.empty() && data.front() == '/') {
        return (std::filesystem::path(data) / "loafwright").string();
    }
    return (std::filesystem::path(variable("HOME")) / ".local" / "share" / "loafwright").string();
}

} // namespace

tl::expected<CommandAnswer, Diagnostics> serve_command(const ServeArguments& arguments) {
    const bool database = arguments.data.find("://") != std::string::npos;
    server::ServeOptions options;
    options.host = arguments.host;
    options.port = arguments.port;
    options.folder = arguments.data.empty() || database ? usual_folder() : arguments.data;
    options.data = arguments.data.empty() ? options.folder : arguments.data;
    options.pages = arguments.pages.empty() ? variable("LOAFWRIGHT_PAGES") : arguments.pages;
    options.log = !arguments.quiet;
    const auto fault = server::serve(options, [&arguments](const std::string& address) {
        print(arguments.json ? "{\"version\": 1, \"address\": \"" + address + "\"}\n"
                             : "Open " + address + "\n");
    });
    if (fault) {
        return tl::make_unexpected(Diagnostics{*fault});
    }
    return CommandAnswer{};
}

} // namespace loafwright::cli

// SPDX-License-Identifier: Apache-2.0
//
// The options of `loafwright serve`.
#include "shell/cli/serve_arguments.hpp"

#include <CLI/CLI.hpp>
#include <fmt/format.h>

#include <charconv>

namespace loafwright::cli {

void add_serve(CLI::App& command, ServeWords& words) {
    command.add_option("--listen", words.listen);
    command.add_option("--data", words.data);
    command.add_option("--pages", words.pages);
    command.add_flag("--quiet", words.quiet);
}

ServeArguments serve_from(const ServeWords& words, Diagnostics& found) {
    ServeArguments arguments;
    arguments.data = words.data;
    arguments.pages = words.pages;
    arguments.quiet = words.quiet;
    if (words.listen.empty()) {
        return arguments;
    }
    const std::size_t colon = words.listen.rfind(':');
    const std::string port = colon == std::string::npos ? "" : words.listen.substr(colon + 1);
    std::string host = words.listen.substr(0, colon);
    if (host.size() > 2 && host.front() == '[' && host.back() == ']') {
        host = host.substr(1, host.size() - 2);
    }
    const char* end = port.data() + port.size();
    const auto [stop, fault] = std::from_chars(port.data(), end, arguments.port);
    if (host.empty() || port.empty() || stop != end || fault != std::errc()) {
        found.push_back(
            {"usage",
             Severity::error,
             fmt::format("--listen was given '{}', expected HOST:PORT", words.listen),
             "",
             "Write it as in --listen 127.0.0.1:8424, or 0.0.0.0:8424 for the whole house."});
    }
    arguments.host = host;
    return arguments;
}

} // namespace loafwright::cli

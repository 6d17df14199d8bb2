// SPDX-License-Identifier: Apache-2.0
//
// Asks the program `units`, whose definitions were gathered by other people from other sources.
#include "tests/published/units_program.hpp"

#include <array>
#include <cstdio>
#include <cstdlib>

namespace loafwright::published {

namespace {

std::string output_of(const std::string& command) {
    std::string output;
    FILE* pipe = popen(command.c_str(), "r");
    if (pipe == nullptr) {
        return output;
    }
    std::array<char, 256> buffer{};
    while (std::fgets(buffer.data(), static_cast<int>(buffer.size()), pipe) != nullptr) {
        output += buffer.data();
    }
    pclose(pipe);
    return output;
}

} // namespace

bool units_is_installed() {
    return !output_of("command -v units").empty();
}

std::optional<double> units_says(const std::string& have, const std::string& want) {
    const std::string answer =
        output_of("LC_ALL=C units -t -o %.14g '" + have + "' '" + want + "' 2>&1");
    char* end = nullptr;
    const double value = std::strtod(answer.c_str(), &end);
    const bool whole_answer = end != answer.c_str() && (*end == '\n' || *end == '\0');
    return whole_answer ? std::optional<double>(value) : std::nullopt;
}

} // namespace loafwright::published

// SPDX-License-Identifier: Apache-2.0
//
// What is measured on: recipes of ours, as they are and repeated to a size.
#include "bench/texts.hpp"

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <iterator>
#include <utility>

namespace loafwright::bench {

namespace {

[[noreturn]] void give_up(const std::string& why) {
    std::fprintf(stderr, "%s\n", why.c_str());
    std::exit(2);
}

} // namespace

std::string file_in_repository(std::string_view path) {
    std::ifstream file(std::string(LOAFWRIGHT_ROOT) + "/" + std::string(path), std::ios::binary);
    std::string bytes((std::istreambuf_iterator<char>(file)), std::istreambuf_iterator<char>());
    if (bytes.empty()) {
        give_up(std::string(path) + ": could not be read");
    }
    return bytes;
}

std::string repeated_to(std::string_view text, std::size_t size) {
    std::string whole;
    std::size_t at = 0;
    while (true) {
        const std::size_t stop = std::min(text.find("\n\n", at), text.size());
        const std::string_view paragraph = text.substr(at, stop - at);
        if (whole.size() + paragraph.size() + 2 > size) {
            return whole;
        }
        whole += paragraph;
        whole += "\n\n";
        at = stop + 2 < text.size() ? stop + 2 : 0;
    }
}

CheckedText checked(std::string text) {
    auto answer = check_text(std::move(text), "benchmark");
    if (!answer) {
        give_up(one_line(answer.error().front()));
    }
    return std::move(*answer);
}

} // namespace loafwright::bench

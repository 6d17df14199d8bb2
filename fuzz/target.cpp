// SPDX-License-Identifier: Apache-2.0
//
// Any bytes as an address, a cookie and a list of encodings. No address leads out of the root.
#include "shell/server/target.hpp"

#include "fuzz/promise.hpp"

#include <string>
#include <string_view>

namespace loafwright::fuzz {
namespace {

void one_text(std::string_view text) {
    if (const auto target = server::target_of(text)) {
        for (const std::string& segment : target->segments) {
            promise(!segment.empty() && segment != "." && segment != "..", "a segment is a name");
            promise(segment.find_first_of(std::string("/\\\0", 3)) == std::string::npos,
                    "a segment holds no part of a path");
        }
    }
    server::cookie_of(text, "loafwright");
    server::accepts_gzip(text);
    server::host_name(text);
}

} // namespace
} // namespace loafwright::fuzz

int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    loafwright::fuzz::one_text(loafwright::fuzz::text_of(data, size));
    return 0;
}

// SPDX-License-Identifier: Apache-2.0
//
// A broken promise ends the program the way a crash does, so that libFuzzer keeps the input and the
// test of the corpus fails; what was promised stands on the last line of standard error.
#include "fuzz/promise.hpp"

#include <cstdio>
#include <cstdlib>
#include <string>

namespace loafwright::fuzz {

std::string_view text_of(const std::uint8_t* data, std::size_t size) {
    // An empty input may come without a place in memory.
    return size == 0 ? std::string_view()
                     : std::string_view(reinterpret_cast<const char*>(data), size);
}

void promise(bool kept, std::string_view what) {
    if (!kept) {
        std::fprintf(
            stderr, "promise not kept: %.*s\n", static_cast<int>(what.size()), what.data());
        std::abort();
    }
}

void promise_told(const Diagnostics& reasons) {
    promise(!reasons.empty(), "a refusal has reasons");
    for (const Diagnostic& reason : reasons) {
        promise(is_known_code(reason.code), "every code stands in the catalogue");
        promise(!reason.what.empty(), "a diagnostic says what was found");
        promise(!reason.do_this.empty(), "a diagnostic says what to do");
        promise(one_line(reason).find('\n') == std::string::npos, "a diagnostic is one line");
    }
}

bool is_between_characters(std::string_view text, std::size_t at) {
    // Bytes 10xxxxxx go on with a character (RFC 3629 section 3).
    return at == text.size() ||
           (at < text.size() && (static_cast<unsigned char>(text[at]) & 0xC0U) != 0x80U);
}

} // namespace loafwright::fuzz

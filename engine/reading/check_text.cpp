// SPDX-License-Identifier: Apache-2.0
//
// Is this text at all? Everything behind this door may rely on valid UTF-8 of bounded length
// without control bytes.
#include "engine/reading/read.hpp"

#include <fmt/format.h>
#include <utf8cpp/utf8/checked.h>

#include <algorithm>

namespace loafwright {
namespace {

std::size_t line_of(std::string_view text, std::size_t at) {
    return 1 + static_cast<std::size_t>(
                   std::count(text.begin(), text.begin() + static_cast<std::ptrdiff_t>(at), '\n'));
}

Diagnostics
one(std::string_view code, std::string what, std::string where, std::string_view do_this) {
    return {Diagnostic{std::string(code),
                       Severity::error,
                       std::move(what),
                       std::move(where),
                       std::string(do_this)}};
}

bool is_control(char c) {
    const auto byte = static_cast<unsigned char>(c);
    return byte < 0x09 || (byte > 0x0D && byte < 0x20) || byte == 0x7F;
}

} // namespace

tl::expected<CheckedText, Diagnostics> check_text(std::string text, std::string_view name) {
    if (text.size() > longest_text_bytes) {
        return tl::unexpected(
            one("text_too_long",
                fmt::format("the text is longer than {} KiB, the most that is read",
                            longest_text_bytes / 1024),
                std::string(name),
                "Give the pages of one recipe only."));
    }
    const auto control = std::find_if(text.begin(), text.end(), is_control);
    if (control != text.end()) {
        const auto at = static_cast<std::size_t>(control - text.begin());
        return tl::unexpected(one(
            "text_binary",
            fmt::format(
                "byte {} is 0x{:02x}, expected words", at, static_cast<unsigned char>(*control)),
            fmt::format("{}:{}", name, line_of(text, at)),
            "Give plain text or Markdown; other files have to be saved as text first."));
    }
    const auto bad = utf8::find_invalid(text.begin(), text.end());
    if (bad != text.end()) {
        const auto at = static_cast<std::size_t>(bad - text.begin());
        return tl::unexpected(one(
            "text_not_utf8",
            fmt::format("byte {} (0x{:02x}) is not UTF-8", at, static_cast<unsigned char>(*bad)),
            fmt::format("{}:{}", name, line_of(text, at)),
            "Save the file as UTF-8."));
    }
    const bool words = std::any_of(text.begin(), text.end(), [](char c) {
        const auto byte = static_cast<unsigned char>(c);
        return byte > 0x20 && byte != 0x7F;
    });
    if (!words) {
        return tl::unexpected(one("text_empty",
                                  "the text has no words",
                                  std::string(name),
                                  "Write or paste the recipe into it."));
    }
    return CheckedText(std::move(text));
}

} // namespace loafwright

// SPDX-License-Identifier: Apache-2.0
//
// A page passes as it is, tags and all: the reader steps over what it does not know.
#include "shell/paper/web_words.hpp"

#include <utf8cpp/utf8.h>

#include <algorithm>
#include <iterator>

namespace loafwright::paper {

tl::expected<intake::TakenIn, Diagnostics> words_of_page(std::string_view html) {
    intake::TakenIn taken;
    taken.kind = intake::Kind::html;
    utf8::replace_invalid(html.begin(), html.end(), std::back_inserter(taken.text));
    const auto is_steering = [](char c) {
        return (c >= 0 && c < ' ' && c != '\n' && c != '\t') || c == '\x7F';
    };
    taken.text.erase(std::remove_if(taken.text.begin(), taken.text.end(), is_steering),
                     taken.text.end());
    return taken;
}

} // namespace loafwright::paper

// SPDX-License-Identifier: Apache-2.0
//
// Any bytes as a web page. What is taken comes out as words with the promises of words_of; what is
// refused says why. Validity of UTF-8 is judged by utfcpp.
#include "shell/web_page/web_page.hpp"

#include "fuzz/promise.hpp"
#include "shell/web_page/lean_page.hpp"
#include "shell/web_page/plain.hpp"
#include "shell/web_page/tree.hpp"

#include <utf8cpp/utf8/checked.h>

#include <algorithm>
#include <string>
#include <string_view>
#include <vector>

namespace loafwright::fuzz {
namespace {

void promise_words(const web_page::RecipeWords& words) {
    const std::string& text = words.text;
    promise(!text.empty(), "there are words");
    promise(utf8::is_valid(text.begin(), text.end()), "words are UTF-8");
    promise(!web_page::has_markup(text), "words have no tags and no entities");
    promise(std::none_of(text.begin(),
                         text.end(),
                         [](char c) {
                             const auto byte = static_cast<unsigned char>(c);
                             return (byte < 0x20 && c != '\n') || byte == 0x7F;
                         }),
            "words have no control bytes");
    for (const auto& minutes : {words.times.prep, words.times.cook, words.times.total}) {
        promise(!minutes || minutes->count() >= 1, "a stated time is some time");
    }
}

// Gumbo is handed nothing that could cost it more than its length.
void promise_shallow(std::string_view page) {
    if (!utf8::is_valid(page.begin(), page.end())) {
        return;
    }
    const web_page::LeanPage lean = web_page::lean_page(page);
    const auto tree = web_page::Tree::of(lean.html);
    if (!tree) {
        return;
    }
    std::vector<std::size_t> depth(tree->nodes().size(), 0);
    for (std::size_t i = 1; i < depth.size(); ++i) {
        depth[i] = depth[tree->nodes()[i].parent] + 1;
        promise(depth[i] <= 3 * web_page::deepest_tags, "no page is deep");
    }
}

void one_page(std::string_view page) {
    promise_shallow(page);
    web_page::looks_like_html(page);
    const auto read = web_page::words_of(page);
    if (!read) {
        promise_told(read.error());
        return;
    }
    promise(!read->empty(), "there is a recipe");
    for (const web_page::RecipeWords& words : *read) {
        promise_words(words);
    }
}

} // namespace
} // namespace loafwright::fuzz

int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    loafwright::fuzz::one_page(loafwright::fuzz::text_of(data, size));
    return 0;
}

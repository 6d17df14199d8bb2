// SPDX-License-Identifier: Apache-2.0
#include "shell/web_page/charset.hpp"
#include "shell/web_page/tags.hpp"
#include "shell/web_page/web_page.hpp"

#include <algorithm>
#include <string>

namespace loafwright::web_page {
namespace {

// Comments of a licence or a tool may stand in front.
constexpr std::size_t looked_at = std::size_t{64} << 10U;

std::size_t behind_comments(std::string_view text) {
    std::size_t at = 0;
    while (at < text.size()) {
        if (is_html_space(text[at])) {
            ++at;
        } else if (text.substr(at, 4) == "<!--" || text.substr(at, 5) == "<?xml") {
            const std::string_view end = text[at + 1] == '!' ? "-->" : "?>";
            const std::size_t found = text.find(end, at);
            if (found == std::string_view::npos) {
                return text.size();
            }
            at = found + end.size();
        } else {
            break;
        }
    }
    return at;
}

} // namespace

bool looks_like_html(std::string_view bytes) {
    const auto text = utf8_of(bytes.substr(0, looked_at));
    if (!text) {
        return false;
    }
    const std::string_view begin = std::string_view(*text).substr(behind_comments(*text));
    if (is_same_name(begin.substr(0, 9), "<!doctype")) {
        return true;
    }
    if (begin.size() < 3 || begin[0] != '<' || !is_ascii_letter(begin[1])) {
        return false;
    }
    const Tag tag = tag_at(begin, 1);
    const KnownTag known = known_tag(small_letters(tag.name.substr(0, 32)));
    if (known.name == "html" || known.name == "head" || known.name == "body") {
        return true;
    }
    // A piece of a page begins with a tag and has one that ends; an address in angle brackets, or
    // a picture in front of a text, has none.
    const bool may_begin = tag.is_closed && !known.name.empty() && known.use != TagUse::nothing;
    const std::size_t end = begin.find("</");
    return may_begin && end != std::string_view::npos && end + 2 < begin.size() &&
           is_ascii_letter(begin[end + 2]);
}

} // namespace loafwright::web_page

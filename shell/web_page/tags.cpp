// SPDX-License-Identifier: Apache-2.0
#include "shell/web_page/tags.hpp"

#include <algorithm>
#include <array>
#include <utility>

namespace loafwright::web_page {
namespace {

using Row = std::pair<std::string_view, TagUse>;

// In byte order of the names. WHATWG HTML, chapter 4, and the elements of chapter 16 that old pages
// still have.
constexpr std::array rows{
    Row{"a", TagUse::link},
    Row{"address", TagUse::block},
    Row{"area", TagUse::nothing},
    Row{"article", TagUse::block},
    Row{"aside", TagUse::block},
    Row{"audio", TagUse::with_all},
    Row{"base", TagUse::nothing},
    Row{"blockquote", TagUse::block},
    Row{"body", TagUse::once},
    Row{"br", TagUse::lone},
    Row{"button", TagUse::with_all},
    Row{"canvas", TagUse::with_all},
    Row{"caption", TagUse::block},
    Row{"center", TagUse::block},
    Row{"col", TagUse::nothing},
    Row{"dd", TagUse::block},
    Row{"details", TagUse::block},
    Row{"dialog", TagUse::block},
    Row{"dir", TagUse::block},
    Row{"div", TagUse::block},
    Row{"dl", TagUse::block},
    Row{"dt", TagUse::block},
    Row{"embed", TagUse::nothing},
    Row{"fieldset", TagUse::block},
    Row{"figcaption", TagUse::block},
    Row{"figure", TagUse::block},
    Row{"footer", TagUse::block},
    Row{"form", TagUse::block},
    Row{"h1", TagUse::block},
    Row{"h2", TagUse::block},
    Row{"h3", TagUse::block},
    Row{"h4", TagUse::block},
    Row{"h5", TagUse::block},
    Row{"h6", TagUse::block},
    Row{"head", TagUse::once},
    Row{"header", TagUse::block},
    Row{"hgroup", TagUse::block},
    Row{"hr", TagUse::lone},
    Row{"html", TagUse::once},
    Row{"iframe", TagUse::raw},
    Row{"img", TagUse::nothing},
    Row{"input", TagUse::nothing},
    Row{"legend", TagUse::block},
    Row{"li", TagUse::block},
    Row{"link", TagUse::nothing},
    Row{"main", TagUse::block},
    Row{"math", TagUse::with_all},
    Row{"menu", TagUse::block},
    Row{"meta", TagUse::lone},
    Row{"nav", TagUse::block},
    Row{"noembed", TagUse::raw},
    Row{"noframes", TagUse::raw},
    Row{"noscript", TagUse::with_all},
    Row{"object", TagUse::with_all},
    Row{"ol", TagUse::block},
    Row{"p", TagUse::block},
    Row{"param", TagUse::nothing},
    Row{"picture", TagUse::inside},
    Row{"pre", TagUse::block},
    Row{"script", TagUse::script},
    Row{"search", TagUse::block},
    Row{"section", TagUse::block},
    Row{"select", TagUse::with_all},
    Row{"source", TagUse::nothing},
    Row{"style", TagUse::raw},
    Row{"summary", TagUse::block},
    Row{"svg", TagUse::with_all},
    Row{"table", TagUse::block},
    Row{"tbody", TagUse::block},
    Row{"td", TagUse::block},
    Row{"template", TagUse::with_all},
    Row{"textarea", TagUse::raw},
    Row{"tfoot", TagUse::block},
    Row{"th", TagUse::block},
    Row{"thead", TagUse::block},
    Row{"title", TagUse::title},
    Row{"tr", TagUse::block},
    Row{"track", TagUse::nothing},
    Row{"ul", TagUse::block},
    Row{"video", TagUse::with_all},
    Row{"wbr", TagUse::nothing},
    Row{"xmp", TagUse::raw},
};

char small(char c) {
    return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}

} // namespace

KnownTag known_tag(std::string_view name) {
    const auto* const row = std::lower_bound(
        rows.begin(), rows.end(), name, [](const Row& left, std::string_view right) {
            return left.first < right;
        });
    return row != rows.end() && row->first == name ? KnownTag{row->first, row->second} : KnownTag{};
}

bool is_html_space(char c) {
    return c == ' ' || c == '\n' || c == '\t' || c == '\r' || c == '\f';
}

bool is_ascii_letter(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

std::string small_letters(std::string_view text) {
    std::string made(text);
    std::transform(made.begin(), made.end(), made.begin(), small);
    return made;
}

bool is_same_name(std::string_view text, std::string_view small_name) {
    return text.size() == small_name.size() &&
           std::equal(text.begin(), text.end(), small_name.begin(), [](char a, char b) {
               return small(a) == b;
           });
}

Tag tag_at(std::string_view html, std::size_t at) {
    Tag tag;
    std::size_t i = at;
    while (i < html.size() && !is_html_space(html[i]) && html[i] != '/' && html[i] != '>') {
        ++i;
    }
    tag.name = html.substr(at, i - at);
    const std::size_t begin = i;
    // Section 13.2.5.32 and on: a quotation mark opens a value only behind "=".
    bool value_comes = false;
    while (i < html.size()) {
        const char c = html[i];
        if (c == '>') {
            tag.attributes = html.substr(begin, i - begin);
            tag.end = i + 1;
            tag.is_closed = true;
            return tag;
        }
        if (value_comes && (c == '"' || c == '\'')) {
            i = html.find(c, i + 1);
            if (i == std::string_view::npos) {
                break;
            }
            value_comes = false;
        } else if (!is_html_space(c)) {
            value_comes = c == '=';
        }
        ++i;
    }
    tag.attributes = html.substr(begin);
    tag.end = html.size();
    return tag;
}

bool Attributes::next() {
    while (at_ < text_.size() && (is_html_space(text_[at_]) || text_[at_] == '/')) {
        ++at_;
    }
    if (at_ >= text_.size()) {
        return false;
    }
    const std::size_t begin = at_;
    ++at_; // a name may begin with "="
    while (at_ < text_.size() && !is_html_space(text_[at_]) && text_[at_] != '/' &&
           text_[at_] != '=') {
        ++at_;
    }
    name_ = text_.substr(begin, at_ - begin);
    value_ = {};
    std::size_t i = at_;
    while (i < text_.size() && is_html_space(text_[i])) {
        ++i;
    }
    if (i >= text_.size() || text_[i] != '=') {
        return true;
    }
    ++i;
    while (i < text_.size() && is_html_space(text_[i])) {
        ++i;
    }
    if (i < text_.size() && (text_[i] == '"' || text_[i] == '\'')) {
        const std::size_t end = std::min(text_.find(text_[i], i + 1), text_.size());
        value_ = text_.substr(i + 1, end - i - 1);
        at_ = std::min(end + 1, text_.size());
        return true;
    }
    const std::size_t value = i;
    while (i < text_.size() && !is_html_space(text_[i])) {
        ++i;
    }
    value_ = text_.substr(value, i - value);
    at_ = i;
    return true;
}

} // namespace loafwright::web_page

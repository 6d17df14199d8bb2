// SPDX-License-Identifier: Apache-2.0
#include "shell/web_page/lean_page.hpp"

#include "shell/web_page/kept_attributes.hpp"
#include "shell/web_page/tags.hpp"

#include <algorithm>
#include <array>
#include <initializer_list>
#include <utility>

namespace loafwright::web_page {
namespace {

constexpr std::size_t longest_name = 32;

struct Open {
    std::string_view name;
    bool is_inside = false;
    std::size_t plain = 0; // elements of the same name in it that were left out
};

bool is_one_of(std::string_view name, std::initializer_list<std::string_view> names) {
    return std::find(names.begin(), names.end(), name) != names.end();
}

bool is_digit(char c) {
    return c >= '0' && c <= '9';
}

// "1<sup>1</sup>/<sub>2</sub>" is one and a half.
bool is_numerator(std::string_view html, std::size_t at) {
    const std::string_view ahead = html.substr(at, 48);
    std::size_t i = 0;
    while (i < ahead.size() && is_digit(ahead[i])) {
        ++i;
    }
    if (i == 0 || ahead.substr(i, 6) != "</sup>") {
        return false;
    }
    const std::string_view rest = ahead.substr(i + 6);
    constexpr std::array<std::string_view, 5> bars{
        "/", "\xE2\x81\x84", "&frasl;", "&#8260;", "&#x2044;"};
    return std::any_of(bars.begin(), bars.end(), [&](std::string_view bar) {
        return rest.substr(0, bar.size()) == bar;
    });
}

class Maker {
public:
    explicit Maker(std::string_view html) : html_(html) { page_.html.reserve(html.size() / 2); }

    LeanPage made() {
        while (at_ < html_.size()) {
            const std::size_t mark = std::min(html_.find('<', at_), html_.size());
            page_.html += html_.substr(at_, mark - at_);
            at_ = mark;
            if (at_ < html_.size()) {
                markup();
            }
        }
        close_down_to(0);
        return std::move(page_);
    }

private:
    // Section 13.2.5.6, what may follow "<".
    void markup() {
        const char c = at_ + 1 < html_.size() ? html_[at_ + 1] : '\0';
        if (is_ascii_letter(c)) {
            start_tag();
        } else if (c == '/' && at_ + 2 < html_.size() && is_ascii_letter(html_[at_ + 2])) {
            end_tag();
        } else if (html_.substr(at_, 4) == "<!--") {
            // "<!-->" is a whole comment.
            skip_behind("-->", at_ + 2);
        } else if (c == '!' || c == '?' || c == '/') {
            skip_behind(">", at_ + 1);
        } else {
            page_.html += "&lt;";
            ++at_;
        }
    }

    void skip_behind(std::string_view what, std::size_t from) {
        const std::size_t found = html_.find(what, from);
        at_ = found == std::string_view::npos ? html_.size() : found + what.size();
    }

    void start_tag() {
        const Tag tag = tag_at(html_, at_ + 1);
        at_ = tag.end;
        if (!tag.is_closed) {
            return;
        }
        name_ = small_letters(tag.name.substr(0, longest_name));
        const KnownTag known = known_tag(name_);
        switch (known.use) {
        case TagUse::inside:
        case TagUse::link:
            start_inside(known, tag.attributes);
            break;
        case TagUse::block:
            start_block(known.name, tag.attributes);
            break;
        case TagUse::once:
            if (!is_seen(known.name)) {
                write_tag(known.name, kept_attributes(tag.attributes, On::block));
            }
            break;
        case TagUse::lone: {
            const std::string attributes = kept_attributes(tag.attributes, On::block);
            if (known.name != "meta" || !attributes.empty()) {
                write_tag(known.name, attributes);
            }
            break;
        }
        case TagUse::nothing:
            break;
        case TagUse::with_all:
            drop_content(known.name, false);
            break;
        case TagUse::raw:
            drop_content(known.name, true);
            break;
        case TagUse::script:
            script(tag.attributes);
            break;
        case TagUse::title:
            title();
            break;
        }
    }

    bool is_seen(std::string_view name) {
        if (std::find(seen_.begin(), seen_.end(), name) != seen_.end()) {
            return true;
        }
        seen_.push_back(name);
        return false;
    }

    // The place of "</name" from here on, or the end of the page.
    std::size_t end_of(std::string_view name) const {
        std::size_t i = at_;
        while ((i = html_.find("</", i)) != std::string_view::npos) {
            i += 2;
            const std::size_t behind = i + name.size();
            if (is_same_name(html_.substr(i, name.size()), name) &&
                (behind >= html_.size() || is_html_space(html_[behind]) || html_[behind] == '/' ||
                 html_[behind] == '>')) {
                return i - 2;
            }
        }
        return html_.size();
    }

    std::string_view take_content(std::string_view name) {
        const std::size_t begin = at_;
        const std::size_t end = end_of(name);
        at_ = end;
        if (at_ < html_.size()) {
            skip_behind(">", at_);
        }
        return html_.substr(begin, end - begin);
    }

    void drop_content(std::string_view name, bool is_raw) {
        // Looked for once: an element that never ends would be looked for from each of its kind.
        if (std::find(endless_.begin(), endless_.end(), name) != endless_.end()) {
            return;
        }
        const std::size_t begin = at_;
        take_content(name);
        if (at_ >= html_.size() && !is_raw && end_is_missing(name)) {
            at_ = begin;
            endless_.push_back(name);
        }
    }

    // True when the page came to its end without "</name".
    [[nodiscard]] bool end_is_missing(std::string_view name) const {
        const std::size_t last = html_.rfind("</");
        return last == std::string_view::npos ||
               !is_same_name(html_.substr(last + 2, name.size()), name);
    }

    void script(std::string_view attributes) {
        bool is_data = false;
        for (Attributes each(attributes); each.next();) {
            if (is_same_name(each.name(), "type")) {
                const std::string type = small_letters(each.value().substr(0, 64));
                is_data = type.find("application/ld+json") != std::string::npos;
            }
        }
        const std::string_view content = take_content("script");
        if (is_data) {
            page_.data.emplace_back(content);
        }
    }

    void title() {
        std::string text(take_content("title"));
        if (!is_seen("title")) {
            page_.html += "<title>";
            page_.html += text;
            page_.html += "</title>";
        }
    }

    void start_inside(const KnownTag& known, std::string_view attributes) {
        if (name_ == "sup" && !page_.html.empty() && is_digit(page_.html.back()) &&
            is_numerator(html_, at_)) {
            page_.html += ' ';
        }
        std::string kept = kept_attributes(attributes, On::inside);
        if (known.use == TagUse::link) {
            kept += " href";
        }
        if (kept.empty() || open_.size() >= deepest_tags) {
            if (Open* const same = nearest_inside(name_)) {
                ++same->plain;
            }
            return;
        }
        write_tag("span", kept);
        names_.push_back(name_);
        open_.push_back({{}, true, 0});
    }

    Open* nearest_inside(std::string_view name) {
        std::size_t named = names_.size();
        for (std::size_t i = open_.size(); i > 0 && open_[i - 1].is_inside; --i) {
            if (names_[--named] == name) {
                return &open_[i - 1];
            }
        }
        return nullptr;
    }

    void start_block(std::string_view name, std::string_view attributes) {
        make_room_for(name);
        if (open_.size() >= deepest_tags) {
            page_.html += ' '; // words of two blocks do not run together
            return;
        }
        write_tag(name, kept_attributes(attributes, On::block));
        open_.push_back({name, false, 0});
    }

    // Section 13.1.2.4, which end tags may be left out.
    void make_room_for(std::string_view name) {
        close_last({"p"}, {});
        if (name == "li") {
            close_last({"li"}, {});
        } else if (is_one_of(name, {"dt", "dd"})) {
            close_last({"dt", "dd"}, {});
        } else if (is_one_of(name, {"td", "th"})) {
            close_last({"td", "th"}, {"tr", "table"});
        } else if (name == "tr") {
            close_last({"tr"}, {"table"});
        } else if (is_one_of(name, {"tbody", "thead", "tfoot"})) {
            close_last({"tbody", "thead", "tfoot"}, {"table"});
        }
    }

    // Closes the last open element of these names, which stands at the end but for elements inside
    // a line and paragraphs, or, when bounds are given, anywhere above one of the bounds.
    void close_last(std::initializer_list<std::string_view> names,
                    std::initializer_list<std::string_view> bounds) {
        for (std::size_t i = open_.size(); i > 0; --i) {
            const Open& open = open_[i - 1];
            if (!open.is_inside && is_one_of(open.name, names)) {
                close_down_to(i - 1);
                return;
            }
            const bool is_passed = open.is_inside || open.name == "p";
            if (bounds.size() == 0 ? !is_passed : is_one_of(open.name, bounds)) {
                return;
            }
        }
    }

    void end_tag() {
        const Tag tag = tag_at(html_, at_ + 2);
        at_ = tag.end;
        name_ = small_letters(tag.name.substr(0, longest_name));
        const KnownTag known = known_tag(name_);
        if (known.use == TagUse::inside || known.use == TagUse::link) {
            end_inside();
        } else if (known.use == TagUse::block) {
            end_block(known.name);
        } else if (known.name == "head" && !is_seen("/head")) {
            page_.html += "</head>";
        } else if (known.name == "br") {
            page_.html += "<br>"; // section 13.2.6.4.7, an end tag whose tag name is "br"
        }
    }

    void end_inside() {
        Open* const same = nearest_inside(name_);
        if (same == nullptr) {
            return;
        }
        if (same->plain > 0) {
            --same->plain;
            return;
        }
        close_down_to(static_cast<std::size_t>(same - open_.data()));
    }

    void end_block(std::string_view name) {
        const bool is_of_table =
            is_one_of(name, {"table", "caption", "tbody", "thead", "tfoot", "tr", "td", "th"});
        for (std::size_t i = open_.size(); i > 0; --i) {
            const Open& open = open_[i - 1];
            if (open.is_inside) {
                continue;
            }
            if (open.name == name) {
                close_down_to(i - 1);
                return;
            }
            const bool is_bound =
                is_of_table ? open.name == "table"
                            : is_one_of(open.name, {"table", "td", "th", "caption"}) ||
                                  (name == "li" && is_one_of(open.name, {"ul", "ol", "menu"})) ||
                                  name == "p";
            if (is_bound) {
                break;
            }
        }
        page_.html += ' ';
    }

    void close_down_to(std::size_t depth) {
        while (open_.size() > depth) {
            const bool is_inside = open_.back().is_inside;
            page_.html += "</";
            page_.html += is_inside ? "span" : open_.back().name;
            page_.html += '>';
            if (is_inside) {
                names_.pop_back();
            }
            open_.pop_back();
        }
    }

    void write_tag(std::string_view name, std::string_view attributes) {
        page_.html += '<';
        page_.html += name;
        page_.html += attributes;
        page_.html += '>';
    }

    std::string_view html_;
    std::size_t at_ = 0;
    std::string name_; // of the tag at hand, in small letters
    LeanPage page_;
    std::vector<Open> open_;
    std::vector<std::string> names_; // of the open elements inside lines
    std::vector<std::string_view> seen_;
    std::vector<std::string_view> endless_;
};

} // namespace

LeanPage lean_page(std::string_view html) {
    return Maker(html).made();
}

} // namespace loafwright::web_page

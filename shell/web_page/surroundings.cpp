// SPDX-License-Identifier: Apache-2.0
#include "shell/web_page/surroundings.hpp"

#include "shell/web_page/lines.hpp"
#include "shell/web_page/tags.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <string>

namespace loafwright::web_page {
namespace {

// Plain words that people call such parts of a page by; from memory, common practice.
constexpr std::array<std::string_view, 44> names{
    "ad",         "ads",        "advert",      "advertisement", "author",      "banner",
    "bio",        "breadcrumb", "breadcrumbs", "byline",        "comment",     "commentlist",
    "comments",   "consent",    "cookie",      "cookies",       "copyright",   "footer",
    "masthead",   "menu",       "modal",       "nav",           "navbar",      "navigation",
    "newsletter", "overlay",    "pager",       "pagination",    "popular",     "popup",
    "promo",      "promotion",  "rating",      "ratings",       "recommended", "related",
    "review",     "reviews",    "share",       "sharing",       "sidebar",     "social",
    "sponsored",  "subscribe"};

constexpr std::array<std::string_view, 7> roles{
    "banner", "complementary", "contentinfo", "dialog", "navigation", "search", "alertdialog"};

// Of schema.org.
constexpr std::array<std::string_view, 6> properties{
    "aggregateRating", "author", "comment", "nutrition", "publisher", "review"};

template <typename Names>
bool any_word(std::string_view text, const Names& wanted) {
    std::size_t i = 0;
    while (i < text.size()) {
        while (i < text.size() && !is_ascii_letter(text[i])) {
            ++i;
        }
        const std::size_t begin = i;
        while (i < text.size() && is_ascii_letter(text[i])) {
            ++i;
        }
        const std::string_view word = text.substr(begin, i - begin);
        if (std::any_of(wanted.begin(), wanted.end(), [&](std::string_view each) {
                return is_same_name(word, each);
            })) {
            return true;
        }
    }
    return false;
}

class Marker {
public:
    explicit Marker(const Tree& tree)
        : tree_(tree), nodes_(tree.nodes()), words_before_(nodes_.size() + 1, 0),
          items_before_(nodes_.size() + 1, 0) {
        std::size_t link_end = 0;
        for (std::size_t i = 0; i < nodes_.size(); ++i) {
            const Node& node = nodes_[i];
            if (node.element == Element::link) {
                link_end = std::max<std::size_t>(link_end, node.end);
            }
            const bool is_word = node.element == Element::text && i >= link_end;
            words_before_[i + 1] = words_before_[i] + (is_word ? node.text.size() : 0);
            items_before_[i + 1] = items_before_[i] + (node.element == Element::item ? 1U : 0U);
        }
    }

    std::vector<bool> marked() {
        std::vector<bool> marks(nodes_.size(), false);
        std::size_t inner_end = 0; // of the article or main part at hand
        for (std::size_t i = 0; i < nodes_.size();) {
            const Node& node = nodes_[i];
            const bool is_inner = i < inner_end;
            if (is_text_or_small(node.element)) {
                ++i;
            } else if (words_in(i) * 3 <= words_before_.back() && is_around(i, is_inner)) {
                marks[i] = true;
                i = node.end;
            } else {
                if (node.element == Element::article || node.element == Element::main) {
                    inner_end = std::max<std::size_t>(inner_end, node.end);
                }
                ++i;
            }
        }
        return marks;
    }

private:
    static bool is_text_or_small(Element element) {
        return element == Element::text || element == Element::br || element == Element::hr ||
               element == Element::meta || element == Element::title;
    }

    [[nodiscard]] std::size_t words_in(std::size_t i) const {
        return words_before_[nodes_[i].end] - words_before_[i];
    }

    [[nodiscard]] std::size_t items_in(std::size_t i) const {
        return items_before_[nodes_[i].end] - items_before_[i];
    }

    [[nodiscard]] bool has_heading(std::size_t at, int level) const {
        for (std::size_t i = at; i < nodes_[at].end; ++i) {
            if (nodes_[i].element == Element::heading && nodes_[i].level == level) {
                return true;
            }
        }
        return false;
    }

    [[nodiscard]] bool is_around(std::size_t i, bool is_inner) const {
        switch (nodes_[i].element) {
        case Element::nav:
        case Element::footer:
            return true;
        case Element::aside:
            // Beside the method of an article may stand its ingredients.
            return !is_inner || items_in(i) < 3 || words_in(i) < 20 * items_in(i) / 2;
        case Element::header:
            return !is_inner && !has_heading(i, 1);
        case Element::form:
            return items_in(i) < 3;
        default:
            break;
        }
        if (const auto role = tree_.attribute(i, "role")) {
            if (any_word(*role, roles)) {
                return true;
            }
        }
        for (const char* name : {"itemprop", "property"}) {
            if (const auto property = tree_.attribute(i, name)) {
                if (any_word(*property, properties)) {
                    return true;
                }
            }
        }
        for (const char* name : {"class", "id"}) {
            if (const auto called = tree_.attribute(i, name)) {
                if (any_word(called->substr(0, 512), names) && !has_heading(i, 1)) {
                    return true;
                }
            }
        }
        return false;
    }

    const Tree& tree_;
    const std::vector<Node>& nodes_;
    std::vector<std::size_t> words_before_; // bytes outside links before each node
    std::vector<std::size_t> items_before_;
};

} // namespace

std::vector<bool> surroundings(const Tree& tree) {
    return Marker(tree).marked();
}

bool heads_an_appendix(std::string_view heading) {
    constexpr std::array<std::string_view, 14> heads{"about the author",
                                                     "comment",
                                                     "leave a comment",
                                                     "leave a reply",
                                                     "more recipes",
                                                     "nutrition",
                                                     "rate this",
                                                     "reader",
                                                     "related",
                                                     "review",
                                                     "share this",
                                                     "what readers",
                                                     "you may also",
                                                     "you might also"};
    std::string words = small_letters(heading);
    words.erase(0, std::min(words.find_first_not_of("0123456789 ("), words.size()));
    return std::any_of(heads.begin(), heads.end(), [&](std::string_view head) {
        return words.compare(0, head.size(), head) == 0;
    });
}

} // namespace loafwright::web_page

// SPDX-License-Identifier: Apache-2.0
#include "shell/web_page/json_repair.hpp"

#include "shell/web_page/tags.hpp"

#include <algorithm>
#include <vector>

namespace loafwright::web_page {
namespace {

// Deeper than any data of a page, and shallow enough to be looked through at each bracket.
constexpr std::size_t deepest_repaired = 256;

bool is_hex(char c) {
    return (c >= '0' && c <= '9') || (c >= 'a' && c <= 'f') || (c >= 'A' && c <= 'F');
}

class Repairer {
public:
    Repairer(std::string_view text, Quotes quotes) : text_(text), quotes_(quotes) {
        made_.reserve(text.size() + 16);
    }

    std::string made() {
        while (at_ < text_.size() && open_.size() <= deepest_repaired) {
            const char c = text_[at_];
            if (c == '"') {
                before_value();
                string();
            } else if (c == '{' || c == '[') {
                before_value();
                open_.push_back(c == '{' ? '}' : ']');
                made_ += c;
                ++at_;
            } else if (c == '}' || c == ']') {
                close(c);
                ++at_;
            } else if (c == ',') {
                comma();
                ++at_;
            } else if (is_html_space(c)) {
                if (!made_.empty() && made_.back() != ' ') {
                    made_ += ' '; // never two, so that looking back is short
                }
                ++at_;
            } else if (is_comment()) {
                continue;
            } else if (open_.empty()) {
                ++at_; // what stands around the data: "//<![CDATA[", ";"
            } else {
                made_ += c;
                ++at_;
            }
        }
        drop_comma();
        while (!open_.empty()) {
            drop_comma();
            made_ += open_.back();
            open_.pop_back();
        }
        return values_ > 1 ? "[" + made_ + "]" : std::move(made_);
    }

private:
    [[nodiscard]] std::size_t last_letter() const {
        const std::size_t last = made_.find_last_not_of(' ');
        return last == std::string::npos ? made_.size() : last;
    }

    [[nodiscard]] char last() const {
        const std::size_t at = last_letter();
        return at < made_.size() ? made_[at] : '\0';
    }

    void before_value() {
        if (!open_.empty()) {
            // Two things with nothing between them.
            if (const char c = last(); c == '}' || c == ']') {
                made_ += ',';
            }
            return;
        }
        if (values_ > 0 && last() != ',') {
            made_ += ',';
        }
        ++values_;
    }

    void drop_comma() {
        if (last() == ',') {
            made_.erase(last_letter());
        }
    }

    void comma() {
        const char c = last();
        if (!open_.empty() && c != ',' && c != '[' && c != '{' && c != ':') {
            made_ += ',';
        }
    }

    void close(char bracket) {
        // One too many closes nothing; one that was forgotten is put in.
        if (std::find(open_.begin(), open_.end(), bracket) == open_.end()) {
            return;
        }
        drop_comma();
        while (true) {
            const char expected = open_.back();
            open_.pop_back();
            made_ += expected;
            if (expected == bracket) {
                return;
            }
        }
    }

    bool is_comment() {
        if (text_.substr(at_, 2) == "/*") {
            const std::size_t end = text_.find("*/", at_ + 2);
            at_ = end == std::string_view::npos ? text_.size() : end + 2;
            return true;
        }
        constexpr std::string_view opening = "<![CDATA[";
        if (text_.substr(at_, opening.size()) == opening) {
            at_ += opening.size();
            return true;
        }
        if (text_.substr(at_, 2) == "//" && text_.substr(at_ + 2, opening.size()) != opening) {
            at_ = std::min(text_.find('\n', at_), text_.size());
            return true;
        }
        return false;
    }

    [[nodiscard]] bool ends_string() const {
        if (quotes_ == Quotes::as_they_stand) {
            return true;
        }
        std::size_t i = at_ + 1;
        while (i < text_.size() && is_html_space(text_[i])) {
            ++i;
        }
        if (i >= text_.size() || text_[i] == ':' || text_[i] == '}' || text_[i] == ']') {
            return true;
        }
        if (text_[i] != ',') {
            return false;
        }
        ++i;
        while (i < text_.size() && is_html_space(text_[i])) {
            ++i;
        }
        return i >= text_.size() || std::string_view("\"{[}]").find(text_[i]) != std::string::npos;
    }

    void string() {
        made_ += '"';
        for (++at_; at_ < text_.size(); ++at_) {
            const char c = text_[at_];
            if (c == '"') {
                if (ends_string()) {
                    ++at_;
                    made_ += '"';
                    return;
                }
                made_ += "\\\"";
            } else if (c == '\\') {
                escape();
            } else if (c == '\n') {
                made_ += "\\n";
            } else if (static_cast<unsigned char>(c) < 0x20) {
                made_ += ' ';
            } else {
                made_ += c;
            }
        }
        made_ += '"';
    }

    [[nodiscard]] int code_at(std::size_t at) const {
        if (text_.substr(at, 2) != "\\u" || at + 6 > text_.size()) {
            return -1;
        }
        int code = 0;
        for (const char c : text_.substr(at + 2, 4)) {
            if (!is_hex(c)) {
                return -1;
            }
            code = code * 16 + (c <= '9' ? c - '0' : (c | 0x20) - 'a' + 10);
        }
        return code;
    }

    // RFC 8259, section 7.
    void escape() {
        if (const int code = code_at(at_); code >= 0) {
            const bool is_high = code >= 0xD800 && code <= 0xDBFF;
            const bool is_low = code >= 0xDC00 && code <= 0xDFFF;
            const int next = is_high ? code_at(at_ + 6) : -1;
            if (is_high && next >= 0xDC00 && next <= 0xDFFF) {
                made_ += text_.substr(at_, 12);
                at_ += 11;
            } else {
                made_ += is_high || is_low ? std::string_view(" ") : text_.substr(at_, 6);
                at_ += 5;
            }
            return;
        }
        const char next = at_ + 1 < text_.size() ? text_[at_ + 1] : '\0';
        if (std::string_view("\"\\/bfnrt").find(next) != std::string_view::npos && next != '\0') {
            made_ += '\\';
            made_ += next;
            ++at_;
        }
        // Before anything else a backslash means nothing.
    }

    std::string_view text_;
    Quotes quotes_;
    std::size_t at_ = 0;
    std::size_t values_ = 0;
    std::string made_;
    std::vector<char> open_;
};

} // namespace

std::string repaired_json(std::string_view text, Quotes quotes) {
    return Repairer(text, quotes).made();
}

std::size_t json_depth(std::string_view text) {
    std::size_t depth = 0;
    std::size_t deepest = 0;
    bool in_string = false;
    for (std::size_t i = 0; i < text.size(); ++i) {
        const char c = text[i];
        if (in_string) {
            i += c == '\\' ? 1U : 0U; // what is escaped ends no string
            in_string = c != '"';
        } else if (c == '"') {
            in_string = true;
        } else if (c == '[' || c == '{') {
            deepest = std::max(deepest, ++depth);
        } else if ((c == ']' || c == '}') && depth > 0) {
            --depth;
        }
    }
    return deepest;
}

} // namespace loafwright::web_page

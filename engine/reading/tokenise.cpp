// SPDX-License-Identifier: Apache-2.0
//
// Text to tokens in one pass over the bytes. Whatever scanners and typesetters do to a plain word
// is undone here, so that no later file knows about it: typographic quotes and dashes, fraction
// glyphs, the fraction slash, no-break and thin spaces, words broken at the end of a line. Spans
// always point into the text as it came.
#include "engine/reading/look_alike.hpp"
#include "engine/reading/number.hpp"
#include "engine/reading/token.hpp"

#include <utf8cpp/utf8/unchecked.h>

#include <array>
#include <cstdint>

namespace loafwright::reading {
namespace {

struct FractionGlyph {
    char32_t glyph;
    double value;
};

// Unicode, Number Forms and Latin-1 Supplement.
constexpr std::array<FractionGlyph, 19> fraction_glyphs = {{{0x00BC, 0.25},
                                                            {0x00BD, 0.5},
                                                            {0x00BE, 0.75},
                                                            {0x2150, 1.0 / 7},
                                                            {0x2151, 1.0 / 9},
                                                            {0x2152, 0.1},
                                                            {0x2153, 1.0 / 3},
                                                            {0x2154, 2.0 / 3},
                                                            {0x2155, 0.2},
                                                            {0x2156, 0.4},
                                                            {0x2157, 0.6},
                                                            {0x2158, 0.8},
                                                            {0x2159, 1.0 / 6},
                                                            {0x215A, 5.0 / 6},
                                                            {0x215B, 0.125},
                                                            {0x215C, 0.375},
                                                            {0x215D, 0.625},
                                                            {0x215E, 0.875},
                                                            {0x2189, 0.0}}};

bool is_digit(char32_t c) {
    return c >= '0' && c <= '9';
}
bool is_ascii_letter(char32_t c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}
bool is_capital(char32_t c) {
    return (c >= 'A' && c <= 'Z') || (c >= 0xC0 && c <= 0xDE && c != 0xD7);
}

// Letters of the scripts that a recipe may hold; good enough to keep foreign words whole.
bool is_letter(char32_t c) {
    return is_ascii_letter(c) || (c >= 0xC0 && c <= 0x24F && c != 0xD7 && c != 0xF7) ||
           (c >= 0x370 && c <= 0x1FFF) || (c >= 0x2C00 && c <= 0xD7FF && c != 0x3000) ||
           (c >= 0xF900 && c <= 0xFDFF) || (c >= 0x20000 && c <= 0x3FFFF);
}

bool is_blank(char32_t c) {
    return c == ' ' || c == '\t' || c == '\r' || c == '\f' || c == '\v' || c == 0xA0 ||
           (c >= 0x2000 && c <= 0x200F) || c == 0x202F || c == 0x205F || c == 0x2060 ||
           c == 0x3000 || c == 0xFEFF || (c >= 0x202A && c <= 0x202E) ||
           (c >= 0x2066 && c <= 0x2069) || c == 0xFE0F || c == 0xAD;
}

const FractionGlyph* fraction_glyph(char32_t c) {
    for (const FractionGlyph& row : fraction_glyphs) {
        if (row.glyph == c) {
            return &row;
        }
    }
    return nullptr;
}

char32_t plain(char32_t c) {
    switch (c) {
    case 0x2010:
    case 0x2011:
        return '-';
    case 0x2018:
    case 0x2019:
    case 0x02BC:
        return '\'';
    case 0x201C:
    case 0x201D:
    case 0x201E:
    case 0x00AB:
    case 0x00BB:
        return '"';
    case 0x2012:
    case 0x2013:
    case 0x2014:
    case 0x2015:
    case 0x2212:
        return 0x2013; // any long dash
    case 0x2044:
    case 0x2215:
        return '/';
    case 0x00BA:
    case 0x02DA:
        return 0x00B0; // degree
    default:
        return c;
    }
}

char32_t lower(char32_t c) {
    if (c >= 'A' && c <= 'Z') {
        return c + 32;
    }
    if (c >= 0xC0 && c <= 0xDE && c != 0xD7) {
        return c + 32;
    }
    return c;
}

class Tokeniser {
public:
    explicit Tokeniser(std::string_view text) : text_(text) {}

    std::vector<Token> run() {
        tokens_.reserve(text_.size() / 5 + 8);
        while (at_ < text_.size()) {
            const char32_t c = plain(peek(at_));
            if (c == '\n') {
                at_ += 1;
                new_line_ = true;
                glued_ = false;
            } else if (is_blank(c)) {
                at_ += length(at_);
                glued_ = false;
            } else if ((may_be_look_alike(c) && take_look_alike()) || (c == '0' && take_ounce())) {
                continue; // it has been taken
            } else if (is_digit(c)) {
                number();
            } else if (const FractionGlyph* glyph = fraction_glyph(c); glyph != nullptr) {
                const std::size_t begin = at_;
                at_ += length(at_);
                push(TokenKind::number, begin).value = glyph->value;
                tokens_.back().fraction = true;
            } else if (is_letter(c)) {
                word();
            } else {
                mark(c);
            }
        }
        return std::move(tokens_);
    }

private:
    [[nodiscard]] char32_t peek(std::size_t at) const {
        const auto byte = static_cast<unsigned char>(text_[at]);
        if (byte < 0x80) {
            return byte;
        }
        return static_cast<char32_t>(
            utf8::unchecked::peek_next(text_.begin() + static_cast<std::ptrdiff_t>(at)));
    }

    [[nodiscard]] std::size_t length(std::size_t at) const {
        const auto byte = static_cast<unsigned char>(text_[at]);
        return byte < 0x80 ? 1U : byte < 0xE0 ? 2U : byte < 0xF0 ? 3U : 4U;
    }

    [[nodiscard]] bool digit_at(std::size_t at) const {
        return at < text_.size() && is_digit(peek(at));
    }

    Token& push(TokenKind kind, std::size_t begin) {
        Token token;
        token.kind = kind;
        token.span = Span{begin, at_};
        token.glued = glued_;
        token.first_on_line = new_line_;
        tokens_.push_back(std::move(token));
        glued_ = true;
        new_line_ = false;
        return tokens_.back();
    }

    [[nodiscard]] bool may_be_look_alike(char32_t c) const {
        const bool alone = tokens_.empty() || !glued_ || tokens_.back().kind == TokenKind::mark;
        return alone && (is_digit(c) || c == 'l' || c == 'I' || c == '|' || c == 'O' || c == 'S' ||
                         c == '%');
    }

    // "11fl 0z", "2 0z": an ounce.
    bool take_ounce() {
        if (tokens_.empty() || text_.substr(at_, 2) != "0z" ||
            (tokens_.back().kind != TokenKind::number && tokens_.back().text != "fl") ||
            (at_ + 2 < text_.size() && is_letter(peek(at_ + 2)))) {
            return false;
        }
        const std::size_t begin = at_;
        at_ += 2;
        push(TokenKind::word, begin).text = "oz";
        return true;
    }

    bool take_look_alike() {
        const bool opens = new_line_ || (!tokens_.empty() && tokens_.back().first_on_line &&
                                         tokens_.back().kind == TokenKind::mark);
        const auto found = look_alike(text_, at_, opens);
        if (!found) {
            return false;
        }
        const auto meant = one_number(found->figures);
        if (!meant) {
            return false;
        }
        const std::size_t begin = at_;
        at_ = found->end;
        Token& token = push(TokenKind::number, begin);
        token.value = meant->value;
        token.fraction = meant->fraction;
        token.text = found->figures;
        token.look_alike = true;
        if (!found->unit.empty()) {
            const std::size_t unit = at_;
            at_ = found->unit_end;
            push(TokenKind::word, unit).text = found->unit;
        }
        return true;
    }

    // 12, 1.5, 0,5, 1,000, 3/4. A comma before exactly three digits groups thousands unless the
    // number begins with 0.
    void number() {
        const std::size_t begin = at_;
        double value = 0.0;
        std::size_t digits = 0;
        const auto whole = [&] {
            while (digit_at(at_)) {
                if (digits < 15) {
                    value = value * 10 + static_cast<double>(text_[at_] - '0');
                }
                ++digits;
                ++at_;
            }
        };
        whole();
        const bool leading_zero = text_[begin] == '0';
        while (at_ < text_.size() && text_[at_] == ',' && !leading_zero && digits <= 3 &&
               digit_at(at_ + 1) && digit_at(at_ + 2) && digit_at(at_ + 3) && !digit_at(at_ + 4)) {
            ++at_;
            digits = 0;
            whole();
        }
        if (at_ + 1 < text_.size() && (text_[at_] == '.' || text_[at_] == ',') &&
            digit_at(at_ + 1)) {
            ++at_;
            double place = 0.1;
            while (digit_at(at_)) {
                value += place * static_cast<double>(text_[at_] - '0');
                place /= 10;
                ++at_;
            }
        }
        bool fraction = false;
        if (at_ < text_.size()) {
            const std::size_t slash = at_;
            const bool is_slash = plain(peek(at_)) == '/';
            const std::size_t after = slash + length(slash);
            if (is_slash && digit_at(after)) {
                fraction = denominator(after, value);
            }
        }
        Token& token = push(TokenKind::number, begin);
        token.value = value;
        token.fraction = fraction;
        token.text = std::string(text_.substr(begin, at_ - begin));
    }

    // "/4" after a number makes a fraction when it reads like one: a small denominator, not a
    // temperature or a gram pair.
    bool denominator(std::size_t after, double& value) {
        std::size_t end = after;
        double below = 0.0;
        while (digit_at(end) && end - after < 3) {
            below = below * 10 + static_cast<double>(text_[end] - '0');
            ++end;
        }
        if (digit_at(end) || below < 2 || below > 32 || value > 32) {
            return false;
        }
        at_ = end;
        // "11/2" is 1 1/2 whose gap a printer or scanner lost.
        const double units = value - 10.0 * static_cast<double>(static_cast<int>(value / 10.0));
        const bool lost_gap = value >= 11.0 && value < 100.0 && units >= 1.0 && units < below &&
                              (below == 2.0 || below == 3.0 || below == 4.0 || below == 8.0);
        value = lost_gap ? (value - units) / 10.0 + units / below : value / below;
        return true;
    }

    void word() {
        const std::size_t begin = at_;
        std::string out;
        std::size_t letters = 0;
        std::size_t capitals = 0;
        const bool capital = is_capital(peek(at_));
        while (at_ < text_.size()) {
            const char32_t c = plain(peek(at_));
            if (is_letter(c)) {
                ++letters;
                capitals += is_capital(c) ? 1U : 0U;
                append(out, lower(c));
                at_ += length(at_);
            } else if (c == '\'' && at_ + length(at_) < text_.size() &&
                       is_letter(peek(at_ + length(at_)))) {
                out += '\'';
                at_ += length(at_);
            } else if (c == '&' && letters == 1 && at_ + 1 < text_.size() &&
                       is_ascii_letter(peek(at_ + 1)) &&
                       (at_ + 2 >= text_.size() || !is_letter(peek(at_ + 2)))) {
                out += '&'; // a baker's "S&F"
                ++at_;
            } else if (c == 0xAD) {
                at_ += length(at_);
            } else if (c == '-' && broken_at_line_end() && !is_number_word(out) && out != "well") {
                at_ = after_line_end();
            } else {
                break;
            }
        }
        // A possessive tells nothing more than its noun.
        if (out.size() > 2 && out.compare(out.size() - 2, 2, "'s") == 0) {
            out.resize(out.size() - 2);
        }
        Token& token = push(TokenKind::word, begin);
        token.may_be_number = is_number_word(out);
        token.text = std::move(out);
        token.capital = capital;
        token.all_capitals = letters >= 2 && capitals == letters;
        token.hyphenated = hyphen_before_;
        hyphen_before_ = false;
        if (at_ + 1 < text_.size() && plain(peek(at_)) == '-') {
            const std::size_t next = broken_at_line_end() ? after_line_end() : at_ + length(at_);
            if (next < text_.size() && is_letter(peek(next))) {
                at_ = next;
                hyphen_before_ = true;
            }
        }
    }

    // "knead-" at the end of a line and a small letter at the start of the next: one word broken in
    // two.
    [[nodiscard]] bool broken_at_line_end() const {
        const std::size_t next = after_line_end();
        return next != at_ && next < text_.size() && is_letter(peek(next)) &&
               !is_capital(peek(next));
    }

    [[nodiscard]] std::size_t after_line_end() const {
        std::size_t at = at_ + length(at_);
        while (at < text_.size() && (text_[at] == ' ' || text_[at] == '\r')) {
            ++at;
        }
        if (at >= text_.size() || text_[at] != '\n') {
            return at_;
        }
        ++at;
        while (at < text_.size() && (text_[at] == ' ' || text_[at] == '\t')) {
            ++at;
        }
        return at;
    }

    void mark(char32_t c) {
        const std::size_t begin = at_;
        at_ += length(at_);
        std::string out;
        if (c == '-' && at_ < text_.size() && text_[at_] == '-') { // "--" is a dash
            while (at_ < text_.size() && text_[at_] == '-') {
                ++at_;
            }
            out = "\xE2\x80\x93";
        } else {
            append(out, c);
        }
        push(TokenKind::mark, begin).text = std::move(out);
    }

    static void append(std::string& out, char32_t c) {
        if (c < 0x80) {
            out += static_cast<char>(c);
        } else {
            utf8::unchecked::append(static_cast<std::uint32_t>(c), std::back_inserter(out));
        }
    }

    std::string_view text_;
    std::size_t at_ = 0;
    bool glued_ = false;
    bool new_line_ = true;
    bool hyphen_before_ = false;
    std::vector<Token> tokens_;
};

} // namespace

std::vector<Token> tokenise(std::string_view text) {
    return Tokeniser(text).run();
}

Span span_of(const std::vector<Token>& tokens, TokenRange range) {
    if (range.empty() || range.begin >= tokens.size()) {
        return Span{};
    }
    return Span{tokens[range.begin].span.begin, tokens[range.end - 1].span.end};
}

std::string tidy(std::string_view text, Span span) {
    std::string out;
    out.reserve(span.end - span.begin);
    bool blank = false;
    for (std::size_t at = span.begin; at < span.end && at < text.size(); ++at) {
        const char c = text[at];
        if (c == ' ' || c == '\n' || c == '\t' || c == '\r') {
            blank = !out.empty();
            continue;
        }
        if (c == '*' && at + 1 < span.end && at + 1 < text.size() && text[at + 1] == '*') {
            ++at; // bold type is no word
            continue;
        }
        if (blank) {
            out += ' ';
            blank = false;
        }
        out += c;
    }
    return out;
}

} // namespace loafwright::reading

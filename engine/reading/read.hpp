// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/diagnostic/diagnostic.hpp"
#include "engine/knowledge/knowledge.hpp"
#include "engine/reading/doubt.hpp"
#include "engine/recipe/recipe.hpp"

#include <tl/expected.hpp>

#include <memory>
#include <string>
#include <string_view>
#include <vector>

namespace loafwright {

/// The longest text that is read: one mebibyte.
inline constexpr std::size_t longest_text_bytes = std::size_t{1} << 20U;

/// Text that can be read: valid UTF-8, not empty, no NUL bytes, not too long. Made only by
/// check_text.
class CheckedText {
public:
    [[nodiscard]] std::string_view view() const { return text_; }

private:
    explicit CheckedText(std::string text) : text_(std::move(text)) {}
    friend tl::expected<CheckedText, Diagnostics> check_text(std::string text,
                                                             std::string_view name);

    std::string text_;
};

/// Takes the text if it can be read at all.
///
/// Errors: text_empty, text_too_long, text_binary (control bytes), text_not_utf8; `where` is
/// "name:line".
tl::expected<CheckedText, Diagnostics> check_text(std::string text, std::string_view name);

/// A reader with its lexicon built, for reading many texts.
///
/// Needs:    `knowledge` outlives the Reader.
/// Promises: `read` changes nothing, so one Reader may serve many texts.
class Reader {
public:
    explicit Reader(const Knowledge& knowledge);
    Reader(const Reader&) = delete;
    Reader& operator=(const Reader&) = delete;
    ~Reader();

    /// As the free function below.
    [[nodiscard]] Reading read(const CheckedText& text,
                               const Answers& answers = {},
                               const std::vector<OpenDoubt>& doubts = {}) const;

private:
    struct Tables;
    std::unique_ptr<const Tables> tables_;
};

/// Reads a bread recipe as a careful baker would.
///
/// Promises: never fails; the spans of steps, ingredients, title and unread phrases together cover
/// every phrase; what was guessed is marked
///           (basis) or asked (questions), and so are the words in doubt on which something hangs;
///           an answer whose key is not asked yields a remark.
/// Never:    reads a clock or a file, throws on input; takes time that grows faster than the text.
Reading read(const CheckedText& text,
             const Knowledge& knowledge,
             const Answers& answers = {},
             const std::vector<OpenDoubt>& doubts = {});

} // namespace loafwright

// SPDX-License-Identifier: Apache-2.0
//
// "Did you mean …": the optimal string alignment distance (insert, delete, replace, swap two
// neighbours), row by row. It is quadratic in the length of the words, so words longer than any key
// or zone name are never compared.
#include "shell/settings/suggest.hpp"

#include <algorithm>

namespace loafwright::settings {

namespace {

constexpr std::size_t longest_compared = 64;

char lower(char c) {
    return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}

bool starts_with_word(std::string_view candidate, std::string_view word) {
    return candidate.size() > word.size() &&
           std::equal(word.begin(), word.end(), candidate.begin(), [](char a, char b) {
               return lower(a) == lower(b);
           });
}

} // namespace

std::size_t letters_apart(std::string_view left, std::string_view right) {
    std::vector<std::size_t> before_last(right.size() + 1);
    std::vector<std::size_t> last(right.size() + 1);
    std::vector<std::size_t> row(right.size() + 1);
    for (std::size_t j = 0; j <= right.size(); ++j) {
        last[j] = j;
    }
    for (std::size_t i = 1; i <= left.size(); ++i) {
        row[0] = i;
        for (std::size_t j = 1; j <= right.size(); ++j) {
            const bool same = lower(left[i - 1]) == lower(right[j - 1]);
            row[j] = std::min({last[j] + 1, row[j - 1] + 1, last[j - 1] + (same ? 0u : 1u)});
            if (i > 1 && j > 1 && lower(left[i - 1]) == lower(right[j - 2]) &&
                lower(left[i - 2]) == lower(right[j - 1])) {
                row[j] = std::min(row[j], before_last[j - 2] + 1);
            }
        }
        before_last.swap(last);
        last.swap(row);
    }
    return last[right.size()];
}

std::optional<std::string> nearest(std::string_view word,
                                   const std::vector<std::string>& candidates) {
    if (word.empty() || word.size() > longest_compared) {
        return std::nullopt;
    }
    const std::string* best = nullptr;
    std::size_t best_apart = 0;
    for (const std::string& candidate : candidates) {
        if (candidate.size() > longest_compared) {
            continue;
        }
        const bool goes_on = word.size() >= 3 && starts_with_word(candidate, word);
        const std::size_t apart = goes_on ? 1 : letters_apart(word, candidate);
        const std::size_t allowed =
            std::max<std::size_t>(1, std::max(word.size(), candidate.size()) / 3);
        if (apart <= allowed && apart < candidate.size() &&
            (best == nullptr || apart < best_apart)) {
            best = &candidate;
            best_apart = apart;
        }
    }
    return best == nullptr ? std::nullopt : std::optional<std::string>(*best);
}

std::string in_quotes(std::string_view text) {
    constexpr std::size_t longest_shown = 40;
    std::string shown = "\"";
    std::size_t end = text.size();
    if (end > longest_shown) {
        end = longest_shown;
        // 10xxxxxx bytes go on with the character before them.
        while (end > 0 && (static_cast<unsigned char>(text[end]) & 0xC0u) == 0x80u) {
            --end;
        }
    }
    for (const char c : text.substr(0, end)) {
        const auto byte = static_cast<unsigned char>(c);
        shown += byte < 0x20u || byte == 0x7Fu ? ' ' : c;
    }
    shown += end < text.size() ? "…\"" : "\"";
    return shown;
}

} // namespace loafwright::settings

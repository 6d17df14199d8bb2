// SPDX-License-Identifier: Apache-2.0
//
// Finding the signs in what a baker tells. Whole words are compared, in small letters; the longest
// phrase at a place wins, so that "hollow under the crust" is not also a crust.

#include "engine/knowledge/knowledge.hpp"

#include <algorithm>
#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace loafwright {
namespace {

// Small letters and digits one blank apart, with a blank at both ends.
std::string plain_words(std::string_view text) {
    std::string plain = " ";
    for (const char c : text) {
        const bool capital = c >= 'A' && c <= 'Z';
        const bool letter = capital || (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') ||
                            static_cast<unsigned char>(c) >= 0x80U;
        if (letter) {
            plain += capital ? static_cast<char>(c - 'A' + 'a') : c;
        } else if (plain.back() != ' ') {
            plain += ' ';
        }
    }
    if (plain.back() != ' ') {
        plain += ' ';
    }
    return plain;
}

struct Found {
    std::size_t begin = 0;
    std::size_t length = 0;
    const FaultSymptomRow* row = nullptr;
};

void find_all(const std::string& text,
              std::string_view phrase,
              const FaultSymptomRow& row,
              std::vector<Found>& found) {
    const std::string wanted = plain_words(phrase);
    if (wanted.size() < 3) {
        return;
    }
    for (std::size_t at = text.find(wanted); at != std::string::npos;
         at = text.find(wanted, at + 1)) {
        found.push_back({at, wanted.size(), &row});
    }
}

} // namespace

std::vector<const FaultSymptomRow*> symptoms_in(const Knowledge& knowledge, std::string_view text) {
    const std::string plain = plain_words(text);
    std::vector<Found> found;
    for (const FaultSymptomRow& row : knowledge.fault_symptoms) {
        find_all(plain, row.key, row, found);
        find_all(plain, row.tells, row, found);
        for (const std::string_view phrase : row.says) {
            find_all(plain, phrase, row, found);
        }
    }
    std::stable_sort(found.begin(), found.end(), [](const Found& a, const Found& b) {
        return a.length > b.length;
    });
    std::vector<Found> taken;
    for (const Found& one : found) {
        // The blank between two phrases belongs to both.
        const bool overlaps = std::any_of(taken.begin(), taken.end(), [&one](const Found& other) {
            return one.begin + 1 < other.begin + other.length &&
                   other.begin + 1 < one.begin + one.length;
        });
        if (!overlaps) {
            taken.push_back(one);
        }
    }
    std::vector<const FaultSymptomRow*> rows;
    for (const FaultSymptomRow& row : knowledge.fault_symptoms) {
        const bool told = std::any_of(
            taken.begin(), taken.end(), [&row](const Found& one) { return one.row == &row; });
        if (told) {
            rows.push_back(&row);
        }
    }
    return rows;
}

const FaultSymptomRow* symptom_named(const Knowledge& knowledge, std::string_view key) {
    for (const FaultSymptomRow& row : knowledge.fault_symptoms) {
        if (row.key == key) {
            return &row;
        }
    }
    return nullptr;
}

} // namespace loafwright

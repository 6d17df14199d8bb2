// SPDX-License-Identifier: Apache-2.0
#include "engine/quantity/phrase.hpp"

namespace loafwright {

namespace {

void add_words(Phrase& phrase, std::string_view words) {
    if (words.empty()) {
        return;
    }
    if (!phrase.parts.empty()) {
        if (auto* last = std::get_if<std::string>(&phrase.parts.back())) {
            *last += words;
            return;
        }
    }
    phrase.parts.emplace_back(std::string(words));
}

void add_part(Phrase& phrase, const Phrase::Part& part) {
    if (const auto* words = std::get_if<std::string>(&part)) {
        add_words(phrase, *words);
    } else {
        phrase.parts.push_back(part);
    }
}

} // namespace

Phrase phrase(std::string_view pattern, std::initializer_list<Phrase::Part> parts) {
    constexpr std::string_view place = "{}";
    Phrase made;
    const auto* next = parts.begin();
    for (std::size_t at = pattern.find(place); at != std::string_view::npos;
         at = pattern.find(place)) {
        add_words(made, pattern.substr(0, at));
        if (next != parts.end()) {
            add_part(made, *next++);
        }
        pattern.remove_prefix(at + place.size());
    }
    add_words(made, pattern);
    return made;
}

Phrase& operator+=(Phrase& phrase, const Phrase& more) {
    const std::vector<Phrase::Part> parts = more.parts; // a phrase may be put behind itself
    for (const Phrase::Part& part : parts) {
        add_part(phrase, part);
    }
    return phrase;
}

Phrase with_capital(Phrase phrase) {
    if (!phrase.parts.empty()) {
        auto* first = std::get_if<std::string>(&phrase.parts.front());
        if (first != nullptr && !first->empty() && first->front() >= 'a' && first->front() <= 'z') {
            first->front() = static_cast<char>(first->front() - 'a' + 'A');
        }
    }
    return phrase;
}

} // namespace loafwright

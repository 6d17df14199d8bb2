// SPDX-License-Identifier: Apache-2.0
//
// Any bytes as words for a time, and as RFC 3339. What is understood comes back from its written
// form; blanks around the words and the case of letters change nothing; what is not understood is
// told with reasons.
#include "engine/quantity/time.hpp"

#include "fuzz/promise.hpp"
#include "fuzz/zones.hpp"
#include "shell/settings/settings.hpp"

#include <string>
#include <string_view>

namespace loafwright::fuzz {
namespace {

// RFC 3339 writes four digits of a year, so an offset at either end of the calendar cannot be
// written.
bool can_be_written(const Zone& zone, Instant instant) {
    const int year = civil_of(zone, instant).date.year;
    return year >= 0 && year <= 9999;
}

void comes_back(const Zone& zone, Instant instant) {
    if (can_be_written(zone, instant)) {
        const auto again = parse_rfc3339(rfc3339(zone, instant));
        promise(again.has_value(), "what rfc3339 writes can be read");
        promise(*again == instant, "what rfc3339 writes is the same moment");
    }
}

void one_zone(std::string_view text, const Zone& zone) {
    const auto told = settings::time_from_words(text, zone, now());
    if (!told) {
        promise_told({told.error()});
    } else {
        comes_back(zone, *told);
        promise(settings::looks_like_a_time(text), "words that are a time look like one");
    }
    std::string louder = " \t";
    for (const char c : text) {
        louder += c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c;
    }
    louder += "\n ";
    const auto same = settings::time_from_words(louder, zone, now());
    promise(same.has_value() == told.has_value() && (!told || *same == *told),
            "blanks around the words and capitals change nothing");
}

void one_text(std::string_view text) {
    one_zone(text, Zone{});
    one_zone(text, london());
    if (const auto instant = parse_rfc3339(text)) {
        comes_back(Zone{}, *instant);
        comes_back(london(), *instant);
        const auto told = settings::time_from_words(text, london(), now());
        promise(told && *told == *instant, "RFC 3339 is understood wherever words are");
    }
}

} // namespace
} // namespace loafwright::fuzz

int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    loafwright::fuzz::one_text(loafwright::fuzz::text_of(data, size));
    return 0;
}

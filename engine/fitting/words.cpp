// SPDX-License-Identifier: Apache-2.0
//
// Small things about words and whole minutes that the files of this room share, and the page with
// them: a length is written the same way wherever it stands.
#include "engine/fitting/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace loafwright::fitting {

std::string duration_text(std::int64_t minutes) {
    if (minutes < 60) {
        return fmt::format("{} min", minutes);
    }
    if (minutes % 60 == 0) {
        return fmt::format("{} h", minutes / 60);
    }
    return fmt::format("{} h {:02}", minutes / 60, minutes % 60);
}

std::string degrees_text(Celsius temperature) {
    const double tenths = std::floor(temperature.degrees() * 10.0 + 0.5) / 10.0;
    if (tenths == std::floor(tenths)) {
        return fmt::format("{:.0f} °C", tenths);
    }
    return fmt::format("{:.1f} °C", tenths);
}

std::string plain_text(const Phrase& phrase) {
    struct Words {
        std::string operator()(const std::string& words) const { return words; }
        std::string operator()(Celsius temperature) const { return degrees_text(temperature); }
        std::string operator()(CelsiusDifference difference) const {
            return degrees_text(Celsius(difference.count()));
        }
        // As kitchen scales show them: whole from ten up, a tenth below.
        std::string operator()(Grams grams) const {
            const double steps = grams < Grams(10.0) ? 10.0 : 1.0;
            return fmt::format("{:g} g", std::floor(grams.count() * steps + 0.5) / steps);
        }
    };
    std::string text;
    for (const Phrase::Part& part : phrase.parts) {
        text += std::visit(Words{}, part);
    }
    return text;
}

std::int64_t whole_minutes(Minutes minutes) {
    return std::max<std::int64_t>(0, static_cast<std::int64_t>(std::floor(minutes.count() + 0.5)));
}

std::int64_t nearest_five(Minutes minutes) {
    const auto fives = static_cast<std::int64_t>(std::floor(minutes.count() / 5.0 + 0.5));
    return std::max<std::int64_t>(5, 5 * fives);
}

std::int64_t next_five(Minutes minutes) {
    // A hair below the whole five counts as that five, so that 20 x 200/200 stays 20.
    const auto fives = static_cast<std::int64_t>(std::ceil(minutes.count() / 5.0 - 1e-9));
    return std::max<std::int64_t>(0, 5 * fives);
}

} // namespace loafwright::fitting

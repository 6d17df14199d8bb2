// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/quantity/tagged.hpp"

#include <array>
#include <optional>
#include <string_view>

namespace loafwright {

/// How warm a kitchen is by what one wears to bake in it, for kitchens without a thermometer: 17,
/// 21 and 27 °C. Common practice, good to two or three degrees.
struct FeltRoom {
    std::string_view word;
    Celsius temperature;
};
inline constexpr std::array<FeltRoom, 3> felt_rooms{
    {{"jumper", Celsius(17.0)}, {"shirtsleeves", Celsius(21.0)}, {"hot", Celsius(27.0)}}};

/// The temperature that one of the words stands for.
///
/// Errors: nothing for any other word, capitals included.
constexpr std::optional<Celsius> felt_temperature(std::string_view word) {
    for (const FeltRoom& room : felt_rooms) {
        if (room.word == word) {
            return room.temperature;
        }
    }
    return std::nullopt;
}

} // namespace loafwright

// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace loafwright::output {

/// A square of dark and light modules, row by row, without its quiet zone.
struct ShortCode {
    std::size_t side = 0; // modules along one edge
    std::vector<bool> dark;

    [[nodiscard]] bool is_dark(std::size_t row, std::size_t column) const {
        return dark[row * side + column];
    }
};

/// Modules that stay light around the code (ISO/IEC 18004:2015, 6.3.8).
inline constexpr std::size_t quiet_modules = 4;

/// The address as a QR code (ISO/IEC 18004) that survives a splash on about a seventh of it (level
/// M).
///
/// Promises: the same address gives the same code.
/// Errors:   nothing for an empty address, one with a NUL byte, or one longer than fits.
std::optional<ShortCode> short_code(const std::string& address);

} // namespace loafwright::output

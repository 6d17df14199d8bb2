// SPDX-License-Identifier: Apache-2.0
//
// libqrencode chooses the smallest size and the mask; here its flags become plain dark and light.
#include "shell/output/short_code.hpp"

#include <qrencode.h>

#include <memory>

namespace loafwright::output {

std::optional<ShortCode> short_code(const std::string& address) {
    // The library reads up to a NUL and would encode half an address.
    if (address.empty() || address.find('\0') != std::string::npos) {
        return std::nullopt;
    }
    const std::unique_ptr<QRcode, void (*)(QRcode*)> found(
        QRcode_encodeString8bit(address.c_str(), 0, QR_ECLEVEL_M), QRcode_free);
    if (!found) {
        return std::nullopt;
    }
    ShortCode code;
    code.side = static_cast<std::size_t>(found->width);
    code.dark.reserve(code.side * code.side);
    for (std::size_t i = 0; i < code.side * code.side; ++i) {
        // The lowest bit is the module, the others say what it is for.
        code.dark.push_back((found->data[i] & 1U) != 0);
    }
    return code;
}

} // namespace loafwright::output

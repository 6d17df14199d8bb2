// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/diagnostic/diagnostic.hpp"

#include <string>
#include <vector>

namespace loafwright::settings {

/// Each diagnostic as "code where", for a test that compares the whole list at a glance.
inline std::vector<std::string> codes_and_places(const Diagnostics& diagnostics) {
    std::vector<std::string> list;
    for (const Diagnostic& diagnostic : diagnostics) {
        list.push_back(diagnostic.code + " " + diagnostic.where);
    }
    return list;
}

/// The printed line of each diagnostic.
inline std::vector<std::string> lines(const Diagnostics& diagnostics) {
    std::vector<std::string> list;
    for (const Diagnostic& diagnostic : diagnostics) {
        list.push_back(one_line(diagnostic));
    }
    return list;
}

} // namespace loafwright::settings

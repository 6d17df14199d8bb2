// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/faults/find_faults.hpp"

#include <string>

namespace loafwright::wire {

/// {"version": 1, "findings": [{"cause", "stage", "probability", "for", "against"}], "try_next":
/// {"change", "because"} or null, "seen", "our_time", "cannot_tell", "say"}, indented by two.
std::string findings_json(const Findings& findings);

} // namespace loafwright::wire

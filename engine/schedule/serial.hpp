// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/schedule/problem.hpp"

/// A quick schedule to begin with. Other rooms use solve.hpp.
namespace loafwright::schedule::sat {

/// One job after the other, each by the chain's sweep around what is placed already.
///
/// Promises: entries in the order of the jobs; one without starts where the job is no chain or has
/// no
///           place left. Where every entry has starts, all rules are kept.
Schedule serial_schedule(const Problem& problem);

} // namespace loafwright::schedule::sat

// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "shell/intake/taken_in.hpp"
#include "shell/paper/seen.hpp"

#include <string>
#include <vector>

namespace loafwright::paper {

struct Prose {
    std::string text;
    std::vector<intake::UnsureWord> unsure;
};

/// Pages as running text: columns in reading order, lines that the width of the column broke joined
/// again, words broken at a line's end made whole, an empty line where the page leaves more space.
///
/// Promises: doubted words come back as unsure, with their place in the text and, from a picture,
/// on
///           their page.
Prose prose_of(const std::vector<SeenPage>& pages);

} // namespace loafwright::paper

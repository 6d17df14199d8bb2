// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "shell/paper/seen.hpp"

namespace loafwright::paper {

/// Marks the words of a page from a picture that are worth a question: those that bear a number and
/// were not read surely. Mends marks whose shape alone tells what they are.
void doubt_numbers(SeenPage& page);

/// Was it print that was read? Either nearly all of it was read surely, or so many words were that
/// what else stands on the page (a patterned table, a drawing) does not count.
bool is_print(const SeenPage& page);

/// Is so much read already, and so badly, that the rest need not be tried this way up?
bool is_hopeless(const SeenPage& part);

/// How sure the recogniser was of the page's words, weighed by their letters: 0 to 1.
double sureness_of(const SeenPage& page);

} // namespace loafwright::paper

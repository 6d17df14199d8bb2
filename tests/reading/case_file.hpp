// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <vector>

namespace loafwright::tests {

/// One text with what must be read in it.
///
/// In the file: a line "== name", the text, a line "--", then one expectation a line:
///     step KIND [MINUTES|LOW-HIGH] [@CELSIUS|@LOW-HIGH] [PLACE] [assumed|open] [optional]
///               [every MINUTES] [inside KIND] [before MINUTES]
///                                 KIND may be several, as rise|chill: any of them will do
///     no KIND                     no step of that kind
///     never MINUTES|LOW-HIGH      no step lasts so long
///     steps COUNT                 so many steps in all
///     item WORDS GRAMS|LOW-HIGH|none
///     instead WORDS GRAMS|LOW-HIGH|none
///                                 what may stand for an ingredient
///     optional WORDS / needed WORDS
///                                 an ingredient that may, that may not be left out
///     use WORDS SHARE             a share of something already listed
///     or KIND [MINUTES] [PLACE]   an alternative of some step
///     cue WORDS                   some step's cue holds these words
///     remind WORDS                some step's reminder holds these words
///     ask WORDS                   some question is about or asks these words
///     unasked WORDS               no question does
///     unread WORDS                a phrase with these words stays unread
///     title WORDS / pieces COUNT
/// Steps must be found in the order in which they stand here.
struct ReadingCase {
    std::string name;
    std::string text;
    std::vector<std::string> expectations;
    std::string file;
    int line = 0;
    /// "== not yet: name": what a careful baker reads and the reader does not. It must fail; when
    /// it passes, the mark goes.
    bool not_yet = false;
};

/// Every case of a file. A malformed file yields one case whose expectation cannot hold, so that it
/// is noticed.
std::vector<ReadingCase> cases_in(const std::string& path);

/// The cases of every file in tests/cases/reading, files in the order of their names.
std::vector<ReadingCase> all_cases();

/// What does not hold, one sentence each; empty when all does.
std::vector<std::string> failures_of(const ReadingCase& one);

} // namespace loafwright::tests

// SPDX-License-Identifier: Apache-2.0
//
// Questions, warnings and the honest no: sentences that the engine hands on as text, put into the
// page's units.
#include "engine/sheet/asides.hpp"

#include "engine/recipe/words.hpp"
#include "engine/sheet/compose.hpp"
#include "engine/sheet/lines.hpp"
#include "engine/sheet/measures.hpp"

#include <algorithm>
#include <utility>

namespace loafwright {

namespace sheet {

std::string question_line(const Question& question, const SheetOptions& options) {
    std::string ask = our_sentence(question.ask, options, Quoted::recipes);
    std::string used = question.default_answer;
    const bool number = !used.empty() && used.find_first_not_of("0123456789.") == std::string::npos;
    const auto ends_with = [&question](std::string_view end) {
        const std::string& key = question.key;
        return key.size() >= end.size() &&
               key.compare(key.size() - end.size(), end.size(), end) == 0;
    };
    if (number && ends_with("-c")) {
        used += " °C";
    } else if (number && question.key.rfind("minutes", 0) == 0) {
        used += " min";
    }
    // The room's own question says already that nothing is used until it is answered.
    if (used.empty() || question.key == "room-c") {
        return ask;
    }
    return ask + " Used: " + our_sentence(used, options, Quoted::recipes) + ".";
}

std::string warning_line(const Diagnostic& warning, const SheetOptions& options) {
    std::string line = capitalised(warning.what);
    if (!line.empty() && line.back() != '.') {
        line += ".";
    }
    if (!warning.do_this.empty()) {
        line += " " + capitalised(warning.do_this);
        if (line.back() != '.') {
            line += ".";
        }
    }
    return our_sentence(line, options, Quoted::ours);
}

void add_what_is_normal(std::vector<SheetStage>& lines,
                        const std::vector<Stage>& stages,
                        const std::vector<std::string>& normal) {
    std::vector<std::string> said;
    for (std::size_t s = 0; s < stages.size() && s < lines.size(); ++s) {
        for (const std::size_t step : stages[s].steps) {
            const bool is_new = step < normal.size() && !normal[step].empty() &&
                                std::find(said.begin(), said.end(), normal[step]) == said.end();
            const bool by_hand = stages[s].attention == Attention::hands;
            if (is_new && (lines[s].normal.empty() || by_hand)) {
                lines[s].normal = normal[step];
            }
        }
        said.push_back(lines[s].normal);
    }
}

} // namespace sheet

Refusal compose_refusal(const Impossible& impossible, const Day& day, const SheetOptions& options) {
    const auto ours = [&options](const std::string& text) {
        return sheet::our_sentence(text, options, sheet::Quoted::ours);
    };
    Refusal refusal;
    refusal.why = ours(impossible.why);
    for (const std::string& reason :
         impossible.reasons) { // what the first sentence says stays there
        std::string heart = reason;
        while (!heart.empty() && heart.back() == '.') {
            heart.pop_back();
        }
        if (impossible.why.find(heart) == std::string::npos) {
            refusal.reasons.push_back(ours(reason));
        }
    }
    for (const WayOut& way : impossible.ways_out) {
        // A change that is itself a time to eat needs no second one.
        const bool says_when = way.change.find("eat at ") != std::string::npos ||
                               way.change.find("eat from ") != std::string::npos;
        std::string change = ours(way.change);
        if (!says_when) {
            change += ": eat at " + sheet::moment_text(day.zone, way.eat, day.now, options.clock);
        }
        refusal.ways_out.push_back(std::move(change));
    }
    return refusal;
}

} // namespace loafwright

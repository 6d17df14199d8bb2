// SPDX-License-Identifier: Apache-2.0
//
// Sentences of the engine on a terminal.
#include "shell/cli/paragraphs.hpp"

#include "shell/output/text_lines.hpp"

namespace loafwright::cli {

std::string paragraphs(const std::vector<std::string>& say, std::size_t columns) {
    std::string text;
    for (const std::string& paragraph : say) {
        for (const std::string& line : output::wrapped(paragraph, columns)) {
            text += line + '\n';
        }
    }
    return text;
}

} // namespace loafwright::cli

// SPDX-License-Identifier: Apache-2.0
#include "shell/cli/heavy_parts.hpp"

#include "shell/cli/serve_command.hpp"

namespace loafwright::cli {

HeavyParts heavy_parts() {
    return {output::pdf_page, output::svg_page, output::png_page, serve_command};
}

} // namespace loafwright::cli

// SPDX-License-Identifier: Apache-2.0
//
// What a page may lack on this system. Fontconfig puts another family in the place of a missing one
// and says nothing, so it is said here.
#include "shell/output/drawn.hpp"
#include "shell/output/type_setting.hpp"

#include <fmt/format.h>

namespace loafwright::output {

namespace {

std::string package_of(const std::string& family) {
    return family == "Lato" ? "Install the package fonts-lato."
                            : fmt::format("Install the fonts of {}.", family);
}

} // namespace

Diagnostics remarks_on(const PageLayout& layout, const PageOptions& options) {
    Diagnostics remarks;
    if (!family_is_there(options.family)) {
        remarks.push_back({"font_missing",
                           Severity::warning,
                           fmt::format("the typeface {} is not on this system, the page is set in "
                                       "another one",
                                       options.family),
                           "",
                           package_of(options.family)});
    }
    if (layout.unknown_letters > 0) {
        remarks.push_back({"letters_missing",
                           Severity::warning,
                           fmt::format("{} letters of the page are in no typeface of this system "
                                       "and stand as empty boxes",
                                       layout.unknown_letters),
                           "",
                           "Install the package fonts-noto-core, for Chinese, Japanese or Korean "
                           "fonts-noto-cjk, for pictures fonts-noto-color-emoji."});
    }
    if (!options.address.empty() && !short_code(options.address)) {
        remarks.push_back({"address_too_long",
                           Severity::warning,
                           fmt::format("the address of {} letters does not fit into a short code, "
                                       "the page has none",
                                       options.address.size()),
                           "",
                           "Use a shorter address."});
    }
    return remarks;
}

} // namespace loafwright::output

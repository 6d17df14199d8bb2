// SPDX-License-Identifier: Apache-2.0
#include "shell/cli/kitchen_file.hpp"

#include "shell/cli/files.hpp"
#include "shell/settings/settings.hpp"

#include <utility>

namespace loafwright::cli {

tl::expected<Kitchen, Diagnostics> kitchen_in(const std::optional<std::string>& file) {
    if (!file) {
        return Kitchen{};
    }
    auto bytes = file_bytes(*file);
    if (!bytes) {
        return tl::make_unexpected(std::move(bytes.error()));
    }
    return settings::kitchen_from_toml(*bytes, name_for_messages(*file));
}

} // namespace loafwright::cli

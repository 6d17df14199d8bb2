// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/diagnostic/diagnostic.hpp"
#include "shell/store/store.hpp"

#include <tl/expected.hpp>

#include <string>
#include <string_view>
#include <utility>
#include <vector>

/// Everything that is kept, as one JSON text and back: docs/export.md.
namespace loafwright::store {

struct ExportedBake {
    BakeRecord record;
    std::vector<StoredEvent> events;
};

struct Everything {
    std::vector<std::pair<std::string, Document>> documents; // with their kinds
    std::vector<ExportedBake> bakes;
    std::vector<std::pair<std::string, std::string>> photos; // hash, bytes
};

/// Needs:    ids are plain, and an event's JSON has its id under "id".
/// Promises: the same bytes for the same Everything, and for what comes of them when read again.
/// Errors:   store_damaged where the JSON inside is not an object; `where` names the entry.
tl::expected<std::string, Diagnostic> export_json(const Everything& everything);

/// Promises: ids are plain, sequences run 1, 2, 3… in each bake, photos are what their names say,
///           moments lie in the years 1 to 9999.
/// Errors:   import_unreadable, with the path. Never: throws on input.
tl::expected<Everything, Diagnostics> everything_from_json(std::string_view json);

} // namespace loafwright::store

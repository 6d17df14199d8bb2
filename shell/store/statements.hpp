// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "shell/store/database.hpp"
#include "shell/store/store.hpp"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <utility>
#include <vector>

/// The statements, the same for both databases. Each runs in a transaction that is open, and throws
/// what the library throws. Only this room's .cpp files include it.
namespace loafwright::store {

/// With their kinds, in byte order.
std::vector<std::pair<std::string, Document>> all_documents(soci::session& sql);
std::vector<Document> documents_of(soci::session& sql, const std::string& kind);
std::optional<Document>
document_of(soci::session& sql, const std::string& kind, const std::string& id);
/// False where it is there already, and stays as it is.
bool insert_document(soci::session& sql, const std::string& kind, const Document& document);
/// Its new revision.
std::int64_t write_document(soci::session& sql, const std::string& kind, const Document& document);
/// False where there was none.
bool delete_document(soci::session& sql, const std::string& kind, const std::string& id);

enum class Age { newest, oldest };

std::optional<BakeRecord> bake_of(soci::session& sql, const std::string& id);
std::vector<BakeRecord> bakes_in(soci::session& sql, Age first, std::size_t most);
/// False where it is there already, and stays as it is. A new one has no events.
bool insert_bake(soci::session& sql, const BakeRecord& record);

/// Its last number, which nobody else changes before the transaction ends; none where there is no
/// such bake.
std::optional<std::int64_t> lock_bake(soci::session& sql, Dialect dialect, const std::string& bake);
/// The number of the event: the one it has, or the next one after `last`.
///
/// Needs: the bake is locked.
std::int64_t
add_event(soci::session& sql, const std::string& bake, const NewEvent& event, std::int64_t& last);
/// Keeps the last number and tells those who listen.
void close_bake(soci::session& sql, Dialect dialect, const std::string& bake, std::int64_t last);
std::vector<StoredEvent>
events_in(soci::session& sql, const std::string& bake, std::int64_t after, std::size_t most);

} // namespace loafwright::store

// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/diagnostic/diagnostic.hpp"
#include "engine/quantity/time.hpp"

#include <tl/expected.hpp>

#include <cstddef>
#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

/// What is kept: documents, bakes, the events of bakes, photos. JSON goes in and comes out as text;
/// nobody here looks into it.
namespace loafwright::store {

/// A recipe, or the usual kitchen and day. The last one who writes wins.
struct Document {
    std::string id;
    std::string json;
    std::int64_t revision = 1;
};

/// A bake as it was begun.
struct BakeRecord {
    std::string id;
    std::string request; // JSON
    Instant created;
    std::int64_t last = 0; // the sequence of its newest event
};

struct NewEvent {
    std::string id; // made by the sender
    std::string json;
};

struct StoredEvent {
    std::int64_t sequence = 0;
    std::string id;
    std::string json;
};

/// Events for one bake.
struct Append {
    std::string bake;
    std::vector<NewEvent> events;
};

/// Sequences in the order of the events; none where there is no such bake.
using Appended = std::optional<std::vector<std::int64_t>>;

enum class Kept { made, there };

/// How much an import brought, and how much was there already and stayed as it was.
struct Imported {
    std::int64_t added_documents = 0;
    std::int64_t added_bakes = 0;
    std::int64_t added_events = 0;
    std::int64_t added_photos = 0;
    std::int64_t kept = 0;
};

/// Errors: store_unreachable (not there, in use, connection lost), store_read_only, store_full,
/// store_newer (made by a newer program), store_damaged.
template <typename Value>
using Answer = tl::expected<Value, Diagnostic>;

/// One opening of a store, for one thread at a time; any number of threads and processes may have
/// one each.
///
/// Needs:    ids and kinds are 1 to 64 letters, digits, - and _; texts are UTF-8 without NUL; what
/// is
///           called JSON is an object, and that of an event has its id under "id". Nothing else can
///           be exported, but whatever is given is kept as text and never run as a command.
/// Promises: what returned without an error is on the disk; after an error nothing of it is, and
///           the next call tries again. Only where a connection is lost in the last moment may it
///           have been kept nevertheless: events may be sent again, as they keep their numbers.
/// Never:    throws.
class Store {
public:
    virtual ~Store() = default;

    /// In byte order of their ids.
    virtual Answer<std::vector<Document>> documents(std::string_view kind) = 0;
    virtual Answer<std::optional<Document>> document(std::string_view kind,
                                                     std::string_view id) = 0;
    /// Its revision, one more than before.
    virtual Answer<std::int64_t>
    put_document(std::string_view kind, std::string_view id, std::string_view json) = 0;
    /// False where there was none.
    virtual Answer<bool> remove_document(std::string_view kind, std::string_view id) = 0;

    /// A bake that is there already stays as it is.
    virtual Answer<Kept>
    create_bake(std::string_view id, std::string_view request, Instant created) = 0;
    virtual Answer<std::optional<BakeRecord>> bake(std::string_view id) = 0;
    /// Newest first.
    virtual Answer<std::vector<BakeRecord>> bakes(std::size_t most) = 0;

    /// All of them in one transaction. The events of a bake are numbered 1, 2, 3… without a gap,
    /// and a number is seen only after those before it; an event id that the bake has already keeps
    /// its number.
    virtual Answer<std::vector<Appended>> append_all(const std::vector<Append>& appends) = 0;
    virtual Answer<std::vector<StoredEvent>>
    events_after(std::string_view bake, std::int64_t sequence, std::size_t most) = 0;

    /// What it is found by: SHA-256 of its bytes in 64 hexadecimal digits (FIPS 180-4).
    virtual Answer<std::string> put_photo(std::string_view bytes) = 0;
    virtual Answer<std::optional<std::string>> photo(std::string_view hash) = 0;

    /// Everything as one JSON text: docs/export.md.
    virtual Answer<std::string> export_all() = 0;
    /// Adds what is not there and leaves what is; all or nothing.
    ///
    /// Errors: import_unreadable, with the path, beside those above.
    virtual tl::expected<Imported, Diagnostics> import_all(std::string_view json) = 0;

    /// Becomes readable when another process has kept an event; none for a store in a folder, which
    /// one server has to itself.
    virtual std::optional<int> changes_descriptor() = 0;
    /// The bakes that have news; "" stands for "any", after a connection that was lost.
    virtual std::vector<std::string> changed_bakes() = 0;
};

/// Opens the store at `address`, a folder (SQLite) or postgresql://…, and brings its tables up to
/// date. `photo_folder` is where photos go; a folder's own is used where it is empty.
Answer<std::unique_ptr<Store>> open(const std::string& address, const std::string& photo_folder);

} // namespace loafwright::store

// SPDX-License-Identifier: Apache-2.0
#include "shell/store/statements.hpp"

#include "shell/store/listener.hpp"

#include <algorithm>
#include <utility>

namespace loafwright::store {

namespace {

// "All" is told as a number that is greater than any count; PostgreSQL takes no negative one.
long long limit_of(std::size_t most) {
    return static_cast<long long>(std::min<std::size_t>(most, std::size_t{1} << 40U));
}

} // namespace

std::vector<std::pair<std::string, Document>> all_documents(soci::session& sql) {
    std::vector<std::pair<std::string, Document>> found;
    std::string kind;
    Document document;
    long long revision = 0;
    // Rows are fetched into whole numbers of 64 bits: the library's own kind of row cuts those of
    // SQLite to 32.
    soci::statement rows =
        (sql.prepare << "SELECT kind, id, json, revision FROM documents ORDER BY kind, id",
         soci::into(kind),
         soci::into(document.id),
         soci::into(document.json),
         soci::into(revision));
    rows.execute();
    while (rows.fetch()) {
        document.revision = revision;
        found.emplace_back(kind, document);
    }
    return found;
}

std::vector<Document> documents_of(soci::session& sql, const std::string& kind) {
    std::vector<Document> found;
    Document document;
    long long revision = 0;
    soci::statement rows =
        (sql.prepare << "SELECT id, json, revision FROM documents WHERE kind = :kind ORDER BY id",
         soci::use(kind),
         soci::into(document.id),
         soci::into(document.json),
         soci::into(revision));
    rows.execute();
    while (rows.fetch()) {
        document.revision = revision;
        found.push_back(document);
    }
    return found;
}

std::optional<Document>
document_of(soci::session& sql, const std::string& kind, const std::string& id) {
    Document document;
    document.id = id;
    long long revision = 0;
    sql << "SELECT json, revision FROM documents WHERE kind = :kind AND id = :id", soci::use(kind),
        soci::use(id), soci::into(document.json), soci::into(revision);
    if (!sql.got_data()) {
        return std::nullopt;
    }
    document.revision = revision;
    return document;
}

bool insert_document(soci::session& sql, const std::string& kind, const Document& document) {
    const long long revision = document.revision;
    soci::statement statement =
        (sql.prepare << "INSERT INTO documents (kind, id, json, revision) VALUES (:kind, :id, "
                        ":json, :rev) ON CONFLICT (kind, id) DO NOTHING",
         soci::use(kind),
         soci::use(document.id),
         soci::use(document.json),
         soci::use(revision));
    statement.execute(true);
    return statement.get_affected_rows() > 0;
}

std::int64_t write_document(soci::session& sql, const std::string& kind, const Document& document) {
    long long revision = 1;
    sql << "INSERT INTO documents (kind, id, json, revision) VALUES (:kind, :id, :json, 1) ON "
           "CONFLICT (kind, id) DO UPDATE SET json = excluded.json, revision = "
           "documents.revision + 1",
        soci::use(kind), soci::use(document.id), soci::use(document.json);
    sql << "SELECT revision FROM documents WHERE kind = :kind AND id = :id", soci::use(kind),
        soci::use(document.id), soci::into(revision);
    return revision;
}

bool delete_document(soci::session& sql, const std::string& kind, const std::string& id) {
    soci::statement statement =
        (sql.prepare << "DELETE FROM documents WHERE kind = :kind AND id = :id",
         soci::use(kind),
         soci::use(id));
    statement.execute(true);
    return statement.get_affected_rows() > 0;
}

std::optional<BakeRecord> bake_of(soci::session& sql, const std::string& id) {
    BakeRecord record;
    record.id = id;
    long long created = 0;
    long long last = 0;
    sql << "SELECT request, created, last FROM bakes WHERE id = :id", soci::use(id),
        soci::into(record.request), soci::into(created), soci::into(last);
    if (!sql.got_data()) {
        return std::nullopt;
    }
    record.created = Instant{created};
    record.last = last;
    return record;
}

std::vector<BakeRecord> bakes_in(soci::session& sql, Age first, std::size_t most) {
    std::vector<BakeRecord> found;
    const long long limit = limit_of(most);
    BakeRecord record;
    long long created = 0;
    long long last = 0;
    const std::string query =
        std::string("SELECT id, request, created, last FROM bakes ORDER BY ") +
        (first == Age::newest ? "created DESC, id DESC" : "created, id") + " LIMIT :most";
    soci::statement rows = (sql.prepare << query,
                            soci::use(limit),
                            soci::into(record.id),
                            soci::into(record.request),
                            soci::into(created),
                            soci::into(last));
    rows.execute();
    while (rows.fetch()) {
        record.created = Instant{created};
        record.last = last;
        found.push_back(record);
    }
    return found;
}

bool insert_bake(soci::session& sql, const BakeRecord& record) {
    const long long created = record.created.seconds;
    soci::statement statement =
        (sql.prepare << "INSERT INTO bakes (id, request, created, last) VALUES (:id, :request, "
                        ":created, 0) ON CONFLICT (id) DO NOTHING",
         soci::use(record.id),
         soci::use(record.request),
         soci::use(created));
    statement.execute(true);
    return statement.get_affected_rows() > 0;
}

std::optional<std::int64_t>
lock_bake(soci::session& sql, Dialect dialect, const std::string& bake) {
    long long last = 0;
    // A writing transaction has the whole of SQLite to itself.
    const std::string query = std::string("SELECT last FROM bakes WHERE id = :id") +
                              (dialect == Dialect::postgresql ? " FOR UPDATE" : "");
    sql << query, soci::use(bake), soci::into(last);
    return sql.got_data() ? std::optional<std::int64_t>(last) : std::nullopt;
}

std::int64_t
add_event(soci::session& sql, const std::string& bake, const NewEvent& event, std::int64_t& last) {
    long long sequence = 0;
    sql << "SELECT sequence FROM events WHERE bake = :bake AND id = :id", soci::use(bake),
        soci::use(event.id), soci::into(sequence);
    if (sql.got_data()) {
        return sequence;
    }
    const long long next = ++last;
    sql << "INSERT INTO events (bake, sequence, id, json) VALUES (:bake, :sequence, :id, :json)",
        soci::use(bake), soci::use(next), soci::use(event.id), soci::use(event.json);
    return next;
}

void close_bake(soci::session& sql, Dialect dialect, const std::string& bake, std::int64_t last) {
    const long long newest = last;
    sql << "UPDATE bakes SET last = :last WHERE id = :id", soci::use(newest), soci::use(bake);
    if (dialect == Dialect::postgresql) {
        const std::string channel = Listener::channel;
        sql << "SELECT pg_notify(:channel, :bake)", soci::use(channel), soci::use(bake);
    }
}

std::vector<StoredEvent>
events_in(soci::session& sql, const std::string& bake, std::int64_t after, std::size_t most) {
    const long long from = after;
    const long long limit = limit_of(most);
    std::vector<StoredEvent> found;
    StoredEvent event;
    long long sequence = 0;
    soci::statement rows =
        (sql.prepare << "SELECT sequence, id, json FROM events WHERE bake = :bake AND sequence > "
                        ":after ORDER BY sequence LIMIT :most",
         soci::use(bake),
         soci::use(from),
         soci::use(limit),
         soci::into(sequence),
         soci::into(event.id),
         soci::into(event.json));
    rows.execute();
    while (rows.fetch()) {
        event.sequence = sequence;
        found.push_back(event);
    }
    return found;
}

} // namespace loafwright::store

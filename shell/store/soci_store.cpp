// SPDX-License-Identifier: Apache-2.0
//
// The store on SQLite and on PostgreSQL: one set of statements, and a few words that differ.
#include "shell/store/database.hpp"
#include "shell/store/exported.hpp"
#include "shell/store/listener.hpp"
#include "shell/store/photos.hpp"
#include "shell/store/store.hpp"

#include <sodium.h>

#include <algorithm>
#include <filesystem>
#include <map>
#include <set>
#include <utility>

namespace loafwright::store {

namespace {

namespace fs = std::filesystem;

class SociStore : public Store {
public:
    SociStore(std::unique_ptr<Database> database, Photos photos, std::unique_ptr<Listener> listener)
        : database_(std::move(database)), photos_(std::move(photos)),
          listener_(std::move(listener)) {}

    Answer<std::vector<Document>> documents(std::string_view kind) override {
        return answered<std::vector<Document>>([&](soci::session& sql, auto& found) {
            const std::string wanted(kind);
            const soci::rowset<soci::row> rows =
                (sql.prepare << "SELECT id, json, revision FROM documents WHERE kind = :kind ORDER "
                                "BY id",
                 soci::use(wanted));
            for (const soci::row& row : rows) {
                found.push_back({row.get<std::string>(0), row.get<std::string>(1), whole(row, 2)});
            }
        });
    }

    Answer<std::optional<Document>> document(std::string_view kind, std::string_view id) override {
        return answered<std::optional<Document>>([&](soci::session& sql, auto& found) {
            const std::string wanted(kind);
            Document document;
            document.id = id;
            long long revision = 0;
            sql << "SELECT json, revision FROM documents WHERE kind = :kind AND id = :id",
                soci::use(wanted), soci::use(document.id), soci::into(document.json),
                soci::into(revision);
            if (sql.got_data()) {
                document.revision = revision;
                found = std::move(document);
            }
        });
    }

    Answer<std::int64_t>
    put_document(std::string_view kind, std::string_view id, std::string_view json) override {
        return answered<std::int64_t>([&](soci::session& sql, auto& revision) {
            revision = put(sql, std::string(kind), {std::string(id), std::string(json), 1});
        });
    }

    Answer<bool> remove_document(std::string_view kind, std::string_view id) override {
        return answered<bool>([&](soci::session& sql, auto& removed) {
            const std::string from(kind);
            const std::string which(id);
            soci::statement statement =
                (sql.prepare << "DELETE FROM documents WHERE kind = :kind AND id = :id",
                 soci::use(from),
                 soci::use(which));
            statement.execute(true);
            removed = statement.get_affected_rows() > 0;
        });
    }

    Answer<Kept>
    create_bake(std::string_view id, std::string_view request, Instant created) override {
        return answered<Kept>([&](soci::session& sql, auto& kept) {
            const BakeRecord record{std::string(id), std::string(request), created, 0};
            kept = create(sql, record) ? Kept::made : Kept::there;
        });
    }

    Answer<std::optional<BakeRecord>> bake(std::string_view id) override {
        return answered<std::optional<BakeRecord>>([&](soci::session& sql, auto& found) {
            BakeRecord record;
            record.id = id;
            long long created = 0;
            long long last = 0;
            sql << "SELECT request, created, last FROM bakes WHERE id = :id", soci::use(record.id),
                soci::into(record.request), soci::into(created), soci::into(last);
            if (sql.got_data()) {
                record.created = Instant{created};
                record.last = last;
                found = std::move(record);
            }
        });
    }

    Answer<std::vector<BakeRecord>> bakes(std::size_t most) override {
        return answered<std::vector<BakeRecord>>([&](soci::session& sql, auto& found) {
            const auto limit = static_cast<long long>(most);
            const soci::rowset<soci::row> rows =
                (sql.prepare << "SELECT id, request, created, last FROM bakes ORDER BY created "
                                "DESC, id DESC LIMIT :most",
                 soci::use(limit));
            for (const soci::row& row : rows) {
                found.push_back({row.get<std::string>(0),
                                 row.get<std::string>(1),
                                 Instant{whole(row, 2)},
                                 whole(row, 3)});
            }
        });
    }

    Answer<std::vector<Appended>> append_all(const std::vector<Append>& appends) override {
        return answered<std::vector<Appended>>([&](soci::session& sql, auto& all) {
            all.clear();
            // Locked in one order, so that two processes never wait for each other.
            std::set<std::string> names;
            for (const Append& append : appends) {
                names.insert(append.bake);
            }
            std::map<std::string, std::optional<long long>> last;
            for (const std::string& name : names) {
                last[name] = last_of(sql, name);
            }
            for (const Append& append : appends) {
                auto& newest = last[append.bake];
                if (!newest) {
                    all.emplace_back();
                    continue;
                }
                std::vector<std::int64_t> sequences;
                for (const NewEvent& event : append.events) {
                    sequences.push_back(add(sql, append.bake, event, *newest));
                }
                all.emplace_back(std::move(sequences));
            }
            for (const auto& [name, newest] : last) {
                if (newest) {
                    close_bake(sql, name, *newest);
                }
            }
        });
    }

    Answer<std::vector<StoredEvent>>
    events_after(std::string_view bake, std::int64_t sequence, std::size_t most) override {
        return answered<std::vector<StoredEvent>>([&](soci::session& sql, auto& found) {
            found = events(sql, std::string(bake), sequence, most);
        });
    }

    Answer<std::string> put_photo(std::string_view bytes) override { return photos_.put(bytes); }

    Answer<std::optional<std::string>> photo(std::string_view hash) override {
        return photos_.get(hash);
    }

    Answer<std::string> export_all() override {
        Everything everything;
        const auto read = answered<bool>([&](soci::session& sql, auto& done) {
            everything = {};
            const soci::rowset<soci::row> documents =
                (sql.prepare << "SELECT kind, id, json, revision FROM documents ORDER BY kind, id");
            for (const soci::row& row : documents) {
                everything.documents.emplace_back(
                    row.get<std::string>(0),
                    Document{row.get<std::string>(1), row.get<std::string>(2), whole(row, 3)});
            }
            const soci::rowset<soci::row> bakes =
                (sql.prepare
                 << "SELECT id, request, created, last FROM bakes ORDER BY created, id");
            for (const soci::row& row : bakes) {
                everything.bakes.push_back({{row.get<std::string>(0),
                                             row.get<std::string>(1),
                                             Instant{whole(row, 2)},
                                             whole(row, 3)},
                                            {}});
            }
            for (ExportedBake& bake : everything.bakes) {
                bake.events = events(sql, bake.record.id, 0, SIZE_MAX);
            }
            done = true;
        });
        if (!read) {
            return tl::make_unexpected(read.error());
        }
        for (const std::string& hash : photos_.all()) {
            auto bytes = photos_.get(hash);
            if (!bytes) {
                return tl::make_unexpected(bytes.error());
            }
            if (*bytes) {
                everything.photos.emplace_back(hash, std::move(**bytes));
            }
        }
        return export_json(everything);
    }

    tl::expected<Imported, Diagnostics> import_all(std::string_view json) override {
        const auto everything = everything_from_json(json);
        if (!everything) {
            return tl::make_unexpected(everything.error());
        }
        // Photos first: one too many does no harm, one that is told of and missing would.
        std::int64_t photos = 0;
        const std::vector<std::string> had = photos_.all();
        for (const auto& [hash, bytes] : everything->photos) {
            const auto kept = photos_.put(bytes);
            if (!kept) {
                return tl::make_unexpected(Diagnostics{kept.error()});
            }
            photos += std::binary_search(had.begin(), had.end(), hash) ? 0 : 1;
        }
        const auto added = answered<Imported>([&](soci::session& sql, auto& count) {
            count = {};
            for (const auto& [kind, document] : everything->documents) {
                const bool is_new = !revision_of(sql, kind, document.id);
                if (is_new) {
                    insert(sql, kind, document);
                }
                (is_new ? count.added_documents : count.kept) += 1;
            }
            for (const ExportedBake& bake : everything->bakes) {
                import(sql, bake, count);
            }
        });
        if (!added) {
            return tl::make_unexpected(Diagnostics{added.error()});
        }
        Imported imported = *added;
        imported.added_photos = photos;
        return imported;
    }

    std::optional<int> changes_descriptor() override {
        return listener_ ? std::optional(listener_->descriptor().value_or(-1)) : std::nullopt;
    }

    std::vector<std::string> changed_bakes() override {
        return listener_ ? listener_->drain() : std::vector<std::string>();
    }

private:
    template <typename Value, typename Work>
    Answer<Value> answered(Work work) {
        Value value{};
        try {
            database_->together([&](soci::session& sql) { work(sql, value); });
        } catch (const std::exception& fault) {
            return tl::make_unexpected(trouble_of(fault, database_->dialect(), database_->where()));
        }
        return value;
    }

    // The library gives a whole number in the type that the column has, not in the one asked for.
    static std::int64_t whole(const soci::row& row, std::size_t column) {
        switch (row.get_properties(column).get_data_type()) {
        case soci::dt_integer:
            return row.get<int>(column);
        case soci::dt_unsigned_long_long:
            return static_cast<std::int64_t>(row.get<unsigned long long>(column));
        default:
            return row.get<long long>(column);
        }
    }

    static std::optional<std::int64_t>
    revision_of(soci::session& sql, const std::string& kind, const std::string& id) {
        long long revision = 0;
        sql << "SELECT revision FROM documents WHERE kind = :kind AND id = :id", soci::use(kind),
            soci::use(id), soci::into(revision);
        return sql.got_data() ? std::optional<std::int64_t>(revision) : std::nullopt;
    }

    static void insert(soci::session& sql, const std::string& kind, const Document& document) {
        const long long revision = document.revision;
        sql << "INSERT INTO documents (kind, id, json, revision) VALUES (:kind, :id, :json, :rev)",
            soci::use(kind), soci::use(document.id), soci::use(document.json), soci::use(revision);
    }

    static std::int64_t put(soci::session& sql, const std::string& kind, const Document& document) {
        long long revision = 1;
        sql << "INSERT INTO documents (kind, id, json, revision) VALUES (:kind, :id, :json, 1) ON "
               "CONFLICT (kind, id) DO UPDATE SET json = excluded.json, revision = "
               "documents.revision + 1",
            soci::use(kind), soci::use(document.id), soci::use(document.json);
        sql << "SELECT revision FROM documents WHERE kind = :kind AND id = :id", soci::use(kind),
            soci::use(document.id), soci::into(revision);
        return revision;
    }

    // False where it is there already.
    static bool create(soci::session& sql, const BakeRecord& record) {
        const long long created = record.created.seconds;
        const long long last = record.last;
        soci::statement statement =
            (sql.prepare << "INSERT INTO bakes (id, request, created, last) VALUES (:id, :request, "
                            ":created, :last) ON CONFLICT (id) DO NOTHING",
             soci::use(record.id),
             soci::use(record.request),
             soci::use(created),
             soci::use(last));
        statement.execute(true);
        return statement.get_affected_rows() > 0;
    }

    std::optional<long long> last_of(soci::session& sql, const std::string& bake) const {
        long long last = 0;
        const std::string query =
            std::string("SELECT last FROM bakes WHERE id = :id") +
            (database_->dialect() == Dialect::postgresql ? " FOR UPDATE" : "");
        sql << query, soci::use(bake), soci::into(last);
        return sql.got_data() ? std::optional(last) : std::nullopt;
    }

    static std::int64_t
    add(soci::session& sql, const std::string& bake, const NewEvent& event, long long& last) {
        long long sequence = 0;
        sql << "SELECT sequence FROM events WHERE bake = :bake AND id = :id", soci::use(bake),
            soci::use(event.id), soci::into(sequence);
        if (sql.got_data()) {
            return sequence;
        }
        const long long next = ++last;
        sql << "INSERT INTO events (bake, sequence, id, json) VALUES (:bake, :sequence, :id, "
               ":json)",
            soci::use(bake), soci::use(next), soci::use(event.id), soci::use(event.json);
        return next;
    }

    void close_bake(soci::session& sql, const std::string& bake, long long last) const {
        sql << "UPDATE bakes SET last = :last WHERE id = :id", soci::use(last), soci::use(bake);
        if (database_->dialect() == Dialect::postgresql) {
            const std::string channel = Listener::channel;
            sql << "SELECT pg_notify(:channel, :bake)", soci::use(channel), soci::use(bake);
        }
    }

    static std::vector<StoredEvent>
    events(soci::session& sql, const std::string& bake, std::int64_t after, std::size_t most) {
        const long long from = after;
        const auto limit =
            static_cast<long long>(std::min<std::size_t>(most, std::size_t{1} << 40U));
        std::vector<StoredEvent> found;
        const soci::rowset<soci::row> rows =
            (sql.prepare << "SELECT sequence, id, json FROM events WHERE bake = :bake AND sequence "
                            "> :after ORDER BY sequence LIMIT :most",
             soci::use(bake),
             soci::use(from),
             soci::use(limit));
        for (const soci::row& row : rows) {
            found.push_back({whole(row, 0), row.get<std::string>(1), row.get<std::string>(2)});
        }
        return found;
    }

    // A bake that is there keeps its request and gains the events that it lacks.
    void import(soci::session& sql, const ExportedBake& bake, Imported& count) const {
        BakeRecord record = bake.record;
        record.last = 0;
        (create(sql, record) ? count.added_bakes : count.kept) += 1;
        long long last = last_of(sql, record.id).value_or(0);
        for (const StoredEvent& event : bake.events) {
            const long long before = last;
            add(sql, record.id, {event.id, event.json}, last);
            (last > before ? count.added_events : count.kept) += 1;
        }
        close_bake(sql, record.id, last);
    }

    std::unique_ptr<Database> database_;
    Photos photos_;
    std::unique_ptr<Listener> listener_;
};

bool is_postgresql(const std::string& address) {
    return address.rfind("postgresql://", 0) == 0 || address.rfind("postgres://", 0) == 0;
}

// A password in an address is nobody's business.
std::string without_password(const std::string& address) {
    const std::size_t slashes = address.find("://");
    const std::size_t at = address.find('@');
    const std::size_t colon = address.find(':', slashes + 3);
    if (at == std::string::npos || colon == std::string::npos || colon > at) {
        return address;
    }
    return address.substr(0, colon) + address.substr(at);
}

} // namespace

Answer<std::unique_ptr<Store>> open(const std::string& address, const std::string& photo_folder) {
    const bool postgresql = is_postgresql(address);
    const Dialect dialect = postgresql ? Dialect::postgresql : Dialect::sqlite;
    const std::string where = postgresql ? without_password(address) : address;
    if (sodium_init() < 0) {
        return tl::make_unexpected(Diagnostic{
            "internal", Severity::error, "no source of random numbers", where, "Tell us."});
    }
    std::error_code wrong;
    if (!postgresql) {
        fs::create_directories(address, wrong);
        if (wrong) {
            return tl::make_unexpected(Diagnostic{"store_read_only",
                                                  Severity::error,
                                                  "the folder cannot be made",
                                                  where,
                                                  "Choose another with --data."});
        }
    }
    try {
        auto database = std::make_unique<Database>(
            dialect,
            postgresql ? address
                       : "dbname=\"" + (fs::path(address) / "loafwright.db").string() + "\"",
            where);
        if (auto newer = database->migrate()) {
            return tl::make_unexpected(std::move(*newer));
        }
        return std::make_unique<SociStore>(
            std::move(database),
            Photos(photo_folder.empty() ? (fs::path(address) / "photos").string() : photo_folder),
            postgresql ? std::make_unique<Listener>(address) : nullptr);
    } catch (const std::exception& fault) {
        return tl::make_unexpected(trouble_of(fault, dialect, where));
    }
}

} // namespace loafwright::store

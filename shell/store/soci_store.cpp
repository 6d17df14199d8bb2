// SPDX-License-Identifier: Apache-2.0
//
// The store on SQLite and on PostgreSQL: what belongs together in one transaction.
#include "shell/store/database.hpp"
#include "shell/store/exported.hpp"
#include "shell/store/listener.hpp"
#include "shell/store/photos.hpp"
#include "shell/store/statements.hpp"
#include "shell/store/store.hpp"

#include <sodium.h>

#include <algorithm>
#include <filesystem>
#include <map>
#include <optional>
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
        return read<std::vector<Document>>(
            [&](soci::session& sql) { return documents_of(sql, std::string(kind)); });
    }

    Answer<std::optional<Document>> document(std::string_view kind, std::string_view id) override {
        return read<std::optional<Document>>([&](soci::session& sql) {
            return document_of(sql, std::string(kind), std::string(id));
        });
    }

    Answer<std::int64_t>
    put_document(std::string_view kind, std::string_view id, std::string_view json) override {
        return write<std::int64_t>([&](soci::session& sql) {
            return write_document(sql, std::string(kind), {std::string(id), std::string(json), 1});
        });
    }

    Answer<bool> remove_document(std::string_view kind, std::string_view id) override {
        return write<bool>([&](soci::session& sql) {
            return delete_document(sql, std::string(kind), std::string(id));
        });
    }

    Answer<Kept>
    create_bake(std::string_view id, std::string_view request, Instant created) override {
        return write<Kept>([&](soci::session& sql) {
            const BakeRecord record{std::string(id), std::string(request), created, 0};
            return insert_bake(sql, record) ? Kept::made : Kept::there;
        });
    }

    Answer<std::optional<BakeRecord>> bake(std::string_view id) override {
        return read<std::optional<BakeRecord>>(
            [&](soci::session& sql) { return bake_of(sql, std::string(id)); });
    }

    Answer<std::vector<BakeRecord>> bakes(std::size_t most) override {
        return read<std::vector<BakeRecord>>(
            [&](soci::session& sql) { return bakes_in(sql, Age::newest, most); });
    }

    Answer<std::vector<Appended>> append_all(const std::vector<Append>& appends) override {
        return write<std::vector<Appended>>([&](soci::session& sql) {
            // Locked in one order, so that two processes never wait for each other.
            std::map<std::string, std::optional<std::int64_t>> before;
            for (const Append& append : appends) {
                before.emplace(append.bake, std::nullopt);
            }
            for (auto& [name, last] : before) {
                last = lock_bake(sql, database_->dialect(), name);
            }
            auto after = before;
            std::vector<Appended> all;
            for (const Append& append : appends) {
                auto& newest = after[append.bake];
                if (!newest) {
                    all.emplace_back();
                    continue;
                }
                std::vector<std::int64_t> sequences;
                for (const NewEvent& event : append.events) {
                    sequences.push_back(add_event(sql, append.bake, event, *newest));
                }
                all.emplace_back(std::move(sequences));
            }
            for (const auto& [name, newest] : after) {
                // A retry writes nothing.
                if (newest != before[name]) {
                    close_bake(sql, database_->dialect(), name, *newest);
                }
            }
            return all;
        });
    }

    Answer<std::vector<StoredEvent>>
    events_after(std::string_view bake, std::int64_t sequence, std::size_t most) override {
        return read<std::vector<StoredEvent>>(
            [&](soci::session& sql) { return events_in(sql, std::string(bake), sequence, most); });
    }

    Answer<std::string> put_photo(std::string_view bytes) override { return photos_.put(bytes); }

    Answer<std::optional<std::string>> photo(std::string_view hash) override {
        return photos_.get(hash);
    }

    Answer<std::string> export_all() override {
        auto everything = read<Everything>([&](soci::session& sql) {
            Everything found;
            found.documents = all_documents(sql);
            for (BakeRecord& record : bakes_in(sql, Age::oldest, SIZE_MAX)) {
                std::vector<StoredEvent> events = events_in(sql, record.id, 0, SIZE_MAX);
                found.bakes.push_back({std::move(record), std::move(events)});
            }
            return found;
        });
        if (!everything) {
            return tl::make_unexpected(everything.error());
        }
        const auto hashes = photos_.all();
        if (!hashes) {
            return tl::make_unexpected(hashes.error());
        }
        for (const std::string& hash : *hashes) {
            auto bytes = photos_.get(hash);
            if (!bytes) {
                return tl::make_unexpected(bytes.error());
            }
            if (*bytes) {
                everything->photos.emplace_back(hash, std::move(**bytes));
            }
        }
        return export_json(*everything);
    }

    tl::expected<Imported, Diagnostics> import_all(std::string_view json) override {
        const auto everything = everything_from_json(json);
        if (!everything) {
            return tl::make_unexpected(everything.error());
        }
        const auto had = photos_.all();
        if (!had) {
            return tl::make_unexpected(Diagnostics{had.error()});
        }
        // Photos first: one too many does no harm, one that is told of and missing would.
        Imported photos;
        for (const auto& [hash, bytes] : everything->photos) {
            const auto kept = photos_.put(bytes);
            if (!kept) {
                return tl::make_unexpected(Diagnostics{kept.error()});
            }
            const bool is_new = !std::binary_search(had->begin(), had->end(), hash);
            (is_new ? photos.added_photos : photos.kept) += 1;
        }
        const auto added = write<Imported>([&](soci::session& sql) {
            Imported count = photos;
            for (const auto& [kind, document] : everything->documents) {
                (insert_document(sql, kind, document) ? count.added_documents : count.kept) += 1;
            }
            // Locked in one order, as above.
            std::vector<const ExportedBake*> bakes;
            for (const ExportedBake& bake : everything->bakes) {
                bakes.push_back(&bake);
            }
            std::stable_sort(bakes.begin(), bakes.end(), [](const auto* a, const auto* b) {
                return a->record.id < b->record.id;
            });
            for (const ExportedBake* bake : bakes) {
                import(sql, *bake, count);
            }
            return count;
        });
        if (!added) {
            return tl::make_unexpected(Diagnostics{added.error()});
        }
        return *added;
    }

    std::optional<int> changes_descriptor() override {
        return listener_ ? std::optional(listener_->descriptor().value_or(-1)) : std::nullopt;
    }

    std::vector<std::string> changed_bakes() override {
        return listener_ ? listener_->drain() : std::vector<std::string>();
    }

private:
    template <typename Value, typename Work>
    Answer<Value> read(Work work) {
        return answered<Value>(Access::reading, work);
    }

    template <typename Value, typename Work>
    Answer<Value> write(Work work) {
        return answered<Value>(Access::writing, work);
    }

    template <typename Value, typename Work>
    Answer<Value> answered(Access access, const Work& work) {
        std::optional<Value> value;
        try {
            database_->together(access, [&](soci::session& sql) { value = work(sql); });
        } catch (const std::exception& fault) {
            return tl::make_unexpected(trouble_of(fault, database_->dialect(), database_->where()));
        }
        return std::move(*value);
    }

    // A bake that is there keeps its request and gains the events that it lacks.
    void import(soci::session& sql, const ExportedBake& bake, Imported& count) const {
        const BakeRecord& record = bake.record;
        (insert_bake(sql, record) ? count.added_bakes : count.kept) += 1;
        const std::int64_t had = lock_bake(sql, database_->dialect(), record.id).value_or(0);
        std::int64_t last = had;
        for (const StoredEvent& event : bake.events) {
            const std::int64_t before = last;
            add_event(sql, record.id, {event.id, event.json}, last);
            (last > before ? count.added_events : count.kept) += 1;
        }
        if (last > had) {
            close_bake(sql, database_->dialect(), record.id, last);
        }
    }

    std::unique_ptr<Database> database_;
    Photos photos_;
    std::unique_ptr<Listener> listener_;
};

bool is_postgresql(const std::string& address) {
    return address.rfind("postgresql://", 0) == 0 || address.rfind("postgres://", 0) == 0;
}

// A password in an address is nobody's business: user:password@ (RFC 3986 section 3.2.1) and the
// keys of PostgreSQL that end so.
std::string without_password(std::string address) {
    const std::size_t from = address.find("://") + 3;
    const std::size_t at = address.rfind('@', address.find_first_of("/?", from));
    const std::size_t colon = address.find(':', from);
    if (at != std::string::npos && colon < at) {
        address.erase(colon, at - colon);
    }
    const std::string key = "password=";
    for (std::size_t found = address.find(key); found != std::string::npos;
         found = address.find(key, found + key.size())) {
        const std::size_t value = found + key.size();
        const std::size_t end = std::min(address.find('&', value), address.size());
        address.replace(value, end - value, "…");
    }
    return address;
}

// What the library takes for a file: without "=" all of it is the name, else the name stands in
// quotation marks and may not have both a space and such a mark in it.
std::optional<std::string> sqlite_address(const std::string& file) {
    if (file.find('=') == std::string::npos) {
        return file;
    }
    if (file.find(' ') != std::string::npos && file.find('"') != std::string::npos) {
        return std::nullopt;
    }
    return "dbname=\"" + file + "\"";
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
        const auto place = postgresql
                               ? std::optional(address)
                               : sqlite_address((fs::path(address) / "loafwright.db").string());
        if (!place) {
            return tl::make_unexpected(Diagnostic{"store_unreachable",
                                                  Severity::error,
                                                  "this folder's name cannot be used",
                                                  where,
                                                  "Choose another name, without \" and =."});
        }
        auto database = std::make_unique<Database>(dialect, *place, where);
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

// SPDX-License-Identifier: Apache-2.0
#include "shell/store/database.hpp"

#include "shell/store/migrations.hpp"

#include <soci/postgresql/soci-postgresql.h>
#include <soci/sqlite3/soci-sqlite3.h>
#include <sqlite3.h>
#include <unistd.h>

#include <cerrno>
#include <chrono>
#include <thread>
#include <utility>

namespace loafwright::store {

namespace {

constexpr long long lock_number = 5641329; // of the advisory lock while tables are made

Diagnostic told(const char* code, std::string what, const std::string& where, const char* do_this) {
    return {code, Severity::error, std::move(what), where, do_this};
}

Diagnostic full(const std::string& where) {
    return told("store_full",
                "there is no room left to keep this",
                where,
                "Make room on the disk, then try again; nothing that was kept is lost.");
}

Diagnostic read_only(const std::string& where) {
    return told("store_read_only",
                "what is kept may only be read",
                where,
                "Check the permissions of the folder and its files.");
}

Diagnostic damaged(const std::string& where, const char* what) {
    return told("store_damaged",
                what,
                where,
                "Put a copy in its place, or import an export into a new place.");
}

Diagnostic unreachable(const std::string& where, const std::string& why) {
    return told("store_unreachable",
                "what is kept cannot be reached: " + why,
                where,
                "Check the address, and that the database runs.");
}

// The first line of what the library says.
std::string first_line(const std::string& text) {
    return text.substr(0, text.find('\n'));
}

// SQLite says only that it cannot open a file where it may not make one beside it.
Diagnostic not_opened(const std::string& where, const std::string& why) {
    const bool closed = ::access(where.c_str(), W_OK) != 0 && (errno == EROFS || errno == EACCES);
    return closed ? read_only(where) : unreachable(where, why);
}

Diagnostic sqlite_trouble(int result, const std::string& where, const std::string& why) {
    switch (result & 0xff) {
    case SQLITE_FULL:
        return full(where);
    case SQLITE_READONLY:
        return read_only(where);
    case SQLITE_CORRUPT:
    case SQLITE_NOTADB:
        return damaged(where, "the file of what is kept is damaged");
    default:
        return not_opened(where, why);
    }
}

// SQLite does not wait here, whatever its time-out, when two begin with an empty file at once.
void use_wal(soci::session& session) {
    constexpr int most = 200;
    for (int turn = 1;; ++turn) {
        try {
            session << "PRAGMA journal_mode = WAL";
            return;
        } catch (const soci::sqlite3_soci_error& fault) {
            if ((fault.result() & 0xff) != SQLITE_BUSY || turn == most) {
                throw;
            }
        }
        std::this_thread::sleep_for(std::chrono::milliseconds(20));
    }
}

} // namespace

Diagnostic trouble_of(const std::exception& fault, Dialect dialect, const std::string& where) {
    const std::string why = first_line(fault.what());
    if (dialect == Dialect::sqlite) {
        if (const auto* sqlite = dynamic_cast<const soci::sqlite3_soci_error*>(&fault)) {
            return sqlite_trouble(sqlite->result(), where, why);
        }
        // Not every error of this library carries its number.
        if (why.find("readonly") != std::string::npos) {
            return read_only(where);
        }
        if (why.find("full") != std::string::npos) {
            return full(where);
        }
        return not_opened(where, why);
    }
    if (const auto* postgresql = dynamic_cast<const soci::postgresql_soci_error*>(&fault)) {
        const std::string state = postgresql->sqlstate();
        if (state == "53100") {
            return full(where);
        }
        if (state == "25006" || state == "42501") {
            return read_only(where);
        }
        if (state == "XX001" || state == "XX002") {
            return damaged(where, "the database says that it is damaged");
        }
    }
    return unreachable(where, why);
}

Database::Database(Dialect dialect, std::string address, std::string where)
    : dialect_(dialect), address_(std::move(address)), where_(std::move(where)),
      session_(dialect == Dialect::sqlite ? soci::session(soci::sqlite3, address_)
                                          : soci::session(soci::postgresql, address_)) {
    settle();
}

void Database::settle() {
    if (dialect_ == Dialect::sqlite) {
        // What was answered must be on the disk, also when the power goes: FULL, not NORMAL.
        session_ << "PRAGMA busy_timeout = 10000";
        use_wal(session_);
        session_ << "PRAGMA synchronous = FULL";
        session_ << "PRAGMA foreign_keys = ON";
    } else {
        session_ << "SET client_min_messages = warning";
    }
}

void Database::begin(Access access) {
    const bool reads = access == Access::reading;
    if (dialect_ == Dialect::sqlite) {
        // A writer from the start, since a reader that becomes one may have to give up half way. A
        // reader waits for nobody.
        session_ << (reads ? "BEGIN" : "BEGIN IMMEDIATE");
    } else {
        session_ << (reads ? "BEGIN ISOLATION LEVEL REPEATABLE READ READ ONLY" : "BEGIN");
    }
}

void Database::together(Access access, const std::function<void(soci::session&)>& work) {
    try {
        begin(access);
    } catch (const soci::soci_error&) {
        if (dialect_ == Dialect::sqlite) {
            throw;
        }
        // The connection was lost since the last time.
        session_.reconnect();
        settle();
        begin(access);
    }
    try {
        work(session_);
        session_ << "COMMIT";
    } catch (...) {
        try {
            session_ << "ROLLBACK";
        } catch (const std::exception&) {
            // It was rolled back already, or the connection is gone and the other end does it.
        }
        throw;
    }
}

std::optional<Diagnostic> Database::migrate() {
    const auto steps = migrations(dialect_);
    const auto newest = static_cast<long long>(steps.size());
    std::optional<Diagnostic> newer;
    together(Access::writing, [&](soci::session& sql) {
        if (dialect_ == Dialect::postgresql) {
            // Two programs may begin at once.
            sql << "SELECT pg_advisory_xact_lock(" << lock_number << ")";
        }
        sql << "CREATE TABLE IF NOT EXISTS loafwright_version (version INTEGER NOT NULL)";
        long long version = 0;
        soci::indicator found = soci::i_null;
        sql << "SELECT MAX(version) FROM loafwright_version", soci::into(version, found);
        if (found == soci::i_null) {
            version = 0;
            sql << "INSERT INTO loafwright_version (version) VALUES (0)";
        }
        if (version > newest) {
            newer = told("store_newer",
                         "what is kept was written by a newer program",
                         where_,
                         "Use the newer program; this one would not understand it.");
            return;
        }
        for (long long step = version; step < newest; ++step) {
            for (const std::string& statement : steps[static_cast<std::size_t>(step)]) {
                sql << statement;
            }
            sql << "UPDATE loafwright_version SET version = " << step + 1;
        }
    });
    return newer;
}

} // namespace loafwright::store

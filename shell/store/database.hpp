// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/diagnostic/diagnostic.hpp"

#include <soci/soci.h>

#include <cstdint>
#include <functional>
#include <memory>
#include <optional>
#include <string>

/// One connection to SQLite or PostgreSQL. Only this room's .cpp files include it.
namespace loafwright::store {

enum class Dialect { sqlite, postgresql };
enum class Access { reading, writing };

/// What went wrong, in words; `what` is the database's own line.
Diagnostic trouble_of(const std::exception& fault, Dialect dialect, const std::string& where);

class Database {
public:
    /// Throws what the library throws.
    Database(Dialect dialect, std::string address, std::string where);

    [[nodiscard]] Dialect dialect() const { return dialect_; }
    [[nodiscard]] const std::string& where() const { return where_; }
    soci::session& sql() { return session_; }

    /// Runs `work` in a transaction: all of it or nothing, and what it reads is of one moment or
    /// locked. Connects again where the connection was lost, once, before it begins.
    void together(Access access, const std::function<void(soci::session&)>& work);
    /// Brings the tables up to date.
    ///
    /// Errors: store_newer.
    std::optional<Diagnostic> migrate();

private:
    void settle();
    void begin(Access access);

    Dialect dialect_;
    std::string address_;
    std::string where_;
    soci::session session_;
};

} // namespace loafwright::store

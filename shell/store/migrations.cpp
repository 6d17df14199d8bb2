// SPDX-License-Identifier: Apache-2.0
#include "shell/store/migrations.hpp"

#include <utility>

namespace loafwright::store {

namespace {

// The two databases differ in how they call a whole number of 64 bits, in how they sort text
// (bytes, not letters, so that both give one order), and in strictness.
std::string in(Dialect dialect, std::string statement) {
    const bool sqlite = dialect == Dialect::sqlite;
    const std::pair<std::string, std::string> words[] = {
        {"{number}", sqlite ? "INTEGER" : "BIGINT"},
        {"{text}", sqlite ? "TEXT" : "TEXT COLLATE \"C\""},
        {"{strict}", sqlite ? " STRICT" : ""}};
    for (const auto& [mark, word] : words) {
        for (std::size_t at = statement.find(mark); at != std::string::npos;
             at = statement.find(mark)) {
            statement.replace(at, mark.size(), word);
        }
    }
    return statement;
}

} // namespace

std::vector<std::vector<std::string>> migrations(Dialect dialect) {
    return {
        // 1: documents, bakes and their events
        {in(dialect,
            "CREATE TABLE documents (kind {text} NOT NULL, id {text} NOT NULL, json {text} NOT "
            "NULL, revision {number} NOT NULL, PRIMARY KEY (kind, id)){strict}"),
         in(dialect,
            "CREATE TABLE bakes (id {text} NOT NULL PRIMARY KEY, request {text} NOT NULL, created "
            "{number} NOT NULL, last {number} NOT NULL){strict}"),
         in(dialect,
            "CREATE TABLE events (bake {text} NOT NULL REFERENCES bakes (id), sequence {number} "
            "NOT NULL, id {text} NOT NULL, json {text} NOT NULL, PRIMARY KEY (bake, sequence), "
            "UNIQUE (bake, id)){strict}"),
         "CREATE INDEX bakes_by_age ON bakes (created, id)"},
    };
}

} // namespace loafwright::store

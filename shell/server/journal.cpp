// SPDX-License-Identifier: Apache-2.0
#include "shell/server/journal.hpp"

#include "engine/learning/learn.hpp"
#include "engine/wire/bake_log_json.hpp"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <utility>
#include <variant>

namespace loafwright::server {

namespace {

using Json = nlohmann::json;

constexpr const char* document_kind = "log";

std::string document_of(std::int64_t last, const std::vector<BakeLog>& logs) {
    Json json{{"last", last}, {"logs", Json::array()}};
    for (const BakeLog& log : logs) {
        json["logs"].push_back(wire::bake_log_json(log)); // as text: it is read by who wrote it
    }
    return json.dump(-1, ' ', false, Json::error_handler_t::replace);
}

// Nothing where it was written by another program: then it is worked out again.
std::optional<std::pair<std::int64_t, std::vector<BakeLog>>> logs_from(const std::string& text) {
    const Json json = Json::parse(text, nullptr, false);
    if (!json.is_object() || !json.contains("last") || !json["last"].is_number_integer() ||
        !json.contains("logs") || !json["logs"].is_array()) {
        return std::nullopt;
    }
    std::vector<BakeLog> logs;
    for (const Json& one : json["logs"]) {
        auto log = wire::bake_log_from_json(
            one.is_string() ? one.get_ref<const std::string&>() : one.dump(), "log");
        if (!log) {
            return std::nullopt;
        }
        logs.push_back(std::move(*log));
    }
    return std::make_pair(json["last"].get<std::int64_t>(), std::move(logs));
}

} // namespace

std::vector<BakeLog> Journal::made_of(const Told& told) const {
    return bake_logs(
        std::get<Plan>(told.bake->outcome), told.bake->known->fitted, told.events, knowledge_);
}

std::optional<Diagnostic> Journal::read_kept(const std::vector<store::BakeRecord>& bakes) {
    std::vector<store::Document> documents;
    const auto trouble = keeper_.with([&](store::Store& store) -> std::optional<Diagnostic> {
        for (const store::BakeRecord& record : bakes) {
            auto document = store.document(document_kind, record.id);
            if (!document) {
                return document.error();
            }
            if (*document) {
                documents.push_back(std::move(**document));
            }
        }
        return std::nullopt;
    });
    if (trouble) {
        return trouble;
    }
    for (const store::Document& document : documents) {
        if (auto kept = logs_from(document.json)) {
            Entry& entry = entries_[document.id];
            entry.last = kept->first;
            entry.logs = std::move(kept->second);
        }
    }
    read_ = true;
    return std::nullopt;
}

std::optional<Diagnostic> Journal::catch_up() {
    const std::lock_guard guard(lock_);
    const auto bakes =
        keeper_.with([](store::Store& store) { return store.bakes(most_learned_from); });
    if (!bakes) {
        return bakes.error();
    }
    if (!read_) {
        if (auto trouble = read_kept(*bakes)) {
            return trouble;
        }
    }
    std::map<std::string, Entry> now;
    for (const store::BakeRecord& record : *bakes) {
        Entry entry = std::move(entries_[record.id]);
        entry.created = record.created;
        if (entry.last < record.last) {
            if (const auto told = bakes_.told_of(record.id)) {
                entry.last = told->last;
                entry.logs = made_of(*told);
                // Where it cannot be kept (a full disk) it is worked out again at the next start.
                static_cast<void>(keeper_.with([&](store::Store& store) {
                    return store.put_document(
                        document_kind, record.id, document_of(entry.last, entry.logs));
                }));
            }
        }
        now[record.id] = std::move(entry);
    }
    entries_ = std::move(now);
    std::vector<BakeLog> logs;
    for (const auto& [id, entry] : entries_) {
        logs.insert(logs.end(), entry.logs.begin(), entry.logs.end());
    }
    factors_ = learn(logs, knowledge_);
    return std::nullopt;
}

KitchenFactors Journal::factors() const {
    const std::lock_guard guard(lock_);
    return factors_;
}

tl::expected<std::vector<BakeLog>, Response> Journal::logs_of(const std::string& id) {
    const auto told = bakes_.told_of(id);
    if (!told) {
        return tl::make_unexpected(told.error());
    }
    return made_of(*told);
}

std::vector<BakeLog> Journal::all() const {
    const std::lock_guard guard(lock_);
    std::vector<const Entry*> entries;
    for (const auto& [id, entry] : entries_) {
        entries.push_back(&entry);
    }
    std::stable_sort(entries.begin(), entries.end(), [](const Entry* a, const Entry* b) {
        return a->created.seconds < b->created.seconds;
    });
    std::vector<BakeLog> logs;
    for (const Entry* entry : entries) {
        logs.insert(logs.end(), entry->logs.begin(), entry->logs.end());
    }
    return logs;
}

} // namespace loafwright::server

// SPDX-License-Identifier: Apache-2.0
#include "shell/store/exported.hpp"

#include "engine/quantity/plain_id.hpp"
#include "shell/store/json_depth.hpp"
#include "shell/store/photos.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>
#include <sodium.h>

#include <algorithm>
#include <optional>

namespace loafwright::store {

namespace {

using Json = nlohmann::ordered_json;

constexpr std::size_t most_entries = 1000000;
constexpr std::int64_t most_revisions = 1000000000000; // more than anybody writes
constexpr std::int64_t earliest = -62135596800;        // 0001-01-01T00:00:00Z
constexpr std::int64_t latest = 253402300799;          // 9999-12-31T23:59:59Z, the last of RFC 3339

std::string on_one_line(const Json& json) {
    return json.dump(-1, ' ', false, Json::error_handler_t::replace);
}

std::string base64(std::string_view bytes) {
    std::string text(sodium_base64_ENCODED_LEN(bytes.size(), sodium_base64_VARIANT_ORIGINAL), '\0');
    sodium_bin2base64(text.data(),
                      text.size(),
                      reinterpret_cast<const unsigned char*>(bytes.data()),
                      bytes.size(),
                      sodium_base64_VARIANT_ORIGINAL);
    text.pop_back(); // its NUL
    return text;
}

std::optional<std::string> from_base64(const std::string& text) {
    std::string bytes(text.size() / 4 * 3 + 3, '\0');
    std::size_t size = 0;
    const char* end = nullptr;
    const int wrong = sodium_base642bin(reinterpret_cast<unsigned char*>(bytes.data()),
                                        bytes.size(),
                                        text.data(),
                                        text.size(),
                                        nullptr,
                                        &size,
                                        &end,
                                        sodium_base64_VARIANT_ORIGINAL);
    if (wrong != 0 || end != text.data() + text.size()) {
        return std::nullopt;
    }
    bytes.resize(size);
    return bytes;
}

class Reader {
public:
    explicit Reader(const Json& top) : top_(top) {}

    tl::expected<Everything, Diagnostics> all() {
        const auto version = top_.is_object() ? top_.find("loafwright_export") : top_.end();
        if (version == top_.end() || *version != 1) {
            wrong("", "this is no export of version 1");
        } else {
            documents();
            bakes();
            photos();
        }
        if (!faults_.empty()) {
            return tl::make_unexpected(std::move(faults_));
        }
        return std::move(everything_);
    }

private:
    void wrong(const std::string& path, std::string what) {
        if (faults_.size() < 20) {
            faults_.push_back({"import_unreadable",
                               Severity::error,
                               std::move(what),
                               path.empty() ? "export" : "export " + path,
                               "Choose a file that an export has made."});
        }
    }

    const Json& list(const Json& object, const char* key, const std::string& path) {
        static const Json none = Json::array();
        const auto found = object.find(key);
        if (found == object.end() || !found->is_array() || found->size() > most_entries) {
            wrong(path + key, fmt::format("expected a list of {}", key));
            return none;
        }
        return *found;
    }

    std::string text(const Json& object, const char* key, const std::string& path) {
        const auto found = object.is_object() ? object.find(key) : object.end();
        if (found == object.end() || !found->is_string()) {
            wrong(path + "." + key, "expected text");
            return "";
        }
        return found->get<std::string>();
    }

    std::string name(const Json& object, const char* key, const std::string& path) {
        std::string found = text(object, key, path);
        if (!is_plain_id(found)) {
            wrong(path + "." + key, "expected 1 to 64 letters, digits, - and _");
        }
        return found;
    }

    std::int64_t whole(const Json& object,
                       const char* key,
                       const std::string& path,
                       std::int64_t least,
                       std::int64_t most) {
        const auto found = object.is_object() ? object.find(key) : object.end();
        // What is greater than any signed number has a type of its own.
        const bool fits =
            found != object.end() && found->is_number_integer() &&
            (!found->is_number_unsigned() || found->get<std::uint64_t>() <= INT64_MAX);
        const std::int64_t value = fits ? found->get<std::int64_t>() : 0;
        if (!fits || value < least || value > most) {
            wrong(path + "." + key,
                  fmt::format("expected a whole number from {} to {}", least, most));
            return least;
        }
        return value;
    }

    // JSON inside, as text on one line.
    std::string inside(const Json& object, const char* key, const std::string& path) {
        const auto found = object.is_object() ? object.find(key) : object.end();
        if (found == object.end() || !found->is_object()) {
            wrong(path + "." + key, "expected an object");
            return "{}";
        }
        return on_one_line(*found);
    }

    void documents() {
        const Json& all = list(top_, "documents", "");
        for (std::size_t n = 0; n < all.size(); ++n) {
            const std::string path = fmt::format("documents[{}]", n);
            std::string kind = name(all[n], "kind", path);
            Document document{name(all[n], "id", path),
                              inside(all[n], "json", path),
                              whole(all[n], "revision", path, 1, most_revisions)};
            everything_.documents.emplace_back(std::move(kind), std::move(document));
        }
    }

    void bakes() {
        const Json& all = list(top_, "bakes", "");
        for (std::size_t n = 0; n < all.size(); ++n) {
            const std::string path = fmt::format("bakes[{}]", n);
            ExportedBake bake;
            bake.record.id = name(all[n], "id", path);
            bake.record.request = inside(all[n], "request", path);
            bake.record.created = Instant{whole(all[n], "created", path, earliest, latest)};
            static const Json none = Json::object();
            const Json& events = list(all[n].is_object() ? all[n] : none, "events", path + ".");
            for (std::size_t e = 0; e < events.size(); ++e) {
                const std::string place = fmt::format("{}.events[{}]", path, e);
                StoredEvent event{static_cast<std::int64_t>(e) + 1,
                                  name(events[e], "id", place),
                                  events[e].is_object() ? on_one_line(events[e]) : "{}"};
                bake.events.push_back(std::move(event));
            }
            bake.record.last = static_cast<std::int64_t>(bake.events.size());
            everything_.bakes.push_back(std::move(bake));
        }
    }

    void photos() {
        const Json& all = list(top_, "photos", "");
        for (std::size_t n = 0; n < all.size(); ++n) {
            const std::string path = fmt::format("photos[{}]", n);
            const std::string hash = text(all[n], "sha256", path);
            auto bytes = from_base64(text(all[n], "base64", path));
            if (!bytes || !is_content_hash(hash) || sha256(*bytes) != hash) {
                wrong(path, "this photo is not what its name says");
                continue;
            }
            everything_.photos.emplace_back(hash, std::move(*bytes));
        }
    }

    const Json& top_;
    Everything everything_;
    Diagnostics faults_;
};

} // namespace

tl::expected<std::string, Diagnostic> export_json(const Everything& everything) {
    std::optional<Diagnostic> broken;
    // Printed anew, so that an import and its export are the same whoever printed it first.
    const auto printed = [&broken](const std::string& json, std::string name) {
        const Json parsed = Json::parse(json, nullptr, false);
        if (!parsed.is_object() && !broken) {
            broken = Diagnostic{"store_damaged",
                                Severity::error,
                                "what is kept here cannot be read",
                                std::move(name),
                                "Put a copy of what is kept in its place, or forget this entry."};
        }
        return on_one_line(parsed);
    };
    std::string out = "{\"loafwright_export\":1,\n\"documents\":[";
    const char* between = "\n";
    for (const auto& [kind, document] : everything.documents) {
        out += fmt::format(R"({}{{"kind":"{}","id":"{}","revision":{},"json":{}}})",
                           between,
                           kind,
                           document.id,
                           document.revision,
                           printed(document.json, kind + " " + document.id));
        between = ",\n";
    }
    out += "],\n\"bakes\":[";
    between = "\n";
    for (const ExportedBake& bake : everything.bakes) {
        const std::string& id = bake.record.id;
        out += fmt::format(R"({}{{"id":"{}","created":{},"request":{},"events":[)",
                           between,
                           id,
                           bake.record.created.seconds,
                           printed(bake.record.request, "bake " + id));
        between = "";
        for (const StoredEvent& event : bake.events) {
            out += between + printed(event.json, "event " + event.id + " of bake " + id);
            between = ",\n";
        }
        out += "]}";
        between = ",\n";
    }
    out += "],\n\"photos\":[";
    between = "\n";
    for (const auto& [hash, bytes] : everything.photos) {
        out += fmt::format(R"({}{{"sha256":"{}","base64":"{}"}})", between, hash, base64(bytes));
        between = ",\n";
    }
    if (broken) {
        return tl::make_unexpected(std::move(*broken));
    }
    return out + "]}\n";
}

tl::expected<Everything, Diagnostics> everything_from_json(std::string_view json) {
    const auto refused = [](std::string what) {
        return tl::make_unexpected(Diagnostics{{"import_unreadable",
                                                Severity::error,
                                                std::move(what),
                                                "export",
                                                "Choose a file that an export has made."}});
    };
    try {
        if (is_nested_too_deeply(json)) {
            return refused("this is nested deeper than any export");
        }
        return Reader(Json::parse(json)).all();
    } catch (const Json::exception& fault) {
        return refused("this is no JSON");
    }
}

} // namespace loafwright::store

// SPDX-License-Identifier: Apache-2.0
//
// What is kept besides bakes: recipes, the kitchen and the usual day, photos, and all of it as one
// file.
#include "engine/quantity/plain_id.hpp"
#include "shell/server/api.hpp"
#include "shell/settings/bake_request.hpp"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <utility>

namespace loafwright::server {

namespace {

using Json = nlohmann::ordered_json;

constexpr std::string_view recipe_kind = "recipe";
constexpr std::string_view habits_kind = "settings";
constexpr std::string_view habits_id = "habits";
constexpr std::size_t largest_photo = 8388608;
constexpr std::size_t largest_import = 268435456;

std::string printed(const Json& json) {
    return json.dump(-1, ' ', false, Json::error_handler_t::replace);
}

Response notebook(const ApiParts& parts) {
    const auto recipes =
        parts.keeper.with([](store::Store& store) { return store.documents(recipe_kind); });
    if (!recipes) {
        return store_trouble(recipes.error());
    }
    const auto habits = parts.keeper.with(
        [](store::Store& store) { return store.document(habits_kind, habits_id); });
    if (!habits) {
        return store_trouble(habits.error());
    }
    Json json{{"version", 1}, {"recipes", Json::array()}, {"settings", nullptr}};
    for (const store::Document& document : *recipes) {
        Json recipe = Json::parse(document.json, nullptr, false);
        if (recipe.is_object()) {
            recipe["id"] = document.id;
            json["recipes"].push_back(std::move(recipe));
        }
    }
    if (*habits) {
        json["settings"] = Json::parse((*habits)->json, nullptr, false);
    }
    return json_response(200, printed(json));
}

Response
put(const ApiParts& parts, std::string_view kind, std::string_view id, const std::string& json) {
    const auto kept =
        parts.keeper.with([&](store::Store& store) { return store.put_document(kind, id, json); });
    if (!kept) {
        return store_trouble(kept.error());
    }
    return json_response(200, printed({{"version", 1}, {"id", id}, {"revision", *kept}}));
}

Response put_recipe(const ApiParts& parts, const Request& request) {
    if (!is_plain_id(request.parameters.front())) {
        return not_here("that is no name for a recipe: 1 to 64 letters, digits, - and _");
    }
    const auto read = settings::bake_request_from_json(
        R"({"breads": [)" + request.body + "]}", "recipe", parts.clock());
    if (!read) {
        return error_response(400, read.error());
    }
    const breads::BreadText& bread = read->request.breads.front();
    Json json{{"name", bread.name}, {"text", bread.text.view()}, {"answers", Json::array()}};
    for (const Answer& answer : bread.answers) {
        json["answers"].push_back({{"key", answer.key}, {"value", answer.value}});
    }
    return put(parts, recipe_kind, request.parameters.front(), printed(json));
}

Response forget_recipe(const ApiParts& parts, const Request& request) {
    const auto gone = parts.keeper.with([&request](store::Store& store) {
        return store.remove_document(recipe_kind, request.parameters.front());
    });
    if (!gone) {
        return store_trouble(gone.error());
    }
    return *gone ? json_response(200, printed({{"version", 1}}))
                 : not_here("there is no such recipe");
}

Response put_habits(const ApiParts& parts, const Request& request) {
    const Diagnostics faults = settings::faults_of_habits(request.body, "settings", parts.clock());
    if (!faults.empty()) {
        return error_response(400, faults);
    }
    return put(parts, habits_kind, habits_id, printed(Json::parse(request.body, nullptr, false)));
}

// By its first bytes, whatever it calls itself.
std::string picture_type(std::string_view bytes) {
    if (bytes.substr(0, 3) == "\xff\xd8\xff") {
        return "image/jpeg";
    }
    if (bytes.substr(0, 8) == "\x89PNG\r\n\x1a\n") {
        return "image/png";
    }
    if (bytes.size() > 12 && bytes.substr(0, 4) == "RIFF" && bytes.substr(8, 4) == "WEBP") {
        return "image/webp";
    }
    return "";
}

Response keep_photo(const ApiParts& parts, const Request& request) {
    if (picture_type(request.body).empty()) {
        return error_response(415,
                              "photo_unknown",
                              "that is no JPEG, PNG or WebP picture",
                              "Send the photo as your camera makes it.");
    }
    const auto kept = parts.keeper.with(
        [&request](store::Store& store) { return store.put_photo(request.body); });
    return kept ? json_response(201, printed({{"version", 1}, {"photo", *kept}}))
                : store_trouble(kept.error());
}

Response show_photo(const ApiParts& parts, const Request& request) {
    const auto found = parts.keeper.with(
        [&request](store::Store& store) { return store.photo(request.parameters.front()); });
    if (!found) {
        return store_trouble(found.error());
    }
    if (!*found) {
        return not_here("there is no such photo");
    }
    Response response;
    response.content_type = picture_type(**found);
    response.body = std::make_shared<const std::string>(**found);
    response.headers.emplace_back("Cache-Control", "private, max-age=31536000, immutable");
    return response;
}

Response export_all(const ApiParts& parts) {
    auto all = parts.keeper.with([](store::Store& store) { return store.export_all(); });
    if (!all) {
        return store_trouble(all.error());
    }
    Response response = json_response(200, std::move(*all));
    response.headers.emplace_back("Content-Disposition",
                                  "attachment; filename=\"loafwright-export.json\"");
    return response;
}

Response import_all(const ApiParts& parts, const Request& request) {
    const auto added = parts.keeper.with(
        [&request](store::Store& store) { return store.import_all(request.body); });
    if (!added) {
        const bool ours = added.error().front().code.rfind("store_", 0) == 0;
        return error_response(ours ? 503 : 400, added.error());
    }
    return json_response(200,
                         printed({{"version", 1},
                                  {"documents", added->added_documents},
                                  {"bakes", added->added_bakes},
                                  {"events", added->added_events},
                                  {"photos", added->added_photos},
                                  {"kept", added->kept}}));
}

} // namespace

Response store_trouble(const Diagnostic& diagnostic) {
    return error_response(503, Diagnostics{diagnostic});
}

Response not_here(std::string what) {
    return error_response(
        404, "not_here", std::move(what), "Go back to the list and choose again.");
}

void add_notebook_routes(Router& router, const ApiParts& parts) {
    const auto add = [&](const char* method,
                         const char* path,
                         RouteRules rules,
                         Response (*make)(const ApiParts&, const Request&)) {
        router.add(method, path, rules, at_once([parts, make](const Request& request) {
                       return make(parts, request);
                   }));
    };
    router.add("GET", "/api/v1/notebook", {}, at_once([parts](const Request& /*request*/) {
                   return notebook(parts);
               }));
    router.add("GET", "/api/v1/export", {}, at_once([parts](const Request& /*request*/) {
                   return export_all(parts);
               }));
    add("PUT", "/api/v1/recipes/{}", {}, put_recipe);
    add("DELETE", "/api/v1/recipes/{}", {}, forget_recipe);
    add("PUT", "/api/v1/settings", {}, put_habits);
    add("POST", "/api/v1/photos", {largest_photo, false}, keep_photo);
    add("GET", "/api/v1/photos/{}", {}, show_photo);
    add("POST", "/api/v1/import", {largest_import, false}, import_all);
}

} // namespace loafwright::server

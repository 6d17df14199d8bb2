// SPDX-License-Identifier: Apache-2.0
//
// Everything out as one text and in again: docs/export.md. The export is read by nlohmann/json as
// well, which knows nothing of how it is written.
#include "shell/store/exported.hpp"
#include "tests/store/cluster.hpp"
#include "tests/store/places.hpp"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>
#include <rapidcheck/gtest.h>

#include <string>

namespace loafwright::store {
namespace {

using Json = nlohmann::ordered_json;

constexpr const char* nothing =
    "{\"loafwright_export\":1,\n\"documents\":[],\n\"bakes\":[],\n\"photos\":[]}\n";

void fill(Store& store) {
    taken(store.put_document("settings", "habits", R"({"room_c":19.5})"));
    taken(store.put_document("recipe", "rye", R"({"text":"old"})"));
    taken(store.put_document(
        "recipe",
        "rye",
        "{ \"text\" : \"500 g \\u00bd \\ud83c\\udf5e \\\"rye\\\" \\u0000\",\n\"n\":1e2}"));
    taken(store.create_bake("b-1", R"({"breads":[{"text":"it's\nrye"}]})", Instant{1790000000}));
    taken(store.create_bake("a_2", R"({"breads":[]})", Instant{1790000000}));
    taken(store.create_bake("old", R"({})", Instant{-1}));
    taken(store.append_all(
        {{"b-1",
          {{"e2", R"({"id":"e2","kind":"done"})"}, {"e1", R"({"id":"e1","at":4102444800})"}}},
         {"old", {{"e1", R"({"id":"e1"})"}}}}));
    taken(store.put_photo(std::string("\xff\xd8\xff\x00\x01 photo", 11)));
    taken(store.put_photo(""));
}

class exported : public OnBoth {
protected:
    // The other database.
    [[nodiscard]] std::unique_ptr<Store> other() {
        other_ = std::make_unique<Place>(GetParam() == Where::folder && Cluster::get() != nullptr
                                             ? Where::postgresql
                                             : Where::folder);
        return other_->open();
    }

private:
    std::unique_ptr<Place> other_;
};
LOAFWRIGHT_ON_BOTH(exported);

TEST_P(exported, an_empty_store_is_an_export_too) {
    EXPECT_EQ(taken(store_->export_all()), nothing);
    const auto imported = taken(store_->import_all(nothing));
    EXPECT_EQ(imported.added_documents + imported.added_bakes + imported.added_events +
                  imported.added_photos + imported.kept,
              0);
}

TEST_P(exported, everything_is_in_it_and_in_order) {
    fill(*store_);
    const Json json = Json::parse(taken(store_->export_all()));
    EXPECT_EQ(json["loafwright_export"], 1);
    ASSERT_EQ(json["documents"].size(), 2U);
    EXPECT_EQ(json["documents"][0]["kind"], "recipe");
    EXPECT_EQ(json["documents"][0]["revision"], 2);
    EXPECT_EQ(json["documents"][0]["json"]["text"],
              std::string("500 g ½ \U0001F35E \"rye\" \0", 21));
    EXPECT_EQ(json["documents"][1]["json"]["room_c"], 19.5);
    ASSERT_EQ(json["bakes"].size(), 3U);
    EXPECT_EQ(json["bakes"][0]["id"], "old");
    EXPECT_EQ(json["bakes"][0]["created"], -1);
    EXPECT_EQ(json["bakes"][1]["id"], "a_2");
    EXPECT_EQ(json["bakes"][2]["events"][0]["id"], "e2");
    EXPECT_EQ(json["bakes"][2]["events"][1]["at"], 4102444800);
    ASSERT_EQ(json["photos"].size(), 2U);
    // RFC 4648: 11 bytes become 16 letters, the last one of which is "=".
    const bool first = json["photos"][0]["base64"] != "";
    EXPECT_EQ(json["photos"][first ? 0 : 1]["base64"], "/9j/AAEgcGhvdG8=");
}

TEST_P(exported, into_the_other_database_and_out_again_are_the_same_bytes) {
    fill(*store_);
    const std::string out = taken(store_->export_all());
    const auto second = other();
    const auto imported = taken(second->import_all(out));
    EXPECT_EQ(imported.added_documents, 2);
    EXPECT_EQ(imported.added_bakes, 3);
    EXPECT_EQ(imported.added_events, 3);
    EXPECT_EQ(imported.added_photos, 2);
    EXPECT_EQ(imported.kept, 0);
    EXPECT_EQ(taken(second->export_all()), out);
    EXPECT_EQ(taken(second->bake("b-1"))->last, 2);
    // A second time there is nothing to add.
    const auto again = taken(second->import_all(out));
    EXPECT_EQ(again.added_documents + again.added_bakes + again.added_events + again.added_photos,
              0);
    EXPECT_EQ(again.kept, 10);
    EXPECT_EQ(taken(second->export_all()), out);
}

TEST_P(exported, an_import_leaves_what_is_there_and_adds_the_rest) {
    fill(*store_);
    const auto second = other();
    taken(second->put_document("recipe", "rye", R"({"mine":1})"));
    taken(second->create_bake("b-1", R"({"mine":1})", Instant{5}));
    taken(second->append_all({{"b-1", {{"mine", R"({"id":"mine"})"}, {"e1", R"({"id":"e1"})"}}}}));
    const auto imported = taken(second->import_all(taken(store_->export_all())));
    EXPECT_EQ(imported.added_documents, 1);
    EXPECT_EQ(imported.added_bakes, 2);
    EXPECT_EQ(imported.added_events, 2);
    EXPECT_EQ(imported.kept, 3);
    EXPECT_EQ(taken(second->document("recipe", "rye"))->json, R"({"mine":1})");
    EXPECT_EQ(taken(second->bake("b-1"))->request, R"({"mine":1})");
    EXPECT_EQ(numbered(*second, "b-1"),
              (std::map<std::string, std::int64_t>{{"mine", 1}, {"e1", 2}, {"e2", 3}}));
    // Numbers go on behind what came.
    EXPECT_EQ(taken(second->append_all({{"b-1", {{"next", R"({"id":"next"})"}}}})),
              (std::vector<Appended>{std::vector<std::int64_t>{4}}));
}

TEST_P(exported, what_cannot_be_an_entry_is_named) {
    taken(store_->put_document("recipe", "rye", "no JSON"));
    const auto out = store_->export_all();
    ASSERT_FALSE(out);
    EXPECT_EQ(out.error().code, "store_damaged");
    EXPECT_EQ(out.error().where, "recipe rye");
}

std::string
with(const std::string& documents, const std::string& bakes = "", const std::string& photos = "") {
    return R"({"loafwright_export":1,"documents":[)" + documents + R"(],"bakes":[)" + bakes +
           R"(],"photos":[)" + photos + "]}";
}

struct Bad {
    std::string text;
    std::string where;
};

std::vector<Bad> bad_imports() {
    const std::string good = R"({"kind":"recipe","id":"good","revision":1,"json":{}},)";
    const auto document = [&](const std::string& more) { return with(good + "{" + more + "}"); };
    const auto bake = [&](const std::string& more) {
        return with(good.substr(0, good.size() - 1), "{" + more + "}");
    };
    const auto photo = [&](const std::string& more) {
        return with(good.substr(0, good.size() - 1), "", "{" + more + "}");
    };
    const std::string deep(100000, '[');
    return {
        {"", "export"},
        {std::string("\0\xff\xfe{}", 5), "export"},
        {"[]", "export"},
        {"1", "export"},
        {"null", "export"},
        {"{}", "export"},
        {R"({"loafwright_export":2,"documents":[],"bakes":[],"photos":[]})", "export"},
        {R"({"loafwright_export":"1","documents":[],"bakes":[],"photos":[]})", "export"},
        {R"({"loafwright_export":1,"documents":[],"bakes":{},"photos":[]})", "export bakes"},
        {R"({"loafwright_export":1,"documents":[],"bakes":[]})", "export photos"},
        {deep, "export"},
        {with("",
              R"({"id":"a","created":1,"events":[],"request":{"x":)" + std::string(70, '[') +
                  std::string(70, ']') + "}}"),
         "export"},
        {with("1"), "export documents[0].kind"},
        {document(R"("id":"a","revision":1,"json":{})"), "export documents[1].kind"},
        {document(R"("kind":"","id":"a","revision":1,"json":{})"), "export documents[1].kind"},
        {document(R"("kind":"recipe","revision":1,"json":{})"), "export documents[1].id"},
        {document(R"("kind":"recipe","id":"","revision":1,"json":{})"), "export documents[1].id"},
        {document(R"("kind":"recipe","id":"../a","revision":1,"json":{})"),
         "export documents[1].id"},
        {document(R"("kind":"recipe","id":"a\u0000","revision":1,"json":{})"),
         "export documents[1].id"},
        {document(R"("kind":"recipe","id":")" + std::string(65, 'a') +
                  R"(","revision":1,"json":{})"),
         "export documents[1].id"},
        {document(R"("kind":"recipe","id":"a","revision":0,"json":{})"),
         "export documents[1].revision"},
        {document(R"("kind":"recipe","id":"a","revision":1.0,"json":{})"),
         "export documents[1].revision"},
        {document(R"("kind":"recipe","id":"a","revision":18446744073709551615,"json":{})"),
         "export documents[1].revision"},
        {document(R"("kind":"recipe","id":"a","revision":1,"json":"{}")"),
         "export documents[1].json"},
        {bake(R"("id":"a/b","created":1,"request":{},"events":[])"), "export bakes[0].id"},
        {bake(R"("id":"a","created":9223372036854775808,"request":{},"events":[])"),
         "export bakes[0].created"},
        {bake(R"("id":"a","created":253402300800,"request":{},"events":[])"),
         "export bakes[0].created"},
        {bake(R"("id":"a","created":1,"request":[],"events":[])"), "export bakes[0].request"},
        {bake(R"("id":"a","created":1,"request":{},"events":{})"), "export bakes[0].events"},
        {bake(R"("id":"a","created":1,"request":{},"events":[{"id":"e"},{}])"),
         "export bakes[0].events[1].id"},
        {bake(R"("id":"a","created":1,"request":{},"events":[{"id":"e e"}])"),
         "export bakes[0].events[0].id"},
        // "abc" under the hash of something else, in no base64, and by no name.
        {photo(R"("sha256":")" + std::string(64, '0') + R"(","base64":"YWJj")"),
         "export photos[0]"},
        {photo(
             R"("sha256":"ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad","base64":"YWJ")"),
         "export photos[0]"},
        {photo(R"("sha256":"../ba","base64":"YWJj")"), "export photos[0]"},
    };
}

TEST_P(exported, a_bad_import_adds_nothing_and_says_where) {
    for (const Bad& bad : bad_imports()) {
        const auto imported = store_->import_all(bad.text);
        ASSERT_FALSE(imported) << bad.text;
        EXPECT_EQ(imported.error().at(0).code, "import_unreadable");
        EXPECT_EQ(imported.error().at(0).where, bad.where) << bad.text.substr(0, 300);
    }
    EXPECT_EQ(taken(store_->export_all()), nothing);
}

TEST(import, many_faults_are_told_up_to_twenty) {
    std::string documents = "1";
    for (int n = 0; n < 1000; ++n) {
        documents += ",1";
    }
    const auto read = everything_from_json(with(documents));
    ASSERT_FALSE(read);
    EXPECT_EQ(read.error().size(), 20U);
}

RC_GTEST_PROP(import, any_bytes_are_refused_in_words, (const std::string& bytes)) {
    const auto read = everything_from_json(bytes);
    RC_ASSERT(!read);
    RC_ASSERT(read.error().at(0).code == "import_unreadable");
}

// One byte of an export changed to any other: refused, or read as something that has its promises.
RC_GTEST_PROP(import, a_changed_byte_is_refused_or_harmless, ()) {
    static const std::string whole = [] {
        const Place place(Where::folder);
        const auto store = place.open();
        fill(*store);
        return taken(store->export_all());
    }();
    std::string changed = whole;
    changed[*rc::gen::inRange<std::size_t>(0, whole.size())] = *rc::gen::arbitrary<char>();
    const auto read = everything_from_json(changed);
    if (read) {
        const auto out = export_json(*read);
        RC_ASSERT(out.has_value());
        const auto again = everything_from_json(*out);
        RC_ASSERT(again.has_value());
        RC_ASSERT(export_json(*again) == *out);
    } else {
        RC_ASSERT(read.error().at(0).code == "import_unreadable");
    }
}

} // namespace
} // namespace loafwright::store

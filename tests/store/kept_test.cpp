// SPDX-License-Identifier: Apache-2.0
//
// What the store promises, one suite run on both databases. Order is that of bytes, which
// std::string compares by.
#include "tests/store/places.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <string>
#include <vector>

namespace loafwright::store {
namespace {

using kept = OnBoth;
LOAFWRIGHT_ON_BOTH(kept);

std::vector<std::string> ids_of(const std::vector<BakeRecord>& bakes) {
    std::vector<std::string> ids;
    for (const BakeRecord& bake : bakes) {
        ids.push_back(bake.id);
    }
    return ids;
}

using Numbers = std::vector<std::int64_t>;

TEST_P(kept, a_document_counts_its_revisions_and_the_last_one_wins) {
    const auto second = open();
    EXPECT_EQ(taken(store_->put_document("recipe", "rye", R"({"n":1})")), 1);
    EXPECT_EQ(taken(second->put_document("recipe", "rye", R"({"n":2})")), 2);
    EXPECT_EQ(taken(store_->put_document("recipe", "rye", R"({"n":3})")), 3);
    EXPECT_EQ(taken(store_->put_document("settings", "rye", "{}")), 1) << "another kind";
    const auto found = taken(second->document("recipe", "rye"));
    ASSERT_TRUE(found);
    EXPECT_EQ(found->id, "rye");
    EXPECT_EQ(found->json, R"({"n":3})");
    EXPECT_EQ(found->revision, 3);
    EXPECT_FALSE(taken(store_->document("recipe", "wheat")));
}

TEST_P(kept, documents_come_in_byte_order) {
    std::vector<std::string> ids = {"b", "a", "B", "a-b", "a_b", "ab", "a1", "Z", "_", "10", "9"};
    for (const std::string& id : ids) {
        taken(store_->put_document("recipe", id, "{}"));
    }
    taken(store_->put_document("settings", "a", "{}"));
    std::sort(ids.begin(), ids.end());
    std::vector<std::string> found;
    for (const Document& document : taken(store_->documents("recipe"))) {
        found.push_back(document.id);
    }
    EXPECT_EQ(found, ids);
}

TEST_P(kept, a_removed_document_is_gone_and_begins_again_at_one) {
    taken(store_->put_document("recipe", "rye", "{}"));
    taken(store_->put_document("recipe", "rye", "{}"));
    EXPECT_TRUE(taken(store_->remove_document("recipe", "rye")));
    EXPECT_FALSE(taken(store_->remove_document("recipe", "rye")));
    EXPECT_FALSE(taken(store_->document("recipe", "rye")));
    EXPECT_EQ(taken(store_->put_document("recipe", "rye", "{}")), 1);
}

TEST_P(kept, a_bake_that_is_there_stays_as_it_is) {
    EXPECT_EQ(taken(store_->create_bake("one", R"({"a":1})", Instant{-5})), Kept::made);
    taken(store_->append_all({{"one", {{"e1", "{}"}}}}));
    EXPECT_EQ(taken(open()->create_bake("one", R"({"a":2})", Instant{7})), Kept::there);
    const auto bake = taken(store_->bake("one"));
    ASSERT_TRUE(bake);
    EXPECT_EQ(bake->request, R"({"a":1})");
    EXPECT_EQ(bake->created, Instant{-5});
    EXPECT_EQ(bake->last, 1);
    EXPECT_FALSE(taken(store_->bake("two")));
}

TEST_P(kept, bakes_come_newest_first) {
    const std::int64_t far = 4102444800; // 2100, more than 32 bits hold
    taken(store_->create_bake("middle", "{}", Instant{1000}));
    taken(store_->create_bake("new", "{}", Instant{far}));
    taken(store_->create_bake("old", "{}", Instant{-1000}));
    EXPECT_EQ(ids_of(taken(store_->bakes(10))), (std::vector<std::string>{"new", "middle", "old"}));
    EXPECT_EQ(ids_of(taken(store_->bakes(2))), (std::vector<std::string>{"new", "middle"}));
    EXPECT_EQ(taken(store_->bakes(0)).size(), 0U);
    EXPECT_EQ(taken(store_->bakes(SIZE_MAX)).size(), 3U);
    EXPECT_EQ(taken(store_->bakes(1)).front().created, Instant{far});
}

TEST_P(kept, events_are_numbered_and_a_retry_keeps_its_number) {
    taken(store_->create_bake("one", "{}", Instant{}));
    taken(store_->create_bake("two", "{}", Instant{}));
    auto answer = taken(store_->append_all(
        {{"one", {{"a", "{}"}, {"b", "{}"}, {"a", R"({"again":1})"}}}, {"two", {{"a", "{}"}}}}));
    ASSERT_EQ(answer.size(), 2U);
    EXPECT_EQ(answer[0], (Numbers{1, 2, 1}));
    EXPECT_EQ(answer[1], (Numbers{1})) << "each bake counts for itself";
    // The same bake in two parts of one call, and what was there before.
    answer = taken(open()->append_all({{"one", {{"c", "{}"}, {"b", "{}"}}},
                                       {"nobody", {{"a", "{}"}}},
                                       {"one", {{"d", "{}"}, {"c", "{}"}}}}));
    ASSERT_EQ(answer.size(), 3U);
    EXPECT_EQ(answer[0], (Numbers{3, 2}));
    EXPECT_EQ(answer[1], std::nullopt) << "there is no such bake";
    EXPECT_EQ(answer[2], (Numbers{4, 3}));
    EXPECT_EQ(numbered(*store_, "one"),
              (std::map<std::string, std::int64_t>{{"a", 1}, {"b", 2}, {"c", 3}, {"d", 4}}));
    EXPECT_EQ(events_of(*store_, "one").front().json, "{}") << "the first to come stays";
    EXPECT_EQ(taken(store_->append_all({{"two", {}}, {"nobody", {}}})),
              (std::vector<Appended>{Numbers{}, std::nullopt}));
    EXPECT_TRUE(taken(store_->append_all({})).empty());
}

TEST_P(kept, events_are_read_from_a_number_on) {
    taken(store_->create_bake("one", "{}", Instant{}));
    std::vector<NewEvent> events;
    for (int n = 1; n <= 12; ++n) {
        events.push_back({"e" + std::to_string(n), std::to_string(n)});
    }
    taken(store_->append_all({{"one", events}}));
    const auto some = taken(store_->events_after("one", 8, 3));
    ASSERT_EQ(some.size(), 3U);
    for (std::size_t n = 0; n < some.size(); ++n) {
        EXPECT_EQ(some[n].sequence, static_cast<std::int64_t>(n) + 9);
        EXPECT_EQ(some[n].id, "e" + std::to_string(n + 9));
        EXPECT_EQ(some[n].json, std::to_string(n + 9));
    }
    EXPECT_EQ(taken(store_->events_after("one", 8, SIZE_MAX)).size(), 4U);
    EXPECT_EQ(taken(store_->events_after("one", -1, 100)).size(), 12U);
    EXPECT_TRUE(taken(store_->events_after("one", 12, 100)).empty());
    EXPECT_TRUE(taken(store_->events_after("one", 0, 0)).empty());
    EXPECT_TRUE(taken(store_->events_after("nobody", 0, 100)).empty());
}

TEST_P(kept, any_text_comes_back_as_it_went_in) {
    std::string controls;
    for (char c = 1; c < 32; ++c) {
        controls += c;
    }
    const std::vector<std::string> texts = {
        "",
        "'; DROP TABLE bakes; --",
        R"(it's "quoted" \ \' $1 :id ? %s {})",
        "cafe\xCC\x81 \xF0\x9F\x8D\x9E \xC2\xBD \xEF\xBF\xBD \xF4\x8F\xBF\xBF", // U+10FFFF
        controls,
        " trailing \n",
        std::string(1U << 20U, 'x') + "\xE2\x82\xAC",
    };
    taken(store_->create_bake("one", texts[1], Instant{}));
    for (std::size_t n = 0; n < texts.size(); ++n) {
        const std::string id = "t" + std::to_string(n);
        taken(store_->put_document("recipe", id, texts[n]));
        taken(store_->append_all({{"one", {{id, texts[n]}}}}));
    }
    const auto after = open();
    EXPECT_EQ(taken(after->bake("one"))->request, texts[1]);
    const auto documents = taken(after->documents("recipe"));
    const auto events = events_of(*after, "one");
    ASSERT_EQ(documents.size(), texts.size());
    ASSERT_EQ(events.size(), texts.size());
    for (std::size_t n = 0; n < texts.size(); ++n) {
        // No EXPECT_EQ: it would print a mebibyte.
        EXPECT_TRUE(documents[n].json == texts[n]) << n;
        EXPECT_TRUE(events[n].json == texts[n]) << n;
        EXPECT_TRUE(taken(after->document("recipe", documents[n].id))->json == texts[n]) << n;
    }
}

TEST_P(kept, names_are_text_and_never_commands) {
    const std::string name = "x' OR '1'='1";
    taken(store_->create_bake("one", "{}", Instant{}));
    taken(store_->put_document("recipe", "rye", "{}"));
    EXPECT_FALSE(taken(store_->bake(name)));
    EXPECT_FALSE(taken(store_->document("recipe", name)));
    EXPECT_FALSE(taken(store_->remove_document("recipe", name)));
    EXPECT_TRUE(taken(store_->documents(name)).empty());
    EXPECT_TRUE(taken(store_->events_after(name, 0, 10)).empty());
    EXPECT_EQ(taken(store_->append_all({{name, {{"a", "{}"}}}})),
              std::vector<Appended>{std::nullopt});
    EXPECT_TRUE(taken(store_->document("recipe", "rye")));
}

TEST_P(kept, what_was_kept_is_there_after_the_last_one_has_gone) {
    taken(store_->put_document("recipe", "rye", "{}"));
    store_.reset();
    EXPECT_TRUE(taken(open()->document("recipe", "rye")));
}

std::size_t files_in(const std::string& folder) {
    std::size_t files = 0;
    for (const auto& entry : std::filesystem::recursive_directory_iterator(folder)) {
        files += entry.is_regular_file() ? 1U : 0U;
    }
    return files;
}

// FIPS 180-4's own example: "abc".
constexpr const char* hash_of_abc =
    "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";

TEST_P(kept, the_same_photo_is_kept_once) {
    EXPECT_EQ(taken(store_->put_photo("abc")), hash_of_abc);
    EXPECT_EQ(taken(open()->put_photo("abc")), hash_of_abc);
    EXPECT_EQ(files_in(place_->photos()), 1U);
    EXPECT_EQ(taken(store_->photo(hash_of_abc)), "abc");
    std::string bytes;
    for (int n = 0; n < 300000; ++n) {
        bytes += static_cast<char>((n % 256) * (n % 253));
    }
    const std::string hash = taken(store_->put_photo(bytes));
    EXPECT_TRUE(taken(open()->photo(hash)) == bytes);
    EXPECT_EQ(files_in(place_->photos()), 2U) << "nothing is left beside them";
}

TEST_P(kept, a_photo_that_changed_is_told_and_may_be_kept_again) {
    taken(store_->put_photo("abc"));
    const std::string file = place_->photos() + "/ba/" + hash_of_abc;
    std::ofstream(file, std::ios::binary) << "abd";
    const auto found = store_->photo(hash_of_abc);
    ASSERT_FALSE(found);
    EXPECT_EQ(found.error().code, "store_damaged");
    EXPECT_EQ(found.error().where, file);
    taken(store_->put_photo("abc"));
    EXPECT_EQ(taken(store_->photo(hash_of_abc)), "abc");
}

TEST_P(kept, no_path_is_walked_for_a_photo) {
    taken(store_->put_photo("abc"));
    std::ofstream(place_->photos() + "/secret") << "secret";
    const std::string hash = hash_of_abc;
    for (const std::string& name : {std::string(),
                                    std::string("secret"),
                                    "../photos/ba/" + hash,
                                    "ba/" + hash,
                                    hash + "/",
                                    "/etc/passwd" + std::string(53, 'a'),
                                    hash.substr(1),
                                    hash + "0",
                                    std::string(64, '.'),
                                    std::string(64, '/'),
                                    "BA" + hash.substr(2),
                                    std::string(64, '\0')}) {
        EXPECT_EQ(taken(store_->photo(name)), std::nullopt) << name;
    }
    EXPECT_EQ(taken(store_->photo(std::string(64, '0'))), std::nullopt);
}

} // namespace
} // namespace loafwright::store

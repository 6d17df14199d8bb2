// SPDX-License-Identifier: Apache-2.0
#include "shell/server/access.hpp"

#include <gtest/gtest.h>
#include <sys/stat.h>

#include <cstdlib>
#include <filesystem>
#include <string>

namespace loafwright::server {
namespace {

Credentials get(const std::string& host) {
    Credentials credentials;
    credentials.method = "GET";
    credentials.host = host;
    return credentials;
}

unsigned status_of(const Access& access, const Credentials& credentials) {
    const auto refused = access.refusal(credentials, false);
    return refused ? refused->status : 200;
}

TEST(access, only_the_names_of_this_machine_are_answered) {
    const Access access({"127.0.0.1", "localhost"}, "");
    EXPECT_EQ(status_of(access, get("localhost:8424")), 200U);
    EXPECT_EQ(status_of(access, get("kitchen.example")), 421U);
    EXPECT_EQ(status_of(access, get("")), 421U);
}

TEST(access, a_page_from_elsewhere_changes_nothing) {
    const Access access({"localhost"}, "");
    Credentials post = get("localhost:8424");
    post.method = "POST";
    EXPECT_EQ(status_of(access, post), 200U); // a program, not a page
    post.origin = "http://localhost:8424";
    post.fetch_site = "same-origin";
    EXPECT_EQ(status_of(access, post), 200U);
    post.origin = "http://localhost:9999";
    EXPECT_EQ(status_of(access, post), 403U);
    post.origin = "null";
    EXPECT_EQ(status_of(access, post), 403U);
    post.origin = "";
    post.fetch_site = "cross-site";
    EXPECT_EQ(status_of(access, post), 403U);
}

TEST(access, elsewhere_the_token_is_asked_for_and_becomes_a_cookie) {
    Access access({"192.168.1.20"}, "secret-token");
    Credentials phone = get("192.168.1.20:8424");
    EXPECT_EQ(status_of(access, phone), 401U);
    EXPECT_FALSE(access.refusal(phone, true));
    const Response in = access.enter("secret-token");
    EXPECT_EQ(in.status, 303U);
    std::string cookie;
    for (const auto& [name, value] : in.headers) {
        cookie = name == "Set-Cookie" ? value : cookie;
    }
    EXPECT_NE(cookie.find("HttpOnly"), std::string::npos);
    EXPECT_NE(cookie.find("SameSite=Strict"), std::string::npos);
    phone.cookie = cookie.substr(0, cookie.find(';'));
    EXPECT_EQ(status_of(access, phone), 200U);
    phone.cookie = "";
    phone.authorization = "Bearer secret-token";
    EXPECT_EQ(status_of(access, phone), 200U);
}

std::string led_to(Access& access, std::string_view to) {
    for (const auto& [name, value] : access.enter("secret-token", to).headers) {
        if (name == "Location") {
            return value;
        }
    }
    return "";
}

TEST(access, the_way_in_leads_to_a_path_of_these_pages_and_nowhere_else) {
    Access access({"192.168.1.20"}, "secret-token");
    EXPECT_EQ(led_to(access, "/bake/one_2-3"), "/bake/one_2-3");
    for (const char* elsewhere : {"",
                                  "//elsewhere.example",
                                  "http://elsewhere.example",
                                  "/\\elsewhere",
                                  "/a\r\nb",
                                  "bake"}) {
        EXPECT_EQ(led_to(access, elsewhere), "/") << elsewhere;
    }
}

TEST(access, what_another_screen_scans_lets_it_in_to_the_same_page) {
    const Access access({"192.168.1.20"}, "secret-token");
    EXPECT_EQ(access.way_in("http://192.168.1.20:8424/bake/one"),
              "http://192.168.1.20:8424/enter?token=secret-token&to=/bake/one");
    EXPECT_EQ(access.way_in("http://192.168.1.20:8424/"),
              "http://192.168.1.20:8424/enter?token=secret-token");
    EXPECT_EQ(access.way_in("http://192.168.1.20:8424"),
              "http://192.168.1.20:8424/enter?token=secret-token");
}

TEST(access, no_other_address_is_given_the_token) {
    const Access house({"192.168.1.20"}, "secret-token");
    for (const char* address : {"http://elsewhere.example/",
                                "http://elsewhere.example/192.168.1.20",
                                "http://192.168.1.20@elsewhere.example/",
                                "192.168.1.20/",
                                ""}) {
        EXPECT_EQ(house.way_in(address), address);
    }
    const Access alone({"127.0.0.1"}, "");
    EXPECT_EQ(alone.way_in("http://127.0.0.1:8424/bake/one"), "http://127.0.0.1:8424/bake/one");
}

TEST(access, guessing_is_slowed_down) {
    Access access({"192.168.1.20"}, "secret-token");
    for (int n = 0; n < 10; ++n) {
        EXPECT_EQ(access.enter("guess").status, 401U);
    }
    EXPECT_EQ(access.enter("guess").status, 429U);
    EXPECT_EQ(access.enter("secret-token").status, 429U);
}

TEST(access, the_token_is_kept_and_only_its_owner_reads_it) {
    std::string folder = testing::TempDir() + "tokenXXXXXX";
    ASSERT_NE(mkdtemp(folder.data()), nullptr);
    const auto token = kept_token(folder);
    ASSERT_TRUE(token);
    EXPECT_EQ(token->size(), 43U); // 32 bytes in base64url without padding, RFC 4648
    EXPECT_EQ(kept_token(folder).value(), *token);
    struct stat file {};
    ASSERT_EQ(::stat((folder + "/token").c_str(), &file), 0);
    EXPECT_EQ(file.st_mode & 0777U, 0600U);
    std::filesystem::remove_all(folder);
}

} // namespace
} // namespace loafwright::server

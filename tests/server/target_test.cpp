// SPDX-License-Identifier: Apache-2.0
#include "shell/server/target.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <string>

namespace loafwright::server {
namespace {

TEST(target, a_path_and_its_query_are_decoded) {
    const auto target = target_of("/api/v1/bakes/a%20b/state?now=2026-11-28T18%3A30%3A00Z&x=1+2");
    ASSERT_TRUE(target);
    ASSERT_EQ(target->segments.size(), 5U);
    EXPECT_EQ(target->segments[3], "a b");
    EXPECT_EQ(target->query.at("now"), "2026-11-28T18:30:00Z");
    EXPECT_EQ(target->query.at("x"), "1 2");
    EXPECT_EQ(target_of("/")->path(), "/");
    EXPECT_EQ(target_of("/help/")->path(), "/help");
    EXPECT_EQ(target_of("/caf%C3%A9")->path(), "/café");
}

TEST(target, what_could_walk_elsewhere_is_refused) {
    for (const char* bad : {"",
                            "help",
                            "http://elsewhere/",
                            "*",
                            "//",
                            "/a//b",
                            "/..",
                            "/../etc/passwd",
                            "/a/../b",
                            "/a/./b",
                            "/%2e%2e/b",
                            "/%2E%2e",
                            "/a%2fb",
                            "/a\\b",
                            "/a%5cb",
                            "/a%00b",
                            "/a%0ab",
                            "/a%",
                            "/a%4",
                            "/a%zz",
                            "/%ff",
                            "/a?x=%"}) {
        EXPECT_FALSE(target_of(bad)) << bad;
    }
    EXPECT_FALSE(target_of("/" + std::string(5000, 'a')));
}

RC_GTEST_PROP(target, no_bytes_lead_out_of_the_root, (const std::string& bytes)) {
    for (const std::string& text : {bytes, "/" + bytes}) {
        const auto target = target_of(text);
        if (!target) {
            continue;
        }
        for (const std::string& segment : target->segments) {
            RC_ASSERT(!segment.empty());
            RC_ASSERT(segment != "." && segment != "..");
            RC_ASSERT(segment.find_first_of(std::string("/\\\0", 3)) == std::string::npos);
        }
    }
}

// RFC 6265 section 4.2.1: pairs parted by "; ".
TEST(cookie, one_of_several_is_found) {
    EXPECT_EQ(cookie_of("a=1; loafwright=x_y; b=2", "loafwright"), "x_y");
    EXPECT_EQ(cookie_of("loafwright=", "loafwright"), "");
    EXPECT_FALSE(cookie_of("xloafwright=1", "loafwright"));
    EXPECT_FALSE(cookie_of("", "loafwright"));
}

// RFC 9110 section 12.5.3, its examples and what q=0 means.
TEST(encoding, gzip_is_taken_where_it_is_let_through) {
    EXPECT_TRUE(accepts_gzip("compress, gzip"));
    EXPECT_TRUE(accepts_gzip("*"));
    EXPECT_TRUE(accepts_gzip("compress;q=0.5, gzip;q=1.0"));
    EXPECT_TRUE(accepts_gzip("gzip;q=1.0, identity; q=0.5, *;q=0"));
    EXPECT_FALSE(accepts_gzip(""));
    EXPECT_FALSE(accepts_gzip("identity"));
    EXPECT_FALSE(accepts_gzip("gzip;q=0"));
    EXPECT_FALSE(accepts_gzip("gzip;q=0.000, *"));
}

TEST(host, the_port_is_left_behind) {
    EXPECT_EQ(host_name("localhost:8424"), "localhost");
    EXPECT_EQ(host_name("LocalHost"), "localhost");
    EXPECT_EQ(host_name("[::1]:80"), "::1");
    EXPECT_EQ(host_name("[::1"), "");
}

RC_GTEST_PROP(secret, only_equal_texts_are_the_same, (const std::string& a, const std::string& b)) {
    RC_ASSERT(same_secret(a, b) == (a == b));
    RC_ASSERT(same_secret(a, a));
}

} // namespace
} // namespace loafwright::server

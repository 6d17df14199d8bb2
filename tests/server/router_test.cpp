// SPDX-License-Identifier: Apache-2.0
#include "shell/server/router.hpp"

#include <gtest/gtest.h>

namespace loafwright::server {
namespace {

Router three_routes() {
    Router router;
    const Handler nothing = [](const Request&, const Respond&) {};
    router.add("GET", "/api/v1/bakes/{}", {}, nothing);
    router.add("POST", "/api/v1/bakes/{}/events", {100, false}, nothing);
    router.add("PUT", "/api/v1/bakes/{}", {}, nothing);
    return router;
}

TEST(router, a_brace_stands_for_one_segment) {
    const Router router = three_routes();
    const Routed routed = router.route("POST", *target_of("/api/v1/bakes/rye-1/events"));
    ASSERT_NE(routed.route, nullptr);
    EXPECT_EQ(routed.parameters, std::vector<std::string>{"rye-1"});
    EXPECT_EQ(routed.route->rules.most_body_bytes, 100U);
    EXPECT_EQ(router.route("GET", *target_of("/api/v1/bakes")).route, nullptr);
    EXPECT_EQ(router.route("GET", *target_of("/api/v1/bakes/a/b")).route, nullptr);
}

// RFC 9110: section 9.3.2 for HEAD, 15.5.6 for what a 405 lists.
TEST(router, head_is_a_get_and_other_methods_are_told_what_there_is) {
    const Router router = three_routes();
    EXPECT_NE(router.route("HEAD", *target_of("/api/v1/bakes/a")).route, nullptr);
    const Routed wrong = router.route("DELETE", *target_of("/api/v1/bakes/a"));
    EXPECT_EQ(wrong.route, nullptr);
    EXPECT_EQ(wrong.allowed, "GET, HEAD, PUT");
    EXPECT_EQ(router.route("GET", *target_of("/nowhere")).allowed, "");
}

} // namespace
} // namespace loafwright::server

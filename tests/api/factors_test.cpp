// SPDX-License-Identifier: Apache-2.0
//
// What a kitchen has taught goes into a kept request and comes out of it as it was, to the last
// digit: else a bake would be planned otherwise after a restart.
#include "engine/wire/factors_json.hpp"
#include "shell/settings/bake_request.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <string>

namespace loafwright::server {
namespace {

constexpr const char* bread =
    R"("breads": [{"text": "Mix 300 g flour and 200 g water. Bake for 30 minutes."}])";

double any_number(double low, double high) {
    return low + (high - low) * *rc::gen::inRange(0, 1000000) / 999983.0;
}

KindFactor any_factor() {
    KindFactor factor;
    factor.kind =
        *rc::gen::element(StepKind::rise, StepKind::prove, StepKind::knead, StepKind::bake);
    factor.leaven = *rc::gen::element<std::string>("", "instant yeast", "rye sourdough");
    factor.log_mean = any_number(-2.0, 2.0);
    factor.factor_deviation = any_number(0.0, 1.0);
    factor.within_deviation = any_number(0.01, 1.0);
    factor.prior_deviation = any_number(0.0, 1.0);
    factor.bakes = *rc::gen::inRange<std::size_t>(0, 50);
    factor.group_bakes = factor.bakes + *rc::gen::inRange<std::size_t>(1, 50);
    return factor;
}

RC_GTEST_PROP(factors, come_back_from_a_request_as_they_were, ()) {
    KitchenFactors factors;
    const auto count = *rc::gen::inRange<std::size_t>(0, 8);
    for (std::size_t i = 0; i < count; ++i) {
        factors.kinds.push_back(any_factor());
    }
    factors.oven.likely = CelsiusDifference(any_number(-40.0, 40.0));
    factors.oven.deviation = CelsiusDifference(any_number(0.0, 20.0));
    factors.oven.measured = *rc::gen::inRange<std::size_t>(0, 30);
    const auto read = settings::bake_request_from_json(
        "{" + std::string(bread) + R"(, "learned": )" + wire::factors_json(factors) + "}",
        "request",
        Instant{1795910400});
    RC_ASSERT(read.has_value());
    RC_ASSERT(read->has_learned);
    const KitchenFactors& back = read->request.kitchen.factors;
    RC_ASSERT(back.kinds.size() == factors.kinds.size());
    for (std::size_t i = 0; i < count; ++i) {
        const KindFactor& a = factors.kinds[i];
        const KindFactor& b = back.kinds[i];
        RC_ASSERT(a.kind == b.kind && a.leaven == b.leaven && a.bakes == b.bakes &&
                  a.group_bakes == b.group_bakes);
        RC_ASSERT(a.log_mean == b.log_mean && a.factor_deviation == b.factor_deviation &&
                  a.within_deviation == b.within_deviation &&
                  a.prior_deviation == b.prior_deviation);
    }
    RC_ASSERT(back.oven.likely == factors.oven.likely);
    RC_ASSERT(back.oven.measured == factors.oven.measured);
}

TEST(factors, that_cannot_be_are_told_with_their_path) {
    const auto read = settings::bake_request_from_json(
        "{" + std::string(bread) +
            R"(, "learned": {"kinds": [{"kind": "rise", "log_mean": 90}, {"kind": "juggle"}]}})",
        "request",
        Instant{1795910400});
    ASSERT_FALSE(read);
    ASSERT_EQ(read.error().size(), 2U);
    EXPECT_NE(read.error()[0].where.find("learned.kinds[0].log_mean"), std::string::npos);
    EXPECT_NE(read.error()[1].where.find("learned.kinds[1]"), std::string::npos);
}

} // namespace
} // namespace loafwright::server

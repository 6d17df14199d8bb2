// SPDX-License-Identifier: Apache-2.0
//
// What engine/wire/factors_json wrote, read back.
#include "shell/settings/fields.hpp"
#include "shell/settings/tree_readers.hpp"

#include <fmt/format.h>

#include <cmath>

namespace loafwright::settings {

namespace {

constexpr std::size_t most_kinds = 400;
constexpr Range logarithm{-5.0, 5.0, Measure::ratio};
constexpr Range deviation{0.0, 10.0, Measure::ratio};
constexpr Range count{0.0, 1.0e6, Measure::count};
constexpr Range offset{-200.0, 200.0, Measure::difference};

std::size_t whole(std::optional<double> number) {
    return static_cast<std::size_t>(std::llround(number.value_or(0.0)));
}

} // namespace

KitchenFactors factors_from_tree(const TreeValue& tree,
                                 const std::string& heading,
                                 std::string_view name,
                                 Diagnostics& wrong) {
    Fields fields(tree, heading, name, wrong);
    KitchenFactors factors;
    std::size_t index = 0;
    for (const TreeValue* item : fields.tables("kinds", most_kinds)) {
        Fields kind(*item, fmt::format("{}.kinds[{}]", heading, index++), name, wrong);
        KindFactor factor;
        const auto told = kind.text("kind");
        const auto named = told ? step_kind_named(*told) : std::nullopt;
        if (!named) {
            kind.missing("kind", R"("kind": "rise")");
        }
        factor.kind = named.value_or(StepKind::rise);
        const TreeValue* leaven = kind.value("leaven");
        if (leaven != nullptr && leaven->kind == TreeValue::Kind::text) {
            factor.leaven = leaven->text;
        }
        factor.log_mean = kind.number("log_mean", logarithm).value_or(0.0);
        factor.factor_deviation = kind.number("factor_deviation", deviation).value_or(0.0);
        factor.within_deviation = kind.number("within_deviation", deviation).value_or(0.1);
        factor.prior_deviation = kind.number("prior_deviation", deviation).value_or(0.0);
        factor.bakes = whole(kind.number("bakes", count));
        factor.group_bakes = whole(kind.number("group_bakes", count));
        kind.refuse_others();
        factors.kinds.push_back(std::move(factor));
    }
    if (const TreeValue* told = fields.table("oven")) {
        Fields oven(*told, heading + ".oven", name, wrong);
        factors.oven.likely = CelsiusDifference(oven.number("likely_k", offset).value_or(0.0));
        factors.oven.deviation =
            CelsiusDifference(oven.number("deviation_k", offset).value_or(0.0));
        factors.oven.measured = whole(oven.number("measured", count));
        oven.refuse_others();
    }
    fields.refuse_others();
    return factors;
}

} // namespace loafwright::settings

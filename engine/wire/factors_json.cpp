// SPDX-License-Identifier: Apache-2.0
//
// Numbers in full: a plan made of what was read back is the plan that was made before.
#include "engine/wire/factors_json.hpp"

#include "engine/wire/json_values.hpp"

namespace loafwright::wire {

std::string factors_json(const KitchenFactors& factors) {
    Json json;
    json["kinds"] = Json::array();
    for (const KindFactor& factor : factors.kinds) {
        if (factor.group_bakes == 0) {
            continue;
        }
        json["kinds"].push_back({{"kind", text(name_of(factor.kind))},
                                 {"leaven", factor.leaven},
                                 {"log_mean", factor.log_mean},
                                 {"factor_deviation", factor.factor_deviation},
                                 {"within_deviation", factor.within_deviation},
                                 {"prior_deviation", factor.prior_deviation},
                                 {"bakes", factor.bakes},
                                 {"group_bakes", factor.group_bakes}});
    }
    json["oven"] = {{"likely_k", factors.oven.likely.count()},
                    {"deviation_k", factors.oven.deviation.count()},
                    {"measured", factors.oven.measured}};
    return json.dump(-1, ' ', false, Json::error_handler_t::replace);
}

} // namespace loafwright::wire

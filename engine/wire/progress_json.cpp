// SPDX-License-Identifier: Apache-2.0
#include "engine/wire/progress_json.hpp"

#include "engine/wire/event_words.hpp"
#include "engine/wire/json_values.hpp"

namespace loafwright::wire {

namespace {

Json point_json(const BakePoint& point) {
    Json json;
    json["begun"] = or_null(point.begun, [](Instant begun) { return rfc3339(Zone{}, begun); });
    json["prove_over_plan"] = or_null(point.prove_over_plan, number);
    json["rise_over_plan"] = or_null(point.rise_over_plan, number);
    json["growth_over_wanted"] = or_null(point.growth_over_wanted, number);
    const Json told = told_value({point.crust, point.crumb, point.again, {}, {}});
    for (const char* key : {"crust", "crumb", "again"}) {
        json[key] = told.at(key);
    }
    json["signs"] = texts(point.signs);
    return json;
}

} // namespace

std::string progress_json(const std::vector<BreadProgress>& breads) {
    Json json;
    json["version"] = 1;
    json["breads"] = list(breads, [](const BreadProgress& one) {
        Json bread;
        bread["bread"] = one.bread;
        bread["better_than_last"] = texts(one.progress.better_than_last);
        bread["better_than_first"] = texts(one.progress.better_than_first);
        bread["differed"] = texts(one.progress.differed);
        bread["our_time"] = texts(one.progress.our_time);
        bread["bakes"] = list(one.progress.points, point_json);
        return bread;
    });
    return printed(json);
}

} // namespace loafwright::wire

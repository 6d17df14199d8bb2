// SPDX-License-Identifier: Apache-2.0
#include "engine/following/signs.hpp"

#include <algorithm>
#include <string_view>

namespace loafwright::following {

namespace {

using Rows = std::vector<const FaultSymptomRow*>;

bool has(const Rows& rows, const FaultSymptomRow* row) {
    return std::find(rows.begin(), rows.end(), row) != rows.end();
}

void see(Signs& signs, const FaultSymptomRow* row) {
    if (row != nullptr && !has(signs.seen, row)) {
        signs.seen.push_back(row);
    }
}

void miss(Signs& signs, const FaultSymptomRow* row) {
    if (row != nullptr && !has(signs.seen, row) && !has(signs.absent, row)) {
        signs.absent.push_back(row);
    }
}

} // namespace

Signs signs_of(const Told& told, const Knowledge& knowledge) {
    Signs signs;
    const auto row = [&knowledge](std::string_view key) { return symptom_named(knowledge, key); };
    if (told.crust == Crust::pale) {
        see(signs, row("pale_crust"));
    } else if (told.crust == Crust::dark) {
        see(signs, row("dark_crust"));
    }
    if (told.crumb == Crumb::close) {
        see(signs, row("dense_crumb"));
    } else if (told.crumb == Crumb::open) {
        see(signs, row("coarse_crumb"));
    }
    for (const std::string& symptom : told.symptoms) {
        for (const FaultSymptomRow* found : symptoms_in(knowledge, symptom)) {
            see(signs, found);
        }
    }
    if (told.crust) {
        miss(signs, row("pale_crust"));
        miss(signs, row("dark_crust"));
    }
    if (told.crumb) {
        miss(signs, row("dense_crumb"));
        miss(signs, row("coarse_crumb"));
    }
    if (told.crumb == Crumb::even) {
        miss(signs, row("large_holes"));
    }
    return signs;
}

} // namespace loafwright::following

// SPDX-License-Identifier: Apache-2.0
//
// Whole texts of our own against hand labels (labels.json tells what each field means). What is
// counted is what costs trust: stated times that are missed, times that nobody told, lengths that
// are no wait of the bread. The floors stand a little below what is read today; raise them with it.
#include "engine/reading/read.hpp"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <fstream>
#include <sstream>
#include <string>
#include <string_view>
#include <vector>

namespace loafwright {
namespace {

using nlohmann::json;

struct Told {
    std::string kinds; // "rise|prove"
    double low = 0.0;
    double high = 0.0;
};

struct Read {
    std::string_view kind;
    double low = 0.0;
    double high = 0.0;
};

bool is_of(std::string_view kinds, std::string_view kind) {
    std::size_t at = 0;
    while (at <= kinds.size()) {
        const std::size_t bar = std::min(kinds.find('|', at), kinds.size());
        if (kinds.substr(at, bar - at) == kind) {
            return true;
        }
        at = bar + 1;
    }
    return false;
}

bool near(double read, double told) {
    return std::abs(read - told) <= std::max(1.0, 0.02 * told);
}

bool same(const Told& told, const Read& read) {
    return is_of(told.kinds, read.kind) && near(read.low, told.low) && near(read.high, told.high);
}

// The longest run of told times that are read in order.
std::size_t found_in_order(const std::vector<Told>& told, const std::vector<Read>& read) {
    std::vector<std::vector<std::size_t>> most(told.size() + 1,
                                               std::vector<std::size_t>(read.size() + 1, 0));
    for (std::size_t t = 0; t < told.size(); ++t) {
        for (std::size_t r = 0; r < read.size(); ++r) {
            most[t + 1][r + 1] = std::max(
                {most[t][r + 1], most[t + 1][r], most[t][r] + (same(told[t], read[r]) ? 1U : 0U)});
        }
    }
    return most[told.size()][read.size()];
}

std::vector<Told> told_in(const json& label, const char* field) {
    std::vector<Told> all;
    for (const json& one : label.value(field, json::array())) {
        all.push_back({one[0].get<std::string>(), one[1].get<double>(), one[2].get<double>()});
    }
    return all;
}

std::string file_text(const std::string& path) {
    std::ifstream in(path);
    std::stringstream text;
    text << in.rdbuf();
    return text.str();
}

TEST(own_texts, have_their_times_read_and_no_others) {
    // The kinds whose lengths a label lists; minutes of mixing it leaves out.
    constexpr std::string_view timed =
        "activate|soak|ferment|rise|rest|prove|chill|bake|cook|cool|knead|prepare";
    const std::string folder = LOAFWRIGHT_ROOT "/tests/reading/";
    const json labels = json::parse(file_text(folder + "labels.json"));
    const Knowledge knowledge = built_in_knowledge();
    const Reader reader(knowledge);
    std::size_t told_count = 0;
    std::size_t found = 0;
    std::size_t extra = 0;
    for (const auto& [name, label] : labels.items()) {
        if (!label.is_object()) {
            continue;
        }
        const auto text = check_text(file_text(folder + "texts/" + name + ".md"), name);
        ASSERT_TRUE(text) << name;
        std::vector<Read> read;
        for (const Step& step : reader.read(*text).recipe.steps) {
            if (step.minutes && step.minutes->basis == Basis::stated &&
                is_of(timed, name_of(step.kind))) {
                read.push_back({name_of(step.kind),
                                step.minutes->minutes.low.count(),
                                step.minutes->minutes.high.count()});
            }
        }
        const std::vector<Told> told = told_in(label, "timed");
        const std::vector<Told> may = told_in(label, "may");
        told_count += told.size();
        found += found_in_order(told, read);
        extra +=
            static_cast<std::size_t>(std::count_if(read.begin(), read.end(), [&](const Read& one) {
                const bool wanted = std::any_of(
                    told.begin(), told.end(), [&](const Told& t) { return same(t, one); });
                const bool allowed = std::any_of(may.begin(), may.end(), [&](const Told& m) {
                    return is_of(m.kinds, one.kind) && m.low - 1 <= one.low &&
                           one.high <= m.high + 1;
                });
                return !wanted && !allowed;
            }));
    }
    ASSERT_GE(told_count, 400U);
    EXPECT_GE(static_cast<double>(found), 0.95 * static_cast<double>(told_count))
        << found << " of " << told_count;
    EXPECT_LE(static_cast<double>(extra), 0.05 * static_cast<double>(told_count)) << extra;
}

} // namespace
} // namespace loafwright

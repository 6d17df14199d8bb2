// SPDX-License-Identifier: Apache-2.0
//
// What a scanner does to two letters in a hundred must not cost the waits. The texts are our own;
// each is read clean and damaged, and the stated times of the clean reading are looked for in the
// damaged one.
#include "engine/reading/read.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <random>
#include <sstream>
#include <string>
#include <vector>

namespace loafwright {
namespace {

// The confusions of shape that scanning makes: rn and m, l and 1, l and i, e and c, h and b.
std::string damaged(const std::string& text, double rate, std::mt19937& random) {
    std::uniform_real_distribution<double> chance(0.0, 1.0);
    std::string out;
    for (std::size_t at = 0; at < text.size(); ++at) {
        const char c = text[at];
        if (chance(random) >= rate) {
            out += c;
        } else if (c == 'm') {
            out += "rn";
        } else if (c == 'l') {
            out += chance(random) < 0.5 ? '1' : 'i';
        } else if (c == 'i') {
            out += 'l';
        } else if (c == 'e') {
            out += 'c';
        } else if (c == 'h') {
            out += 'b';
        } else if (c == 'r' && at + 1 < text.size() && text[at + 1] == 'n') {
            out += 'm';
            ++at;
        } else {
            out += c;
        }
    }
    return out;
}

struct Wait {
    StepKind kind = StepKind::rise;
    double low = 0.0;
    double high = 0.0;
};

std::vector<Wait> waits_in(const Reading& reading) {
    std::vector<Wait> waits;
    for (const Step& step : reading.recipe.steps) {
        if (step.minutes && step.minutes->basis == Basis::stated) {
            waits.push_back(
                {step.kind, step.minutes->minutes.low.count(), step.minutes->minutes.high.count()});
        }
    }
    return waits;
}

TEST(noise, of_two_letters_in_a_hundred_costs_at_most_five_waits_in_a_hundred) {
    const Knowledge knowledge = built_in_knowledge();
    const Reader reader(knowledge);
    std::vector<std::filesystem::path> files;
    for (const auto& file : std::filesystem::directory_iterator(std::string(LOAFWRIGHT_ROOT) +
                                                                "/tests/reading/texts")) {
        files.push_back(file.path());
    }
    std::sort(files.begin(), files.end());
    ASSERT_GE(files.size(), 20U);
    std::mt19937 random(7);
    std::size_t told = 0;
    std::size_t kept = 0;
    for (const auto& path : files) {
        std::ifstream in(path);
        std::stringstream text;
        text << in.rdbuf();
        const auto clean = check_text(text.str(), path.filename().string());
        const auto noisy = check_text(damaged(text.str(), 0.02, random), path.filename().string());
        ASSERT_TRUE(clean && noisy) << path;
        std::vector<Wait> left = waits_in(reader.read(*noisy));
        for (const Wait& wait : waits_in(reader.read(*clean))) {
            ++told;
            const auto found = std::find_if(left.begin(), left.end(), [&wait](const Wait& other) {
                return other.kind == wait.kind && other.low == wait.low && other.high == wait.high;
            });
            if (found != left.end()) {
                ++kept;
                left.erase(found);
            }
        }
    }
    ASSERT_GE(told, 80U);
    EXPECT_GE(static_cast<double>(kept), 0.95 * static_cast<double>(told))
        << kept << " of " << told;
}

} // namespace
} // namespace loafwright

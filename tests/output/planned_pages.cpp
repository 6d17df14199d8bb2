// SPDX-License-Identifier: Apache-2.0
#include "tests/output/planned_pages.hpp"

#include "engine/fitting/fit.hpp"
#include "engine/knowledge/knowledge.hpp"
#include "engine/provisions/gather.hpp"
#include "engine/reading/read.hpp"
#include "engine/sheet/shared_page.hpp"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <utility>
#include <variant>

namespace loafwright {

namespace {

namespace fs = std::filesystem;

fs::path real_recipes() {
    return fs::path(LOAFWRIGHT_ROOT) / ".." / "shared" / "recipes" / "texts";
}

std::vector<fs::path> texts() {
    std::vector<fs::path> found;
    for (const char* name : {"first-loaf.md", "rolls.md", "rye-card.txt"}) {
        found.push_back(fs::path(LOAFWRIGHT_ROOT) / "examples" / name);
    }
    if (has_real_recipes()) {
        std::vector<fs::path> real;
        for (const auto& entry : fs::directory_iterator(real_recipes())) {
            real.push_back(entry.path());
        }
        std::sort(real.begin(), real.end());
        found.insert(found.end(), real.begin(), real.end());
    }
    return found;
}

} // namespace

bool has_real_recipes() {
    return fs::is_directory(real_recipes());
}

namespace {

/// What is known of a text before it is planned.
struct Known {
    std::string name;
    FittedRecipe fitted;
    Provisions provisions;
};

std::vector<Known> known_breads(const Kitchen& kitchen) {
    const Knowledge knowledge = built_in_knowledge();
    std::vector<Known> all;
    for (const fs::path& path : texts()) {
        std::ifstream file(path, std::ios::binary);
        std::ostringstream bytes;
        bytes << file.rdbuf();
        if (const auto text = check_text(bytes.str(), path.filename().string())) {
            const Reading reading = read(*text, knowledge, {});
            all.push_back({path.filename().string(),
                           fit(reading, kitchen, knowledge),
                           gather(reading.recipe, kitchen, knowledge)});
        }
    }
    return all;
}

Kitchen cool_kitchen() {
    Kitchen kitchen;
    kitchen.room = {RoomPeriod{ClockTime{}, Celsius(19.0)}};
    return kitchen;
}

Day thursday() {
    Day day;
    day.now = Instant{1795597200}; // 2026-11-25T09:00:00Z
    day.start = later_by_minutes(day.now, 25 * 60);
    return day;
}

} // namespace

std::vector<PlannedPage> planned_pages() {
    const Kitchen kitchen = cool_kitchen();
    std::vector<PlannedPage> pages;
    for (const Known& bread : known_breads(kitchen)) {
        PlannedPage page;
        page.name = bread.name;
        page.day = thursday();
        PlanOutcome outcome = plan(bread.fitted, kitchen, page.day);
        if (auto* made = std::get_if<Plan>(&outcome)) {
            page.sheet = compose(*made, bread.fitted, bread.provisions, page.day, SheetOptions{});
            page.plan = std::move(*made);
            pages.push_back(std::move(page));
        }
    }
    return pages;
}

std::vector<PlannedTogether> planned_together() {
    const Kitchen kitchen = cool_kitchen();
    const Day day = thursday();
    const std::vector<Known> breads = known_breads(kitchen);
    std::vector<PlannedTogether> all;
    const auto add = [&](std::size_t first, std::size_t count) {
        PlannedTogether together;
        std::vector<FittedRecipe> fitted;
        std::vector<Provisions> provisions;
        for (std::size_t b = first; b < first + count; ++b) {
            together.name += breads[b].name + " ";
            fitted.push_back(breads[b].fitted);
            provisions.push_back(breads[b].provisions);
        }
        PlanOutcome outcome = plan(fitted, kitchen, day);
        if (auto* made = std::get_if<Plan>(&outcome)) {
            together.pages = compose(*made, fitted, provisions, day, SheetOptions{});
            together.plan = std::move(*made);
            all.push_back(std::move(together));
        }
    };
    add(0, 3);
    for (std::size_t b = 0; b + 1 < breads.size(); ++b) {
        add(b, 2);
    }
    return all;
}

} // namespace loafwright

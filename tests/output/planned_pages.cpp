// SPDX-License-Identifier: Apache-2.0
#include "tests/output/planned_pages.hpp"

#include "engine/fitting/fit.hpp"
#include "engine/knowledge/knowledge.hpp"
#include "engine/provisions/gather.hpp"
#include "engine/reading/read.hpp"

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

std::vector<PlannedPage> planned_pages() {
    const Knowledge knowledge = built_in_knowledge();
    std::vector<PlannedPage> pages;
    for (const fs::path& path : texts()) {
        std::ifstream file(path, std::ios::binary);
        std::ostringstream bytes;
        bytes << file.rdbuf();
        const auto text = check_text(bytes.str(), path.filename().string());
        if (!text) {
            continue;
        }
        const Reading reading = read(*text, knowledge, {});
        Kitchen kitchen;
        kitchen.room = {RoomPeriod{ClockTime{}, Celsius(19.0)}};
        PlannedPage page;
        page.name = path.filename().string();
        page.day.now = Instant{1795597200}; // 2026-11-25T09:00:00Z
        page.day.start = later_by_minutes(page.day.now, 25 * 60);
        const FittedRecipe fitted = fit(reading, kitchen, knowledge);
        const Provisions provisions = gather(reading.recipe, kitchen, knowledge);
        PlanOutcome outcome = plan(fitted, kitchen, page.day);
        if (auto* made = std::get_if<Plan>(&outcome)) {
            page.sheet = compose(*made, fitted, provisions, page.day, SheetOptions{});
            page.plan = std::move(*made);
            pages.push_back(std::move(page));
        }
    }
    return pages;
}

} // namespace loafwright

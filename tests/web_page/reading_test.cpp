// SPDX-License-Identifier: Apache-2.0
//
// What the room is for: a recipe that went through a page is read like the one that was typed. The
// measure is the reader's own answer for the typed text.
#include "engine/knowledge/knowledge.hpp"
#include "engine/reading/read.hpp"
#include "shell/web_page/web_page.hpp"
#include "tests/web_page/skeletons.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>
#include <vector>

namespace loafwright::web_page {
namespace {

namespace fs = std::filesystem;

struct Found {
    std::size_t steps = 0;
    std::size_t times = 0;
    std::size_t ingredients = 0;
};

std::string bytes_of(const fs::path& path) {
    std::ifstream file(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}

std::vector<fs::path> texts() {
    std::vector<fs::path> found;
    for (const char* name : {"first-loaf.md", "rolls.md"}) {
        found.push_back(fs::path(LOAFWRIGHT_ROOT) / "examples" / name);
    }
    const fs::path shared = fs::path(LOAFWRIGHT_ROOT) / ".." / "shared" / "recipes" / "texts";
    if (fs::is_directory(shared)) {
        for (const auto& entry : fs::directory_iterator(shared)) {
            found.push_back(entry.path());
        }
    }
    std::sort(found.begin(), found.end());
    return found;
}

Found found_in(const std::string& text) {
    static const Knowledge knowledge = built_in_knowledge();
    static const Reader reader(knowledge);
    const auto checked = check_text(text, "text");
    EXPECT_TRUE(checked.has_value());
    const Reading reading = reader.read(*checked);
    Found found;
    found.steps = reading.recipe.steps.size();
    found.ingredients = reading.recipe.ingredients.size();
    for (const Step& step : reading.recipe.steps) {
        found.times += step.minutes && step.minutes->basis == Basis::stated ? 1U : 0U;
    }
    return found;
}

void expect_as_typed(const fs::path& path, const std::string& page) {
    const Found typed = found_in(bytes_of(path));
    const auto words = words_of(page);
    ASSERT_TRUE(words.has_value());
    ASSERT_EQ(words->size(), 1U);
    const Found from_page = found_in(words->front().text);
    EXPECT_GE(from_page.steps, typed.steps) << words->front().text;
    EXPECT_EQ(from_page.times, typed.times) << words->front().text;
    EXPECT_GE(from_page.ingredients, typed.ingredients) << words->front().text;
}

TEST(reading_pages, data_is_read_like_the_typed_text) {
    for (const fs::path& path : texts()) {
        SCOPED_TRACE(path.filename());
        expect_as_typed(path, as_data_page(cut(bytes_of(path))));
    }
}

TEST(reading_pages, an_article_is_read_like_the_typed_text) {
    for (const fs::path& path : texts()) {
        SCOPED_TRACE(path.filename());
        expect_as_typed(path, as_article_page(cut(bytes_of(path))));
    }
}

TEST(reading_pages, the_shared_texts_are_there) {
    if (texts().size() < 3) {
        GTEST_SKIP() << "only the examples: ../shared/recipes/texts is not there";
    }
    EXPECT_GE(texts().size(), 10U);
}

} // namespace
} // namespace loafwright::web_page

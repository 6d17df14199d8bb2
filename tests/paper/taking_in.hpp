// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "shell/intake/take_in.hpp"
#include "tests/paper/camera.hpp"

#include <gtest/gtest.h>
#include <stdlib.h>

#include <filesystem>
#include <string>

namespace loafwright::paper {

/// The real child, with a folder for passing files that must be empty afterwards.
class taking_in : public testing::Test {
protected:
    void SetUp() override {
        std::string pattern =
            (std::filesystem::temp_directory_path() / "loafwright-test-XXXXXX").string();
        ASSERT_NE(::mkdtemp(pattern.data()), nullptr);
        folder_ = pattern;
        ::setenv("TMPDIR", folder_.c_str(), 1);
        wish_.program = LOAFWRIGHT_INTAKE;
    }
    void TearDown() override {
        ::unsetenv("TMPDIR");
        EXPECT_TRUE(std::filesystem::is_empty(folder_)) << "something was left behind";
        std::filesystem::remove_all(folder_);
    }
    [[nodiscard]] tl::expected<intake::TakenIn, Diagnostics> take(const std::string& bytes) const {
        return intake::take_in({{"file", bytes}}, wish_);
    }
    [[nodiscard]] std::string text_of(const std::string& bytes) const {
        const auto taken = take(bytes);
        return taken ? taken->text : "not read: " + one_line(taken.error().front());
    }
    [[nodiscard]] std::string code_of(const std::string& bytes) const {
        const auto taken = take(bytes);
        return taken ? "read" : taken.error().front().code;
    }

    std::filesystem::path folder_;
    intake::Wish wish_;
};

inline constexpr const char* rolls = R"(# Rolls for a hall

- 500 g strong white flour
- 10 g fine salt
- 7 g instant yeast
- 330 g water at 28 °C

Mix everything and knead for 12 minutes until smooth. Cover and leave to rise for 75 minutes until doubled. Divide into 8 pieces, shape into balls and prove for 40 minutes.

Heat the oven to 220 °C. Bake for 18 minutes until golden, then cool on a rack for half an hour.
)";

} // namespace loafwright::paper

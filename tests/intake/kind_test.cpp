// SPDX-License-Identifier: Apache-2.0
//
// The kind of a file by its first bytes. The signatures are those of the formats' own standards.
#include "shell/intake/kind.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <optional>
#include <string>

namespace loafwright::intake {
namespace {

using namespace std::string_literals;

struct Row {
    const char* name;
    std::string bytes;
    std::optional<Kind> kind;
};

class kinds : public testing::TestWithParam<Row> {};

TEST_P(kinds, are_told_by_what_stands_in_the_file) {
    EXPECT_EQ(kind_of(GetParam().bytes), GetParam().kind);
}

INSTANTIATE_TEST_SUITE_P(
    intake,
    kinds,
    testing::Values(Row{"nothing", "", Kind::text},
                    Row{"prose", "Knead for ten minutes.\n", Kind::text},
                    Row{"markdown", "# Rolls\n\n- 500 g flour\n", Kind::text},
                    Row{"a_tag_inside_prose", "Mix <div> and bake.", Kind::text},
                    Row{"latin_1", "Br\xF6tchen, 500 g", Kind::text},
                    Row{"jpeg", "\xFF\xD8\xFF\xE0\0\x10JFIF"s, Kind::image},
                    Row{"png", "\x89PNG\r\n\x1A\n\0\0\0\rIHDR"s, Kind::image},
                    Row{"tiff_little_end_first", "II*\0\x08\0\0\0"s, Kind::image},
                    Row{"tiff_big_end_first", "MM\0*\0\0\0\x08"s, Kind::image},
                    Row{"webp", "RIFF\x10\0\0\0WEBPVP8 "s, Kind::image},
                    Row{"sound_in_riff", "RIFF\x10\0\0\0WAVEfmt "s, std::nullopt},
                    Row{"pdf", "%PDF-1.7\n%\xE2\xE3\xCF\xD3\n", Kind::pdf},
                    Row{"pdf_behind_rubbish", "\0\0\0%PDF-1.4\n"s, Kind::pdf},
                    Row{"a_page", "<!DOCTYPE html><html><body>Bake.", Kind::html},
                    Row{"a_page_in_capitals", "\n <HTML>\n", Kind::html},
                    Row{"a_piece_of_a_page", "<div class=\"x\"><p>Bake.</p></div>", Kind::html},
                    Row{"a_page_with_a_byte_order_mark", "\xEF\xBB\xBF<html>", Kind::html},
                    Row{"gif", "GIF89a\x01\0\x01\0"s, std::nullopt},
                    Row{"heif", "\0\0\0\x18"s + "ftypheic\0\0"s, std::nullopt},
                    Row{"zip", "PK\x03\x04\x14\0\0\0"s, std::nullopt},
                    Row{"rich_text", "{\\rtf1\\ansi Knead.}", std::nullopt}),
    [](const auto& row) { return std::string(row.param.name); });

TEST(intake, a_foreign_file_is_named_with_a_way_out) {
    EXPECT_EQ(foreign_kind("\0\0\0\x18"s + "ftypheic\0\0\0\0"s).do_this, "Save it as JPEG.");
    EXPECT_EQ(foreign_kind("PK\x03\x04 [Content_Types].xml word/document.xml").name,
              "a Word document");
    EXPECT_EQ(foreign_kind("GIF89a").name, "a GIF picture");
}

RC_GTEST_PROP(intake, any_bytes_have_a_kind_or_none, (const std::string& bytes)) {
    const auto kind = kind_of(bytes);
    RC_ASSERT(kind.has_value() || !foreign_kind(bytes).name.empty());
}

RC_GTEST_PROP(intake, only_the_first_bytes_tell, (std::string bytes)) {
    bytes.resize(telling_bytes, 'a');
    RC_ASSERT(kind_of(bytes) == kind_of(bytes + std::string(100, '\0')));
}

} // namespace
} // namespace loafwright::intake

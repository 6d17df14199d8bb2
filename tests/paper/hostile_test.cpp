// SPDX-License-Identifier: Apache-2.0
//
// Files that mean harm, or broke on the way: a clear answer within the limits, nothing left behind.
// The bytes are built after the formats' standards (ISO 15948, ISO 32000).
#include "shell/intake/cage.hpp"
#include "tests/paper/taking_in.hpp"

#include <random>
#include <stop_token>
#include <string>
#include <vector>

namespace loafwright::paper {
namespace {

using namespace std::string_literals;

press::Grey page() {
    return press::printed_pages(rolls, {}).front();
}

std::string half(const std::string& bytes) {
    return bytes.substr(0, bytes.size() / 2);
}

std::string big_end_first(unsigned number) {
    std::string bytes;
    for (const unsigned shift : {24U, 16U, 8U, 0U}) {
        bytes += static_cast<char>((number >> shift) & 0xFFU);
    }
    return bytes;
}

// A PNG whose header promises so many pixels; the checksums are left out, as nobody gets that far.
std::string promised_png(unsigned side) {
    return "\x89PNG\r\n\x1A\n\0\0\0\rIHDR"s + big_end_first(side) + big_end_first(side) +
           "\x08\x02\0\0\0"s + "\0\0\0\0"s + "\0\0\0\0IEND\xAE\x42\x60\x82"s;
}

TEST_F(taking_in, a_picture_that_promises_billions_of_pixels_is_too_large) {
    EXPECT_EQ(code_of(promised_png(50'000)), "picture_too_large");
}

TEST_F(taking_in, half_a_file_of_each_kind_is_damaged) {
    EXPECT_EQ(code_of(half(press::png_of(page()))), "file_damaged");
    EXPECT_EQ(code_of(half(press::jpeg_of(page(), {}))), "file_damaged");
    EXPECT_EQ(code_of(half(press::webp_of(page()))), "file_damaged");
    EXPECT_EQ(code_of(half(press::tiff_of(page()))), "file_damaged");
    const std::string pdf = code_of(half(press::printed_pdf(rolls, {})));
    EXPECT_TRUE(pdf == "file_damaged" || pdf == "no_words_found") << pdf;
    for (const std::string& start :
         {"\xFF\xD8\xFF\xE0"s, "II*\0"s, "%PDF-1.4\n"s, "RIFF\0\0\0\0WEBP"s}) {
        EXPECT_EQ(code_of(start), "file_damaged");
    }
}

TEST_F(taking_in, a_pdf_whose_pages_lie_in_a_ring_is_damaged) {
    const std::string ring = "%PDF-1.4\n1 0 obj<</Type/Catalog/Pages 2 0 R>>endobj\n"
                             "2 0 obj<</Type/Pages/Kids[3 0 R]/Count 1>>endobj\n"
                             "3 0 obj<</Type/Pages/Kids[2 0 R]/Parent 2 0 R/Count 1>>endobj\n"
                             "trailer<</Root 1 0 R/Size 4>>\n%%EOF\n";
    const std::string code = code_of(ring);
    EXPECT_TRUE(code == "file_damaged" || code == "no_words_found") << code;
}

TEST_F(taking_in, more_pages_than_a_recipe_has_are_too_many) {
    wish_.limits.most_pages = 1;
    std::string long_recipe;
    for (int i = 0; i < 120; ++i) {
        long_recipe += "Knead for " + std::to_string(i) + " minutes.\n\n";
    }
    EXPECT_EQ(code_of(press::printed_pdf(long_recipe, {})), "too_many_pages");
}

TEST_F(taking_in, what_would_take_too_much_is_given_up) {
    wish_.limits.wall_seconds = 0;
    EXPECT_EQ(code_of(press::png_of(page())), "reading_gave_up");
    if (!intake::memory_is_limited()) {
        return; // the address sanitizer needs more than any limit
    }
    wish_ = {};
    wish_.program = LOAFWRIGHT_INTAKE;
    wish_.limits.memory_bytes = 60 * intake::one_mebibyte;
    const std::string code = code_of(press::png_of(page()));
    EXPECT_TRUE(code == "reading_gave_up" || code == "file_damaged" || code == "reader_missing")
        << code;
}

TEST_F(taking_in, an_empty_page_has_no_words) {
    press::Grey blank;
    blank.width = 1200;
    blank.height = 1600;
    blank.pixels.assign(1200U * 1600U, 250);
    EXPECT_EQ(code_of(press::png_of(blank)), "no_words_found");
}

TEST_F(taking_in, without_language_data_it_says_what_to_install) {
    wish_.language_folder = "/nonexistent";
    const auto taken = take(press::png_of(page()));
    ASSERT_FALSE(taken);
    EXPECT_EQ(taken.error().front().code, "reader_missing");
    EXPECT_NE(taken.error().front().do_this.find("tesseract-ocr-eng"), std::string::npos);
}

TEST_F(taking_in, without_the_program_it_says_so) {
    wish_.program = "/nonexistent/loafwright-intake";
    EXPECT_EQ(code_of(press::png_of(page())), "reader_missing");
}

TEST_F(taking_in, it_stops_when_asked) {
    std::stop_source source;
    wish_.stop = source.get_token();
    wish_.progress = [&source](int) { source.request_stop(); };
    EXPECT_EQ(code_of(press::png_of(page())), "reading_stopped");
}

TEST_F(taking_in, a_file_of_no_kind_is_named) {
    EXPECT_EQ(code_of("GIF89a\x01\0\x01\0"s), "kind_untaken");
    const auto mixed = intake::take_in({{"a", "Knead."}, {"b", "Bake."}}, wish_);
    ASSERT_FALSE(mixed);
    EXPECT_EQ(mixed.error().front().code, "kind_untaken");
}

// Twenty files broken at twenty places; libraries are fuzzed upstream, this is about the way home.
TEST_F(taking_in, flipped_bytes_end_in_words_or_a_complaint) {
    const std::vector<std::string> whole = {press::printed_pdf(rolls, {}),
                                            press::jpeg_of(page(), {})};
    std::mt19937 chance(20261126);
    for (int round = 0; round < 16; ++round) {
        std::string bytes = whole[static_cast<std::size_t>(round) % whole.size()];
        for (int place = 0; place < 12; ++place) {
            bytes[16 + chance() % (bytes.size() - 16)] = static_cast<char>(chance() & 0xFFU);
        }
        const auto taken = take(bytes);
        EXPECT_TRUE(taken || is_known_code(taken.error().front().code)) << round;
    }
}

} // namespace
} // namespace loafwright::paper

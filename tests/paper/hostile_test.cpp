// SPDX-License-Identifier: Apache-2.0
//
// Files that mean harm, or broke on the way: a clear answer within the limits, nothing left behind.
// The bytes are built after the formats' standards (ISO 15948, ISO 32000).
#include "shell/intake/cage.hpp"
#include "tests/paper/taking_in.hpp"

#include <zlib.h>

#include <cstdlib>
#include <fstream>
#include <iterator>
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

const Bytef* bytes_of(const std::string& text) {
    return reinterpret_cast<const Bytef*>(text.data());
}

// By zlib itself, as tight as it can.
std::string deflated(const std::string& bytes) {
    uLongf size = ::compressBound(bytes.size());
    std::string made(size, '\0');
    ::compress2(reinterpret_cast<Bytef*>(made.data()),
                &size,
                bytes_of(bytes),
                bytes.size(),
                Z_BEST_COMPRESSION);
    made.resize(size);
    return made;
}

// A PNG whose header promises so many pixels; the checksums are left out, as nobody gets that far.
std::string promised_png(unsigned side) {
    return "\x89PNG\r\n\x1A\n\0\0\0\rIHDR"s + big_end_first(side) + big_end_first(side) +
           "\x08\x02\0\0\0"s + "\0\0\0\0"s + "\0\0\0\0IEND\xAE\x42\x60\x82"s;
}

TEST_F(taking_in, a_picture_that_promises_billions_of_pixels_is_too_large) {
    EXPECT_EQ(code_of(promised_png(50'000)), "picture_too_large");
}

// A real one: so many white pixels in a few hundred kilobytes (ISO 15948, one bit of grey).
std::string white_png(unsigned side) {
    const auto part = [](const std::string& kind, const std::string& body) {
        const std::string checked = kind + body;
        const auto sum = ::crc32(0, bytes_of(checked), static_cast<uInt>(checked.size()));
        return big_end_first(static_cast<unsigned>(body.size())) + checked +
               big_end_first(static_cast<unsigned>(sum));
    };
    const std::string row = '\0' + std::string((side + 7) / 8, '\xFF');
    std::string rows;
    rows.reserve(row.size() * side);
    for (unsigned y = 0; y < side; ++y) {
        rows += row;
    }
    return "\x89PNG\r\n\x1A\n"s +
           part("IHDR", big_end_first(side) + big_end_first(side) + "\x01\0\0\0\0"s) +
           part("IDAT", deflated(rows)) + part("IEND", "");
}

TEST_F(taking_in, a_picture_that_swells_is_too_large_or_empty) {
    const std::string bomb = white_png(30'000);
    ASSERT_LT(bomb.size(), 200'000U);
    EXPECT_EQ(code_of(bomb), "picture_too_large");
    EXPECT_EQ(code_of(white_png(10'000)), "no_words_found");
}

// Deflated twice, less than four kilobytes become 256 MB of spaces between two words (ISO
// 32000-1, 7.4.4).
TEST_F(taking_in, a_pdf_that_swells_ends_within_its_limits) {
    wish_.limits.wall_seconds = 20;
    const std::string spaces(256U << 20U, ' ');
    const std::string stream = deflated(deflated(spaces));
    ASSERT_LT(stream.size(), 4'000U);
    const std::string bomb =
        "%PDF-1.4\n1 0 obj<</Type/Catalog/Pages 2 0 R>>endobj\n"
        "2 0 obj<</Type/Pages/Kids[3 0 R]/Count 1>>endobj\n"
        "3 0 obj<</Type/Page/Parent 2 0 R/MediaBox[0 0 200 200]/Contents 4 0 R>>endobj\n"
        "4 0 obj<</Filter[/FlateDecode/FlateDecode]/Length " +
        std::to_string(stream.size()) + ">>stream\n" + stream +
        "\nendstream endobj\ntrailer<</Root 1 0 R/Size 5>>\n%%EOF\n";
    const std::string code = code_of(bomb);
    EXPECT_TRUE(code == "no_words_found" || code == "reading_gave_up") << code;
}

// TIFF 6.0, section 2: each directory says where the next one stands.
std::string tiff_of_pages(unsigned count, bool ring) {
    const auto small = [](unsigned number) {
        return std::string{static_cast<char>(number & 0xFFU), static_cast<char>(number >> 8U)};
    };
    const auto large = [&small](unsigned number) {
        return small(number & 0xFFFFU) + small(number >> 16U);
    };
    const auto tag = [&](unsigned name, unsigned kind, unsigned value) {
        return small(name) + small(kind) + large(1) + large(value);
    };
    constexpr unsigned width = 32;
    constexpr unsigned tags = 8;
    constexpr unsigned each = 2 + 12 * tags + 4;
    const unsigned pixels = 8 + count * each;
    std::string file = "II*\0"s + large(8);
    for (unsigned page = 0; page < count; ++page) {
        const bool last = page + 1 == count;
        file += small(tags) + tag(0x100, 4, width) + tag(0x101, 4, width) + tag(0x102, 3, 8) +
                tag(0x103, 3, 1) + tag(0x106, 3, 1) + tag(0x111, 4, pixels) + tag(0x116, 4, width) +
                tag(0x117, 4, width * width) + large(last ? ring ? 8 : 0 : 8 + (page + 1) * each);
    }
    return file + std::string(width * width, '\xFF');
}

TEST_F(taking_in, a_picture_of_thousands_of_pages_is_too_many) {
    EXPECT_EQ(code_of(tiff_of_pages(3, false)), "no_words_found");
    EXPECT_EQ(code_of(tiff_of_pages(20'000, false)), "too_many_pages");
    const std::string code = code_of(tiff_of_pages(3, true));
    EXPECT_TRUE(code == "too_many_pages" || code == "file_damaged" || code == "no_words_found")
        << code;
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

// Locked by qpdf. One that opens without a password is nobody's secret.
TEST_F(taking_in, a_locked_pdf_says_so_and_one_that_opens_is_read) {
    const std::string plain = folder_ / "plain.pdf";
    const std::string locked = folder_ / "locked.pdf";
    std::ofstream(plain, std::ios::binary) << press::printed_pdf(rolls, {});
    const auto locked_with = [&](const std::string& word) {
        const std::string call =
            "qpdf --encrypt '" + word + "' owner 256 -- '" + plain + "' '" + locked + "'";
        EXPECT_EQ(std::system(call.c_str()), 0) << call; // NOLINT: a fixed command of the test
        std::ifstream file(locked, std::ios::binary);
        return std::string{std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
    };
    const std::string closed = locked_with("rye");
    const std::string open = locked_with("");
    std::filesystem::remove(plain);
    std::filesystem::remove(locked);
    EXPECT_EQ(code_of(closed), "file_locked");
    EXPECT_NE(text_of(open).find("knead for 12 minutes"), std::string::npos);
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

// SPDX-License-Identifier: Apache-2.0
//
// The files, as other people's programs read them: poppler (pdftotext, pdffonts, pdfinfo,
// pdftoppm), qpdf, librsvg (rsvg-convert) and zbar (zbarimg).
#include "shell/output/drawn.hpp"
#include "shell/output/short_code.hpp"
#include "tests/output/planned_pages.hpp"
#include "tests/output/readers.hpp"
#include "tests/sheet/tin_loaf_plan.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <sstream>
#include <string>
#include <vector>

namespace loafwright::output {
namespace {

constexpr int not_there = 127;
const std::string address = "https://loaf.example/p/7Q2M-9XKD"; // example: RFC 2606

Sheet tin_loaf_sheet() {
    const BakeDay bake = tin_loaf_day();
    return compose(bake.plan, bake.recipe, bake.provisions, bake.day, SheetOptions{});
}

PageOptions options_for(const Paper paper = Paper::a4) {
    PageOptions options;
    options.paper = paper;
    options.dated = at(13, 0);
    return options;
}

bool readers_are_there() {
    return said_by({"pdfinfo", "-v"}).status != not_there &&
           said_by({"qpdf", "--version"}).status != not_there &&
           said_by({"zbarimg", "--version"}).status != not_there &&
           said_by({"rsvg-convert", "--version"}).status != not_there;
}

class page_files : public testing::Test {
protected:
    void SetUp() override {
        if (!readers_are_there()) {
            GTEST_SKIP() << "poppler-utils, qpdf, zbar-tools or librsvg2-bin is not there";
        }
    }
    Scratch scratch_;
};

// Each in turn, from where the one before was found.
void expect_in_order(const std::string& text,
                     const std::vector<std::string>& parts,
                     const std::string& name) {
    std::size_t from = 0;
    for (const std::string& part : parts) {
        const std::size_t found = text.find(as_read(part), from);
        ASSERT_NE(found, std::string::npos) << name << ": '" << part << "' in " << text;
        from = found;
    }
}

std::vector<std::string> reading_order(const Sheet& sheet) {
    std::vector<std::string> parts = {sheet.title};
    parts.insert(parts.end(), sheet.weigh.begin(), sheet.weigh.end());
    for (const SheetStage& stage : sheet.stages) {
        parts.push_back(stage.time);
        parts.push_back(stage.title);
        if (!stage.cue.empty()) {
            parts.push_back(stage.cue);
        }
    }
    return parts;
}

void expect_sound_pdf(const std::string& path, const Sheet& sheet, const std::string& name) {
    const std::string info = said_by({"pdfinfo", path}).out;
    EXPECT_NE(info.find("Pages:           1\n"), std::string::npos) << name << info;
    EXPECT_NE(info.find("Tagged:          yes"), std::string::npos) << name << info;
    EXPECT_NE(info.find("Title:           "), std::string::npos) << name << info;

    std::istringstream fonts(said_by({"pdffonts", path}).out);
    std::string line;
    std::getline(fonts, line);
    const std::size_t embedded = line.find("emb");
    std::getline(fonts, line);
    std::size_t count = 0;
    while (std::getline(fonts, line)) {
        EXPECT_EQ(line.substr(embedded, 3), "yes") << name << ": " << line;
        EXPECT_NE(line.find("Lato"), std::string::npos) << name << ": " << line;
        ++count;
    }
    EXPECT_GE(count, 3U) << name;

    const Said checked = said_by({"qpdf", "--check", path});
    EXPECT_EQ(checked.status, 0) << name << ": " << checked.out;
    expect_in_order(
        as_read(said_by({"pdftotext", "-raw", path, "-"}).out), reading_order(sheet), name);
}

TEST_F(page_files, every_recipe_is_one_sound_pdf_in_reading_order) {
    for (const PlannedPage& page : planned_pages()) {
        for (const Paper paper : {Paper::a4, Paper::letter}) {
            PageOptions options = options_for(paper);
            const auto drawn = pdf_page({page.sheet}, options);
            ASSERT_TRUE(drawn) << page.name;
            EXPECT_TRUE(drawn->messages.empty()) << page.name;
            expect_sound_pdf(scratch_.file("page.pdf", drawn->bytes), page.sheet, page.name);
        }
    }
    if (!has_real_recipes()) {
        GTEST_SKIP() << "only the examples: ../shared/recipes/texts is not there";
    }
}

TEST_F(page_files, the_structure_holds_headings_paragraphs_and_lists) {
    const auto drawn = pdf_page({tin_loaf_sheet()}, options_for());
    ASSERT_TRUE(drawn);
    const std::string path = scratch_.file("page.pdf", drawn->bytes);
    const std::string structure = said_by({"pdfinfo", "-struct-text", path}).out;
    const std::size_t title = structure.find("H1");
    ASSERT_NE(title, std::string::npos) << structure;
    EXPECT_NE(structure.find("Plain tin loaf", title), std::string::npos);
    expect_in_order(as_read(structure), {"H1", "H2", "L ", "LI", "H2", "13:00", "P"}, "structure");
    // Bookmarks stand uncompressed in qpdf's plain form.
    const std::string plain = scratch_.in("plain.pdf");
    EXPECT_EQ(said_by({"qpdf", "--qdf", "--object-streams=disable", path, plain}).status, 0);
    const std::string bytes = said_by({"cat", plain}).out;
    EXPECT_NE(bytes.find("/Outlines"), std::string::npos);
    EXPECT_NE(bytes.find("/Title (Plain tin loaf)"), std::string::npos);
}

// Contrast after WCAG 2.1, 1.4.3: black on the white of the paper is 21 to 1. So it is enough that
// every colour that is set is black, in the operators of ISO 32000-1, 8.6.8.
TEST_F(page_files, nothing_is_printed_in_anything_but_black) {
    PageOptions options = options_for();
    options.address = address;
    const auto drawn = pdf_page({tin_loaf_sheet()}, options);
    ASSERT_TRUE(drawn);
    const std::string plain = scratch_.in("plain.pdf");
    EXPECT_EQ(said_by({"qpdf",
                       "--qdf",
                       "--object-streams=disable",
                       scratch_.file("page.pdf", drawn->bytes),
                       plain})
                  .status,
              0);
    std::istringstream lines(said_by({"cat", plain}).out);
    std::string line;
    std::size_t colours = 0;
    while (std::getline(lines, line)) {
        const bool sets_rgb =
            line.find(" rg") != std::string::npos || line.find(" RG") != std::string::npos;
        if (sets_rgb) {
            EXPECT_EQ(line.substr(0, 5), "0 0 0") << line;
            ++colours;
        }
        EXPECT_EQ(line.find(" Do"), std::string::npos) << "a picture: " << line;
    }
    EXPECT_GT(colours, 0U);
}

TEST_F(page_files, a_title_in_any_script_is_a_sound_file) {
    for (const std::string& title : {std::string(300, 'm'),
                                     std::string("\xF0\x9F\x8D\x9E bread (\\) 'x'"),
                                     std::string("\xD8\xAE\xD8\xA8\xD8\xB2"),
                                     std::string("  "),
                                     std::string("<b>&amp;</b>")}) {
        Sheet sheet = tin_loaf_sheet();
        sheet.title = title;
        const auto pdf = pdf_page({sheet}, options_for());
        ASSERT_TRUE(pdf) << title;
        const std::string path = scratch_.file("page.pdf", pdf->bytes);
        EXPECT_EQ(said_by({"qpdf", "--check", path}).status, 0) << title;
        const auto svg = svg_page({sheet}, options_for());
        ASSERT_TRUE(svg) << title;
        const Said read = said_by(
            {"rsvg-convert", "-o", scratch_.in("page.png"), scratch_.file("page.svg", svg->bytes)});
        EXPECT_EQ(read.status, 0) << title << read.out;
    }
}

TEST_F(page_files, the_short_code_is_read_back_from_every_kind_of_file) {
    PageOptions options = options_for();
    options.address = address;
    const Sheet sheet = tin_loaf_sheet();
    const auto expect_read = [](const std::string& picture, const std::string& kind) {
        const Said read = said_by({"zbarimg", "--nodbus", "--quiet", "--raw", picture});
        EXPECT_EQ(read.out, address + "\n") << kind;
    };
    const auto png = png_page({sheet}, options);
    ASSERT_TRUE(png);
    expect_read(scratch_.file("page.png", png->bytes), "PNG");

    const auto pdf = pdf_page({sheet}, options);
    ASSERT_TRUE(pdf);
    const std::string path = scratch_.file("page.pdf", pdf->bytes);
    ASSERT_EQ(
        said_by({"pdftoppm", "-r", "150", "-png", "-singlefile", path, scratch_.in("pdf")}).status,
        0);
    expect_read(scratch_.in("pdf.png"), "PDF");

    const auto svg = svg_page({sheet}, options);
    ASSERT_TRUE(svg);
    ASSERT_EQ(said_by({"rsvg-convert",
                       "-d",
                       "150",
                       "-p",
                       "150",
                       "-o",
                       scratch_.in("svg.png"),
                       scratch_.file("page.svg", svg->bytes)})
                  .status,
              0);
    expect_read(scratch_.in("svg.png"), "SVG");

    // pdftotext sees a blank where slashes are kerned apart.
    std::string text = said_by({"pdftotext", "-raw", path, "-"}).out;
    text.erase(
        std::remove_if(text.begin(), text.end(), [](char c) { return c == ' ' || c == '\n'; }),
        text.end());
    EXPECT_NE(text.find("Onascreen:" + address), std::string::npos) << text;
}

TEST(short_code, keeps_its_quiet_zone) {
    PageOptions options = options_for();
    options.address = address;
    const TypeSetter setter(options.family);
    const PageLayout layout = lay_out({tin_loaf_sheet()}, options, setter);
    const CodeMark* code = nullptr;
    for (const Part& part : layout.pages.front().parts) {
        for (const Mark& mark : part.marks) {
            if (const auto* found = std::get_if<CodeMark>(&mark)) {
                code = found;
            }
        }
    }
    ASSERT_NE(code, nullptr);
    const double quiet = static_cast<double>(quiet_modules) * code->module_points;
    const double side = static_cast<double>(code->code.side) * code->module_points;
    EXPECT_GE(code->module_points, 1.4) << "half a millimetre";
    for (const Part& part : layout.pages.front().parts) {
        for (const Mark& mark : part.marks) {
            if (const auto* words = std::get_if<Words>(&mark)) {
                const bool apart = words->x >= code->x + side + quiet ||
                                   words->x + words->extent.width <= code->x - quiet + 0.01 ||
                                   words->y >= code->y + side + quiet - 0.01;
                EXPECT_TRUE(apart) << words->text;
            }
        }
    }
    EXPECT_GE(layout.width - code->x - side, quiet);
    EXPECT_GE(code->y, quiet);
}

TEST(short_code, an_address_that_cannot_be_one_has_none) {
    EXPECT_FALSE(short_code(""));
    EXPECT_FALSE(short_code(std::string("a\0b", 3)));
    // ISO/IEC 18004, table 7: 2331 bytes at most in version 40 at level M.
    EXPECT_TRUE(short_code(std::string(2331, 'x')));
    EXPECT_FALSE(short_code(std::string(2332, 'x')));
}

TEST(drawn, an_address_too_long_for_a_code_is_said) {
    PageOptions options = options_for();
    options.address = std::string(3000, 'x');
    const auto drawn = pdf_page({tin_loaf_sheet()}, options);
    ASSERT_TRUE(drawn);
    ASSERT_EQ(drawn->messages.size(), 1U);
    EXPECT_EQ(drawn->messages.front().code, "address_too_long");
}

TEST(drawn, a_missing_typeface_is_said_and_names_the_package) {
    PageOptions options = options_for();
    options.family = "No Such Typeface";
    const auto drawn = pdf_page({tin_loaf_sheet()}, options);
    ASSERT_TRUE(drawn) << "another one takes its place";
    ASSERT_FALSE(drawn->messages.empty());
    EXPECT_EQ(drawn->messages.front().code, "font_missing");
    EXPECT_TRUE(family_is_there("Lato")) << "apt-get install fonts-lato";
    EXPECT_TRUE(family_is_there("lato")) << "families have no case (CSS Fonts 3, 5.1)";
    EXPECT_FALSE(family_is_there("Lat"));

    PageLayout layout;
    PageOptions lato = options_for();
    EXPECT_TRUE(remarks_on(layout, lato).empty());
    layout.unknown_letters = 2;
    const Diagnostics remarks = remarks_on(layout, lato);
    ASSERT_EQ(remarks.size(), 1U);
    EXPECT_EQ(remarks.front().code, "letters_missing");
    EXPECT_NE(remarks.front().do_this.find("fonts-noto-core"), std::string::npos);
}

TEST(drawn, the_same_page_is_the_same_file) {
    const Sheet sheet = tin_loaf_sheet();
    EXPECT_EQ(pdf_page({sheet}, options_for())->bytes, pdf_page({sheet}, options_for())->bytes);
    EXPECT_EQ(svg_page({sheet}, options_for())->bytes, svg_page({sheet}, options_for())->bytes);
    EXPECT_EQ(png_page({sheet}, options_for())->bytes, png_page({sheet}, options_for())->bytes);
    const std::string pdf = pdf_page({sheet}, options_for())->bytes;
    EXPECT_NE(pdf.find("/CreationDate (20261128130000"), std::string::npos);
}

TEST(drawn, an_svg_says_in_words_what_it_shows) {
    Sheet sheet = tin_loaf_sheet();
    sheet.title = "Salt & <rye>";
    const std::string svg = svg_page({sheet}, options_for())->bytes;
    EXPECT_NE(svg.find("<title>Salt &amp; &lt;rye&gt;</title>"), std::string::npos);
    EXPECT_NE(svg.find("First rise, covered"), std::string::npos);
}

// PNG (W3C, second edition), 11.2.2: width, height, bit depth and colour type of the header.
TEST(drawn, a_png_is_as_fine_as_was_asked_and_grey) {
    PageOptions options = options_for();
    const auto number = [](const std::string& bytes, std::size_t at) {
        unsigned value = 0;
        for (std::size_t i = at; i < at + 4; ++i) {
            value = 256 * value + static_cast<unsigned char>(bytes[i]);
        }
        return value;
    };
    const std::string usual = png_page({tin_loaf_sheet()}, options)->bytes;
    EXPECT_EQ(number(usual, 16), 1240U); // 210 mm at 150 dots to an inch
    EXPECT_EQ(number(usual, 20), 1754U);
    EXPECT_EQ(usual[24], 8);
    EXPECT_EQ(usual[25], 0) << "grey";
    options.dots_per_inch = 1e9;
    EXPECT_EQ(number(png_page({tin_loaf_sheet()}, options)->bytes, 16), 4961U) << "600 at most";
}

} // namespace
} // namespace loafwright::output

// SPDX-License-Identifier: Apache-2.0
//
// make_pages FAMILY COLUMNS FORM IN.md OUT: prints a recipe for scripts/score-intake. FORM is words
// or pdf (OUT is a file), clean or bad (OUT becomes a folder of photos).
#include "tests/paper/camera.hpp"

#include <filesystem>
#include <fstream>
#include <iostream>
#include <iterator>
#include <string>
#include <vector>

namespace {

namespace press = loafwright::press;
namespace fs = std::filesystem;

void keep(const fs::path& path, const std::string& bytes) {
    std::ofstream(path, std::ios::binary) << bytes;
}

unsigned seed_of(const std::string& name) {
    unsigned seed = 17;
    for (const char c : name) {
        seed = seed * 31U + static_cast<unsigned char>(c);
    }
    return seed;
}

} // namespace

int main(int argc, char** argv) {
    const std::vector<std::string> words(argv + 1, argv + argc);
    if (words.size() != 5 || !press::has_family(words[0])) {
        std::cerr << "make_pages FAMILY COLUMNS words|pdf|clean|bad IN.md OUT\n";
        return 2;
    }
    std::ifstream file(words[3], std::ios::binary);
    const std::string markdown{std::istreambuf_iterator<char>(file),
                               std::istreambuf_iterator<char>()};
    press::Style style;
    style.family = words[0];
    style.columns = words[1] == "2" ? 2 : 1;
    const std::string& form = words[2];
    const fs::path out = words[4];
    if (form == "words") {
        keep(out, press::printed_words(markdown));
    } else if (form == "pdf") {
        keep(out, press::printed_pdf(markdown, style));
    } else {
        fs::create_directories(out);
        int number = 0;
        for (const press::Grey& page : press::printed_pages(markdown, style)) {
            ++number;
            const std::string name = "page-" + std::to_string(number);
            const unsigned seed = seed_of(words[0] + words[1] + words[3] + name);
            if (form == "clean") {
                keep(out / (name + ".png"), press::png_of(page));
            } else {
                keep(out / (name + ".jpg"), press::jpeg_of(page, press::usual_bad_shot(seed)));
            }
        }
    }
}

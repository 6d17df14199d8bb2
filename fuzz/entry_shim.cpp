// SPDX-License-Identifier: Apache-2.0

// A plain main for fuzz targets. libFuzzer needs clang and its own runtime; with this file every
// target also links as an ordinary program that runs once over each file it is given (a folder
// means all files below it). A crash or a failed check ends the program, which fails the test.

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>
#include <vector>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size);

namespace {

std::vector<std::filesystem::path> files_below(const std::filesystem::path& start) {
    std::vector<std::filesystem::path> files;
    if (!std::filesystem::is_directory(start)) {
        files.push_back(start);
        return files;
    }
    for (const auto& entry : std::filesystem::recursive_directory_iterator(start)) {
        if (entry.is_regular_file()) {
            files.push_back(entry.path());
        }
    }
    // Folders are listed in no fixed order; a failure should always be the same one.
    std::sort(files.begin(), files.end());
    return files;
}

} // namespace

int main(int argc, char** argv) {
    std::size_t inputs = 0;
    for (int i = 1; i < argc; ++i) {
        for (const auto& path : files_below(argv[i])) {
            std::ifstream file(path, std::ios::binary);
            if (!file) {
                std::fprintf(stderr, "%s: could not be opened\n", path.c_str());
                return 2;
            }
            const std::string text((std::istreambuf_iterator<char>(file)),
                                   std::istreambuf_iterator<char>());
            const std::vector<std::uint8_t> bytes(text.begin(), text.end());
            // Printed first, so that the last line names the input that broke something.
            std::printf("%s\n", path.c_str());
            std::fflush(stdout);
            LLVMFuzzerTestOneInput(bytes.data(), bytes.size());
            ++inputs;
        }
    }
    if (inputs == 0) {
        std::fprintf(stderr, "found no input; expected files or folders as arguments\n");
        return 2;
    }
    std::printf("%zu inputs, all well\n", inputs);
    return 0;
}

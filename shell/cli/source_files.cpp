// SPDX-License-Identifier: Apache-2.0
//
// From the paths of a call to words, whatever kind of file they name.
#include "shell/cli/source_files.hpp"

#include "engine/reading/read.hpp"
#include "shell/cli/files.hpp"
#include "shell/cli/terminal.hpp"
#include "shell/intake/take_in.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <filesystem>
#include <string_view>
#include <system_error>
#include <utility>

namespace loafwright::cli {

namespace {

namespace fs = std::filesystem;

constexpr std::size_t most_named = 12; // unsure words, one by one

std::size_t longest_of(std::string_view begun) {
    const auto kind = intake::kind_of(begun);
    if (kind == intake::Kind::pdf || kind == intake::Kind::image) {
        return intake::longest_paper_bytes;
    }
    return kind == intake::Kind::html ? intake::longest_page_bytes : longest_text_bytes;
}

// "page 2" before "page 10": digits as numbers, the rest letter by letter.
bool comes_before(const std::string& a, const std::string& b) {
    const auto digit = [](char c) { return std::isdigit(static_cast<unsigned char>(c)) != 0; };
    std::size_t i = 0;
    std::size_t j = 0;
    while (i < a.size() && j < b.size()) {
        if (digit(a[i]) && digit(b[j])) {
            const auto number = [&digit](const std::string& name, std::size_t& at) {
                while (at < name.size() && name[at] == '0') {
                    ++at;
                }
                const std::size_t begin = at;
                while (at < name.size() && digit(name[at])) {
                    ++at;
                }
                return std::string_view(name).substr(begin, at - begin);
            };
            const std::string_view left = number(a, i);
            const std::string_view right = number(b, j);
            if (left != right) {
                return left.size() != right.size() ? left.size() < right.size() : left < right;
            }
        } else if (a[i] != b[j]) {
            return a[i] < b[j];
        } else {
            ++i;
            ++j;
        }
    }
    return a.size() - i < b.size() - j || (a.size() - i == b.size() - j && a < b);
}

std::vector<std::string> files_in(const std::string& folder) {
    std::vector<std::string> files;
    std::error_code unknown;
    for (const fs::directory_entry& entry : fs::directory_iterator(folder, unknown)) {
        const std::string name = entry.path().filename().string();
        if (entry.is_regular_file(unknown) && name.front() != '.') {
            files.push_back(entry.path().string());
        }
    }
    std::sort(files.begin(), files.end(), comes_before);
    return files;
}

bool is_paper(const std::string& bytes) {
    const auto kind = intake::kind_of(bytes);
    return kind == intake::Kind::pdf || kind == intake::Kind::image;
}

void read_folder(const std::string& folder,
                 std::vector<intake::NamedBytes>& found,
                 Diagnostics& wrong) {
    const std::size_t before = found.size();
    for (const std::string& path : files_in(folder)) {
        auto bytes = file_bytes(path, longest_of);
        if (bytes && is_paper(*bytes)) {
            found.push_back({path, std::move(*bytes)});
        }
    }
    if (found.size() == before) {
        wrong.push_back({"file_missing",
                         Severity::error,
                         "this is a folder without photos, expected a file",
                         folder,
                         "Check the name and the folder."});
    }
}

std::vector<intake::NamedBytes> bytes_of(const std::vector<std::string>& paths,
                                         Diagnostics& wrong) {
    std::vector<intake::NamedBytes> found;
    for (const std::string& path : paths) {
        std::error_code unknown;
        if (path != "-" && fs::is_directory(path, unknown)) {
            read_folder(path, found, wrong);
            continue;
        }
        auto bytes = file_bytes(path, longest_of);
        if (bytes) {
            found.push_back({name_for_messages(path), std::move(*bytes)});
        } else {
            std::move(bytes.error().begin(), bytes.error().end(), std::back_inserter(wrong));
        }
    }
    return found;
}

} // namespace

tl::expected<intake::TakenIn, Diagnostics> taken_in(const std::vector<std::string>& paths) {
    Diagnostics wrong;
    const std::vector<intake::NamedBytes> files = bytes_of(paths, wrong);
    if (!wrong.empty()) {
        return tl::make_unexpected(std::move(wrong));
    }
    intake::Wish wish;
    ProgressLine line("reading the page");
    wish.progress = [&line](int percent) { line.show(percent); };
    return intake::take_in(files, wish);
}

Diagnostics unsure_words(const intake::TakenIn& taken, const std::string& name) {
    Diagnostics remarks = taken.remarks;
    for (std::size_t i = 0; i < taken.unsure.size(); ++i) {
        if (i == most_named) {
            remarks.push_back({"number_unsure",
                               Severity::warning,
                               fmt::format("{} more numbers may have been read wrongly",
                                           taken.unsure.size() - most_named),
                               name,
                               "Compare the numbers with the page."});
            break;
        }
        const intake::UnsureWord& word = taken.unsure[i];
        std::string what = fmt::format(
            "\"{}\" may have been read wrongly",
            std::string_view(taken.text).substr(word.span.begin, word.span.end - word.span.begin));
        if (!word.maybe.empty()) {
            what += fmt::format(": perhaps {}", fmt::join(word.maybe, ", "));
        }
        remarks.push_back({"number_unsure",
                           Severity::warning,
                           std::move(what),
                           fmt::format("{}:{}-{}", name, word.span.begin, word.span.end),
                           "Compare it with the page."});
    }
    return remarks;
}

} // namespace loafwright::cli

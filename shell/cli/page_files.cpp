// SPDX-License-Identifier: Apache-2.0
//
// Which writer makes which file.
#include "shell/cli/page_files.hpp"

#include "shell/output/text_page.hpp"

#include <algorithm>
#include <array>

namespace loafwright::cli {

namespace {

using Answer = tl::expected<output::Drawn, Diagnostic>;

constexpr std::size_t paper_columns = 80;

struct Writer {
    std::string_view ending;
    Answer (*bytes)(const PageSource& source);
};

constexpr std::array<Writer, 5> writers = {{
    {".txt",
     [](const PageSource& source) -> Answer {
         return output::Drawn{output::text_page(source.sheet, paper_columns, output::Weight::plain),
                              {}};
     }},
    {".pdf",
     [](const PageSource& source) { return output::pdf_page({source.sheet}, source.options); }},
    {".svg",
     [](const PageSource& source) { return output::svg_page({source.sheet}, source.options); }},
    {".png",
     [](const PageSource& source) { return output::png_page({source.sheet}, source.options); }},
    {".json",
     [](const PageSource& source) -> Answer {
         return output::Drawn{source.json, {}};
     }},
}};

bool ends_in(const std::string& path, std::string_view ending) {
    // A file that is all ending has no name.
    return path.size() > ending.size() &&
           std::equal(ending.rbegin(), ending.rend(), path.rbegin(), [](char a, char b) {
               return a == (b >= 'A' && b <= 'Z' ? static_cast<char>(b - 'A' + 'a') : b);
           });
}

const Writer* writer_of(const std::string& path) {
    const auto* const found =
        std::find_if(writers.begin(), writers.end(), [&path](const Writer& writer) {
            return ends_in(path, writer.ending);
        });
    return found == writers.end() ? nullptr : found;
}

} // namespace

bool has_page_ending(const std::string& path) {
    return writer_of(path) != nullptr;
}

tl::expected<output::Drawn, Diagnostic> page_file(const std::string& path,
                                                  const PageSource& source) {
    return writer_of(path)->bytes(source);
}

} // namespace loafwright::cli

// SPDX-License-Identifier: Apache-2.0
//
// Which writer makes which file.
#include "shell/cli/page_files.hpp"

#include "shell/output/linear_page.hpp"

#include <algorithm>
#include <array>

namespace loafwright::cli {

namespace {

using Answer = tl::expected<output::Drawn, Diagnostic>;

constexpr std::size_t paper_columns = 80;

struct Writer {
    std::string_view ending;
    bool drawn;
    Answer (*bytes)(const PageSource& source, const std::string& path);
};

constexpr std::array<Writer, 6> writers = {{
    {".txt",
     false,
     [](const PageSource& source, const std::string& /*path*/) -> Answer {
         return output::Drawn{
             in_letters(source.pages, source.linear, paper_columns, output::Weight::plain), {}};
     }},
    {".pdf",
     true,
     [](const PageSource& source, const std::string& /*path*/) {
         return source.parts->pdf(source.pages, source.options);
     }},
    {".svg",
     true,
     [](const PageSource& source, const std::string& /*path*/) {
         return source.parts->svg(source.pages, source.options);
     }},
    {".png",
     true,
     [](const PageSource& source, const std::string& /*path*/) {
         return source.parts->png(source.pages, source.options);
     }},
    {".ics",
     false,
     [](const PageSource& source, const std::string& path) -> Answer {
         return output::Drawn{source.calendar(path), {}};
     }},
    {".json",
     false,
     [](const PageSource& source, const std::string& /*path*/) -> Answer {
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

std::string in_letters(const std::vector<Sheet>& pages,
                       bool linear,
                       std::size_t columns,
                       output::Weight weight) {
    std::string text;
    for (const Sheet& page : pages) {
        text += text.empty() ? "" : "\n\n";
        text += linear ? output::linear_page(page) : output::text_page(page, columns, weight);
    }
    return text;
}

std::string in_letters(const Refusal& refusal, bool linear, std::size_t columns) {
    return linear ? output::linear_page(refusal) : output::text_page(refusal, columns);
}

bool has_page_ending(const std::string& path) {
    return writer_of(path) != nullptr;
}

bool is_drawn(const std::string& path) {
    return writer_of(path)->drawn;
}

bool is_web_address(std::string_view address) {
    // RFC 3986, 2: unreserved and reserved characters, and % before two digits of sixteen.
    constexpr std::string_view marks = "-._~:/?#[]@!$&'()*+,;=%";
    const auto is_letter = [](char c) {
        return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9');
    };
    const std::size_t colon = address.find("://");
    if (colon == std::string_view::npos) {
        return false;
    }
    std::string scheme(address.substr(0, colon));
    for (char& c : scheme) {
        c = c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    }
    const std::string_view rest = address.substr(colon + 3);
    return (scheme == "http" || scheme == "https") && !rest.empty() &&
           (is_letter(rest.front()) || rest.front() == '[') &&
           std::all_of(rest.begin(), rest.end(), [&](char c) {
               return is_letter(c) || marks.find(c) != std::string_view::npos;
           });
}

tl::expected<output::Drawn, Diagnostic> page_file(const std::string& path,
                                                  const PageSource& source) {
    return writer_of(path)->bytes(source, path);
}

} // namespace loafwright::cli

// SPDX-License-Identifier: Apache-2.0
//
// From files to pages, from pages to words, from words to prose.
#include "shell/paper/paper.hpp"

#include "shell/paper/doubt.hpp"
#include "shell/paper/fractions.hpp"
#include "shell/paper/furniture.hpp"
#include "shell/paper/marks.hpp"
#include "shell/paper/pdf.hpp"
#include "shell/paper/photo.hpp"
#include "shell/paper/prose.hpp"
#include "shell/paper/recognise.hpp"
#include "shell/paper/straighten.hpp"

#include <allheaders.h>
#include <fmt/format.h>

#include <algorithm>
#include <iterator>
#include <optional>
#include <utility>
#include <variant>

namespace loafwright::paper {

namespace {

struct PageOfFile {
    PdfPage page;
    std::string file;
};

tl::expected<std::vector<PageOfFile>, Diagnostics> all_pages(const intake::Request& request) {
    std::vector<PageOfFile> pages;
    Diagnostics wrong;
    const auto keep = [&](auto found, const std::string& name) {
        if (!found) {
            found.error().where = name;
            wrong.push_back(std::move(found.error()));
            return;
        }
        for (auto& page : *found) {
            pages.push_back({std::move(page), name});
        }
    };
    for (const intake::FileView& file : request.files) {
        if (intake::kind_of(file.bytes) == intake::Kind::pdf) {
            keep(pages_of(file.bytes, request.limits), file.name);
        } else {
            keep(pictures_of(file.bytes, request.limits), file.name);
        }
        if (pages.size() > request.limits.most_pages) {
            wrong.push_back({"too_many_pages",
                             Severity::error,
                             fmt::format("there are more than {} pages", request.limits.most_pages),
                             file.name,
                             "Name the pages of one recipe."});
            break;
        }
    }
    if (!wrong.empty()) {
        return tl::make_unexpected(std::move(wrong));
    }
    return pages;
}

SeenPage
read_page(Recogniser& recogniser, const Picture& flat, const std::function<void(int)>& progress) {
    const auto fractions =
        fractions_on(flat, [&](const Picture& figure) { return recogniser.read_figure(figure); });
    // Hopeless both ways up, it is no print; then half of it says so as well as the whole.
    SeenPage read = recogniser.read(flat, fractions, progress, is_hopeless);
    mend_marks(read);
    doubt_numbers(read);
    return read;
}

intake::PagePicture shown(const Picture& page) {
    intake::PagePicture picture{width_of(page), height_of(page), ""};
    l_uint8* bytes = nullptr;
    std::size_t size = 0;
    if (pixWriteMemPng(&bytes, &size, page.get(), 0.0F) == 0) {
        picture.png.assign(reinterpret_cast<const char*>(bytes), size);
    }
    lept_free(bytes);
    return picture;
}

Diagnostics no_language() {
    return {{"reader_missing",
             Severity::error,
             "photos are read with Tesseract, whose English data is not installed",
             "",
             "Install it: apt-get install tesseract-ocr-eng"}};
}

Diagnostics no_words(const std::string& where) {
    return {{"no_words_found",
             Severity::error,
             "no words could be read here",
             where,
             "Photograph the page from straight above, in good light."}};
}

} // namespace

Reader::Reader(const std::string& language_folder) : language_(language_data(language_folder)) {
    make_pdf_ready();
}

Reader::~Reader() = default;

tl::expected<intake::TakenIn, Diagnostics>
Reader::read(const intake::Request& request, const std::function<void(int)>& progress) const {
    auto pages = all_pages(request);
    if (!pages) {
        return tl::make_unexpected(std::move(pages.error()));
    }
    intake::TakenIn taken;
    taken.kind = *intake::kind_of(request.files.front().bytes);
    std::optional<Recogniser> recogniser;
    std::vector<SeenPage> seen;
    bool by_hand = false;
    for (std::size_t i = 0; i < pages->size(); ++i) {
        const auto at = [&](int percent) {
            progress(
                static_cast<int>((100 * i + static_cast<std::size_t>(percent)) / pages->size()));
        };
        at(0);
        PdfPage& page = (*pages)[i].page;
        if (auto* words = std::get_if<SeenPage>(&page)) {
            seen.push_back(std::move(*words));
            continue;
        }
        if (!recogniser) {
            recogniser.emplace(language_);
            if (!recogniser->is_ready()) {
                return tl::make_unexpected(no_language());
            }
        }
        Picture flat = straightened(std::move(std::get<Picture>(page)));
        at(20);
        SeenPage read =
            read_page(*recogniser, flat, [&](int percent) { at(20 + percent * 7 / 10); });
        if (!is_print(read)) {
            // Which way is up was perhaps judged wrongly.
            Picture side = turned_to_its_side(flat);
            SeenPage again = read_page(*recogniser, side, [](int) {});
            if (sureness_of(again) > sureness_of(read)) {
                read = std::move(again);
                flat = std::move(side);
            }
        }
        if (request.page_pictures) {
            taken.pages.push_back(shown(flat));
        }
        by_hand = by_hand || !is_print(read);
        seen.push_back(std::move(read));
    }
    take_furniture_away(seen);
    Prose prose = prose_of(seen);
    if (prose.text.find_first_not_of(" \n") == std::string::npos) {
        return tl::make_unexpected(no_words(request.files.front().name));
    }
    progress(100);
    if (by_hand) {
        taken.handwriting = true;
        taken.remarks.push_back(
            {"handwriting",
             Severity::warning,
             "this looks written by hand, and only print is read here",
             request.files.front().name,
             "Type it in, or read it aloud to someone who types; keep the photo beside it."});
        return taken;
    }
    taken.text = std::move(prose.text);
    taken.unsure = std::move(prose.unsure);
    return taken;
}

} // namespace loafwright::paper

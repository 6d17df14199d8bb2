// SPDX-License-Identifier: Apache-2.0
//
// The one door to Tesseract.
#include "shell/paper/recognise.hpp"

#include "shell/paper/regions.hpp"

#include <allheaders.h>
#include <tesseract/baseapi.h>
#include <tesseract/ocrclass.h>
#include <tesseract/resultiterator.h>

#include <algorithm>
#include <array>
#include <fstream>
#include <iterator>
#include <utility>
#include <vector>

namespace loafwright::paper {

namespace {

constexpr int dots_per_inch = 300; // what letters of the wanted height come to in usual print

constexpr std::array<const char*, 3> usual_folders = {"/usr/share/tesseract-ocr/5/tessdata",
                                                      "/usr/share/tesseract-ocr/4.00/tessdata",
                                                      "/usr/share/tessdata"};

std::string bytes_of(const std::string& path) {
    std::ifstream file(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}

std::string text_of(const char* owned) {
    const std::unique_ptr<const char[]> held(owned);
    std::string text = owned == nullptr ? std::string() : std::string(owned);
    while (!text.empty() && (text.back() == '\n' || text.back() == ' ')) {
        text.pop_back();
    }
    return text;
}

Box box_of(const tesseract::ResultIterator& at, tesseract::PageIteratorLevel level) {
    int left = 0;
    int top = 0;
    int right = 0;
    int bottom = 0;
    at.BoundingBox(level, &left, &top, &right, &bottom);
    return {static_cast<double>(left),
            static_cast<double>(top),
            static_cast<double>(right),
            static_cast<double>(bottom)};
}

} // namespace

std::string language_data(const std::string& folder) {
    if (!folder.empty()) {
        return bytes_of(folder + "/eng.traineddata");
    }
    for (const char* usual : usual_folders) {
        std::string data = bytes_of(std::string(usual) + "/eng.traineddata");
        if (!data.empty()) {
            return data;
        }
    }
    return {};
}

struct Recogniser::Inside {
    tesseract::TessBaseAPI api;
    bool ready = false;
};

Recogniser::Recogniser(std::string_view language) : inside_(std::make_unique<Inside>()) {
    tesseract::TessBaseAPI& api = inside_->api;
    inside_->ready = !language.empty() && api.Init(language.data(),
                                                   static_cast<int>(language.size()),
                                                   "eng",
                                                   tesseract::OEM_LSTM_ONLY,
                                                   nullptr,
                                                   0,
                                                   nullptr,
                                                   nullptr,
                                                   false,
                                                   nullptr) == 0;
    if (inside_->ready) {
        api.SetVariable("debug_file", "/dev/null");
        // Light letters on dark paper are rare, and trying them doubles the time of poor lines.
        api.SetVariable("tessedit_do_invert", "0");
    }
}

Recogniser::~Recogniser() = default;

bool Recogniser::is_ready() const {
    return inside_->ready;
}

namespace {

// What Tesseract found in the part of the page it was shown.
void take_lines(tesseract::TessBaseAPI& api, SeenPage& seen) {
    const std::unique_ptr<tesseract::ResultIterator> at(api.GetIterator());
    if (at == nullptr || at->Empty(tesseract::RIL_WORD)) {
        return;
    }
    bool first = true;
    do {
        SeenWord word;
        word.text = text_of(at->GetUTF8Text(tesseract::RIL_WORD));
        if (word.text.find_first_not_of(' ') == std::string::npos) {
            continue;
        }
        word.box = box_of(*at, tesseract::RIL_WORD);
        word.confidence =
            std::clamp(static_cast<double>(at->Confidence(tesseract::RIL_WORD)) / 100.0, 0.0, 1.0);
        if (first || at->IsAtBeginningOf(tesseract::RIL_TEXTLINE)) {
            first = false;
            float row = 0.0F;
            float below = 0.0F;
            float above = 0.0F;
            at->RowAttributes(&row, &below, &above);
            seen.lines.emplace_back();
            seen.lines.back().box = word.box;
            seen.lines.back().size = row;
        }
        SeenLine& line = seen.lines.back();
        line.box = around(line.box, word.box);
        line.words.push_back(std::move(word));
    } while (at->Next(tesseract::RIL_WORD));
}

struct Watch {
    const std::function<void(int)>* tell;
    double from;
    double share;
};

bool watch(tesseract::ETEXT_DESC* now, int, int, int, int) {
    const auto& watch = *static_cast<const Watch*>(now->cancel_this);
    (*watch.tell)(static_cast<int>(watch.from + watch.share * now->progress));
    return false;
}

} // namespace

SeenPage Recogniser::read(const Picture& page, const std::function<void(int)>& progress) {
    SeenPage seen;
    seen.width = width_of(page);
    seen.height = height_of(page);
    seen.picture = true;
    tesseract::TessBaseAPI& api = inside_->api;
    api.SetPageSegMode(tesseract::PSM_SINGLE_BLOCK);
    api.SetImage(page.get());
    api.SetSourceResolution(dots_per_inch);
    const std::vector<Box> regions = regions_of(page);
    double area = 0.0;
    for (const Box& region : regions) {
        area += region.width() * region.height();
    }
    Watch watched{&progress, 0.0, 0.0};
    for (const Box& region : regions) {
        tesseract::ETEXT_DESC monitor;
        watched.share = region.width() * region.height() / area;
        monitor.cancel_this = &watched;
        monitor.progress_callback2 = watch;
        api.SetRectangle(static_cast<int>(region.left),
                         static_cast<int>(region.top),
                         static_cast<int>(region.width()),
                         static_cast<int>(region.height()));
        if (api.Recognize(&monitor) == 0) {
            take_lines(api, seen);
        }
        watched.from += 100.0 * watched.share;
    }
    return seen;
}

std::string Recogniser::read_again(const Picture& part) {
    tesseract::TessBaseAPI& api = inside_->api;
    api.SetPageSegMode(tesseract::PSM_SINGLE_LINE);
    api.SetImage(part.get());
    api.SetSourceResolution(dots_per_inch);
    return text_of(api.GetUTF8Text());
}

} // namespace loafwright::paper

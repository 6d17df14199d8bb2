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

const FractionSign* fraction_under(const Box& letter, const std::vector<FractionSign>& fractions) {
    const auto found = std::find_if(fractions.begin(), fractions.end(), [&](const FractionSign& f) {
        return covers(f, letter);
    });
    return found == fractions.end() ? nullptr : &*found;
}

bool is_plain_letter(const std::string& text) {
    return !text.empty() &&
           ((text[0] >= 'a' && text[0] <= 'z') || (text[0] >= 'A' && text[0] <= 'Z'));
}

SeenWord fraction_word(const std::string& before, const Box& box, const FractionSign& fraction) {
    SeenWord word;
    word.text = before + (fraction.text.empty() ? "½" : fraction.text);
    word.box = around(box, fraction.box);
    // Which figures stand there was read apart, by shape; never more than likely.
    word.confidence = fraction.text.empty() ? 0.3 : 0.8;
    word.maybe = other_fractions(before, fraction);
    word.doubted = true;
    word.fraction = true;
    return word;
}

// One word of Tesseract's; or two, where it read a fraction and the word behind it as one.
std::vector<SeenWord> words_at(const tesseract::ResultIterator& at,
                               const std::vector<FractionSign>& fractions) {
    SeenWord whole;
    whole.text = text_of(at.GetUTF8Text(tesseract::RIL_WORD));
    whole.box = box_of(at, tesseract::RIL_WORD);
    whole.confidence =
        std::clamp(static_cast<double>(at.Confidence(tesseract::RIL_WORD)) / 100.0, 0.0, 1.0);
    if (whole.text.find_first_not_of(' ') == std::string::npos) {
        return {};
    }
    std::string before;
    std::string behind;
    const FractionSign* fraction = nullptr;
    tesseract::ResultIterator letter(at);
    do {
        const std::string text = text_of(letter.GetUTF8Text(tesseract::RIL_SYMBOL));
        const FractionSign* here = fraction_under(box_of(letter, tesseract::RIL_SYMBOL), fractions);
        if (here != nullptr && (fraction == nullptr || here == fraction)) {
            fraction = here;
        } else {
            (fraction == nullptr ? before : behind) += text;
        }
    } while (letter.Next(tesseract::RIL_SYMBOL) && !letter.IsAtBeginningOf(tesseract::RIL_WORD));
    if (fraction == nullptr) {
        return {std::move(whole)};
    }
    std::vector<SeenWord> words = {fraction_word(before, whole.box, *fraction)};
    if (is_plain_letter(behind)) {
        SeenWord next = whole;
        next.text = behind;
        next.box.left = fraction->box.right;
        words.front().box.right = fraction->box.right;
        words.push_back(std::move(next));
    } else {
        words.front().text += behind;
    }
    return words;
}

bool same_place(const Box& a, const Box& b) {
    const double across = std::min(a.right, b.right) - std::max(a.left, b.left);
    const double down = std::min(a.bottom, b.bottom) - std::max(a.top, b.top);
    return across > 0.6 * std::min(a.width(), b.width()) &&
           down > 0.5 * std::min(a.height(), b.height());
}

// Parts of a page have a rim in common; what stands there is read with each, and kept once.
void take_doubles_away(SeenPage& seen, std::size_t earlier) {
    const auto first_new = seen.lines.begin() + static_cast<std::ptrdiff_t>(earlier);
    const auto is_double = [&](const SeenWord& word) {
        return std::any_of(seen.lines.begin(), first_new, [&](const SeenLine& line) {
            return same_place(line.box, word.box) &&
                   std::any_of(line.words.begin(), line.words.end(), [&](const SeenWord& other) {
                       return same_place(other.box, word.box);
                   });
        });
    };
    for (auto line = first_new; line != seen.lines.end(); ++line) {
        const auto end = std::remove_if(line->words.begin(), line->words.end(), is_double);
        if (end == line->words.end()) {
            continue;
        }
        line->words.erase(end, line->words.end());
        for (std::size_t i = 0; i < line->words.size(); ++i) {
            line->box = i == 0 ? line->words[i].box : around(line->box, line->words[i].box);
        }
    }
    seen.lines.erase(std::remove_if(first_new,
                                    seen.lines.end(),
                                    [](const SeenLine& line) { return line.words.empty(); }),
                     seen.lines.end());
}

// What Tesseract found in the part of the page it was shown.
void take_lines(tesseract::TessBaseAPI& api,
                const std::vector<FractionSign>& fractions,
                SeenPage& seen) {
    const std::unique_ptr<tesseract::ResultIterator> at(api.GetIterator());
    if (at == nullptr || at->Empty(tesseract::RIL_WORD)) {
        return;
    }
    bool first = true;
    do {
        std::vector<SeenWord> words = words_at(*at, fractions);
        if (words.empty()) {
            continue;
        }
        if (first || at->IsAtBeginningOf(tesseract::RIL_TEXTLINE)) {
            first = false;
            float row = 0.0F;
            float below = 0.0F;
            float above = 0.0F;
            at->RowAttributes(&row, &below, &above);
            seen.lines.emplace_back();
            seen.lines.back().box = words.front().box;
            seen.lines.back().size = row;
        }
        SeenLine& line = seen.lines.back();
        for (SeenWord& word : words) {
            line.box = around(line.box, word.box);
            line.words.push_back(std::move(word));
        }
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

SeenPage Recogniser::read(const Picture& page,
                          const std::vector<FractionSign>& fractions,
                          const std::function<void(int)>& progress,
                          const std::function<bool(const SeenPage&)>& enough) {
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
            const std::size_t earlier = seen.lines.size();
            take_lines(api, fractions, seen);
            take_doubles_away(seen, earlier);
        }
        if (enough(seen)) {
            break;
        }
        watched.from += 100.0 * watched.share;
    }
    for (SeenLine& line : seen.lines) {
        glue_fractions(line);
    }
    return seen;
}

std::string Recogniser::read_figure(const Picture& part) {
    tesseract::TessBaseAPI& api = inside_->api;
    if (!part) {
        return {};
    }
    api.SetVariable("tessedit_char_whitelist", "12345678");
    api.SetPageSegMode(tesseract::PSM_SINGLE_CHAR);
    api.SetImage(part.get());
    api.SetSourceResolution(dots_per_inch);
    std::string figure = text_of(api.GetUTF8Text());
    api.SetVariable("tessedit_char_whitelist", "");
    return figure;
}

} // namespace loafwright::paper

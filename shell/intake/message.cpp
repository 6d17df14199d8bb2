// SPDX-License-Identifier: Apache-2.0
//
// The language of parent and child. What the child says is not believed: every number and every
// byte of it is checked before it goes on.
#include "shell/intake/message.hpp"

#include <nlohmann/json.hpp>
#include <utf8cpp/utf8.h>

#include <algorithm>
#include <utility>

namespace loafwright::intake {

namespace {

using Json = nlohmann::ordered_json;

constexpr int version = 1;
constexpr int largest_side = 20'000;

struct Parts {
    Json head;
    std::string_view blobs;
};

std::optional<Parts> parts_of(std::string_view message) {
    const std::size_t line = message.find('\n');
    if (line == std::string_view::npos) {
        return std::nullopt;
    }
    Json head = Json::parse(message.substr(0, line), nullptr, false);
    if (!head.is_object() || head.value("version", 0) != version) {
        return std::nullopt;
    }
    return Parts{std::move(head), message.substr(line + 1)};
}

// The next so many bytes of the blobs.
std::optional<std::string_view> cut(std::string_view& blobs, const Json& size) {
    if (!size.is_number_unsigned() || size.get<std::uint64_t>() > blobs.size()) {
        return std::nullopt;
    }
    const std::string_view blob = blobs.substr(0, size.get<std::size_t>());
    blobs.remove_prefix(blob.size());
    return blob;
}

bool is_clean(std::string_view text) {
    return utf8::is_valid(text.begin(), text.end()) &&
           std::none_of(text.begin(), text.end(), [](char c) {
               return (c >= 0 && c < ' ' && c != '\n' && c != '\t') || c == '\x7F';
           });
}

Json json_of(const Diagnostics& diagnostics) {
    Json list = Json::array();
    for (const Diagnostic& d : diagnostics) {
        list.push_back({{"code", d.code},
                        {"severity", name_of(d.severity)},
                        {"what", d.what},
                        {"where", d.where},
                        {"do_this", d.do_this}});
    }
    return list;
}

Diagnostics diagnostics_from(const Json& list) {
    Diagnostics diagnostics;
    for (const Json& row : list) {
        Diagnostic d;
        d.code = row.at("code").get<std::string>();
        const std::string severity = row.at("severity").get<std::string>();
        d.severity = severity == "note"      ? Severity::note
                     : severity == "warning" ? Severity::warning
                                             : Severity::error;
        d.what = row.at("what").get<std::string>();
        d.where = row.at("where").get<std::string>();
        d.do_this = row.at("do_this").get<std::string>();
        if (!is_known_code(d.code) || !is_clean(d.what) || !is_clean(d.where) ||
            !is_clean(d.do_this)) {
            throw Json::other_error::create(599, "not a diagnostic", &list);
        }
        diagnostics.push_back(std::move(d));
    }
    return diagnostics;
}

Json json_of(const UnsureWord& word) {
    Json row = {{"begin", word.span.begin},
                {"end", word.span.end},
                {"confidence", word.confidence},
                {"maybe", word.maybe}};
    if (word.clipping) {
        const Clipping& c = *word.clipping;
        row["clipping"] = {c.page, c.x, c.y, c.width, c.height};
    }
    return row;
}

int side(const Json& number) {
    return static_cast<int>(std::clamp<std::int64_t>(number.get<std::int64_t>(), 0, largest_side));
}

UnsureWord unsure_from(const Json& row) {
    UnsureWord word;
    word.span = {row.at("begin").get<std::size_t>(), row.at("end").get<std::size_t>()};
    word.confidence = std::clamp(row.at("confidence").get<double>(), 0.0, 1.0);
    word.maybe = row.at("maybe").get<std::vector<std::string>>();
    if (row.contains("clipping")) {
        const Json& c = row.at("clipping");
        word.clipping = Clipping{
            c.at(0).get<std::size_t>(), side(c.at(1)), side(c.at(2)), side(c.at(3)), side(c.at(4))};
    }
    return word;
}

Json head_of(const TakenIn& taken) {
    Json unsure = Json::array();
    for (const UnsureWord& word : taken.unsure) {
        unsure.push_back(json_of(word));
    }
    Json pages = Json::array();
    for (const PagePicture& page : taken.pages) {
        pages.push_back({page.width, page.height, page.png.size()});
    }
    return {{"version", version},
            {"kind", static_cast<int>(taken.kind)},
            {"text", taken.text},
            {"unsure", std::move(unsure)},
            {"handwriting", taken.handwriting},
            {"pages", std::move(pages)},
            {"remarks", json_of(taken.remarks)}};
}

bool holds_together(const TakenIn& taken) {
    std::size_t before = 0;
    for (const UnsureWord& word : taken.unsure) {
        if (word.span.begin < before || word.span.end <= word.span.begin ||
            word.span.end > taken.text.size() ||
            !std::all_of(word.maybe.begin(), word.maybe.end(), is_clean)) {
            return false;
        }
        before = word.span.end;
    }
    return is_clean(taken.text);
}

TakenIn taken_from(const Json& head, std::string_view blobs) {
    TakenIn taken;
    taken.kind = static_cast<Kind>(std::clamp(head.at("kind").get<int>(), 0, 3));
    taken.text = head.at("text").get<std::string>();
    for (const Json& row : head.at("unsure")) {
        taken.unsure.push_back(unsure_from(row));
    }
    taken.handwriting = head.at("handwriting").get<bool>();
    taken.remarks = diagnostics_from(head.at("remarks"));
    for (const Json& row : head.at("pages")) {
        const auto png = cut(blobs, row.at(2));
        taken.pages.push_back(
            {side(row.at(0)), side(row.at(1)), std::string(png.value_or(std::string_view()))});
    }
    return taken;
}

} // namespace

std::string request_message(const std::vector<NamedBytes>& files, const Wish& wish) {
    Json sizes = Json::array();
    std::size_t all = 0;
    for (const NamedBytes& file : files) {
        std::string name = file.name;
        if (!is_clean(name)) {
            name = utf8::replace_invalid(name);
        }
        sizes.push_back({name, file.bytes.size()});
        all += file.bytes.size();
    }
    const Limits& limits = wish.limits;
    std::string message = Json{{"version", version},
                               {"limits",
                                {limits.memory_bytes,
                                 limits.processor_seconds,
                                 limits.wall_seconds,
                                 limits.most_pages,
                                 limits.most_pixels}},
                               {"page_pictures", wish.page_pictures},
                               {"language_folder", wish.language_folder},
                               {"files", std::move(sizes)}}
                              .dump(-1, ' ', false, Json::error_handler_t::replace) +
                          "\n";
    message.reserve(message.size() + all);
    for (const NamedBytes& file : files) {
        message += file.bytes;
    }
    return message;
}

std::optional<Request> request_from(std::string_view message) {
    auto parts = parts_of(message);
    if (!parts) {
        return std::nullopt;
    }
    try {
        const Json& head = parts->head;
        const Json& limits = head.at("limits");
        Request request;
        request.limits = {limits.at(0).get<std::uint64_t>(),
                          limits.at(1).get<unsigned>(),
                          limits.at(2).get<unsigned>(),
                          limits.at(3).get<unsigned>(),
                          limits.at(4).get<std::uint64_t>()};
        request.page_pictures = head.at("page_pictures").get<bool>();
        request.language_folder = head.at("language_folder").get<std::string>();
        for (const Json& row : head.at("files")) {
            const auto bytes = cut(parts->blobs, row.at(1));
            if (!bytes) {
                return std::nullopt;
            }
            request.files.push_back({row.at(0).get<std::string>(), *bytes});
        }
        return request;
    } catch (const Json::exception&) {
        return std::nullopt;
    }
}

std::string answer_message(const Answer& answer) {
    const auto line = [](const Json& head) {
        return head.dump(-1, ' ', false, Json::error_handler_t::replace) + "\n";
    };
    if (!answer) {
        return line({{"version", version}, {"error", json_of(answer.error())}});
    }
    std::string message = line(head_of(*answer));
    for (const PagePicture& page : answer->pages) {
        message += page.png;
    }
    return message;
}

std::string json_of(const TakenIn& taken) {
    Json head = head_of(taken);
    head["kind"] = name_of(taken.kind);
    head.erase("pages");
    return head.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

std::optional<Answer> answer_from(std::string_view message) {
    const auto parts = parts_of(message);
    if (!parts) {
        return std::nullopt;
    }
    try {
        if (parts->head.contains("error")) {
            Diagnostics wrong = diagnostics_from(parts->head.at("error"));
            if (wrong.empty()) {
                return std::nullopt;
            }
            return Answer(tl::make_unexpected(std::move(wrong)));
        }
        TakenIn taken = taken_from(parts->head, parts->blobs);
        if (!holds_together(taken)) {
            return std::nullopt;
        }
        return Answer(std::move(taken));
    } catch (const Json::exception&) {
        return std::nullopt;
    }
}

} // namespace loafwright::intake

// SPDX-License-Identifier: Apache-2.0
//
// Photos, PDFs and web pages on their way to becoming words. A job is begun, looked at until it is
// over, and forgotten; nothing of it is kept on the disk.
#include "engine/reading/read.hpp"
#include "engine/wire/wire.hpp"
#include "shell/server/api.hpp"
#include "shell/server/intake_jobs.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <charconv>
#include <utility>

namespace loafwright::server {

namespace {

using Json = nlohmann::ordered_json;

constexpr std::size_t most_files = 12;

std::string printed(const Json& json) {
    return json.dump(-1, ' ', false, Json::error_handler_t::replace);
}

// "sizes=1200,3400": the body is so many files, one behind the other. Empty where it does not come
// out even.
std::vector<intake::NamedBytes> files_of(const Request& request) {
    const std::string sizes = request.query("sizes");
    std::vector<intake::NamedBytes> files;
    std::size_t taken = 0;
    const char* at = sizes.data();
    const char* const end = sizes.data() + sizes.size();
    while (at != end && files.size() < most_files) {
        std::size_t size = 0;
        const auto read = std::from_chars(at, end, size);
        if (read.ec != std::errc() || size == 0 || size > request.body.size() - taken) {
            return {};
        }
        files.push_back(
            {fmt::format("file {}", files.size() + 1), request.body.substr(taken, size)});
        taken += size;
        at = read.ptr;
        if (at != end) {
            if (*at != ',' || at + 1 == end) {
                return {};
            }
            ++at;
        }
    }
    if (sizes.empty() && !request.body.empty()) {
        return {{"the file", request.body}};
    }
    return at == end && taken == request.body.size() ? files : std::vector<intake::NamedBytes>{};
}

Response begin(IntakeJobs& jobs, const Request& request) {
    auto files = files_of(request);
    if (files.empty()) {
        return error_response(400,
                              "request_unreadable",
                              "the sizes do not add up to what was sent",
                              "Send one file, or up to twelve with ?sizes=…,… in bytes.");
    }
    const auto id = jobs.begin(std::move(files));
    if (!id) {
        return error_response(
            503, "too_busy", "other pictures are being read", "Try again in half a minute.");
    }
    return json_response(202, printed({{"version", 1}, {"intake", {{"id", *id}, {"percent", 0}}}}));
}

Response none() {
    return not_here("there is no such file on its way, or not any more");
}

Json clipping_json(const intake::UnsureWord& word) {
    if (!word.clipping) {
        return nullptr;
    }
    return {{"page", word.clipping->page},
            {"x", word.clipping->x},
            {"y", word.clipping->y},
            {"width", word.clipping->width},
            {"height", word.clipping->height}};
}

Json taken_json(const intake::TakenIn& taken) {
    Json json{{"kind", std::string(intake::name_of(taken.kind))},
              {"text", taken.text},
              {"handwriting", taken.handwriting},
              {"unsure", Json::array()},
              {"pages", Json::array()},
              {"remarks", Json::array()}};
    for (const intake::UnsureWord& word : taken.unsure) {
        json["unsure"].push_back({{"span", {word.span.begin, word.span.end}},
                                  {"confidence", word.confidence},
                                  {"maybe", word.maybe},
                                  {"clipping", clipping_json(word)}});
    }
    for (const intake::PagePicture& page : taken.pages) {
        json["pages"].push_back({{"width", page.width}, {"height", page.height}});
    }
    for (const Diagnostic& remark : taken.remarks) {
        json["remarks"].push_back({{"code", remark.code},
                                   {"severity", std::string(name_of(remark.severity))},
                                   {"what", remark.what},
                                   {"where", remark.where},
                                   {"do_this", remark.do_this}});
    }
    return json;
}

Response look(IntakeJobs& jobs, const Request& request) {
    const std::string& id = request.parameters.front();
    const auto found = jobs.look(id);
    if (!found) {
        return none();
    }
    Json json{{"id", id}, {"percent", found->percent}};
    if (found->taken) {
        const IntakeJobs::Taken& taken = *found->taken;
        if (!taken) {
            return error_response(422, taken.error());
        }
        // What passes as it came may be anything at all.
        const auto text = check_text(taken->text, "the file");
        if (!text && !taken->handwriting) {
            const bool words = text.error().front().code != "text_binary";
            return words ? error_response(422, text.error())
                         : error_response(422,
                                          "kind_untaken",
                                          "this is no text, web page, PDF or photo",
                                          "Save it as one of these, or paste its words.");
        }
        json["taken"] = taken_json(*taken);
    }
    return json_response(200, printed({{"version", 1}, {"intake", std::move(json)}}));
}

Response page(IntakeJobs& jobs, const Request& request) {
    const auto found = jobs.look(request.parameters.front());
    if (!found || !found->taken || !*found->taken) {
        return none();
    }
    const std::string& words = request.parameters.back();
    std::size_t number = 0;
    const auto read = std::from_chars(words.data(), words.data() + words.size(), number);
    const auto& pages = (*found->taken)->pages;
    if (read.ec != std::errc() || read.ptr != words.data() + words.size() ||
        number >= pages.size()) {
        return none();
    }
    Response response;
    response.content_type = "image/png";
    response.body = std::make_shared<const std::string>(pages[number].png);
    return response;
}

} // namespace

void add_intake_routes(Router& router, IntakeJobs& jobs) {
    constexpr std::size_t most_bytes = intake::longest_paper_bytes;
    router.add("POST",
               "/api/v1/intake",
               {most_bytes, false},
               at_once([&jobs](const Request& request) { return begin(jobs, request); }));
    router.add("GET", "/api/v1/intake/{}", {}, at_once([&jobs](const Request& request) {
                   return look(jobs, request);
               }));
    router.add("DELETE", "/api/v1/intake/{}", {}, at_once([&jobs](const Request& request) {
                   return jobs.forget(request.parameters.front())
                              ? json_response(200, "{\"version\":1}")
                              : none();
               }));
    router.add("GET", "/api/v1/intake/{}/pages/{}", {}, at_once([&jobs](const Request& request) {
                   return page(jobs, request);
               }));
}

} // namespace loafwright::server

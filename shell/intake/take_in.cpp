// SPDX-License-Identifier: Apache-2.0
//
// From files to words: what needs a child gets one, and however it ends is said in words.
#include "shell/intake/take_in.hpp"

#include "shell/intake/child.hpp"
#include "shell/intake/message.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <filesystem>
#include <system_error>
#include <utility>

namespace loafwright::intake {

namespace {

tl::unexpected<Diagnostics>
wrong(std::string code, std::string what, std::string where, std::string do_this) {
    return tl::make_unexpected(Diagnostics{
        {std::move(code), Severity::error, std::move(what), std::move(where), std::move(do_this)}});
}

std::string child_program(const Wish& wish) {
    if (!wish.program.empty()) {
        return wish.program;
    }
    std::error_code unknown;
    const std::filesystem::path own = std::filesystem::read_symlink("/proc/self/exe", unknown);
    return (own.parent_path() / "loafwright-intake").string();
}

std::uint64_t longest(Kind kind) {
    return kind == Kind::html ? longest_page_bytes : longest_paper_bytes;
}

Diagnostics what_is_untaken(const std::vector<NamedBytes>& files) {
    Diagnostics found;
    for (const NamedBytes& file : files) {
        const auto kind = kind_of(file.bytes);
        if (!kind) {
            const Foreign foreign = foreign_kind(file.bytes);
            found.push_back(
                {"kind_untaken",
                 Severity::error,
                 fmt::format("this is {}, expected a text, a web page, a PDF or a photo",
                             foreign.name),
                 file.name,
                 std::string(foreign.do_this)});
        } else if (files.size() > 1 && *kind != Kind::pdf && *kind != Kind::image) {
            found.push_back({"kind_untaken",
                             Severity::error,
                             fmt::format("this is a {} among several files, and only photos and "
                                         "PDFs make one recipe together",
                                         name_of(*kind)),
                             file.name,
                             "Name it alone."});
        } else if (*kind != Kind::text && file.bytes.size() > longest(*kind)) {
            found.push_back({"file_too_long",
                             Severity::error,
                             fmt::format("the {} is longer than {} MiB",
                                         name_of(*kind),
                                         longest(*kind) / one_mebibyte),
                             file.name,
                             "Name one with fewer pages or a smaller picture."});
        }
    }
    return found;
}

std::string names_of(const std::vector<NamedBytes>& files) {
    return files.size() == 1 ? files.front().name
                             : fmt::format("{} and {} more", files.front().name, files.size() - 1);
}

tl::expected<TakenIn, Diagnostics> from_child(const std::vector<NamedBytes>& files,
                                              const Wish& wish) {
    const std::string program = child_program(wish);
    const ChildRun run = run_child(program, request_message(files, wish), wish);
    const std::string where = names_of(files);
    switch (run.end) {
    case End::missing:
        return wrong("reader_missing",
                     fmt::format("PDFs, photos and web pages are read by {}, which could not be "
                                 "started: {}",
                                 program,
                                 run.reason),
                     "",
                     "Put it beside loafwright; they are built together.");
    case End::stopped:
        return wrong("reading_stopped", "reading was stopped before its end", where, "");
    case End::out_of_time:
        return wrong("reading_gave_up",
                     "reading took longer than it may",
                     where,
                     "Name fewer pages, or a plainer copy.");
    case End::out_of_room:
        return wrong("reading_gave_up",
                     "reading needed more memory than it may use",
                     where,
                     "Name fewer pages, or a smaller picture.");
    case End::fell:
        break;
    case End::answered:
        if (auto answer = answer_from(run.said)) {
            return std::move(*answer);
        }
        break;
    }
    return wrong("file_damaged",
                 "this could not be read to its end; it may be damaged",
                 where,
                 "Save or photograph it again.");
}

} // namespace

tl::expected<TakenIn, Diagnostics> take_in(const std::vector<NamedBytes>& files, const Wish& wish) {
    Diagnostics untaken = what_is_untaken(files);
    if (!untaken.empty()) {
        return tl::make_unexpected(std::move(untaken));
    }
    const Kind kind = *kind_of(files.front().bytes);
    if (kind == Kind::text) {
        TakenIn taken;
        taken.text = files.front().bytes;
        return taken;
    }
    return from_child(files, wish);
}

} // namespace loafwright::intake

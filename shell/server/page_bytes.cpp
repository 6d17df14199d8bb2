// SPDX-License-Identifier: Apache-2.0
#include "shell/server/page_bytes.hpp"

#include "engine/sheet/shared_page.hpp"
#include "shell/output/calendar_file.hpp"
#include "shell/output/drawn.hpp"
#include "shell/output/text_page.hpp"

#include <fmt/format.h>

#include <array>
#include <utility>

namespace loafwright::server {

namespace {

constexpr std::size_t text_columns = 80;

using Answer = tl::expected<output::Drawn, Diagnostic>;

Answer letters(const PageOf& page) {
    std::string text;
    for (const Sheet& sheet : page.pages) {
        text += text.empty() ? "" : "\n\n";
        text += output::text_page(sheet, text_columns, output::Weight::plain);
    }
    return output::Drawn{std::move(text), {}};
}

Answer calendar(const PageOf& page) {
    output::CalendarMarks marks;
    marks.identity = page.identity;
    marks.sequence = page.revision;
    marks.now = page.day.now;
    return output::Drawn{output::calendar_file(
                             page.plan, compose_lines(page.plan, page.pages), page.day.zone, marks),
                         {}};
}

struct Form {
    std::string_view name;
    std::string_view type;
    Answer (*make)(const PageOf& page, const output::PageOptions& options);
};

constexpr std::array<Form, 5> forms{
    {{"pdf",
      "application/pdf",
      [](const PageOf& page, const output::PageOptions& options) {
          return output::pdf_page(page.pages, options);
      }},
     {"svg",
      "image/svg+xml",
      [](const PageOf& page, const output::PageOptions& options) {
          return output::svg_page(page.pages, options);
      }},
     {"png",
      "image/png",
      [](const PageOf& page, const output::PageOptions& options) {
          return output::png_page(page.pages, options);
      }},
     {"ics",
      "text/calendar; charset=utf-8",
      [](const PageOf& page, const output::PageOptions& /*options*/) { return calendar(page); }},
     {"txt",
      "text/plain; charset=utf-8",
      [](const PageOf& page, const output::PageOptions& /*options*/) { return letters(page); }}}};

} // namespace

Response page_bytes(const PageOf& page, std::string_view form, const output::PageOptions& options) {
    for (const Form& known : forms) {
        if (known.name != form) {
            continue;
        }
        auto drawn = known.make(page, options);
        if (!drawn) {
            return error_response(500, Diagnostics{std::move(drawn.error())});
        }
        Response response;
        response.content_type = std::string(known.type);
        response.body = std::make_shared<const std::string>(std::move(drawn->bytes));
        response.headers.emplace_back("Content-Disposition",
                                      fmt::format("{}; filename=\"loafwright.{}\"",
                                                  form == "ics" ? "attachment" : "inline",
                                                  form));
        return response;
    }
    return error_response(400,
                          "value_unknown",
                          "a page has the forms pdf, svg, png, ics and txt",
                          "Choose one of them.");
}

} // namespace loafwright::server

// SPDX-License-Identifier: Apache-2.0
//
// How long does a saved page take? `words_of` on a page of 200 kB as it is saved from a browser:
// half of it scripts and styles, a recipe in its data, an article, comments by readers; and on the
// same page without data. The yardstick is Gumbo's bare parse of the same bytes, which is what the
// parser behind this room would take for the page as it is. The last page is thick with tags, the
// most work there is in 200 kB.
#include "shell/web_page/web_page.hpp"

#include <benchmark/benchmark.h>
#include <gumbo.h>

#include <string>
#include <string_view>

namespace loafwright::bench {
namespace {

constexpr std::size_t page_bytes = 200000;

constexpr std::string_view data =
    R"(<script type="application/ld+json">{"@context":"https://schema.org","@graph":[)"
    R"({"@type":"WebPage","name":"A page"},{"@type":"Recipe","name":"Windowsill loaf",)"
    R"("recipeYield":"2 loaves","totalTime":"PT2H5M","recipeIngredient":["500 g strong white )"
    R"(flour","10 g salt","320 ml water"],"recipeInstructions":[{"@type":"HowToStep","text":)"
    R"("Mix everything and knead for 10 minutes."},{"@type":"HowToStep","text":"Leave to rise )"
    R"(for 1 hour."},{"@type":"HowToStep","text":"Bake at 220&deg;C for 35 minutes until )"
    R"(the crust is as brown as a nut and the loaf sounds hollow when it is knocked on."}]}]})"
    "</script>\n";

constexpr std::string_view script =
    "<script>(function(w,d){var q=w.q||[];for(var i=0;i<q.length&&i<9;i++){d.write('<p>'+q[i]"
    "+'</p>');}})(window,document);</script>\n"
    "<style>.card>p:first-child{margin:0 auto;color:#333}@media(max-width:40em){.card{a:b}}"
    "</style>\n";

constexpr std::string_view paragraph =
    "<div class=\"block block-text is-wide\" id=\"b-1204\" data-kind=\"text\" data-at=\"17\">"
    "<p class=\"text\">Put the dough back in the bowl, cover it with a plate and leave it to rise "
    "for <a href=\"/how-long/what-an-hour-and-a-quarter-is\" rel=\"nofollow\">about an hour and a "
    "quarter</a>, until it has <em>doubled</em>. The shelf over the stove is a good place for it "
    "in winter, and any place at all will do in summer.</p>"
    "<img src=\"/pictures/dough-1204x800.jpg\" srcset=\"/pictures/dough-602x400.jpg 602w, "
    "/pictures/dough-301x200.jpg 301w\" alt=\"A dough\" width=\"1204\" height=\"800\"></div>\n";

constexpr std::string_view comment =
    "<li class=\"comment even depth-1\" id=\"c-77\"><div class=\"who\"><b>A baker</b></div><p>We "
    "let it rise overnight and it was lovely, thank you for it.</p></li>\n";

std::string saved_page(std::string_view head) {
    std::string page = "<!DOCTYPE html><html><head><meta charset=\"utf-8\"><title>A page</title>";
    page += head;
    while (page.size() < page_bytes / 2) {
        page += script;
    }
    page += "</head><body><nav><ul><li><a href=\"/\">Home</a></li></ul></nav><article>"
            "<h1>Windowsill loaf</h1>";
    while (page.size() < page_bytes * 8 / 10) {
        page += paragraph;
    }
    page += "</article><ol id=\"comments\">";
    while (page.size() < page_bytes) {
        page += comment;
    }
    return page + "</ol></body></html>";
}

std::string thick_page() {
    std::string page = "<!DOCTYPE html><html><body><h1>Windowsill loaf</h1>";
    while (page.size() < page_bytes) {
        page +=
            "<div class=\"box\"><h2>The dough</h2><p>Mix the flour with the <a href=\"/a\">water"
            "</a> and <b>leave</b> it for an hour.</p><ul><li class=\"one\"><span>500</span> "
            "<span>g</span> flour</li><li>10 g salt</li></ul></div>\n";
    }
    return page + "</body></html>";
}

void count_bytes(benchmark::State& state, const std::string& page) {
    state.SetBytesProcessed(static_cast<std::int64_t>(page.size()) * state.iterations());
}

void words(benchmark::State& state, const std::string& page, bool from_markup) {
    const auto read = web_page::words_of(page);
    if (!read || read->front().from_markup != from_markup ||
        read->front().text.find("Windowsill loaf") != 0) {
        state.SkipWithError("the page was not read");
        return;
    }
    for (auto _ : state) {
        benchmark::DoNotOptimize(web_page::words_of(page));
    }
    count_bytes(state, page);
}

void bare_parse(benchmark::State& state, const std::string& page) {
    for (auto _ : state) {
        GumboOutput* const output =
            gumbo_parse_with_options(&kGumboDefaultOptions, page.data(), page.size());
        benchmark::DoNotOptimize(output);
        gumbo_destroy_output(&kGumboDefaultOptions, output);
    }
    count_bytes(state, page);
}

void page_with_data(benchmark::State& state) {
    words(state, saved_page(data), true);
}
BENCHMARK(page_with_data)->Unit(benchmark::kMillisecond);

void page_without_data(benchmark::State& state) {
    words(state, saved_page(""), false);
}
BENCHMARK(page_without_data)->Unit(benchmark::kMillisecond);

void page_thick_with_tags(benchmark::State& state) {
    words(state, thick_page(), false);
}
BENCHMARK(page_thick_with_tags)->Unit(benchmark::kMillisecond);

void gumbo_on_the_page(benchmark::State& state) {
    bare_parse(state, saved_page(data));
}
BENCHMARK(gumbo_on_the_page)->Unit(benchmark::kMillisecond);

void gumbo_on_the_thick_page(benchmark::State& state) {
    bare_parse(state, thick_page());
}
BENCHMARK(gumbo_on_the_thick_page)->Unit(benchmark::kMillisecond);

} // namespace
} // namespace loafwright::bench

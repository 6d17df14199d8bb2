// SPDX-License-Identifier: Apache-2.0
//
// How long does it take to put the page on paper? Each writer for examples/first-loaf.md, laid out
// and drawn, inside one process. The floor is Cairo drawing as many letters as the page has, in one
// size and already placed, into the same kind of file.
#include "bench/texts.hpp"
#include "engine/fitting/fit.hpp"
#include "engine/knowledge/knowledge.hpp"
#include "engine/planning/plan.hpp"
#include "engine/provisions/gather.hpp"
#include "engine/reading/read.hpp"
#include "engine/sheet/compose.hpp"
#include "shell/output/drawn.hpp"
#include "shell/output/page_drawing.hpp"
#include "shell/output/text_page.hpp"

#include <benchmark/benchmark.h>
#include <cairo-pdf.h>
#include <cairo-svg.h>

#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <string>
#include <variant>

namespace loafwright::bench {
namespace {

Sheet the_sheet() {
    const Knowledge knowledge = built_in_knowledge();
    const CheckedText text = checked(file_in_repository("examples/first-loaf.md"));
    const Kitchen kitchen;
    Day day;
    // Wednesday 25 November 2026, 09:00 UTC; begin the next day at ten.
    day.now = Instant{1795597200};
    day.start = later_by_minutes(day.now, 25 * 60);
    const Reading reading = read(text, knowledge, {});
    const FittedRecipe fitted = fit(reading, kitchen, knowledge);
    const Provisions provisions = gather(reading.recipe, kitchen, knowledge);
    const PlanOutcome outcome = plan(fitted, kitchen, day);
    if (!std::holds_alternative<Plan>(outcome)) {
        std::fputs("the page is not the one expected\n", stderr);
        std::exit(1);
    }
    return compose(std::get<Plan>(outcome), fitted, provisions, day, SheetOptions{});
}

const Sheet& sheet() {
    static const Sheet made = the_sheet();
    return made;
}

template <typename Writer>
void draw(benchmark::State& state, Writer writer, std::string_view begins) {
    const output::PageOptions options;
    std::size_t bytes = 0;
    for (auto _ : state) {
        const auto drawn = writer({sheet()}, options);
        if (!drawn || drawn->bytes.compare(0, begins.size(), begins) != 0) {
            state.SkipWithError("the page was not drawn");
            return;
        }
        bytes = drawn->bytes.size();
    }
    state.counters["bytes"] = static_cast<double>(bytes);
}

void pdf(benchmark::State& state) {
    draw(state, output::pdf_page, "%PDF-");
}
BENCHMARK(pdf)->Unit(benchmark::kMillisecond);

void svg(benchmark::State& state) {
    draw(state, output::svg_page, "<?xml");
}
BENCHMARK(svg)->Unit(benchmark::kMillisecond);

void png(benchmark::State& state) {
    draw(state, output::png_page, "\x89PNG");
}
BENCHMARK(png)->Unit(benchmark::kMillisecond);

void layout(benchmark::State& state) {
    const output::PageOptions options;
    for (auto _ : state) {
        const output::TypeSetter setter(options.family);
        benchmark::DoNotOptimize(output::lay_out({sheet()}, options, setter));
    }
}
BENCHMARK(layout)->Unit(benchmark::kMillisecond);

void text(benchmark::State& state) {
    for (auto _ : state) {
        benchmark::DoNotOptimize(output::text_page(sheet(), 80, output::Weight::plain));
    }
}
BENCHMARK(text)->Unit(benchmark::kMillisecond);

std::size_t letters_of_the_page() {
    const output::PageOptions options;
    const output::TypeSetter setter(options.family);
    std::size_t letters = 0;
    for (const output::LaidPage& page : output::lay_out({sheet()}, options, setter).pages) {
        for (const output::Part& part : page.parts) {
            for (const output::Mark& mark : part.marks) {
                if (const auto* words = std::get_if<output::Words>(&mark)) {
                    letters += words->text.size();
                }
            }
        }
    }
    return letters;
}

// As many letters as the page has, eighty to a line, by Cairo's own simplest means.
void draw_letters(cairo_t* onto) {
    static const std::size_t letters = letters_of_the_page();
    constexpr std::size_t in_a_line = 80;
    const std::string line =
        "the quick brown fox jumps over the lazy dog and back again, at 15:30 to "
        "16:45, yes.";
    cairo_select_font_face(onto, "Lato", CAIRO_FONT_SLANT_NORMAL, CAIRO_FONT_WEIGHT_NORMAL);
    cairo_set_font_size(onto, 12.0);
    for (std::size_t i = 0; i * in_a_line < letters; ++i) {
        cairo_move_to(onto, 36.0, 36.0 + 14.0 * static_cast<double>(i));
        cairo_show_text(onto, line.substr(0, in_a_line).c_str());
    }
}

void floor_pdf(benchmark::State& state) {
    for (auto _ : state) {
        std::string bytes;
        const output::Surface surface(
            cairo_pdf_surface_create_for_stream(output::collect, &bytes, 595.0, 842.0));
        const output::Context context(cairo_create(surface.get()));
        draw_letters(context.get());
        cairo_show_page(context.get());
        cairo_surface_finish(surface.get());
        benchmark::DoNotOptimize(bytes);
    }
}
BENCHMARK(floor_pdf)->Unit(benchmark::kMillisecond);

void floor_svg(benchmark::State& state) {
    for (auto _ : state) {
        std::string bytes;
        const output::Surface surface(
            cairo_svg_surface_create_for_stream(output::collect, &bytes, 595.0, 842.0));
        const output::Context context(cairo_create(surface.get()));
        draw_letters(context.get());
        cairo_show_page(context.get());
        cairo_surface_finish(surface.get());
        benchmark::DoNotOptimize(bytes);
    }
}
BENCHMARK(floor_svg)->Unit(benchmark::kMillisecond);

void floor_png(benchmark::State& state) {
    constexpr double scale = 150.0 / 72.0;
    for (auto _ : state) {
        std::string bytes;
        const output::Surface surface(cairo_image_surface_create(CAIRO_FORMAT_RGB24, 1240, 1754));
        const output::Context context(cairo_create(surface.get()));
        cairo_set_source_rgb(context.get(), 1.0, 1.0, 1.0);
        cairo_paint(context.get());
        cairo_set_source_rgb(context.get(), 0.0, 0.0, 0.0);
        cairo_scale(context.get(), scale, scale);
        draw_letters(context.get());
        cairo_surface_write_to_png_stream(surface.get(), output::collect, &bytes);
        benchmark::DoNotOptimize(bytes);
    }
}
BENCHMARK(floor_png)->Unit(benchmark::kMillisecond);

} // namespace
} // namespace loafwright::bench

// SPDX-License-Identifier: Apache-2.0
//
// How long does reading take, and does it grow with the text alone? `read` on a recipe of 3 KB, and
// on its paragraphs repeated to 4 KiB, 64 KiB and 1 MiB (the longest text that is read). Beside it,
// as a yardstick for the machine, the least that any reader must do: ICU's word boundaries (Unicode
// Standard Annex 29) over the same bytes. `per_byte` is seconds a byte; the three sizes should
// agree.
#include "bench/texts.hpp"
#include "engine/knowledge/knowledge.hpp"
#include "engine/reading/read.hpp"

#include <benchmark/benchmark.h>
#include <unicode/brkiter.h>
#include <unicode/utext.h>

#include <memory>
#include <string>
#include <string_view>

namespace loafwright::bench {
namespace {

constexpr const char* recipe = "bench/recipe.md";

const Knowledge& knowledge() {
    static const Knowledge tables = built_in_knowledge();
    return tables;
}

// The reader's tables are made once; `reader_tables` tells what that costs.
const Reader& reader() {
    static const Reader one(knowledge());
    return one;
}

void reader_tables(benchmark::State& state) {
    for (auto _ : state) {
        benchmark::DoNotOptimize(Reader(knowledge()).read(checked("Bake for 30 minutes.\n")));
    }
}
BENCHMARK(reader_tables)->Unit(benchmark::kMicrosecond);

void count_bytes(benchmark::State& state, std::size_t bytes) {
    state.SetBytesProcessed(static_cast<std::int64_t>(bytes) * state.iterations());
    state.counters["per_byte"] = benchmark::Counter(static_cast<double>(bytes),
                                                    benchmark::Counter::kIsIterationInvariantRate |
                                                        benchmark::Counter::kInvert);
}

void read_text(benchmark::State& state, const CheckedText& text, std::size_t fewest_steps) {
    if (reader().read(text).recipe.steps.size() < fewest_steps) {
        state.SkipWithError("the recipe was not read");
        return;
    }
    for (auto _ : state) {
        benchmark::DoNotOptimize(reader().read(text));
    }
    count_bytes(state, text.view().size());
}

// What a call costs before it has read anything.
void read_one_sentence(benchmark::State& state) {
    read_text(state, checked("Bake for 30 minutes.\n"), 1);
}
BENCHMARK(read_one_sentence)->Unit(benchmark::kMicrosecond);

// The kneading, the rise, the bake and the cooling are among what a right answer holds.
constexpr std::size_t steps_of_recipe = 8;

void read_recipe(benchmark::State& state) {
    read_text(state, checked(file_in_repository(recipe)), steps_of_recipe);
}
BENCHMARK(read_recipe)->Unit(benchmark::kMicrosecond);

CheckedText sized(const benchmark::State& state) {
    return checked(
        repeated_to(file_in_repository(recipe), static_cast<std::size_t>(state.range(0))));
}

void read_repeated(benchmark::State& state) {
    read_text(state, sized(state), steps_of_recipe);
}
BENCHMARK(read_repeated)->Arg(4096)->Arg(65536)->Arg(1048576)->Unit(benchmark::kMicrosecond);

// The hardest text known for the reader's own work: an ingredient in every sentence, none in a
// list.
void read_ingredients_in_prose(benchmark::State& state) {
    const std::string_view sentence = "Mix 10 g raisins with flour and water.\n\n";
    read_text(state, checked(repeated_to(sentence, static_cast<std::size_t>(state.range(0)))), 1);
}
BENCHMARK(read_ingredients_in_prose)->Arg(4096)->Arg(65536)->Unit(benchmark::kMicrosecond);

void icu_words(benchmark::State& state) {
    const CheckedText text = sized(state);
    UErrorCode status = U_ZERO_ERROR;
    const std::unique_ptr<icu::BreakIterator> words(
        icu::BreakIterator::createWordInstance(icu::Locale::getUK(), status));
    std::size_t count = 0;
    for (auto _ : state) {
        count = 0;
        UText* bytes = utext_openUTF8(
            nullptr, text.view().data(), static_cast<std::int64_t>(text.view().size()), &status);
        if (U_FAILURE(status)) {
            break;
        }
        words->setText(bytes, status);
        words->first();
        while (words->next() != icu::BreakIterator::DONE) {
            count += words->getRuleStatus() >= UBRK_WORD_NONE_LIMIT ? 1U : 0U;
        }
        utext_close(bytes);
    }
    // A word of English prose and its blank take between three and twelve bytes.
    if (U_FAILURE(status) || count < text.view().size() / 12 || count > text.view().size() / 3) {
        state.SkipWithError("the words were not found");
        return;
    }
    count_bytes(state, text.view().size());
}
BENCHMARK(icu_words)->Arg(4096)->Arg(65536)->Arg(1048576)->Unit(benchmark::kMicrosecond);

} // namespace
} // namespace loafwright::bench

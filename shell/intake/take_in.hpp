// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/diagnostic/diagnostic.hpp"
#include "shell/intake/taken_in.hpp"

#include <tl/expected.hpp>

#include <cstdint>
#include <functional>
#include <stop_token>
#include <string>
#include <vector>

namespace loafwright::intake {

inline constexpr std::uint64_t one_mebibyte = std::uint64_t{1} << 20U;

/// The longest file of each kind that is looked at. Text is checked by the reader itself.
inline constexpr std::uint64_t longest_page_bytes = 8 * one_mebibyte;
inline constexpr std::uint64_t longest_paper_bytes = 64 * one_mebibyte;

/// What the child process may use. Measured in docs/decisions/0016.
struct Limits {
    std::uint64_t memory_bytes = 600 * one_mebibyte; // address space
    unsigned processor_seconds = 60;
    unsigned wall_seconds = 120;
    unsigned most_pages = 40;
    std::uint64_t most_pixels = 120'000'000; // of one picture, by its header
};

/// How words are to be taken in, besides the files.
struct Wish {
    Limits limits;
    bool page_pictures = false;
    std::function<void(int)> progress; // 0 to 100, in the caller's thread
    std::stop_token stop;
    std::string program;         // empty: loafwright-intake beside the running program
    std::string language_folder; // empty: where Debian keeps Tesseract's data
};

/// The words of a recipe, from one file or from several pictures in order.
///
/// Needs:    at least one file; several files are all pictures or PDFs.
/// Promises: text and Markdown come back as they are, without a process. Everything else is read in
///           a child process with Wish::limits, no network, no files and an empty environment; it
///           is gone, and nothing of it is left behind, when this returns, whatever happened to it.
///           May be called from several threads.
/// Errors:   kind_untaken, file_too_long, file_damaged, file_locked, picture_too_large,
///           too_many_pages, no_words_found, reading_gave_up (a limit was reached), reading_stopped
///           (Wish::stop), reader_missing (the child or the language data is not installed).
tl::expected<TakenIn, Diagnostics> take_in(const std::vector<NamedBytes>& files,
                                           const Wish& wish = {});

} // namespace loafwright::intake

// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/diagnostic/diagnostic.hpp"

#include <cstddef>
#include <cstdint>
#include <string_view>

/// What libFuzzer, or the plain main in entry_shim.cpp, calls for each input.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size);

namespace loafwright::fuzz {

/// The bytes of an input as text.
std::string_view text_of(const std::uint8_t* data, std::size_t size);

/// Ends the program, naming the promise, when it is not kept. Works in every build, unlike assert.
void promise(bool kept, std::string_view what);

/// The promises of a refusal: there are reasons; each has a known code, says what was found and
/// what to do, and fits on one line.
void promise_told(const Diagnostics& reasons);

/// True when `at` is the beginning of a character of `text`, or its end.
///
/// Needs: valid UTF-8.
bool is_between_characters(std::string_view text, std::size_t at);

} // namespace loafwright::fuzz

// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace loafwright {

/// How much a Diagnostic weighs: an error stops the verb, a warning and a note stand beside its
/// answer.
enum class Severity { error, warning, note };

/// What went wrong or is worth knowing, where, and what to do about it.
///
/// Promises: `code` is one of `diagnostic_codes()`; `what` says what was found and what was
/// expected;
///           `where` is "file:line path", "file:begin-end", a span "begin-end" or empty; `do_this`
///           is an order in a few words.
struct Diagnostic {
    std::string code;
    Severity severity = Severity::error;
    std::string what;
    std::string where;
    std::string do_this;
};

using Diagnostics = std::vector<Diagnostic>;

/// The stable word for a severity: "error", "warning" or "note".
std::string_view name_of(Severity severity);

/// One row of the catalogue: the stable code and what it means. docs/errors.md has an entry for
/// each.
struct DiagnosticCode {
    std::string_view code;
    std::string_view meaning;
};

/// Every code that any room may use, in byte order.
const std::vector<DiagnosticCode>& diagnostic_codes();

/// True when `code` stands in the catalogue.
bool is_known_code(std::string_view code);

/// True when at least one entry is an error.
bool has_errors(const Diagnostics& diagnostics);

/// The whole Diagnostic on one line: "where: what. do_this" with empty parts left out.
std::string one_line(const Diagnostic& diagnostic);

} // namespace loafwright

// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/diagnostic/diagnostic.hpp"

#include <tl/expected.hpp>

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace loafwright::store {

/// Photos as files by what is in them: photos/ab/abcdef….
class Photos {
public:
    explicit Photos(std::string folder) : folder_(std::move(folder)) {}

    /// Written beside its place, brought to the disk and put there; the same bytes once, and anew
    /// where the file is no longer what it was.
    ///
    /// Errors: store_full, store_read_only.
    [[nodiscard]] tl::expected<std::string, Diagnostic> put(std::string_view bytes) const;
    /// Nothing for anything that is not 64 hexadecimal digits, so that no path can be walked.
    [[nodiscard]] tl::expected<std::optional<std::string>, Diagnostic>
    get(std::string_view hash) const;
    /// In byte order.
    [[nodiscard]] tl::expected<std::vector<std::string>, Diagnostic> all() const;

private:
    [[nodiscard]] std::string path_of(std::string_view hash) const;

    std::string folder_;
};

std::string sha256(std::string_view bytes);

} // namespace loafwright::store

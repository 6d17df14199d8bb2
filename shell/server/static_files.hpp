// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/diagnostic/diagnostic.hpp"
#include "shell/server/exchange.hpp"

#include <tl/expected.hpp>

#include <map>
#include <string>

namespace loafwright::server {

/// Text compressed as gzip (RFC 1952).
std::string gzipped(std::string_view text);

/// The pages, read once and kept in memory. Only what was read can be asked for, so that no path
/// leads anywhere else.
class StaticFiles {
public:
    /// Errors: pages_missing (no index.html in the folder), file_unreadable.
    static tl::expected<StaticFiles, Diagnostic> load(const std::string& folder);

    /// The answer to a GET.
    ///
    /// Promises: a name that changes with its content is kept for a year, any other is asked for
    /// again each time and answered 304 by its ETag; a path without a dot is the page itself, so
    /// that an address inside it can be opened: "/" is index.html, the others elsewhere.html where
    /// there is one; anything else that is not there is 404.
    [[nodiscard]] Response answer(const Request& request, std::string_view if_none_match) const;

private:
    struct File {
        std::string type;
        std::shared_ptr<const std::string> plain;
        std::shared_ptr<const std::string> packed; // null where that would not be shorter
        std::string etag;
        bool forever = false;
    };

    std::map<std::string, File, std::less<>> files_; // by path, "/index.html"
};

} // namespace loafwright::server

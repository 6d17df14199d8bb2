// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/diagnostic/diagnostic.hpp"
#include "shell/intake/message.hpp"
#include "shell/intake/take_in.hpp"

#include <tl/expected.hpp>

#include <functional>
#include <memory>
#include <string>

namespace loafwright::paper {

/// Words from PDFs and pictures. Only for the child process: what it calls was written for files
/// that mean well.
class Reader {
public:
    /// Opens all files that reading will need; none is opened later.
    explicit Reader(const std::string& language_folder);
    Reader(const Reader&) = delete;
    Reader& operator=(const Reader&) = delete;
    ~Reader();

    /// Needs:  one web page, or PDFs and pictures.
    /// Errors: as intake::take_in.
    [[nodiscard]] tl::expected<intake::TakenIn, Diagnostics>
    read(const intake::Request& request, const std::function<void(int)>& progress) const;

private:
    std::string language_;
};

} // namespace loafwright::paper

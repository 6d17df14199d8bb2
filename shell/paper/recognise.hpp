// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "shell/paper/fractions.hpp"
#include "shell/paper/pix.hpp"
#include "shell/paper/seen.hpp"

#include <functional>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

namespace loafwright::paper {

/// What Tesseract needs to know of English, as it stands in its file. Empty: not installed.
std::string language_data(const std::string& folder);

/// Tesseract, made ready once and used for page after page.
class Recogniser {
public:
    /// Needs: `language` as from language_data; nothing is opened or loaded later.
    explicit Recogniser(std::string_view language);
    Recogniser(const Recogniser&) = delete;
    Recogniser& operator=(const Recogniser&) = delete;
    ~Recogniser();

    [[nodiscard]] bool is_ready() const;

    /// The lines of a straightened page with their words; where a fraction stands, it and not what
    /// was read there. Asked after each part of the page, `enough` ends it early.
    [[nodiscard]] SeenPage read(const Picture& page,
                                const std::vector<FractionSign>& fractions,
                                const std::function<void(int)>& progress,
                                const std::function<bool(const SeenPage&)>& enough);

    /// One figure by itself; empty when it is none.
    [[nodiscard]] std::string read_figure(const Picture& part);

private:
    struct Inside;
    std::unique_ptr<Inside> inside_;
};

} // namespace loafwright::paper

// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "shell/intake/take_in.hpp"

#include <tl/expected.hpp>

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace loafwright::intake {

/// The descriptor on which the child tells how far it is, one byte from 0 to 100 each time.
inline constexpr int progress_descriptor = 3;

/// A file inside a request.
struct FileView {
    std::string name;
    std::string_view bytes;
};

/// What the parent asks for.
struct Request {
    Limits limits;
    bool page_pictures = false;
    std::string language_folder;
    std::vector<FileView> files;
};

/// Between parent and child stands one line of JSON with the sizes of the blobs that follow it: the
/// files on the way in, pictures of pages on the way out.
std::string request_message(const std::vector<NamedBytes>& files, const Wish& wish);
std::optional<Request> request_from(std::string_view message);

using Answer = tl::expected<TakenIn, Diagnostics>;
std::string answer_message(const Answer& answer);

/// For scripts: kind, text, unsure words with their other readings, remarks.
std::string json_of(const TakenIn& taken);

/// Needs:    nothing of the message: it comes from a process that has read hostile bytes.
/// Promises: text is valid UTF-8 without control bytes; spans lie inside it, in order; codes are
///           known ones. Empty where the message is anything else.
std::optional<Answer> answer_from(std::string_view message);

} // namespace loafwright::intake

// SPDX-License-Identifier: Apache-2.0
//
// Any bytes as an export. What is accepted has what everything_from_json promises, and comes out of
// the next export unchanged; what is refused says where.
#include "fuzz/promise.hpp"
#include "shell/store/exported.hpp"
#include "shell/store/photos.hpp"

#include <string>
#include <string_view>

namespace loafwright::fuzz {
namespace {

void promise_name(const std::string& name) {
    promise(!name.empty() && name.size() <= 64 &&
                name.find_first_not_of("abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ"
                                       "0123456789-_") == std::string::npos,
            "a name is plain");
}

void one_text(std::string_view text) {
    const auto read = store::everything_from_json(text);
    if (!read) {
        promise_told(read.error());
        for (const Diagnostic& reason : read.error()) {
            promise(reason.where.compare(0, 6, "export") == 0, "a reason says where");
        }
        return;
    }
    for (const auto& [kind, document] : read->documents) {
        promise_name(kind);
        promise_name(document.id);
        promise(document.revision >= 1, "revisions count from 1");
    }
    for (const store::ExportedBake& bake : read->bakes) {
        promise_name(bake.record.id);
        std::int64_t last = 0;
        for (const store::StoredEvent& event : bake.events) {
            promise_name(event.id);
            promise(event.sequence == ++last, "sequences have no gaps");
        }
        promise(bake.record.last == last, "a bake knows its last number");
    }
    for (const auto& [hash, bytes] : read->photos) {
        promise(store::sha256(bytes) == hash, "a photo is what its name says");
    }
    const auto out = store::export_json(*read);
    promise(out.has_value(), "what was read can be exported");
    const auto again = store::everything_from_json(*out);
    promise(again.has_value(), "an export can be read");
    promise(store::export_json(*again) == *out, "and comes out unchanged");
}

} // namespace
} // namespace loafwright::fuzz

int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    loafwright::fuzz::one_text(loafwright::fuzz::text_of(data, size));
    return 0;
}

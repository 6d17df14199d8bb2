// SPDX-License-Identifier: Apache-2.0
//
// Any bytes as a request and as news of a bake. What is refused is told with its file; news that is
// accepted is written and read back as it was, and whatever it is, the bake goes on with a line to
// say.
#include "shell/settings/bake_request.hpp"

#include "engine/breads/bake.hpp"
#include "engine/wire/bake_json.hpp"
#include "fuzz/promise.hpp"

#include <algorithm>
#include <string_view>
#include <variant>

namespace loafwright::fuzz {
namespace {

constexpr const char* loaf = "Mix 300 g flour, 6 g salt, 4 g yeast and 190 g water. Knead for 10 "
                             "minutes. Rise for 1 hour. Shape. Prove for 40 minutes. Bake at 220°C "
                             "for 30 minutes.\n";

Instant morning() {
    return *parse_rfc3339("2026-11-28T08:00:00Z");
}

const Knowledge& known() {
    static const Knowledge knowledge = built_in_knowledge();
    return knowledge;
}

const breads::Bake& bake() {
    static const breads::Bake made = [] {
        breads::BakeRequest request;
        request.breads.push_back({"loaf", *check_text(loaf, "loaf"), {}});
        request.day.now = morning();
        request.day.start = later_by_minutes(morning(), 60);
        return *breads::bake_of(std::move(request), known());
    }();
    return made;
}

void as_request(std::string_view text) {
    const auto read = settings::bake_request_from_json(text, "request", morning());
    if (!read) {
        promise_told(read.error());
        return;
    }
    promise(!read->request.breads.empty(), "a request has breads");
    promise(!has_errors(read->remarks), "beside a request stand no errors");
}

void as_news(std::string_view text) {
    const auto events = wire::events_from_json(text, "events");
    if (!events) {
        promise_told(events.error());
        return;
    }
    Instant now = morning();
    for (const Event& event : *events) {
        const auto again = wire::event_from_json(wire::event_json(event), "event");
        promise(again && wire::event_json(*again) == wire::event_json(event),
                "news is read back as it was written");
        // Within a week: a page that is years long is nobody's.
        if (event.at > now && event.at < later_by_minutes(morning(), 10080)) {
            now = event.at;
        }
    }
    const breads::BakeState state = breads::state_of(bake(), *events, now, known());
    promise(!state.moment.say.empty(), "there is a line to say");
    promise(!wire::bake_state_json(bake(), state, 1).empty(), "a state can be written");
}

} // namespace
} // namespace loafwright::fuzz

int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const std::string_view text = loafwright::fuzz::text_of(data, size);
    loafwright::fuzz::as_request(text);
    loafwright::fuzz::as_news(text);
    return 0;
}

// SPDX-License-Identifier: Apache-2.0
//
// The depth of a text, told without parsing it, against the value that nlohmann/json parses.
#include "shell/store/json_depth.hpp"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>
#include <rapidcheck/gtest.h>

#include <string>

namespace loafwright::store {
namespace {

using Json = nlohmann::json;

// A value that is `depth` deep, with words in it that look like depth.
Json nested(std::size_t depth) {
    Json json = *rc::gen::element<std::string>("[[[[", "}", "\"[{", "\\", "a\\\"]", "");
    for (std::size_t level = 0; level < depth; ++level) {
        const Json beside = *rc::gen::element<std::string>("{{", "]]", "\\\"{", "plain");
        json = *rc::gen::arbitrary<bool>() ? Json::array({beside, json})
                                           : Json{{beside.get<std::string>(), json}};
    }
    return json;
}

RC_GTEST_PROP(json_depth, brackets_count_and_words_do_not, ()) {
    const auto depth = *rc::gen::inRange<std::size_t>(0, 2 * deepest_json);
    const std::string text = nested(depth).dump();
    RC_ASSERT(Json::accept(text));
    RC_ASSERT(is_nested_too_deeply(text) == (depth > deepest_json));
}

RC_GTEST_PROP(json_depth, any_bytes_are_answered, (const std::string& bytes)) {
    const std::string deep(deepest_json + 1, '[');
    RC_ASSERT(is_nested_too_deeply(deep + bytes));
    RC_ASSERT(!is_nested_too_deeply("\"" + deep));
}

} // namespace
} // namespace loafwright::store

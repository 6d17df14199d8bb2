// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <nlohmann/json_fwd.hpp>

#include <cstddef>
#include <initializer_list>
#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace loafwright::web_page {

/// The data of a page as a graph of things with types and properties, in whichever of its ways the
/// page says them: JSON-LD as it stands, microdata and RDFa in the same form.
///
/// Needs: the values outlive it.
///
/// Source: JSON-LD 1.1, sections 3 and 4, as far as pages with schema.org use it.
class LinkedData {
public:
    explicit LinkedData(const std::vector<nlohmann::json>& documents);

    /// The things of the page that are recipes, in page order; else those that tell how to make
    /// something.
    [[nodiscard]] const std::vector<const nlohmann::json*>& recipes() const { return recipes_; }

    /// The thing itself, or the thing with the same id when it is only a reference to it.
    [[nodiscard]] const nlohmann::json& resolved(const nlohmann::json& value) const;

private:
    std::map<std::string, const nlohmann::json*, std::less<>> by_id_;
    std::vector<const nlohmann::json*> recipes_;
};

/// True when the thing is of this type of schema.org, however the type is written.
bool is_of_type(const nlohmann::json& thing, std::string_view type);

/// The value of a property of schema.org, or null.
const nlohmann::json& property(const nlohmann::json& thing, std::string_view name);

/// The value of the first of these properties that has one, or null.
const nlohmann::json& first_of(const nlohmann::json& thing,
                               std::initializer_list<std::string_view> names);

/// The values of a property, one or many, without what JSON-LD wraps them in. Empty for null.
std::vector<const nlohmann::json*> values_of(const nlohmann::json& value);

/// Text, a number or the first of several as a string; empty for things.
std::string text_of(const nlohmann::json& value);

} // namespace loafwright::web_page

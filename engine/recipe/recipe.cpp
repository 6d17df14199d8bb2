// SPDX-License-Identifier: Apache-2.0
//
// The words of the recipe's enumerations, both ways. An enumerator is spelled in text exactly as in
// the program, so one table a type serves reading and writing; its order is the order of the enum,
// which the size of each table and the tests hold in place.

#include "engine/recipe/recipe.hpp"

#include <array>
#include <cstddef>
#include <optional>
#include <string_view>

namespace loafwright {
namespace {

constexpr std::array<std::string_view, step_kind_count> step_kind_names{
    "prepare", "weigh",    "mix",  "knead",   "fold",  "knock_back", "divide", "shape",
    "finish",  "activate", "soak", "ferment", "rise",  "rest",       "prove",  "chill",
    "preheat", "bake",     "cook", "cool",    "serve", "store"};
constexpr std::array<std::string_view, 5> place_names{"counter", "warm", "fridge", "oven", "hob"};
constexpr std::array<std::string_view, 4> attention_names{"hands", "wait", "near", "none"};
constexpr std::array<std::string_view, 5> basis_names{
    "stated", "computed", "assumed", "learned", "open"};
constexpr std::array<std::string_view, 6> dough_family_names{
    "lean", "enriched", "wholegrain", "sourdough", "flatbread", "quick"};

template <typename Enum, std::size_t Count>
std::string_view name_in(const std::array<std::string_view, Count>& names, Enum value) {
    return names[static_cast<std::size_t>(value)];
}

template <typename Enum, std::size_t Count>
std::optional<Enum> value_in(const std::array<std::string_view, Count>& names,
                             std::string_view name) {
    for (std::size_t index = 0; index < Count; ++index) {
        if (names[index] == name) {
            return static_cast<Enum>(index);
        }
    }
    return std::nullopt;
}

} // namespace

std::string_view name_of(StepKind kind) {
    return name_in(step_kind_names, kind);
}
std::string_view name_of(Place place) {
    return name_in(place_names, place);
}
std::string_view name_of(Attention attention) {
    return name_in(attention_names, attention);
}
std::string_view name_of(Basis basis) {
    return name_in(basis_names, basis);
}
std::string_view name_of(DoughFamily family) {
    return name_in(dough_family_names, family);
}

std::optional<StepKind> step_kind_named(std::string_view name) {
    return value_in<StepKind>(step_kind_names, name);
}

std::optional<Place> place_named(std::string_view name) {
    return value_in<Place>(place_names, name);
}

std::optional<Basis> basis_named(std::string_view name) {
    return value_in<Basis>(basis_names, name);
}

Attention attention_of(StepKind kind) {
    switch (kind) {
    case StepKind::prepare:
    case StepKind::weigh:
    case StepKind::mix:
    case StepKind::knead:
    case StepKind::fold:
    case StepKind::knock_back:
    case StepKind::divide:
    case StepKind::shape:
    case StepKind::finish:
    // Boiling, frying and the griddle want someone standing there.
    case StepKind::cook:
        return Attention::hands;
    case StepKind::activate:
    case StepKind::soak:
    case StepKind::ferment:
    case StepKind::rise:
    case StepKind::rest:
    case StepKind::prove:
    case StepKind::chill:
    case StepKind::cool:
        return Attention::wait;
    case StepKind::preheat:
    case StepKind::bake:
        return Attention::near;
    case StepKind::serve:
    case StepKind::store:
        break;
    }
    return Attention::none;
}

} // namespace loafwright

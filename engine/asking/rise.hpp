// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/dough/curve.hpp"
#include "engine/quantity/tagged.hpp"

#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace loafwright::asking {

/// A dough that is as warm as its place all the while.
struct InRoom {
    Celsius temperature;
};

/// A lump in a bowl that cools from its own temperature to that of a measured fridge.
struct InFridge {
    Celsius fridge;
    Grams lump{900.0};   // a loaf for a 2 lb tin; common practice
    Celsius dough{25.0}; // when it goes in; common practice
};

/// "A rise takes so long there: how long here?"
///
/// Invariants: stated and lump above zero; `curve` is gas or leaven_yeast.
struct RiseQuestion {
    Minutes stated;
    Celsius at;
    std::variant<InRoom, InFridge> here;
    dough::Curve curve = dough::Curve::gas;
};

/// Why a rise does not come to its end.
enum class NeverRises {
    still_there, // nothing works at `at`, so nothing can have been timed there
    still_here,
    too_slow, // not within dough::furthest
};

struct RiseAnswer {
    RiseQuestion question;
    std::optional<Band<Minutes>> minutes; // whole fives; none when it never gets there
    std::optional<NeverRises> never;
    /// Of the wanted rise, what is made within dough::furthest; for too_slow.
    double share_made = 0.0;
};

/// Promises: `minutes` are those of dough::transferred or dough::chilling_for, each to the nearest
///           five and at least five; exactly one of `minutes` and `never` is there.
RiseAnswer rise_elsewhere(const RiseQuestion& question);

/// The answer in plain words, a paragraph each.
std::vector<std::string> words_of(const RiseAnswer& answer);

} // namespace loafwright::asking

// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/breads/wanted.hpp"
#include "engine/fitting/fit.hpp"
#include "engine/kitchen/kitchen.hpp"
#include "engine/planning/plan.hpp"
#include "engine/provisions/gather.hpp"
#include "engine/reading/read.hpp"
#include "engine/sheet/shared_page.hpp"

#include <tl/expected.hpp>

#include <string>
#include <string_view>
#include <vector>

namespace loafwright::breads {

/// The question about the room: the kitchen's, not a recipe's.
inline constexpr std::string_view room_key = "room-c";

/// What the last bake taught to change: "prove: give it a fifth longer". The plan says it at that
/// stage.
inline constexpr std::string_view next_time_key = "next-time";

/// More than an oven and a page can hold on one day.
inline constexpr std::size_t most_breads = 12;

/// A recipe's text, and what is answered already in the call and beside it.
struct BreadText {
    std::string name; // for messages
    CheckedText text;
    Answers answers;
    std::vector<OpenDoubt> doubts = {}; // where the text was taken from a picture
    Diagnostics remarks{};              // on how the text came, such as numbers a photo left unsure
    Wanted wanted{};
};

/// Everything that is known about the breads before the day is looked at, in one order.
struct KnownBreads {
    std::vector<FittedRecipe> fitted;
    std::vector<Provisions> provisions;
    Diagnostics remarks;

    /// Of all breads, each once.
    [[nodiscard]] std::vector<Question> questions() const;
    /// The first bread's provisions, with the cautions of all.
    [[nodiscard]] Provisions cautions() const;
    /// Needs: `plan` made of `fitted`.
    [[nodiscard]] std::vector<Sheet>
    pages(const Plan& plan, const Day& day, const SheetOptions& options) const;
};

/// A bread is fitted as written, or made otherwise where an answer to `otherwise_key` asks for it.
///
/// Errors: no_recipe_found, for each text without a step; answer_unreadable, for a bread that
///         cannot be made as asked; those of as_wanted.
tl::expected<KnownBreads, Diagnostics> read_breads(const std::vector<BreadText>& texts,
                                                   const Kitchen& kitchen,
                                                   const Knowledge& knowledge);

/// The same with a reader that is kept, made of that knowledge: making one takes longer than
/// reading a recipe.
tl::expected<KnownBreads, Diagnostics> read_breads(const std::vector<BreadText>& texts,
                                                   const Kitchen& kitchen,
                                                   const Knowledge& knowledge,
                                                   const Reader& reader);

/// A text read, with its answers, in the size and with the yeast that are wanted.
///
/// Errors: those of as_wanted, each with the text's name.
tl::expected<Reading, Diagnostics>
read_as_wanted(const BreadText& text, const Knowledge& knowledge, const Reader& reader);

/// The answers that are the text's own: the room is the kitchen's question, and how the bread is
/// made (fitting::otherwise_key) is nobody's question but a wish.
Answers recipe_answers(const Answers& answers);

/// The kitchen with the answer to the question about the room, where one of the texts' answers has
/// it and `kitchen` does not say: a number of °C up to 45 or one of the words of felt_room.hpp.
///
/// Errors: answer_unreadable.
tl::expected<Kitchen, Diagnostics> kitchen_as_answered(Kitchen kitchen, const Answers& answers);

/// "jumper, shirtsleeves or hot".
std::string felt_words();

} // namespace loafwright::breads

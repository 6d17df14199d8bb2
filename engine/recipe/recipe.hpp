// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/diagnostic/diagnostic.hpp"
#include "engine/quantity/phrase.hpp"
#include "engine/quantity/tagged.hpp"
#include "engine/quantity/time.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace loafwright {

/// Byte offsets [begin, end) into the UTF-8 text that was read.
struct Span {
    std::size_t begin = 0;
    std::size_t end = 0;

    friend constexpr bool operator==(Span a, Span b) {
        return a.begin == b.begin && a.end == b.end;
    }
};

/// What a step is. Spelled in JSON as the enumerator.
enum class StepKind {
    prepare,
    weigh,
    mix,
    knead,
    fold,
    knock_back,
    divide,
    shape,
    finish, // hands
    activate,
    soak,
    ferment,
    rise,
    rest,
    prove,
    chill, // waits
    preheat,
    bake,
    cook, // heat
    cool,
    serve,
    store // after
};
inline constexpr std::size_t step_kind_count = 22;

enum class Place { counter, warm, fridge, oven, hob };

/// What a step asks of the baker: hands (someone works), wait (the dough alone), near (be within
/// earshot), none (not a stage).
enum class Attention { hands, wait, near, none };

/// Where a time comes from: stated in the text; computed from it by the physics; assumed from
/// common practice; learned from the logs; open: the default of a question that nobody has answered
/// yet.
enum class Basis { stated, computed, assumed, learned, open };

std::string_view name_of(StepKind kind);
std::string_view name_of(Place place);
std::string_view name_of(Attention attention);
std::string_view name_of(Basis basis);
std::optional<StepKind> step_kind_named(std::string_view name);
std::optional<Place> place_named(std::string_view name);
std::optional<Basis> basis_named(std::string_view name);
Attention attention_of(StepKind kind);

struct TimedBand {
    Band<Minutes> minutes;
    Basis basis = Basis::stated;
};

struct TemperatureRange {
    Celsius low;
    Celsius high;
};

/// How one sees that a wait or a bake is over. Without a span it is ours, not the text's.
struct Cue {
    std::string text;
    std::optional<Span> span;
};

/// A few words under a stage with the number or fact that matters; at most nine words.
struct Reminder {
    std::string text;
    std::optional<Span> span;
    /// How much is lost without it, 0 to 100; the page keeps the heaviest.
    int weight = 50;
};

/// What a step takes of a listed ingredient; no share means all of it, or unsaid.
struct Use {
    std::string item; // as Ingredient::item
    std::optional<double> share;
};

/// The other way that the text allows for a step.
struct Alternative {
    StepKind kind = StepKind::rise;
    Place place = Place::counter;
    std::optional<TimedBand> minutes;
    std::optional<TemperatureRange> temperature;
};

/// What the text was taken to say of a step before the baker corrected it.
struct StepAsRead {
    StepKind kind = StepKind::mix;
    Place place = Place::counter;
    std::optional<TimedBand> minutes;
    std::optional<TemperatureRange> temperature;
};

/// One action or wait of the recipe.
struct Step {
    StepKind kind = StepKind::mix;
    Place place = Place::counter;
    std::string text;                 // the words it was read from, tidied to one line
    std::optional<std::string> part;  // "leaven", "filling"…; none for the main dough
    std::optional<TimedBand> minutes; // of the whole step
    std::optional<TemperatureRange>
        temperature; // oven for bake and preheat, the dough's place for waits
    /// What an oven word ("a moderate oven") suggests where no number stands; a question is open on
    /// it.
    std::optional<TemperatureRange> oven_words;
    bool optional = false;
    bool meanwhile = false;   // told to happen beside something else ("while the oven heats")
    bool after_night = false; // "the next morning": a night went by before it
    std::vector<std::size_t>
        after; // steps that must be over before it; empty: the one before it in the list
    std::optional<std::size_t> during;  // runs inside this wait or bake
    std::optional<Minutes> repeat;      // again every so many minutes, inside `during`
    std::optional<Minutes> after_start; // once, so many minutes after the start of `during`
    std::optional<ClockTime> clock;     // the text names a time of day for its start
    std::optional<Minutes> before_next; // begins so long before the end of the wait it runs beside
    std::vector<Use> uses;
    std::vector<Alternative> alternatives;
    std::optional<Cue> cue;
    std::vector<Reminder> reminders;
    Span span;
    /// "with leaven instead of yeast": why its length is ours; empty where it is the text's.
    std::string because_made;
    /// Key of the open question about its length, if one is asked.
    std::optional<std::string> minutes_question;
    /// Key of the open question about its temperature, if one is asked.
    std::optional<std::string> temperature_question;
    /// None while nothing of it has been corrected.
    std::optional<StepAsRead> as_read;
    /// Where it was read, as corrections name it: its first byte ("187"), with "-2", "-3" for the
    /// next that begin at the same one. Empty where it was not read.
    std::string at;
};

/// What may be taken instead of an ingredient: "lard or butter", "15 g fresh yeast (or 7 g dried)".
struct Substitute {
    std::string item;     // the text's own words, lower case
    std::string known_as; // its row of the ingredient table
    std::optional<Band<Grams>> grams;
};

/// What the text was taken to say of an amount before the baker corrected it.
struct AmountAsRead {
    std::optional<Band<Grams>> grams;
};

struct Ingredient {
    std::string text;     // as written
    std::string item;     // the text's own words, lower case: "strong white flour"
    std::string known_as; // the row of the ingredient table that it is, empty when there is none
    std::optional<Band<Grams>> grams;
    bool optional = false;
    std::optional<std::string> part;
    std::optional<Span> span;
    std::optional<TemperatureRange> temperature; // as it goes in: "water at blood heat"
    bool about = false;                          // the text hedges: "perhaps 320 ml"
    std::vector<Substitute> substitutes;         // in the order of the text
    std::optional<AmountAsRead> as_read;         // none while its amount has not been corrected
    std::string at;                              // as Step::at
};

/// A pointer in the text to another step: "repeat step 4 twice more", "as before".
struct Reference {
    std::optional<int> number;    // of the list item
    std::optional<StepKind> kind; // "as before": the step of that kind before it
    int times = 1;
    std::optional<Minutes> gap; // "with 20 minutes between"
    Span span;
};

/// Something that the text leaves open. Never blocks: `default_answer` is used until somebody
/// answers.
struct Question {
    std::string key;            // stable, such as "oven-c" or "minutes-rise"
    std::string about;          // "oven temperature", "salt"…
    std::string ask;            // the question as a person would put it
    std::string default_answer; // what is used meanwhile
    /// The words in doubt, where it is about single words and not about what they leave open.
    std::optional<Span> span = std::nullopt;
};

/// A tin inside, at its rim.
struct TinSize {
    Millimetres length;
    Millimetres width;
    Millimetres height;
};

/// The size that a recipe's own times were written for, where its amounts have been changed since.
struct WrittenSize {
    double factor = 1.0;          // the amounts now over those of the text
    std::optional<double> pieces; // of the text
};

struct Recipe {
    std::string title;
    std::optional<double> pieces;
    std::vector<Ingredient> ingredients;
    std::vector<Step> steps;
    std::vector<Reference> references;
    /// Facts that belong to no one step: "done when the middle reads 96 °C" in a text that has no
    /// bake.
    std::vector<Reminder> reminders;
    /// None while the amounts are those of the text.
    std::optional<WrittenSize> written_for;
    /// The tin that the amounts are for; none where nobody has said.
    std::optional<TinSize> tin;
    /// What was made other than the text says, at somebody's wish: whole sentences for the page.
    std::vector<Phrase> changes;
};

/// A phrase that became no step and no ingredient, and why.
struct Unread {
    std::string text;
    Span span;
    std::string why;
    std::string at = {}; // as Step::at
};

/// What reading a text yields.
struct Reading {
    Recipe recipe;
    std::vector<Unread> unread;
    std::vector<Question> questions;
    Diagnostics remarks;
};

/// What the baker has answered so far: `key` is a Question's key.
struct Answer {
    std::string key;
    std::string value;
};
using Answers = std::vector<Answer>;

/// The kind of dough, which decides stage defaults and cues.
enum class DoughFamily { lean, enriched, wholegrain, sourdough, flatbread, quick };
std::string_view name_of(DoughFamily family);

} // namespace loafwright

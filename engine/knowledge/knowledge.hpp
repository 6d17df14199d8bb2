// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/quantity/tagged.hpp"
#include "engine/recipe/recipe.hpp"

#include <optional>
#include <string_view>
#include <vector>

namespace loafwright {

/// How a figure came to be known: read in the named source, computed from such figures, from
/// memory, or assumed from common practice.
enum class Trust { read, computed, memory, assumed };

/// One ingredient: what it is called, what it weighs and what it is made of. Blank figures are
/// unknown, not zero.
struct IngredientRow {
    std::string_view item;
    std::vector<std::string_view> aliases;
    std::optional<Band<Grams>> per_us_cup; // of 236.588 mL
    std::optional<Grams> per_tablespoon;   // US, 14.787 mL
    std::optional<Grams> per_teaspoon;     // US, 4.929 mL
    std::optional<Band<Grams>> per_piece;
    std::string_view piece_name;
    std::optional<double> water_percent;
    std::optional<double> fat_percent;
    std::optional<double> sugar_percent;
    std::optional<double> salt_percent;
    std::optional<double> protein_percent;
    std::vector<std::string_view> allergens;
    /// flour, liquid, yeast, salt, sugar, fat, egg, dairy, preferment, inclusion, topping…
    std::string_view role;
    std::string_view source;
    Trust trust = Trust::memory;
};

enum class Dimension { mass, volume, count, factor, ratio };

/// One unit: how it is written and how much it is, in grams, millilitres, pieces or as a factor.
struct UnitRow {
    std::string_view unit;
    std::vector<std::string_view> written;
    Dimension dimension = Dimension::mass;
    std::vector<std::string_view> regions; // "any", "UK", "US", "AU", "old"…
    std::optional<Band<double>> value;
    std::string_view source;
    Trust trust = Trust::memory;
};

/// "a moderate oven": the oven temperatures that the words mean.
struct OvenWordRow {
    std::string_view words;
    TemperatureRange oven;
    std::string_view source;
    Trust trust = Trust::read;
};

/// "lukewarm", "a warm place", "the fridge": how warm a liquid or a place is.
struct WarmthWordRow {
    std::string_view words;
    bool of_liquid = false;
    Band<Celsius> temperature;
    std::string_view source;
    Trust trust = Trust::memory;
};

/// How long a step takes when the text does not say, for a beginner and one or two loaves.
struct StageDefaultRow {
    StepKind kind = StepKind::mix;
    std::optional<DoughFamily> family; // none: any dough
    std::optional<Place> place;        // none: anywhere
    Band<Minutes> minutes;
    /// How long the dough forgives after it is ready, at 24 °C; none: it does not mind.
    std::optional<Band<Minutes>> holds;
    std::string_view source;
    Trust trust = Trust::assumed;
};

/// What tells that a step is over, where the text does not say.
struct CueRow {
    StepKind kind = StepKind::rise;
    std::optional<DoughFamily> family;
    std::string_view text; // at most nine words
    std::string_view source;
    Trust trust = Trust::assumed;
};

/// What is normal at a step although it worries somebody who bakes for the first time.
struct NormalRow {
    StepKind kind = StepKind::mix;
    std::optional<DoughFamily> family;
    std::string_view text; // at most twelve words
    std::string_view source;
    Trust trust = Trust::assumed;
};

/// A short warning and what calls for it.
///
/// It is called for when all of these hold:
///   - a word or a role of `any_item`, `any_role` and `any_word` is met, or all three are empty;
///   - some wait is longer than `longer_than` and stands at `place` (outside the fridge when
///   `place`
///     is not set), as far as these are set;
///   - some heat is hotter than `hotter_than`, and the room warmer than `room_above`, where set;
///   - a step is of the kind `stage`, when nothing else but the room is asked for; a `stage` that
///     is a wait also says which waits `longer_than` means.
struct CautionRow {
    std::string_view code;
    std::vector<std::string_view> any_item; // one of these words in an ingredient…
    std::vector<std::string_view> any_role; // …or an ingredient with one of these roles in its row…
    std::vector<std::string_view> any_word; // …or one of these in a step
    std::optional<StepKind> stage;          // the stage that it concerns
    std::optional<Place> place;
    std::optional<Minutes> longer_than;
    std::optional<Celsius> hotter_than;
    std::optional<Celsius> room_above;
    std::string_view text; // one line
    int weight = 50;       // heavier ones first
    std::string_view source;
    Trust trust = Trust::memory;
};

/// Words in a recipe that call for a piece of kit.
struct KitRow {
    std::string_view kit;
    std::vector<std::string_view> words;
    std::string_view source;
};

/// Something to see to before the first step. It is called for by one ingredient in whose words one
/// of `any_item` stands or whose row has one of `any_role`, and one of `any_word`, and none of
/// `unless_word`; an empty list asks for nothing.
struct AheadRow {
    std::string_view what;
    std::vector<std::string_view> any_item;
    std::vector<std::string_view> any_role;
    std::vector<std::string_view> any_word;
    std::vector<std::string_view> unless_word;
    Minutes before;
    std::string_view source;
};

/// One way of saying something. `role` groups rows (action, cue, heading…); `say` is a phrase of
/// lower-case words in which "~" stands for up to four other words; `means` is the value in that
/// role, alternatives parted by "|".
struct LexiconRow {
    std::string_view role;
    std::string_view say;
    std::string_view means;
    double weight = 1.0;
    std::string_view source;
};

/// A cost in the order in which bread is made; see data/process.toml.
struct ProcessRow {
    std::string_view from; // state of the dough
    std::string_view kind; // step kind
    std::string_view to;   // state afterwards
    double cost = 0.0;
    std::string_view source;
};

/// What becomes of a wait when something has happened: nothing, it begins again, it goes on longer.
enum class WaitAfter { as_it_is, again, longer };

/// What to do when something has happened at a bake.
struct RemedyRow {
    std::string_view key;   // "no_salt": one of `Trouble` in engine/following/trouble.hpp
    std::string_view tells; // as the baker says it: "I forgot the salt"
    std::string_view remedy;
    WaitAfter wait = WaitAfter::as_it_is;
    double wait_percent = 0.0; // of the planned length
    bool asks_until = false;
    std::string_view source;
    Trust trust = Trust::assumed;
};

/// What makes a bread demanding, beside its hours and its doughs. The row holds when the dough is
/// of `family` and a step of `kind`, where these are set, one of `any_word` stands in the words of
/// such a step, where there are any, and none of `unless_word` in those of any step.
struct SkillRow {
    std::string_view skill;
    std::optional<DoughFamily> family;
    std::optional<StepKind> kind;
    std::vector<std::string_view> any_word;
    std::vector<std::string_view> unless_word;
    int demand = 1; // 1 a little, 2 wants practice, 3 for those who have baked for a while
    std::string_view says;
    std::string_view source;
    Trust trust = Trust::assumed;
};

/// In percent of all flour, both ends included.
struct PercentRange {
    double low = 0.0;
    double high = 0.0;
};

/// What is usual for a kind of bread. A range that is not set: anything goes.
struct FormulaRangeRow {
    std::string_view bread;                 // in the plural: "plain loaves and rolls"
    std::vector<std::string_view> any_word; // for titles with one of these words, or
    std::optional<DoughFamily> family;      // for every bread of this family
    std::optional<PercentRange> water;      // with that in milk, egg and butter
    std::optional<PercentRange> salt;
    std::optional<PercentRange> yeast_as_fresh;
    std::optional<PercentRange> prefermented; // of the flour
    std::optional<PercentRange> fat;
    std::optional<PercentRange> sugar;
    std::string_view source;
    Trust trust = Trust::assumed;
};

/// Which factor of a kitchen a step's length follows: the dough's (its leaven and where it stands),
/// that of the hands, or the oven's. The row of the thermostat is no length: what an oven has, less
/// what it is set to, in °C.
enum class LearnedGroup { dough, hands, oven, thermostat };

/// How much the lengths of a kind of step differ before anything is known of a kitchen, as
/// deviations of the natural logarithm of real over fitted minutes.
struct LearningRow {
    StepKind kind = StepKind::rise;
    LearnedGroup group = LearnedGroup::dough;
    double group_deviation = 0.0;  // between kitchens, what all kinds of the group share
    double kind_deviation = 0.0;   // between kitchens, of this kind beside the rest of its group
    double within_deviation = 0.0; // from one bake to the next in one kitchen
    std::string_view source;
    Trust trust = Trust::assumed;
};

/// Something that may have gone otherwise than it should, and the one thing to change then.
struct FaultCauseRow {
    std::string_view key;
    std::string_view cause;        // "proved too short"
    std::optional<StepKind> stage; // none: the leaven
    double usual_share = 0.0;      // of home bakes in which it is so
    std::string_view change;       // "give the prove a fifth longer"; causes may share one
    std::string_view because;
    std::string_view source;
    Trust trust = Trust::assumed;
};

/// Which wait a sign says was too short or too long; read by learn.
enum class Proved { unsaid, too_short, too_long };

/// What a baker sees, and the words for it.
struct FaultSymptomRow {
    std::string_view key;
    std::string_view tells; // as it is shown: "close, heavy crumb"
    std::vector<std::string_view> says;
    double unexplained_share = 0.0; // of home bakes that show it for none of the causes here
    Proved proved = Proved::unsaid;
    std::string_view source;
    Trust trust = Trust::assumed;
};

/// How often a cause alone shows a symptom.
struct FaultLinkRow {
    std::string_view cause;
    std::string_view symptom;
    double shows_share = 0.0;
    std::string_view source;
    Trust trust = Trust::assumed;
};

/// What a fact of the bake log says of a cause: its odds times `odds_factor`, above 1 for it and
/// below 1 against it.
struct FaultEvidenceRow {
    std::string_view fact; // one of faults::fact_keys()
    std::string_view cause;
    double odds_factor = 1.0;
    std::string_view says; // a sentence; {real}, {wanted}, {place}… stand for the fact's numbers
    std::string_view source;
    Trust trust = Trust::assumed;
};

/// How much dough a tin takes, for each litre that it holds up to the rim.
struct TinFillRow {
    DoughFamily family = DoughFamily::lean;
    Band<Grams> per_litre;
    std::string_view source;
    Trust trust = Trust::assumed;
};

/// Everything that is known about bread in general. Built once from data/, passed in, never
/// changed.
struct Knowledge {
    std::vector<IngredientRow> ingredients;
    std::vector<UnitRow> units;
    std::vector<OvenWordRow> oven_words;
    std::vector<WarmthWordRow> warmth_words;
    std::vector<StageDefaultRow> stage_defaults;
    std::vector<CueRow> cues;
    std::vector<NormalRow> normal;
    std::vector<CautionRow> cautions;
    std::vector<KitRow> kit;
    std::vector<AheadRow> ahead;
    std::vector<LexiconRow> lexicon;
    std::vector<ProcessRow> process;
    std::vector<RemedyRow> remedies;
    std::vector<SkillRow> skills;
    std::vector<LearningRow> learning;
    std::vector<FaultCauseRow> fault_causes;
    std::vector<FaultSymptomRow> fault_symptoms;
    std::vector<FaultLinkRow> fault_links;
    std::vector<FaultEvidenceRow> fault_evidence;
    std::vector<FormulaRangeRow> formula_ranges;
    std::vector<TinFillRow> tin_fill;
};

/// The tables in data/ as they were when the program was built.
Knowledge built_in_knowledge();

/// The signs that a text tells of, in the order of the table, each once.
///
/// Promises: letters of any case and any blanks; of phrases that overlap the longest one counts.
std::vector<const FaultSymptomRow*> symptoms_in(const Knowledge& knowledge, std::string_view text);

/// The sign with this key, or null.
const FaultSymptomRow* symptom_named(const Knowledge& knowledge, std::string_view key);

/// The default for a step: the row that names both family and place before one that names one of
/// them before one that names neither.
///
/// Promises: never null for the kinds that take time (every kind but serve and store).
const StageDefaultRow*
stage_default(const Knowledge& knowledge, StepKind kind, DoughFamily family, Place place);

/// The cue for a step, or null when there is none to give.
const CueRow* cue_for(const Knowledge& knowledge, StepKind kind, DoughFamily family);

/// What is normal at a step, or null when there is nothing to say.
const NormalRow* normal_at(const Knowledge& knowledge, StepKind kind, DoughFamily family);

/// What is usual for a bread of this title, in lower case, and family: the row with a word of the
/// title before the row of the family; or null.
const FormulaRangeRow*
usual_formula(const Knowledge& knowledge, std::string_view title, DoughFamily family);

/// Promises: never null.
const TinFillRow* tin_fill_for(const Knowledge& knowledge, DoughFamily family);

/// The row whose item is exactly `item`, or null.
const IngredientRow* ingredient_named(const Knowledge& knowledge, std::string_view item);

/// The row that an ingredient is known as, else the row called exactly like it, or null.
const IngredientRow* row_of(const Knowledge& knowledge, const Ingredient& ingredient);

} // namespace loafwright

// SPDX-License-Identifier: Apache-2.0
//
// The rows of data/ as the program carries them: every one has a source and a figure that can be,
// and some are held against what was published. The rules that the generator enforces are not
// repeated here.

#include "engine/knowledge/knowledge.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <set>
#include <string>
#include <string_view>
#include <vector>

namespace loafwright {
namespace {

const Knowledge& known() {
    static const Knowledge knowledge = built_in_knowledge();
    return knowledge;
}

const IngredientRow& ingredient(std::string_view item) {
    const IngredientRow* row = ingredient_named(known(), item);
    EXPECT_NE(row, nullptr) << item;
    static const IngredientRow none;
    return row == nullptr ? none : *row;
}

// The item that a plain word stands for.
std::string_view item_called(std::string_view word) {
    for (const IngredientRow& row : known().ingredients) {
        if (row.item == word ||
            std::find(row.aliases.begin(), row.aliases.end(), word) != row.aliases.end()) {
            return row.item;
        }
    }
    return "";
}

const UnitRow& unit(std::string_view name) {
    for (const UnitRow& row : known().units) {
        if (row.unit == name) {
            return row;
        }
    }
    ADD_FAILURE() << name;
    static const UnitRow none;
    return none;
}

std::vector<StepKind> kinds_that_take_time() {
    std::vector<StepKind> kinds;
    for (std::size_t index = 0; index < step_kind_count; ++index) {
        const auto kind = static_cast<StepKind>(index);
        if (kind != StepKind::serve && kind != StepKind::store) {
            kinds.push_back(kind);
        }
    }
    return kinds;
}

const std::vector<DoughFamily> families{DoughFamily::lean,
                                        DoughFamily::enriched,
                                        DoughFamily::wholegrain,
                                        DoughFamily::sourdough,
                                        DoughFamily::flatbread,
                                        DoughFamily::quick};
const std::vector<Place> places{
    Place::counter, Place::warm, Place::fridge, Place::oven, Place::hob};

TEST(knowledge, every_table_has_rows_and_every_row_a_source) {
    const auto sourced = [](const auto& rows) {
        return !rows.empty() && std::all_of(rows.begin(), rows.end(), [](const auto& row) {
            return row.source.size() > 5;
        });
    };
    EXPECT_TRUE(sourced(known().ingredients));
    EXPECT_TRUE(sourced(known().units));
    EXPECT_TRUE(sourced(known().oven_words));
    EXPECT_TRUE(sourced(known().warmth_words));
    EXPECT_TRUE(sourced(known().stage_defaults));
    EXPECT_TRUE(sourced(known().cues));
    EXPECT_TRUE(sourced(known().normal));
    EXPECT_TRUE(sourced(known().cautions));
    EXPECT_TRUE(sourced(known().kit));
    EXPECT_TRUE(sourced(known().ahead));
    EXPECT_TRUE(sourced(known().lexicon));
    EXPECT_TRUE(sourced(known().process));
    EXPECT_TRUE(sourced(known().remedies));
    EXPECT_TRUE(sourced(known().skills));
    EXPECT_GE(known().ingredients.size(), 238U);
    EXPECT_GE(known().units.size(), 71U);
}

TEST(knowledge, figures_from_memory_are_not_marked_as_read) {
    for (const IngredientRow& row : known().ingredients) {
        const bool only_memory = row.source == ingredient("kefir").source;
        EXPECT_FALSE(only_memory && row.trust == Trust::read) << row.item;
    }
    EXPECT_EQ(ingredient("kefir").trust, Trust::memory);
    EXPECT_EQ(ingredient("plain white flour").trust, Trust::read);
    EXPECT_EQ(ingredient("strong white bread flour").trust, Trust::computed);
    EXPECT_EQ(ingredient("poolish").trust, Trust::assumed);
}

// A US cup is 236.588 mL, a tablespoon a sixteenth and a teaspoon a forty-eighth of it. Household
// weights are rounded one by one, so they agree roughly.
TEST(knowledge, cup_and_spoons_of_an_ingredient_tell_about_the_same_density) {
    for (const IngredientRow& row : known().ingredients) {
        if (row.per_us_cup) {
            const double cup = row.per_us_cup->likely.count();
            EXPECT_GT(row.per_us_cup->low.count(), 10.0) << row.item;
            EXPECT_LT(row.per_us_cup->high.count(), 400.0) << row.item;
            if (row.per_tablespoon) {
                const double share = row.per_tablespoon->count() * 16.0 / cup;
                EXPECT_GT(share, 0.75) << row.item;
                // Agave syrup: the source has a cup of 220 g and a teaspoon of 6.9 g.
                EXPECT_LT(share, row.item == "agave syrup" ? 1.6 : 1.3) << row.item;
            }
        }
        if (row.per_tablespoon && row.per_teaspoon) {
            const double thirds = row.per_teaspoon->count() * 3.0 / row.per_tablespoon->count();
            EXPECT_GT(thirds, 0.85) << row.item;
            EXPECT_LT(thirds, 1.3) << row.item;
        }
        if (row.per_piece) {
            EXPECT_GT(row.per_piece->low.count(), 0.5) << row.item;
            EXPECT_LT(row.per_piece->high.count(), 400.0) << row.item;
            EXPECT_FALSE(row.piece_name.empty()) << row.item;
        }
    }
}

// USDA SR28, household weights, read: food 20081 cup 125 g, 01123 large egg 50 g, 01145 stick
// 113 g, 19335 cup 200 g, 02047 teaspoon of salt 6 g, 19296 tablespoon of honey 21 g.
TEST(knowledge, weights_are_those_of_the_usda_release_28) {
    EXPECT_EQ(ingredient("plain white flour").per_us_cup->likely.count(), 125.0);
    EXPECT_EQ(ingredient("egg US large").per_piece->likely.count(), 50.0);
    EXPECT_EQ(ingredient("unsalted butter").per_piece->likely.count(), 113.0);
    EXPECT_EQ(ingredient("granulated sugar").per_us_cup->likely.count(), 200.0);
    EXPECT_EQ(ingredient("table salt").per_teaspoon->count(), 6.0);
    EXPECT_EQ(ingredient("honey").per_tablespoon->count(), 21.0);
}

// USDA SR27, composition, read: water of food 01077 whole milk, 01123 egg, 18374 compressed yeast.
TEST(knowledge, composition_is_that_of_the_usda_release_27) {
    EXPECT_EQ(*ingredient("whole milk").water_percent, 88.13);
    EXPECT_EQ(*ingredient("egg").water_percent, 76.15);
    EXPECT_EQ(*ingredient("fresh yeast").water_percent, 69.0);
    EXPECT_EQ(*ingredient("plain white flour").protein_percent, 10.33);
}

// units 2.22, read: sifted 113, scooped 142.
TEST(knowledge, a_cup_of_flour_spans_sifted_to_scooped) {
    EXPECT_EQ(ingredient("plain white flour").per_us_cup->low.count(), 113.0);
    EXPECT_EQ(ingredient("plain white flour").per_us_cup->high.count(), 142.0);
}

TEST(knowledge, plain_words_lead_to_the_item_that_bakers_mean) {
    EXPECT_EQ(item_called("flour"), "plain white flour");
    EXPECT_EQ(item_called("bread flour"), "strong white bread flour");
    EXPECT_EQ(item_called("whole wheat flour"), "wholemeal flour");
    EXPECT_EQ(item_called("rye flour"), "medium rye flour");
    EXPECT_EQ(item_called("corn meal"), "cornmeal");
    EXPECT_EQ(item_called("yeast"), "instant yeast");
    EXPECT_EQ(item_called("compressed yeast"), "fresh yeast");
    EXPECT_EQ(item_called("dry yeast"), "active dry yeast");
    EXPECT_EQ(item_called("fast-action yeast"), "instant yeast");
    EXPECT_EQ(item_called("starter"), "liquid sourdough starter");
    EXPECT_EQ(item_called("levain"), "liquid sourdough starter");
    EXPECT_EQ(item_called("rye starter"), "rye sourdough starter");
    EXPECT_EQ(item_called("water"), "water");
    EXPECT_EQ(item_called("milk"), "whole milk");
    EXPECT_EQ(item_called("butter"), "unsalted butter");
    EXPECT_EQ(item_called("salt"), "table salt");
    EXPECT_EQ(item_called("sugar"), "granulated sugar");
    EXPECT_EQ(item_called("lard"), "lard");
    EXPECT_EQ(item_called("molasses"), "molasses");
}

// UK Weights and Measures Act 1985, Schedule 1; US gallon of 231 cubic inches; CLDR 41.
TEST(knowledge, units_have_their_legal_sizes) {
    EXPECT_EQ(unit("pound").value->likely, 453.59237);
    EXPECT_EQ(unit("ounce").value->likely, 453.59237 / 16.0);
    EXPECT_EQ(unit("US cup").value->likely, 236.5882365);
    EXPECT_EQ(unit("US tablespoon").value->likely, 236.5882365 / 16.0);
    EXPECT_EQ(unit("imperial pint").value->likely, 568.26125);
    EXPECT_EQ(unit("Australian tablespoon").value->likely, 20.0);
    EXPECT_FALSE(unit("can").value.has_value());
}

TEST(knowledge, every_kind_that_takes_time_has_a_length_for_every_dough_and_place) {
    for (const StepKind kind : kinds_that_take_time()) {
        for (const DoughFamily family : families) {
            for (const Place place : places) {
                const StageDefaultRow* row = stage_default(known(), kind, family, place);
                ASSERT_NE(row, nullptr) << name_of(kind);
                EXPECT_GT(row->minutes.low.count(), 0.0) << name_of(kind);
                EXPECT_LE(row->minutes.high.count(), 48.0 * 60.0) << name_of(kind);
            }
        }
    }
}

TEST(knowledge, lengths_follow_the_dough) {
    const auto likely = [](StepKind kind, DoughFamily family, Place place) {
        return stage_default(known(), kind, family, place)->minutes.likely.count();
    };
    const StepKind rise = StepKind::rise;
    EXPECT_LT(likely(rise, DoughFamily::lean, Place::counter),
              likely(rise, DoughFamily::enriched, Place::counter));
    EXPECT_LT(likely(rise, DoughFamily::enriched, Place::counter),
              likely(rise, DoughFamily::sourdough, Place::counter));
    EXPECT_LT(likely(rise, DoughFamily::sourdough, Place::counter),
              likely(rise, DoughFamily::sourdough, Place::fridge));
    EXPECT_LT(likely(StepKind::bake, DoughFamily::flatbread, Place::oven),
              likely(StepKind::bake, DoughFamily::lean, Place::oven));
    EXPECT_LT(likely(StepKind::prove, DoughFamily::wholegrain, Place::counter),
              likely(StepKind::prove, DoughFamily::lean, Place::counter));
}

// Common practice: a proved loaf waits less long than a risen dough, in the fridge both wait hours.
TEST(knowledge, a_ready_dough_holds_for_a_while) {
    for (const DoughFamily family : families) {
        if (family == DoughFamily::quick) {
            continue;
        }
        const auto* rise = stage_default(known(), StepKind::rise, family, Place::counter);
        const auto* prove = stage_default(known(), StepKind::prove, family, Place::counter);
        ASSERT_TRUE(rise->holds && prove->holds) << name_of(family);
        EXPECT_LE(prove->holds->likely, rise->holds->likely) << name_of(family);
    }
    const auto* cold = stage_default(known(), StepKind::rise, DoughFamily::lean, Place::fridge);
    ASSERT_TRUE(cold->holds.has_value());
    EXPECT_GE(cold->holds->low.count(), 12.0 * 60.0);
}

TEST(knowledge, every_wait_and_every_bake_has_a_cue) {
    for (const StepKind kind : kinds_that_take_time()) {
        if (attention_of(kind) != Attention::wait && kind != StepKind::bake) {
            continue;
        }
        for (const DoughFamily family : families) {
            EXPECT_NE(cue_for(known(), kind, family), nullptr) << name_of(kind);
        }
    }
}

TEST(knowledge, springing_back_slowly_is_said_of_the_prove_alone) {
    for (const CueRow& row : known().cues) {
        if (row.text.find("springs back") != std::string_view::npos) {
            EXPECT_EQ(row.kind, StepKind::prove) << row.text;
        }
    }
    EXPECT_EQ(cue_for(known(), StepKind::rise, DoughFamily::sourdough)->text.find("doubled"),
              std::string_view::npos);
}

// NIST and NSW Health charts, read.
TEST(knowledge, oven_words_mean_what_the_charts_say) {
    for (const OvenWordRow& row : known().oven_words) {
        if (row.words == "moderate oven") {
            EXPECT_EQ(row.oven.low.degrees(), 180.0);
            EXPECT_EQ(row.oven.high.degrees(), 190.0);
        }
        if (row.words == "hot oven") {
            EXPECT_EQ(row.oven.low.degrees(), 200.0);
            EXPECT_EQ(row.oven.high.degrees(), 230.0);
        }
        EXPECT_NE(row.words.find("oven"), std::string_view::npos) << row.words;
    }
}

TEST(knowledge, warmer_words_mean_warmer_liquids) {
    const auto likely = [](std::string_view words) {
        for (const WarmthWordRow& row : known().warmth_words) {
            if (row.of_liquid && row.words == words) {
                return row.temperature.likely.degrees();
            }
        }
        ADD_FAILURE() << words;
        return 0.0;
    };
    double before = -1.0;
    for (const std::string_view words : {"iced",
                                         "cold",
                                         "cool",
                                         "room temperature",
                                         "tepid",
                                         "lukewarm",
                                         "hand-hot",
                                         "very warm",
                                         "hot",
                                         "very hot",
                                         "scalded",
                                         "simmering",
                                         "boiling"}) {
        EXPECT_GT(likely(words), before) << words;
        before = likely(words);
    }
}

TEST(knowledge, cautions_weigh_lye_before_honey_before_warm_dough_before_burns_before_raw_flour) {
    int before = 101;
    for (const std::string_view code : {"lye",
                                        "honey_infant",
                                        "enriched_warm",
                                        "steam_burn",
                                        "raw_dough",
                                        "cool_before_cutting"}) {
        const auto found = std::find_if(known().cautions.begin(),
                                        known().cautions.end(),
                                        [&](const auto& row) { return row.code == code; });
        ASSERT_NE(found, known().cautions.end()) << code;
        EXPECT_LT(found->weight, before) << code;
        before = found->weight;
    }
}

TEST(knowledge, text_for_people_is_short_and_keeps_its_voice) {
    const auto fine = [](std::string_view text, std::size_t most) {
        EXPECT_LE(text.size(), most) << text;
        EXPECT_EQ(text.find('!'), std::string_view::npos) << text;
        for (const std::string_view word :
             {"simply", "please", "just ", "oops", "Oops", "Please"}) {
            EXPECT_EQ(text.find(word), std::string_view::npos) << text;
        }
    };
    for (const CautionRow& row : known().cautions) {
        fine(row.text, 115);
    }
    for (const CueRow& row : known().cues) {
        fine(row.text, 60);
    }
    for (const NormalRow& row : known().normal) {
        fine(row.text, 66);
    }
    for (const KitRow& row : known().kit) {
        fine(row.kit, 60);
    }
}

} // namespace
} // namespace loafwright

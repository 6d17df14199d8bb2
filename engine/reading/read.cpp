// SPDX-License-Identifier: Apache-2.0
//
// The reader from end to end: text → blocks → clauses with everything that stands in them → what
// each clause may mean → what the whole sequence means → steps, ingredients, reminders, questions,
// and what was left unread. Each arrow is a file of this room.
#include "engine/reading/read.hpp"

#include "engine/reading/assemble.hpp"
#include "engine/reading/bare_list.hpp"
#include "engine/reading/candidate.hpp"
#include "engine/reading/clause.hpp"
#include "engine/reading/correction.hpp"
#include "engine/reading/head_times.hpp"
#include "engine/reading/ingredient.hpp"
#include "engine/reading/layout.hpp"
#include "engine/reading/look_alike.hpp"
#include "engine/reading/parts.hpp"
#include "engine/reading/process.hpp"
#include "engine/reading/question.hpp"
#include "engine/reading/reminder.hpp"
#include "engine/reading/sign.hpp"
#include "engine/reading/temperature.hpp"

#include <algorithm>
#include <array>
#include <string>
#include <unordered_map>
#include <unordered_set>

namespace loafwright {
namespace reading {
namespace {

class OneText {
public:
    OneText(std::string_view text,
            const Knowledge& knowledge,
            const Lexicon& lexicon,
            const Units& units,
            const Process& process,
            const Answers& answers)
        : text_(text), knowledge_(knowledge), lexicon_(lexicon), units_(units), process_(process),
          layout_(lay_out(text, lexicon)), answers_(settle_look_alikes(layout_.tokens, answers)) {}

    Reading run() {
        reading_.recipe.title = layout_.title.empty() ? "Bread" : layout_.title;
        clauses_ = clauses_of(layout_, lexicon_);
        tell_parts(layout_, clauses_);
        std::vector<std::vector<Candidate>> candidates;
        candidates.reserve(clauses_.size());
        for (const Clause& clause : clauses_) {
            candidates.push_back(candidates_of(clause));
        }
        const std::vector<Decision> decisions = process_.decide(candidates);
        assembly_ = assemble(text_, layout_, lexicon_, clauses_, decisions);
        read_head();
        const IngredientReader ingredients(
            knowledge_, lexicon_, units_, text_, layout_, told_region());
        read_ingredients(ingredients);
        keep_unweighed(ingredients);
        if (weigh_bare_list(layout_, knowledge_, reading_.recipe.ingredients)) {
            reading_.remarks.push_back(
                {"grams_assumed",
                 Severity::note,
                 "the numbers of the list have no unit and were read as grams",
                 "",
                 "Write the unit if they are something else."});
        }
        for (Draft& draft : assembly_.drafts) {
            add_reminders(text_, layout_, clauses_, draft);
            add_uses(ingredients, draft);
            reading_.recipe.steps.push_back(draft.step);
        }
        part_ways(reading_.recipe.steps);
        reading_.recipe.references = assembly_.references;
        keep_loose_reminders();
        read_pieces();
        leave_unread();
        name_other_language();
        name_places(reading_);
        const Answers others = take_corrections(
            knowledge_, lexicon_, units_, ingredients.region(), answers_, found_, reading_);
        compare_head_times(layout_, reading_);
        ask_and_answer(knowledge_, layout_, found_, assembly_.kinds_of_bread, others, reading_);
        ask_about_look_alikes(text_, layout_.tokens, reading_);
        add_usual_cues(reading_.recipe,
                       knowledge_); // after the questions: they quote the text's own
        return std::move(reading_);
    }

private:
    // The answer to "a British or an American book?", needed before amounts are weighed.
    [[nodiscard]] std::optional<Region> told_region() const {
        for (const Answer& answer : answers_) {
            if (answer.key != "region" || answer.value.empty()) {
                continue;
            }
            const char first = answer.value.front();
            const bool british =
                first == 'B' || first == 'b' || answer.value == "UK" || answer.value == "uk";
            return british ? Region::uk : Region::us;
        }
        return std::nullopt;
    }

    void read_ingredients(const IngredientReader& ingredients) {
        for (const Block& block : layout_.blocks) {
            if (block.role == BlockRole::ingredients) {
                if (auto found = ingredients.line(block)) {
                    std::vector<FoundIngredient> beside = ingredients.beside(*found);
                    keep(ingredients, std::move(*found));
                    for (FoundIngredient& more : beside) {
                        keep(ingredients, std::move(more));
                    }
                } else {
                    unread(span_of(layout_.tokens, block.tokens),
                           "no ingredient could be made out");
                }
            }
        }
        const std::unordered_set<std::string> listed = kinds_;
        for (std::size_t index = 0; index < clauses_.size(); ++index) {
            const Clause& clause = clauses_[index];
            if (clause.variant) {
                continue;
            }
            for (FoundIngredient& found : ingredients.in_prose(clause.range)) {
                // What the list has already is taken from it, not added to it.
                const bool known = holds_kind(listed,
                                              ingredients.row_named(found.ingredient.known_as),
                                              found.ingredient.known_as);
                if (known) {
                    continue;
                }
                found.ingredient.part =
                    assembly_.uses[index].draft
                        ? assembly_.drafts[*assembly_.uses[index].draft].step.part
                        : part_labelled(clause);
                keep(ingredients, std::move(found));
            }
        }
    }

    // "Filling: 75 g soft butter, 50 g sugar": a list in a line of its own.
    [[nodiscard]] std::optional<std::string> part_labelled(const Clause& clause) const {
        const Match part =
            lexicon_.at("part", layout_.tokens, layout_.ids, clause.range.begin, clause.range.end);
        const bool label = part.row != nullptr && part.range.end < clause.range.end &&
                           is_mark(layout_.tokens[part.range.end], ':');
        return label ? std::optional(std::string(part.row->means)) : std::nullopt;
    }

    [[nodiscard]] bool lists_a_leaven() const {
        return std::any_of(reading_.recipe.ingredients.begin(),
                           reading_.recipe.ingredients.end(),
                           [](const Ingredient& one) { return one.part == "leaven"; });
    }

    // "enough flour to make a dough": named where the dough is made, without an amount.
    void keep_unweighed(const IngredientReader& ingredients) {
        for (std::size_t index = 0; index < clauses_.size(); ++index) {
            const auto& draft = assembly_.uses[index].draft;
            if (clauses_[index].negated || clauses_[index].variant) {
                continue;
            }
            const Step* step = draft ? &assembly_.drafts[*draft].step : nullptr;
            const bool mixes = step != nullptr &&
                               (step->kind == StepKind::mix || step->kind == StepKind::activate);
            for (const Mention& mention : ingredients.mentions(clauses_[index].range)) {
                const IngredientRow* row = ingredients.row_named(mention.known_as);
                const bool counts =
                    row != nullptr &&
                    (row->role == "flour" || row->role == "salt" || row->role == "yeast" ||
                     row->role == "preferment" || row->role == "liquid" || row->role == "sugar");
                FoundIngredient found;
                found.ingredient.known_as = mention.known_as;
                // The leaven that the text makes is what its list says.
                const bool known = holds_kind(kinds_, row, mention.known_as) ||
                                   (counts && row->role == "preferment" && lists_a_leaven());
                const auto warmth = ingredients.warmth_beside(mention.range);
                if (!counts || known || mention.share || (!mixes && !(step == nullptr && warmth))) {
                    continue;
                }
                found.ingredient.temperature = warmth;
                found.ingredient.item = mention.item;
                found.ingredient.span = span_of(layout_.tokens, mention.range);
                found.ingredient.text = tidy(text_, *found.ingredient.span);
                found.ingredient.part = step == nullptr ? std::nullopt : step->part;
                found.range = mention.range;
                keep(ingredients, std::move(found));
            }
        }
    }

    // Two names are one thing when the table knows them as one, and flours, yeasts, salts and
    // sugars stand for each other: "the flour" of the method is the strong white flour of the list.
    static bool holds_kind(const std::unordered_set<std::string>& kinds,
                           const IngredientRow* row,
                           const std::string& known_as) {
        return (!known_as.empty() && kinds.count(known_as) != 0) ||
               (row != nullptr && stands_for_its_role(*row) &&
                kinds.count("role " + std::string(row->role)) != 0);
    }

    static bool stands_for_its_role(const IngredientRow& row) {
        return row.role == "flour" || row.role == "yeast" || row.role == "salt" ||
               row.role == "sugar";
    }

    void keep(const IngredientReader& ingredients, FoundIngredient found) {
        const std::string& known_as = found.ingredient.known_as;
        if (!known_as.empty()) {
            kinds_.insert(known_as);
            first_of_.emplace(known_as, reading_.recipe.ingredients.size());
        }
        if (const IngredientRow* row = ingredients.row_named(known_as);
            row != nullptr && stands_for_its_role(*row)) {
            kinds_.insert("role " + std::string(row->role));
        }
        reading_.recipe.ingredients.push_back(found.ingredient);
        found_.push_back(std::move(found));
    }

    void add_uses(const IngredientReader& ingredients, Draft& draft) const {
        constexpr std::size_t most_uses = 40;
        for (const std::size_t clause : draft.clauses) {
            for (const Mention& mention : ingredients.mentions(clauses_[clause].range)) {
                const auto first = first_of_.find(mention.known_as);
                const bool listed = first != first_of_.end();
                if (draft.step.uses.size() >= most_uses || (!listed && !mention.share)) {
                    continue;
                }
                Use use;
                use.item = listed ? reading_.recipe.ingredients[first->second].item : mention.item;
                if (mention.share && *mention.share > 0) {
                    use.share = mention.share;
                }
                const bool there =
                    std::any_of(draft.step.uses.begin(),
                                draft.step.uses.end(),
                                [&](const Use& other) { return other.item == use.item; });
                if (!there) {
                    draft.step.uses.push_back(std::move(use));
                }
            }
        }
    }

    // Kindly: a recipe in another language is not a bad recipe. English prose is a quarter small
    // words such as these.
    void name_other_language() {
        static constexpr std::array<std::string_view, 16> small_words = {"the",
                                                                         "and",
                                                                         "of",
                                                                         "to",
                                                                         "in",
                                                                         "a",
                                                                         "it",
                                                                         "for",
                                                                         "with",
                                                                         "until",
                                                                         "into",
                                                                         "on",
                                                                         "or",
                                                                         "is",
                                                                         "then",
                                                                         "at"};
        std::size_t words = 0;
        std::size_t english = 0;
        for (std::size_t at = 0; at < layout_.tokens.size(); ++at) {
            const Token& token = layout_.tokens[at];
            if (token.kind != TokenKind::word || token.text.size() > 30) {
                continue;
            }
            ++words;
            const bool small =
                std::find(small_words.begin(), small_words.end(), token.text) != small_words.end();
            english += small || layout_.ids[at].exact != 0 || layout_.ids[at].base != 0 ? 1U : 0U;
        }
        constexpr std::size_t enough = 12; // fewer words tell nothing
        if (words >= enough && english * 4 < words) {
            reading_.remarks.push_back(
                {"text_other_language",
                 Severity::warning,
                 "hardly a word of this is English, and English is all that can be read so far",
                 "",
                 "Give the recipe in English."});
        }
    }

    // Facts of clauses that belong to no step.
    void keep_loose_reminders() {
        constexpr std::size_t most = 40;
        for (std::size_t index = 0; index < clauses_.size(); ++index) {
            if (assembly_.uses[index].draft || clauses_[index].variant ||
                reading_.recipe.reminders.size() >= most) {
                continue;
            }
            Draft loose;
            loose.clauses.push_back(index);
            add_reminders(text_, layout_, clauses_, loose);
            for (Reminder& reminder : loose.step.reminders) {
                reading_.recipe.reminders.push_back(std::move(reminder));
            }
        }
    }

    // "Makes 2 loaves", "Servings: 4" is no number of pieces; "divide into 12" is.
    // "Oven: 190 °C / gas 5" in the head holds for a bake that tells no heat itself.
    void read_head() {
        for (const Block& block : layout_.blocks) {
            if (block.role != BlockRole::meta) {
                continue;
            }
            const auto heats = temperatures_in(layout_.tokens, block.tokens);
            if (heats.empty() || heats.front().middle() < 95) {
                continue;
            }
            const bool told = std::any_of(
                assembly_.drafts.begin(), assembly_.drafts.end(), [](const Draft& draft) {
                    const bool oven =
                        draft.step.kind == StepKind::bake || draft.step.kind == StepKind::preheat;
                    return oven && draft.step.temperature;
                });
            for (Draft& draft : assembly_.drafts) {
                if (!told && draft.step.kind == StepKind::bake) {
                    draft.step.temperature =
                        TemperatureRange{heats.front().low, heats.front().high};
                    return;
                }
            }
        }
    }

    // "Makes 12", "Yield: about 8 buns", also in the title; not "yields 900 g" and not "serves 4".
    void read_pieces() {
        const auto& tokens = layout_.tokens;
        for (const Block& block : layout_.blocks) {
            if (block.role != BlockRole::meta && block.role != BlockRole::title) {
                continue;
            }
            for (std::size_t at = block.tokens.begin; at < block.tokens.end; ++at) {
                if (!is_any_word(tokens[at], {"makes", "yield", "yields"})) {
                    continue;
                }
                std::size_t count = at + 1;
                while (count < block.tokens.end &&
                       (is_mark(tokens[count], ':') ||
                        is_any_word(tokens[count], {"about", "approx", "around", "some"}))) {
                    ++count;
                }
                const bool weighed = count + 1 < block.tokens.end && is_any_word(tokens[count + 1],
                                                                                 {"g",
                                                                                  "kg",
                                                                                  "oz",
                                                                                  "lb",
                                                                                  "lbs",
                                                                                  "grams",
                                                                                  "cups",
                                                                                  "servings",
                                                                                  "portions",
                                                                                  "people",
                                                                                  "x",
                                                                                  "dozen"});
                if (count < block.tokens.end && tokens[count].kind == TokenKind::number &&
                    tokens[count].value >= 1 && tokens[count].value <= 500 && !weighed) {
                    reading_.recipe.pieces = tokens[count].value;
                    return;
                }
            }
        }
    }

    void unread(Span span, std::string_view why) {
        if (span.begin < span.end) {
            reading_.unread.push_back({tidy(text_, span), span, std::string(why)});
        }
    }

    void leave_unread() {
        std::size_t clause = 0;
        for (std::size_t index = 0; index < layout_.blocks.size(); ++index) {
            const Block& block = layout_.blocks[index];
            switch (block.role) {
            case BlockRole::title:
                unread(block.span, "the title");
                break;
            case BlockRole::heading:
                unread(block.span, "a heading");
                break;
            case BlockRole::intro:
                unread(block.span, "stands before the method");
                break;
            case BlockRole::note:
                unread(block.span, "a note, not a step");
                break;
            case BlockRole::meta:
                unread(block.span, "about the whole recipe");
                break;
            case BlockRole::mark_up:
                unread(block.span, "mark-up, not words");
                break;
            case BlockRole::ingredients:
                break;
            case BlockRole::method:
                for (; clause < clauses_.size() && clauses_[clause].block == index; ++clause) {
                    const Span span = span_of(layout_.tokens, clauses_[clause].range);
                    const bool in_step = assembly_.uses[clause].draft &&
                                         covered(*assembly_.uses[clause].draft, span);
                    if (!in_step) {
                        const std::string_view why = assembly_.uses[clause].why_not;
                        unread(span,
                               why.empty() ? std::string_view("added to the step before") : why);
                    }
                }
                break;
            }
        }
    }

    [[nodiscard]] bool covered(std::size_t draft, Span span) const {
        const Span step = assembly_.drafts[draft].step.span;
        return step.begin <= span.begin && span.end <= step.end;
    }

    std::string_view text_;
    const Knowledge& knowledge_;
    const Lexicon& lexicon_;
    const Units& units_;
    const Process& process_;
    Layout layout_;
    const Answers answers_; // without those about single figures
    std::vector<Clause> clauses_;
    Assembly assembly_;
    std::vector<FoundIngredient> found_;
    std::unordered_set<std::string> kinds_; // of the ingredients kept so far
    std::unordered_map<std::string, std::size_t>
        first_of_; // index of the first ingredient known as…
    Reading reading_;
};

} // namespace
} // namespace reading

struct Reader::Tables {
    explicit Tables(const Knowledge& all)
        : knowledge(all), lexicon(all), units(all), process(all) {}

    const Knowledge& knowledge;
    reading::Lexicon lexicon;
    reading::Units units;
    reading::Process process;
};

Reader::Reader(const Knowledge& knowledge) : tables_(std::make_unique<const Tables>(knowledge)) {}
Reader::~Reader() = default;

Reading Reader::read(const CheckedText& text,
                     const Answers& answers,
                     const std::vector<OpenDoubt>& doubts) const {
    Reading reading = reading::OneText(text.view(),
                                       tables_->knowledge,
                                       tables_->lexicon,
                                       tables_->units,
                                       tables_->process,
                                       answers)
                          .run();
    ask_about_doubts(text.view(), doubts, reading);
    return reading;
}

Reading read(const CheckedText& text,
             const Knowledge& knowledge,
             const Answers& answers,
             const std::vector<OpenDoubt>& doubts) {
    return Reader(knowledge).read(text, answers, doubts);
}

} // namespace loafwright

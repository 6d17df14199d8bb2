// SPDX-License-Identifier: Apache-2.0
//
// Which atoms make one line of the page. First what belongs together in any case, then, while there
// are more lines than a page holds, the merge that loses least: a short rest between two goes of
// work becomes a line inside them, a short feeding between two waits becomes an act of one long
// wait.
#include "engine/planning/stages.hpp"

#include <algorithm>
#include <utility>

namespace loafwright::planning {

namespace {

constexpr std::int64_t opening_minutes = 3;
// Slashing, glazing and seeding stand at the oven door anyway.
constexpr std::int64_t finishing_minutes = 5;
constexpr std::int64_t short_rest = 15;
constexpr std::int64_t bench_rest = 40;
constexpr std::int64_t long_rest = 60;
constexpr std::int64_t short_work = 15;

class Drafter {
public:
    Drafter(const FittedRecipe& recipe, const BreadChain& chain) : recipe_(recipe), chain_(chain) {}

    std::vector<Draft> run() {
        for (std::size_t k = 0; k < chain_.atoms.size(); ++k) {
            add(k);
        }
        const std::size_t most = chain_.eaten ? most_stages - 1 : most_stages;
        while (drafts_.size() > most) {
            shorten();
        }
        return std::move(drafts_);
    }

private:
    [[nodiscard]] const Atom& last_atom(const Draft& draft) const {
        return chain_.atoms[draft.last - 1];
    }

    [[nodiscard]] bool cooks(const Draft& draft) const {
        return chain_.atoms[draft.first].kind == StepKind::cook;
    }

    [[nodiscard]] Place place_of(const Atom& atom) const {
        return atom.fitted ? recipe_.steps[*atom.fitted].place : Place::counter;
    }

    [[nodiscard]] std::int64_t length(const Draft& draft) const {
        return planned_sum(chain_, draft.first, draft.last);
    }

    [[nodiscard]] std::int64_t hands_in(const Draft& draft) const {
        std::int64_t sum = 0;
        for (std::size_t k = draft.first; k < draft.last; ++k) {
            sum += chain_.atoms[k].hands_minutes;
        }
        return sum;
    }

    // The wait that a draft ends with, folds passed over.
    [[nodiscard]] const Atom* last_wait(const Draft& draft) const {
        for (std::size_t k = draft.last; k-- > draft.first;) {
            if (chain_.atoms[k].attention == Attention::wait) {
                return &chain_.atoms[k];
            }
        }
        return nullptr;
    }

    [[nodiscard]] bool same_wait(const Draft& draft, const Atom& atom) const {
        const Atom* last = last_wait(draft);
        return last != nullptr && last->kind == atom.kind && place_of(*last) == place_of(atom);
    }

    void open(std::size_t atom, Attention attention) {
        drafts_.push_back({atom, atom + 1, attention, atom >= chain_.tail});
    }

    void add(std::size_t k) {
        const Atom& atom = chain_.atoms[k];
        Draft* before = drafts_.empty() ? nullptr : &drafts_.back();
        const bool tail = k >= chain_.tail;
        if (tail && !(before != nullptr && before->after_oven)) {
            before = nullptr; // the oven door parts the lines
        }
        if (atom.inside && before != nullptr && before->attention == Attention::wait) {
            before->last = k + 1;
            return;
        }
        if (atom.inside && k + 1 < chain_.atoms.size()) {
            open(k, Attention::wait); // work at the very start of a wait
            return;
        }
        switch (atom.attention) {
        case Attention::hands:
            add_hands(k, before);
            return;
        case Attention::near:
            add_bake(k, before);
            return;
        default:
            add_wait(k, before);
            return;
        }
    }

    void add_hands(std::size_t k, Draft* before) {
        const bool cook = chain_.atoms[k].kind == StepKind::cook;
        const bool joins =
            before != nullptr && before->attention == Attention::hands && cook == cooks(*before);
        if (joins) {
            before->last = k + 1;
        } else if (k >= chain_.tail && before != nullptr && before->attention == Attention::wait &&
                   hands_in(*before) + chain_.atoms[k].hands_minutes <= short_work) {
            before->last = k + 1; // brushed, glazed or sugared while it cools
        } else {
            open(k, Attention::hands);
        }
    }

    // True when `before` is a few minutes of hands that only open what follows, and not the end of
    // more work.
    [[nodiscard]] bool only_opens(const Draft& before) const {
        bool finishes = true;
        for (std::size_t k = before.first; k < before.last; ++k) {
            finishes = finishes && chain_.atoms[k].kind == StepKind::finish;
        }
        return before.attention == Attention::hands && !cooks(before) && drafts_.size() > 1 &&
               !before.after_oven &&
               hands_in(before) <= (finishes ? finishing_minutes : opening_minutes);
    }

    void add_bake(std::size_t k, Draft* before) {
        if (before != nullptr && before->attention == Attention::near) {
            before->last = k + 1;
            return;
        }
        if (before != nullptr && only_opens(*before)) {
            Draft& earlier = drafts_[drafts_.size() - 2];
            if (earlier.attention == Attention::near) {
                earlier.last = k + 1; // lid off, back in
                drafts_.pop_back();
                return;
            }
            if (earlier.attention == Attention::wait) {
                before->last = k + 1;
                before->attention = Attention::near;
                return;
            }
        }
        open(k, Attention::near);
    }

    void add_wait(std::size_t k, Draft* before) {
        const Atom& atom = chain_.atoms[k];
        if (before != nullptr && before->attention == Attention::wait && same_wait(*before, atom)) {
            before->last = k + 1;
            return;
        }
        if (before != nullptr && before->attention == Attention::wait &&
            before->last - before->first == 1 && chain_.atoms[before->first].inside) {
            before->last = k + 1;
            return;
        }
        if (before != nullptr && k >= chain_.tail && before->attention == Attention::hands &&
            hands_in(*before) <= short_work) {
            before->last = k + 1;
            before->attention = Attention::wait;
            return;
        }
        if (before != nullptr && only_opens(*before)) {
            Draft& earlier = drafts_[drafts_.size() - 2];
            if (earlier.attention == Attention::wait && same_wait(earlier, atom) &&
                chain_.atoms[before->first].kind == StepKind::fold) {
                earlier.last = k + 1; // one rise with a fold in it
                drafts_.pop_back();
                return;
            }
            if (earlier.attention == Attention::wait) {
                before->last = k + 1;
                before->attention = Attention::wait;
                return;
            }
        }
        // Nothing to wait for at the end of a bread that is eaten hot.
        if (k >= chain_.tail && !atom.fitted && atom.planned == 0 && !drafts_.empty() &&
            chain_.last_heat) {
            drafts_.back().last = k + 1;
            return;
        }
        open(k, Attention::wait);
    }

    void merge(std::size_t first, std::size_t last, Attention attention) {
        Draft merged = drafts_[first];
        merged.last = drafts_[last].last;
        merged.attention = attention;
        drafts_[first] = merged;
        drafts_.erase(drafts_.begin() + static_cast<std::ptrdiff_t>(first) + 1,
                      drafts_.begin() + static_cast<std::ptrdiff_t>(last) + 1);
    }

    // The shortest draft of `attention` that stands between two of `around`, or none.
    [[nodiscard]] std::optional<std::size_t>
    shortest_between(Attention attention, Attention around, std::int64_t most) const {
        std::optional<std::size_t> best;
        for (std::size_t d = 1; d + 1 < drafts_.size(); ++d) {
            const Draft& before = drafts_[d - 1];
            const Draft& after = drafts_[d + 1];
            if (drafts_[d].attention != attention || before.attention != around ||
                after.attention != around || length(drafts_[d]) > most || cooks(before) ||
                cooks(after) || cooks(drafts_[d]) || before.after_oven != after.after_oven) {
                continue;
            }
            if (!best || length(drafts_[d]) < length(drafts_[*best])) {
                best = d;
            }
        }
        return best;
    }

    // The first wait of a draft, folds passed over.
    [[nodiscard]] const Atom* first_wait(const Draft& draft) const {
        for (std::size_t k = draft.first; k < draft.last; ++k) {
            if (chain_.atoms[k].attention == Attention::wait) {
                return &chain_.atoms[k];
            }
        }
        return nullptr;
    }

    // Short work between two waits of one kind, in one place: the second goes on where the first
    // left off.
    [[nodiscard]] std::optional<std::size_t> shortest_interruption() const {
        std::optional<std::size_t> best;
        for (std::size_t d = 1; d + 1 < drafts_.size(); ++d) {
            const Draft& before = drafts_[d - 1];
            const Draft& after = drafts_[d + 1];
            const Atom* next = first_wait(after);
            const bool interrupts = drafts_[d].attention == Attention::hands &&
                                    !cooks(drafts_[d]) && before.attention == Attention::wait &&
                                    after.attention == Attention::wait && next != nullptr &&
                                    same_wait(before, *next) && length(drafts_[d]) <= short_work &&
                                    before.after_oven == after.after_oven;
            if (interrupts && (!best || length(drafts_[d]) < length(drafts_[*best]))) {
                best = d;
            }
        }
        return best;
    }

    // Slashing and glazing right before the bake, by whoever stands at the oven anyway.
    [[nodiscard]] std::optional<std::size_t> finish_at_the_oven() const {
        for (std::size_t d = 0; d + 1 < drafts_.size(); ++d) {
            bool finishes = drafts_[d].attention == Attention::hands && !cooks(drafts_[d]);
            for (std::size_t k = drafts_[d].first; k < drafts_[d].last; ++k) {
                finishes = finishes && (chain_.atoms[k].kind == StepKind::finish ||
                                        chain_.atoms[k].kind == StepKind::prepare);
            }
            if (finishes && drafts_[d + 1].attention == Attention::near &&
                length(drafts_[d]) <= short_work &&
                drafts_[d].after_oven == drafts_[d + 1].after_oven) {
                return d;
            }
        }
        return std::nullopt;
    }

    // Feeding a leaven that goes on ripening afterwards.
    [[nodiscard]] std::optional<std::size_t> shortest_feeding() const {
        std::optional<std::size_t> best;
        const auto ripens = [this](const Draft& draft) {
            const Atom* wait = last_wait(draft);
            return draft.attention == Attention::wait && wait != nullptr &&
                   wait->kind == StepKind::ferment;
        };
        for (std::size_t d = 1; d + 1 < drafts_.size(); ++d) {
            const bool feeds = drafts_[d].attention == Attention::hands && ripens(drafts_[d - 1]) &&
                               ripens(drafts_[d + 1]) && length(drafts_[d]) <= short_work;
            if (feeds && (!best || length(drafts_[d]) < length(drafts_[*best]))) {
                best = d;
            }
        }
        return best;
    }

    void shorten() {
        constexpr std::int64_t any = INT64_MAX;
        if (const auto rest = shortest_between(Attention::wait, Attention::hands, short_rest)) {
            merge(*rest - 1, *rest + 1, Attention::hands);
            return;
        }
        if (const auto feeding = shortest_feeding()) {
            merge(*feeding - 1, *feeding + 1, Attention::wait);
            return;
        }
        if (const auto rest = shortest_between(Attention::wait, Attention::hands, bench_rest)) {
            merge(*rest - 1, *rest + 1, Attention::hands);
            return;
        }
        if (const auto finish = finish_at_the_oven()) {
            merge(*finish, *finish + 1, Attention::near);
            return;
        }
        if (const auto work = shortest_interruption()) {
            merge(*work - 1, *work + 1, Attention::wait);
            return;
        }
        if (const auto rest = shortest_between(Attention::wait, Attention::hands, long_rest)) {
            merge(*rest - 1, *rest + 1, Attention::hands);
            return;
        }
        if (const auto work = shortest_between(Attention::hands, Attention::wait, short_work)) {
            merge(*work - 1, *work + 1, Attention::wait);
            return;
        }
        for (std::size_t d = 1; d < drafts_.size(); ++d) {
            if (drafts_[d].attention == drafts_[d - 1].attention &&
                drafts_[d].after_oven == drafts_[d - 1].after_oven) {
                merge(d - 1, d, drafts_[d].attention);
                return;
            }
        }
        if (const auto work = shortest_between(Attention::hands, Attention::wait, any)) {
            merge(*work - 1, *work + 1, Attention::wait);
            return;
        }
        // Whatever is left: the two shortest neighbours, on one side of the oven door if they can
        // be.
        const auto rank = [this](std::size_t d) {
            const bool parted = drafts_[d].after_oven != drafts_[d - 1].after_oven;
            return std::pair(parted, length(drafts_[d]) + length(drafts_[d - 1]));
        };
        std::size_t best = 1;
        for (std::size_t d = 2; d < drafts_.size(); ++d) {
            if (rank(d) < rank(best)) {
                best = d;
            }
        }
        const bool near = drafts_[best].attention == Attention::near ||
                          drafts_[best - 1].attention == Attention::near;
        merge(best - 1, best, near ? Attention::near : Attention::wait);
    }

    const FittedRecipe& recipe_;
    const BreadChain& chain_;
    std::vector<Draft> drafts_;
};

} // namespace

std::vector<Draft> drafts_of(const FittedRecipe& recipe, const BreadChain& chain) {
    return Drafter(recipe, chain).run();
}

} // namespace loafwright::planning

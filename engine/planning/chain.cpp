// SPDX-License-Identifier: Apache-2.0
//
// A fitted recipe as one line. Three things in it are not in line by themselves: work inside a wait
// (folds, "meanwhile make the filling"), which cuts the wait in parts of fixed length so that a
// calendar can be asked about each; heating the oven, which is placed by the clock and not by its
// place in the text; and a branch (a soaker beside a sponge), which is laid inside a wait of the
// longest line.
#include "engine/planning/chain.hpp"

#include "engine/planning/words.hpp"

#include <algorithm>

namespace loafwright::planning {

namespace {

// More than any recipe means; keeps sums far from overflow.
constexpr std::int64_t longest_step = 100000;
constexpr std::int64_t most_folds = 12;
constexpr std::int64_t usual_fold_minutes = 3;
constexpr std::int64_t oven_is_cold_after = 60;
// Slashing and loading: as long as the oven is kept hot for hands (common practice).
constexpr std::int64_t at_the_door = 10;

Band<std::int64_t> sane(const Band<std::int64_t>& band) {
    const auto clamp = [](std::int64_t minutes) {
        return std::clamp<std::int64_t>(minutes, 0, longest_step);
    };
    const std::int64_t likely = clamp(band.likely);
    return {std::min(clamp(band.low), likely), likely, std::max(clamp(band.high), likely)};
}

bool is_wait(const FittedStep& step) {
    return step.attention == Attention::wait;
}
bool is_hands(const FittedStep& step) {
    return step.attention == Attention::hands;
}

const Step* text_of(const FittedRecipe& recipe, std::size_t fitted) {
    const auto step = recipe.steps[fitted].step;
    return step && *step < recipe.recipe.steps.size() ? &recipe.recipe.steps[*step] : nullptr;
}

/// Work inside a wait: at `offset` from its start.
struct Inside {
    std::size_t fitted = 0;
    std::int64_t offset = 0;
    std::int64_t hands_minutes = 0;
};

class Builder {
public:
    explicit Builder(const FittedRecipe& recipe) : recipe_(recipe) {}

    BreadChain build() {
        sort_out();
        lay_branches();
        std::optional<std::size_t> last_heat_step;
        for (const std::size_t fitted : line_) {
            const StepKind kind = recipe_.steps[fitted].kind;
            if (kind == StepKind::bake || kind == StepKind::cook) {
                last_heat_step = fitted;
            }
        }
        for (const std::size_t fitted : line_) {
            add_step(fitted);
            if (last_heat_step == fitted) {
                chain_.last_heat = chain_.atoms.size() - 1;
            }
        }
        chain_.tail = chain_.last_heat ? *chain_.last_heat + 1 : chain_.atoms.size();
        finish_tail();
        round_runs();
        heat();
        return std::move(chain_);
    }

private:
    // Which steps stand in line, which inside another, which heat the oven.
    void sort_out() {
        const auto& steps = recipe_.steps;
        std::vector<std::optional<std::size_t>> fitted_of(recipe_.recipe.steps.size());
        for (std::size_t f = 0; f < steps.size(); ++f) {
            if (steps[f].step && *steps[f].step < fitted_of.size()) {
                fitted_of[*steps[f].step] = f;
            }
        }
        inside_.resize(steps.size());
        bool has_serve = false;
        for (std::size_t f = 0; f < steps.size(); ++f) {
            const FittedStep& step = steps[f];
            if (step.kind == StepKind::preheat) {
                chain_.preheats.push_back(f);
                continue;
            }
            has_serve = has_serve || step.kind == StepKind::serve;
            if (step.attention == Attention::none || step.kind == StepKind::serve ||
                step.kind == StepKind::store) {
                continue;
            }
            chain_.eaten = false; // until something is heated or served
            const Step* text = text_of(recipe_, f);
            const auto host = text != nullptr && text->during && *text->during < fitted_of.size()
                                  ? fitted_of[*text->during]
                                  : std::nullopt;
            if (host && *host != f && is_wait(steps[*host])) {
                inside_[*host].push_back(f);
            } else if (host && *host != f && steps[*host].kind == StepKind::bake &&
                       step.kind != StepKind::bake) {
                in_bake_.push_back({*host, f});
            } else {
                line_.push_back(f);
            }
        }
        for (const std::size_t f : line_) {
            const StepKind kind = steps[f].kind;
            chain_.eaten = chain_.eaten || kind == StepKind::bake || kind == StepKind::cook;
        }
        chain_.eaten = chain_.eaten || has_serve;
    }

    [[nodiscard]] std::int64_t likely(std::size_t fitted) const {
        return sane(recipe_.steps[fitted].minutes).likely;
    }

    // The longest way to the last step stays in line; the rest is laid beside it.
    void lay_branches() {
        const std::size_t count = line_.size();
        const bool any_branch = std::any_of(line_.begin(), line_.end(), [&](std::size_t f) {
            const Step* text = text_of(recipe_, f);
            return text != nullptr && !text->after.empty();
        });
        if (!any_branch || count < 3 || count > 500) {
            return;
        }
        std::vector<std::vector<std::size_t>> before(count);
        std::vector<std::optional<std::size_t>> place(recipe_.recipe.steps.size());
        for (std::size_t k = 0; k < count; ++k) {
            const Step* text = text_of(recipe_, line_[k]);
            if (text != nullptr && !text->after.empty()) {
                for (const std::size_t step : text->after) {
                    if (step < place.size() && place[step] && *place[step] < k) {
                        before[k].push_back(*place[step]);
                    }
                }
            } else if (k > 0 && !begins_a_branch(k)) {
                before[k].push_back(k - 1);
            }
            if (const auto step = recipe_.steps[line_[k]].step) {
                if (*step < place.size()) {
                    place[*step] = k;
                }
            }
        }
        std::vector<std::int64_t> length(count, 0);
        std::vector<std::optional<std::size_t>> from(count);
        for (std::size_t k = 0; k < count; ++k) {
            for (const std::size_t b : before[k]) {
                if (!from[k] || length[b] > length[*from[k]]) {
                    from[k] = b;
                }
            }
            length[k] = likely(line_[k]) + (from[k] ? length[*from[k]] : 0);
        }
        std::vector<bool> on_line(count, false);
        for (std::optional<std::size_t> k = count - 1; k; k = from[*k]) {
            on_line[*k] = true;
        }
        std::vector<std::size_t> in_front;
        std::vector<bool> laid(count, false);
        // Every branch end: the last of its steps that leads into the line.
        for (std::size_t k = 0; k < count; ++k) {
            if (!on_line[k]) {
                continue;
            }
            for (const std::size_t b : before[k]) {
                if (!on_line[b] && !laid[b]) {
                    lay_branch(k, b, from, on_line, laid, in_front);
                }
            }
        }
        // What leads nowhere ("make a topping" that nobody asks for) is done first.
        for (std::size_t k = 0; k < count; ++k) {
            if (!on_line[k] && !laid[k]) {
                in_front.push_back(k);
            }
        }
        std::sort(in_front.begin(), in_front.end());
        std::vector<std::size_t> line;
        for (const std::size_t k : in_front) {
            if (!is_wait(recipe_.steps[line_[k]])) {
                line.push_back(line_[k]);
            }
        }
        for (std::size_t k = 0; k < count; ++k) {
            if (on_line[k]) {
                line.push_back(line_[k]);
            }
        }
        line_ = line;
    }

    // The first step of another part, when a later step names what comes before it.
    [[nodiscard]] bool begins_a_branch(std::size_t k) const {
        const Step* here = text_of(recipe_, line_[k]);
        const Step* last = text_of(recipe_, line_[k - 1]);
        if (here == nullptr || last == nullptr || !here->part || here->part == last->part) {
            return false;
        }
        const std::size_t me = *recipe_.steps[line_[k - 1]].step;
        return std::any_of(line_.begin(), line_.end(), [&](std::size_t f) {
            const Step* text = text_of(recipe_, f);
            return text != nullptr &&
                   std::find(text->after.begin(), text->after.end(), me) != text->after.end();
        });
    }

    void lay_branch(std::size_t join,
                    std::size_t end,
                    const std::vector<std::optional<std::size_t>>& from,
                    const std::vector<bool>& on_line,
                    std::vector<bool>& laid,
                    std::vector<std::size_t>& in_front) {
        std::vector<std::size_t> branch;
        for (std::optional<std::size_t> k = end; k && !on_line[*k] && !laid[*k]; k = from[*k]) {
            branch.push_back(*k);
            laid[*k] = true;
        }
        std::reverse(branch.begin(), branch.end());
        std::int64_t whole = 0;
        std::int64_t hands = 0;
        for (const std::size_t k : branch) {
            whole += likely(line_[k]);
            hands += is_wait(recipe_.steps[line_[k]]) ? 0 : likely(line_[k]);
        }
        // The latest wait of the line that still leaves enough time before the two meet.
        std::int64_t after = 0;
        for (std::size_t k = join; k-- > 0;) {
            if (!on_line[k]) {
                continue;
            }
            const FittedStep& step = recipe_.steps[line_[k]];
            const std::int64_t low = sane(step.minutes).low;
            if (is_wait(step) && low + after >= whole && low >= hands) {
                std::int64_t offset = std::min(low + after - whole, low - hands) / 5 * 5;
                for (const std::size_t b : branch) {
                    if (!is_wait(recipe_.steps[line_[b]])) {
                        laid_inside_.push_back({line_[k], {line_[b], offset, likely(line_[b])}});
                        offset += up_to_five(likely(line_[b]));
                    }
                }
                return;
            }
            after += low;
        }
        in_front.insert(in_front.end(), branch.begin(), branch.end());
    }

    void add_step(std::size_t fitted) {
        const FittedStep& step = recipe_.steps[fitted];
        Atom atom;
        atom.fitted = fitted;
        atom.kind = step.kind;
        atom.attention = step.attention;
        atom.minutes = sane(step.minutes);
        atom.holds = step.holds_minutes;
        if (atom.holds) {
            atom.holds = std::clamp<std::int64_t>(*atom.holds, 0, longest_step) / 5 * 5;
        }
        if (is_hands(step)) {
            atom.hands_minutes = atom.minutes.likely;
            atom.holds = atom.holds.value_or(0);
            chain_.atoms.push_back(atom);
            return;
        }
        if (step.kind == StepKind::bake) {
            atom.attention = Attention::near;
            chain_.atoms.push_back(atom);
            for (const auto& [host, inner] : in_bake_) {
                if (host == fitted) {
                    chain_.in_bake.push_back(
                        {chain_.atoms.size() - 1, inner, moment_in_bake(inner, atom.minutes)});
                }
            }
            return;
        }
        atom.attention = Attention::wait;
        atom.stretch = step.stretch && atom.minutes.low < atom.minutes.high;
        atom.leave = atom.stretch || step.place == Place::fridge || step.kind == StepKind::cool;
        add_wait(atom, fitted);
    }

    void add_wait(const Atom& whole, std::size_t fitted) {
        std::vector<Inside> work = work_inside(fitted, whole.minutes);
        std::stable_sort(work.begin(), work.end(), [](const Inside& a, const Inside& b) {
            return a.offset < b.offset;
        });
        std::int64_t used = 0;
        for (const Inside& inner : work) {
            const std::int64_t length = std::max<std::int64_t>(5, up_to_five(inner.hands_minutes));
            const std::int64_t start = std::max(used, inner.offset / 5 * 5);
            if (start + length > whole.minutes.likely) {
                continue; // a wait that is over before it: nothing to be done inside
            }
            Atom part = whole;
            part.stretch = false;
            part.minutes = exactly(start - used);
            part.holds = 10; // a fold ten minutes late is a fold
            if (start > used) {
                chain_.atoms.push_back(part);
            }
            Atom hands;
            hands.fitted = inner.fitted;
            hands.kind = recipe_.steps[inner.fitted].kind;
            hands.minutes = exactly(length);
            hands.hands_minutes = inner.hands_minutes;
            hands.holds = 0;
            hands.inside = true;
            chain_.atoms.push_back(hands);
            used = start + length;
        }
        Atom rest = whole;
        const auto left = [used](std::int64_t minutes) {
            return std::max<std::int64_t>(0, minutes - used);
        };
        rest.minutes = {
            left(whole.minutes.low), left(whole.minutes.likely), left(whole.minutes.high)};
        chain_.atoms.push_back(rest);
    }

    std::vector<Inside> work_inside(std::size_t host, const Band<std::int64_t>& wait) const {
        std::vector<Inside> work;
        for (const auto& [fitted, inner] : laid_inside_) {
            if (fitted == host) {
                work.push_back(inner);
            }
        }
        for (const std::size_t f : inside_[host]) {
            const FittedStep& step = recipe_.steps[f];
            if (is_wait(step)) {
                continue;
            }
            const Step* text = text_of(recipe_, f);
            const std::int64_t own = sane(step.minutes).likely;
            const std::int64_t repeat =
                text != nullptr && text->repeat
                    ? std::clamp<std::int64_t>(
                          static_cast<std::int64_t>(text->repeat->count() + 0.5), 0, longest_step)
                    : 0;
            if (repeat >= 5) {
                const bool lasts = own >= repeat;
                const std::int64_t until = lasts ? std::min(own, wait.low) : wait.low;
                const std::int64_t times =
                    std::min(most_folds, words::times_said(text->text).value_or(most_folds));
                for (std::int64_t n = 1; n <= times; ++n) {
                    if (n * repeat > until || n * repeat >= wait.low) {
                        break;
                    }
                    work.push_back({f, n * repeat, lasts ? usual_fold_minutes : own});
                }
                continue;
            }
            std::int64_t offset = wait.low / 2; // one fold, half way
            if (text != nullptr && text->after_start) {
                offset = static_cast<std::int64_t>(
                    std::clamp(text->after_start->count() + 0.5, 0.0, 1.0e6));
            } else if (text != nullptr && text->before_next) {
                offset = wait.low - static_cast<std::int64_t>(text->before_next->count() + 0.5);
            } else if (step.kind != StepKind::fold && step.kind != StepKind::knock_back) {
                offset = wait.low - up_to_five(own) - 5; // ready just before it is wanted
            }
            offset = std::clamp<std::int64_t>(
                offset, 0, std::max<std::int64_t>(0, wait.low - up_to_five(own)));
            work.push_back({f, offset, own});
        }
        return work;
    }

    std::int64_t moment_in_bake(std::size_t inner, const Band<std::int64_t>& bake) const {
        const Step* text = text_of(recipe_, inner);
        if (text != nullptr && text->before_next) {
            return std::clamp<std::int64_t>(
                bake.likely - static_cast<std::int64_t>(text->before_next->count() + 0.5),
                0,
                bake.likely);
        }
        return bake.likely / 2;
    }

    // After the oven: what the hands still do, and then nothing but cooling until it can be cut.
    void finish_tail() {
        std::vector<Atom>& atoms = chain_.atoms;
        if (!chain_.last_heat) {
            chain_.tail = atoms.size();
            return;
        }
        std::size_t keep = atoms.size();
        Atom last;
        last.kind = StepKind::cool;
        last.attention = Attention::wait;
        last.leave = true;
        std::int64_t own = 0;
        while (keep > chain_.tail && atoms[keep - 1].attention == Attention::wait) {
            --keep;
            last.fitted = atoms[keep].fitted;
            own += atoms[keep].minutes.likely;
        }
        atoms.resize(keep);
        std::int64_t before = 0;
        for (std::size_t k = chain_.tail; k < keep; ++k) {
            before += up_to_five(atoms[k].minutes.likely);
        }
        // Without a cooling time the text's own "rest five minutes" is all there is to wait for.
        const Band<std::int64_t> cut = sane(recipe_.cut_after_minutes);
        const std::int64_t wanted = cut.likely > 0 ? cut.likely : before + own;
        last.minutes = exactly(std::max<std::int64_t>(0, wanted - before));
        chain_.cut_minutes = std::max(wanted, before);
        atoms.push_back(last);
    }

    // Hands in a run and bakes in a run are rounded up together: three steps of 7 minutes are 25,
    // not 30.
    void round_runs() {
        std::int64_t run = 0;
        std::int64_t rounded = 0;
        for (std::size_t k = 0; k < chain_.atoms.size(); ++k) {
            Atom& atom = chain_.atoms[k];
            const bool goes_on = k > 0 && atom.attention != Attention::wait &&
                                 chain_.atoms[k - 1].attention == atom.attention && !atom.inside;
            if (!goes_on) {
                run = 0;
                rounded = 0;
            }
            run += atom.minutes.likely;
            atom.planned = up_to_five(run) - rounded;
            rounded += atom.planned;
            atom.planned_most = atom.planned;
            if (atom.stretch) {
                atom.planned = up_to_five(atom.minutes.low);
                atom.planned_most = std::max(atom.planned, atom.minutes.high / 5 * 5);
            }
        }
    }

    void heat() {
        const auto bake =
            std::find_if(chain_.atoms.begin(), chain_.atoms.end(), [](const Atom& atom) {
                return atom.kind == StepKind::bake;
            });
        if (bake == chain_.atoms.end()) {
            return;
        }
        std::size_t at = static_cast<std::size_t>(bake - chain_.atoms.begin());
        const FittedStep& step = recipe_.steps[*bake->fitted];
        std::int64_t minutes = step.heat_up_minutes.value_or(0);
        chain_.oven = step.oven;
        for (const std::size_t f : chain_.preheats) {
            minutes = std::max(minutes, recipe_.steps[f].heat_up_minutes.value_or(0));
            if (!step.heat_up_minutes) {
                minutes = std::max(minutes, sane(recipe_.steps[f].minutes).likely);
            }
            chain_.oven = recipe_.steps[f].oven ? recipe_.steps[f].oven : chain_.oven;
        }
        chain_.heat_minutes = up_to_five(std::clamp<std::int64_t>(minutes, 0, 1440));
        const std::int64_t before = planned_sum(chain_, 0, at);
        if (before < chain_.heat_minutes) {
            // Mixed and shaped before the oven could be hot: the oven comes first.
            Atom first;
            first.kind = StepKind::preheat;
            first.attention = Attention::wait;
            first.minutes = exactly(chain_.heat_minutes - before);
            first.planned = first.planned_most = chain_.heat_minutes - before;
            first.holds = 0;
            put_in(0, first);
            ++at;
        }
        chain_.first_bake = at;
        chain_.on_before_bake = hot_early(at);
        chain_.ovens.push_back({at, chain_.on_before_bake, chain_.oven, std::nullopt});
        std::int64_t since = 0;
        std::size_t last = at;
        for (std::size_t k = at + 1; k < chain_.atoms.size(); ++k) {
            if (chain_.atoms[k].kind != StepKind::bake) {
                since += chain_.atoms[k].planned;
                continue;
            }
            if (since >= oven_is_cold_after && chain_.heat_minutes > 0) {
                chain_.ovens.push_back({k, hot_early(k), setting_of(k), std::nullopt});
            } else if (since > at_the_door) {
                k = change_oven(last, k, since);
            }
            since = 0;
            last = k;
        }
    }

    [[nodiscard]] std::optional<Celsius> setting_of(std::size_t bake) const {
        return recipe_.steps[*chain_.atoms[bake].fitted].oven;
    }

    // A bread that comes out and goes back at another heat waits for the oven where the work
    // between the two is shorter than the change. Returns the second bake's new place.
    std::size_t change_oven(std::size_t before, std::size_t bake, std::int64_t since) {
        const std::int64_t change =
            up_to_five(recipe_.steps[*chain_.atoms[bake].fitted].oven_change_minutes.value_or(0));
        if (change == 0 || chain_.heat_minutes == 0) {
            return bake;
        }
        const std::optional<Celsius> hot_at = setting_of(before);
        if (since < change) {
            Atom wait;
            wait.kind = StepKind::preheat;
            wait.attention = Attention::wait;
            wait.minutes = exactly(change - since);
            wait.planned = wait.planned_most = change - since;
            wait.holds = 0;
            put_in(bake, wait);
            ++bake;
        }
        chain_.ovens.push_back({bake, std::max(since, change), setting_of(bake), hot_at});
        return bake;
    }

    // Everything that names an atom from there on moves by one.
    void put_in(std::size_t at, const Atom& atom) {
        chain_.atoms.insert(chain_.atoms.begin() + static_cast<std::ptrdiff_t>(at), atom);
        chain_.tail += chain_.tail >= at ? 1 : 0;
        if (chain_.last_heat && *chain_.last_heat >= at) {
            ++*chain_.last_heat;
        }
        for (InBake& inner : chain_.in_bake) {
            inner.atom += inner.atom >= at ? 1 : 0;
        }
    }

    // From switching on to the planned start of a bake, so that the oven is hot at the early end of
    // the wait before it. Hands between the two may be quick as well; longer work is not what an
    // oven is kept hot for.
    [[nodiscard]] std::int64_t hot_early(std::size_t bake) const {
        const std::int64_t most = planned_sum(chain_, 0, bake);
        std::int64_t hands = 0;
        for (std::size_t k = bake; k-- > 0;) {
            const Atom& atom = chain_.atoms[k];
            if (atom.attention == Attention::near) {
                break;
            }
            if (atom.attention == Attention::wait) {
                const std::int64_t early =
                    atom.stretch ? 0 : atom.planned - atom.minutes.low / 5 * 5;
                return std::min(chain_.heat_minutes + early + std::min(hands, at_the_door), most);
            }
            hands += atom.planned;
        }
        return std::min(chain_.heat_minutes, most);
    }

    const FittedRecipe& recipe_;
    BreadChain chain_;
    std::vector<std::size_t> line_; // fitted indices
    std::vector<std::vector<std::size_t>> inside_;
    std::vector<std::pair<std::size_t, Inside>> laid_inside_;
    std::vector<std::pair<std::size_t, std::size_t>> in_bake_;
};

} // namespace

std::int64_t up_to_five(std::int64_t minutes) {
    return (minutes + 4) / 5 * 5;
}

std::int64_t planned_sum(const BreadChain& chain, std::size_t first, std::size_t last) {
    std::int64_t sum = 0;
    for (std::size_t k = first; k < last; ++k) {
        sum += chain.atoms[k].planned;
    }
    return sum;
}

BreadChain chain_of(const FittedRecipe& recipe) {
    return Builder(recipe).build();
}

} // namespace loafwright::planning

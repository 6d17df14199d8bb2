// SPDX-License-Identifier: Apache-2.0
//
// Who heats the oven for whom. The schedule room knows temperatures as names with times between
// them; a bread that is begun hot and finished cooler is one such name.
#include "engine/planning/oven_runs.hpp"

#include "engine/fitting/heat.hpp"

#include <algorithm>
#include <optional>

namespace loafwright::planning {

namespace {

Celsius first_of(const OvenRun& run) {
    return run.settings.front().first;
}

Celsius last_of(const OvenRun& run) {
    return run.settings.back().first;
}

bool alike(const OvenRun& a, const OvenRun& b) {
    if (a.keeps_one_setting() && b.keeps_one_setting()) {
        return first_of(a) == first_of(b);
    }
    return a.settings == b.settings;
}

std::int64_t longest_change(const Kitchen& kitchen, const OvenRun& from, const OvenRun& to) {
    std::int64_t longest = 0;
    for (const auto& a : from.settings) {
        for (const auto& b : to.settings) {
            longest = std::max(longest, fitting::oven_change_minutes(kitchen, a.first, b.first));
        }
    }
    return longest;
}

std::int64_t start_of(const OvenRun& run, const std::vector<Placed>& placed) {
    return placed[run.bread].starts[run.first];
}

std::int64_t end_of(const OvenRun& run, const std::vector<Placed>& placed) {
    return placed[run.bread].ends[run.last];
}

} // namespace

bool OvenRun::keeps_one_setting() const {
    return std::all_of(settings.begin(), settings.end(), [this](const auto& setting) {
        return setting.first == settings.front().first;
    });
}

Celsius OvenRun::hottest() const {
    return std::max_element(settings.begin(),
                            settings.end(),
                            [](const auto& a, const auto& b) { return a.first < b.first; })
        ->first;
}

std::vector<OvenRun> oven_runs(const std::vector<Bread>& breads) {
    std::vector<OvenRun> runs;
    for (std::size_t b = 0; b < breads.size(); ++b) {
        const BreadChain& chain = breads[b].chain;
        const auto heated_for = [&chain](std::size_t atom) -> const OvenOn* {
            const auto found =
                std::find_if(chain.ovens.begin(), chain.ovens.end(), [atom](const OvenOn& oven) {
                    return oven.bake == atom;
                });
            return found == chain.ovens.end() ? nullptr : &*found;
        };
        std::optional<Celsius> setting;
        for (std::size_t k = 0; k < chain.atoms.size(); ++k) {
            const Atom& atom = chain.atoms[k];
            if (atom.attention != Attention::near) {
                continue;
            }
            const OvenOn* heated = heated_for(k);
            const bool begins = heated != nullptr || runs.empty() || runs.back().bread != b;
            const auto own = atom.fitted ? breads[b].recipe.steps[*atom.fitted].oven : std::nullopt;
            setting = own ? own : setting ? setting : chain.oven;
            if (begins) {
                OvenRun run;
                run.bread = b;
                run.first = k;
                run.hot_before = heated != nullptr ? heated->before_minutes : 0;
                if (heated != nullptr && heated->setting && setting &&
                    *heated->setting != *setting) {
                    run.settings.emplace_back(*heated->setting, 0);
                }
                runs.push_back(std::move(run));
            }
            runs.back().last = k;
            runs.back().settings.emplace_back(setting.value_or(Celsius(220.0)), atom.planned);
        }
    }
    return runs;
}

OvenTable
oven_table(const std::vector<OvenRun>& runs, const Kitchen& kitchen, const OvenUseRules& rules) {
    OvenTable table;
    table.oven.slots = std::max(1, kitchen.oven.shelves);
    std::vector<std::size_t> first_run; // of each temperature
    for (std::size_t r = 0; r < runs.size(); ++r) {
        const auto known = std::find_if(first_run.begin(), first_run.end(), [&](std::size_t other) {
            const bool may = rules.sharing == Sharing::alike || runs[r].keeps_one_setting() ||
                             runs[r].bread == runs[other].bread;
            return may && alike(runs[r], runs[other]);
        });
        const auto name = static_cast<int>(known - first_run.begin());
        table.temperature_of_run.push_back(name);
        if (known == first_run.end()) {
            first_run.push_back(r);
            table.oven.heat_up.push_back({name, runs[r].hot_before});
        } else {
            std::int64_t& minutes = table.oven.heat_up[static_cast<std::size_t>(name)].minutes;
            minutes = std::max(minutes, runs[r].hot_before);
        }
    }
    for (std::size_t a = 0; a < first_run.size(); ++a) {
        for (std::size_t b = 0; b < first_run.size(); ++b) {
            if (a == b) {
                continue;
            }
            const OvenRun& from = runs[first_run[a]];
            const OvenRun& to = runs[first_run[b]];
            const bool never = rules.heats == Heats::hottest_first && from.hottest() < to.hottest();
            table.oven.changeover.push_back(
                {static_cast<int>(a),
                 static_cast<int>(b),
                 never ? schedule::longest_horizon_minutes : longest_change(kitchen, from, to)});
        }
    }
    return table;
}

bool hold_together(const std::vector<OvenRun>& runs,
                   const std::vector<Placed>& placed,
                   const Kitchen& kitchen) {
    for (std::size_t a = 0; a < runs.size(); ++a) {
        for (std::size_t b = 0; b < runs.size(); ++b) {
            if (a == b || runs[a].keeps_one_setting() || !alike(runs[a], runs[b]) ||
                start_of(runs[a], placed) > start_of(runs[b], placed)) {
                continue;
            }
            const bool together = start_of(runs[a], placed) == start_of(runs[b], placed);
            const std::int64_t again =
                fitting::oven_change_minutes(kitchen, last_of(runs[a]), first_of(runs[b]));
            if (!together && start_of(runs[b], placed) < end_of(runs[a], placed) + again) {
                return false;
            }
        }
    }
    return true;
}

bool hottest_first(const std::vector<OvenRun>& runs, const std::vector<Placed>& placed) {
    return std::none_of(runs.begin(), runs.end(), [&](const OvenRun& cooler) {
        return std::any_of(runs.begin(), runs.end(), [&](const OvenRun& hotter) {
            return cooler.hottest() < hotter.hottest() &&
                   start_of(cooler, placed) < start_of(hotter, placed);
        });
    });
}

std::vector<std::vector<OvenOn>> oven_moments(const std::vector<OvenRun>& runs,
                                              const std::vector<Placed>& placed,
                                              const Kitchen& kitchen) {
    std::vector<std::vector<OvenOn>> moments(placed.size());
    std::vector<std::size_t> order(runs.size());
    for (std::size_t r = 0; r < runs.size(); ++r) {
        order[r] = r;
    }
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        return start_of(runs[a], placed) < start_of(runs[b], placed);
    });
    std::optional<std::size_t> before; // the run that leaves the oven last so far
    for (const std::size_t r : order) {
        const OvenRun& run = runs[r];
        const std::int64_t start = start_of(run, placed);
        OvenOn moment;
        moment.bake = run.first;
        moment.before_minutes = run.hot_before;
        moment.setting = first_of(run);
        const std::optional<std::size_t> last = before;
        if (!before || end_of(run, placed) >= end_of(runs[*before], placed)) {
            before = r;
        }
        if (last) {
            const std::int64_t gap = start - end_of(runs[*last], placed);
            if (gap < 0) {
                continue; // it stands beside another in the hot oven
            }
            const std::int64_t change =
                fitting::oven_change_minutes(kitchen, last_of(runs[*last]), first_of(run));
            if (gap <= std::max(run.hot_before, change)) {
                if (last_of(runs[*last]) == first_of(run)) {
                    continue; // hot already
                }
                moment.before_minutes = gap;
                moment.hot_at = last_of(runs[*last]);
            }
        }
        if (moment.before_minutes > 0) {
            moments[run.bread].push_back(moment);
        }
    }
    return moments;
}

} // namespace loafwright::planning

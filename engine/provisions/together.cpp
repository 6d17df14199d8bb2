// SPDX-License-Identifier: Apache-2.0
//
// One list for several breads. Rows are put in an order of their own before they are added up, so
// that neither the list nor the last digit of a sum hangs on which bread was named first.

#include "engine/provisions/gather.hpp"

#include <algorithm>
#include <tuple>

namespace loafwright {
namespace {

std::string_view same_thing(const ToBuy& one) {
    return one.known_as.empty() ? std::string_view(one.item) : std::string_view(one.known_as);
}

// Short names first: "water" before "lukewarm water".
auto name_order(const std::string& name) {
    return std::make_tuple(name.size(), std::string_view(name));
}

bool comes_first(const ToBuy& a, const ToBuy& b) {
    const auto key = [](const ToBuy& one) {
        const Band<Grams> grams = one.grams.value_or(exactly(Grams(0.0)));
        return std::make_tuple(same_thing(one),
                               name_order(one.item),
                               grams.likely.count(),
                               grams.low.count(),
                               grams.high.count(),
                               std::string_view(one.as_written),
                               one.optional);
    };
    return key(a) < key(b);
}

void add(ToBuy& sum, const ToBuy& more) {
    if (sum.grams && more.grams) {
        sum.grams->low += more.grams->low;
        sum.grams->likely += more.grams->likely;
        sum.grams->high += more.grams->high;
    } else if (more.grams) {
        sum.grams = more.grams;
    }
    // Spoons of one bread beside the weight of all would mislead.
    sum.as_written = sum.as_written.empty() || more.as_written.empty()
                         ? std::string()
                         : sum.as_written + " + " + more.as_written;
    sum.optional = sum.optional && more.optional;
}

std::vector<ToBuy> shopping(const std::vector<Provisions>& each) {
    std::vector<ToBuy> rows;
    for (const Provisions& one : each) {
        rows.insert(rows.end(), one.buy.begin(), one.buy.end());
    }
    for (ToBuy& row : rows) {
        row.shares.clear(); // of one bread each
    }
    std::sort(rows.begin(), rows.end(), comes_first);
    std::vector<ToBuy> buy;
    for (const ToBuy& row : rows) {
        if (!buy.empty() && same_thing(buy.back()) == same_thing(row)) {
            add(buy.back(), row);
        } else {
            buy.push_back(row);
        }
    }
    // The heaviest first, as one carries them home; what has no weight last.
    std::stable_sort(buy.begin(), buy.end(), [](const ToBuy& a, const ToBuy& b) {
        const auto weight = [](const ToBuy& one) {
            return one.grams ? one.grams->likely : Grams(-1.0);
        };
        return weight(a) > weight(b);
    });
    return buy;
}

template <typename Value, typename Before, typename Same>
void put_once(std::vector<Value>& all, const Before& before, const Same& same) {
    std::sort(all.begin(), all.end(), before);
    all.erase(std::unique(all.begin(), all.end(), same), all.end());
}

bool asks_the_label(const AllergenNote& note) {
    return note.allergen.find("check the label") != std::string::npos;
}

std::vector<AllergenNote> allergens(const std::vector<Provisions>& each) {
    std::vector<AllergenNote> all;
    for (const Provisions& one : each) {
        for (const AllergenNote& note : one.allergens) {
            const auto known = std::find_if(all.begin(), all.end(), [&](const AllergenNote& other) {
                return other.allergen == note.allergen;
            });
            if (known == all.end()) {
                all.push_back(note);
            } else {
                known->because.insert(
                    known->because.end(), note.because.begin(), note.because.end());
            }
        }
    }
    for (AllergenNote& note : all) {
        put_once(note.because, std::less<>(), std::equal_to<>());
    }
    std::sort(all.begin(), all.end(), [](const AllergenNote& a, const AllergenNote& b) {
        return std::make_tuple(asks_the_label(a), std::string_view(a.allergen)) <
               std::make_tuple(asks_the_label(b), std::string_view(b.allergen));
    });
    return all;
}

} // namespace

Provisions together(const std::vector<Provisions>& each) {
    if (each.size() == 1) {
        return each.front();
    }
    Provisions all;
    all.buy = shopping(each);
    all.allergens = allergens(each);
    for (const Provisions& one : each) {
        all.kit.insert(all.kit.end(), one.kit.begin(), one.kit.end());
        all.ahead.insert(all.ahead.end(), one.ahead.begin(), one.ahead.end());
        for (Caution caution : one.cautions) {
            caution.stage = std::nullopt;
            all.cautions.push_back(std::move(caution));
        }
    }
    put_once(all.kit, std::less<>(), std::equal_to<>());
    put_once(
        all.ahead,
        [](const Ahead& a, const Ahead& b) {
            return std::make_tuple(-a.hours_before, std::string_view(a.what)) <
                   std::make_tuple(-b.hours_before, std::string_view(b.what));
        },
        [](const Ahead& a, const Ahead& b) { return a.what == b.what; });
    put_once(
        all.cautions,
        [](const Caution& a, const Caution& b) {
            return std::make_tuple(-a.weight, std::string_view(a.code)) <
                   std::make_tuple(-b.weight, std::string_view(b.code));
        },
        [](const Caution& a, const Caution& b) { return a.code == b.code; });
    return all;
}

} // namespace loafwright

// SPDX-License-Identifier: Apache-2.0
//
// The pages of the commands that come before the bake.
#include "shell/cli/before_pages.hpp"

#include "engine/recipe/words.hpp"
#include "shell/cli/labelled_page.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <string_view>

namespace loafwright::cli {

namespace {

double tenths(double value) {
    return std::floor(value * 10.0 + 0.5) / 10.0;
}

std::string grams_words(double grams) {
    return grams < 10.0 ? fmt::format("{} g", tenths(grams))
                        : fmt::format("{:.0f} g", std::floor(grams + 0.5));
}

// "64 %", and with a decimal below ten.
std::string percent_words(double percent) {
    return percent < 10.0 ? fmt::format("{} %", tenths(percent))
                          : fmt::format("{:.0f} %", std::floor(percent + 0.5));
}

std::string band_words(const Band<Grams>& band) {
    return (band.low == band.high ? "" : "about ") + grams_words(band.likely.count());
}

std::string joined(const std::vector<std::string>& all, std::string_view between) {
    return fmt::format("{}", fmt::join(all, between));
}

std::string title_words(const std::string& title) {
    return title.empty() ? "A recipe without a title" : title;
}

std::string item_words(const FormulaItem& item) {
    std::string words = item.item;
    if (item.part) {
        words += ", for the " + *item.part;
    }
    if (!item.in_dough) {
        words += ", not in the dough";
    }
    if (item.grams.low != item.grams.high) {
        const std::string low = grams_words(item.grams.low.count());
        words += fmt::format(
            " ({} to {})", low.substr(0, low.find(' ')), grams_words(item.grams.high.count()));
    }
    return words;
}

// "1" of an egg says nothing beside its weight.
bool has_letters(const std::string& words) {
    return std::any_of(words.begin(), words.end(), [](char c) {
        return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
    });
}

std::string hours_words(double hours) {
    if (hours < 1.0) {
        return fmt::format("{:.0f} min before", hours * 60.0);
    }
    return hours == 1.0 ? std::string("1 h before") : fmt::format("{:g} h before", tenths(hours));
}

} // namespace

std::string formula_page(const std::string& title,
                         const Formula& formula,
                         std::size_t columns,
                         output::Weight weight) {
    LabelledPage page(columns, weight);
    page.heading(title_words(title));
    page.sentence(
        fmt::format("All in percent of the flour, {}.", grams_words(formula.flour.count())));
    page.gap();
    for (const FormulaItem& item : formula.items) {
        page.figures({grams_words(item.grams.likely.count()), percent_words(item.percent.count())},
                     item_words(item));
    }
    page.gap();
    page.labelled("Dough", grams_words(formula.dough.count()));
    const double water = formula.hydration.count();
    const double total = formula.total_hydration.count();
    const bool both = percent_words(water) != percent_words(total);
    page.labelled("Water",
                  both ? fmt::format("{}; {} with what milk, eggs, butter and the like hold",
                                     percent_words(water),
                                     percent_words(total))
                       : percent_words(water));
    if (formula.prefermented.count() > 0.0) {
        page.labelled(
            "Leaven",
            fmt::format("{} of the flour ferments beforehand; it is counted as flour and water",
                        percent_words(formula.prefermented.count())));
    }
    if (formula.yeast_as_fresh) {
        const Grams fresh = formula.yeast_as_fresh->likely;
        page.labelled("Yeast",
                      fmt::format("does the work of {} of fresh yeast, {}",
                                  grams_words(fresh.count()),
                                  percent_words(100.0 * (fresh / formula.flour))));
    }
    if (!formula.unweighed.empty()) {
        page.labelled("No weight", joined(formula.unweighed, ", "));
    }
    if (!formula.remarks.empty()) {
        page.gap();
        page.heading("Unusual about it");
        for (const Diagnostic& remark : formula.remarks) {
            page.sentence(capitalised(remark.what) + ". " + remark.do_this);
        }
    }
    return page.text();
}

std::string gather_page(const std::vector<std::string>& titles,
                        const Provisions& provisions,
                        std::size_t columns,
                        output::Weight weight) {
    LabelledPage page(columns, weight);
    std::vector<std::string> shown;
    for (const std::string& title : titles) {
        shown.push_back(title_words(title));
    }
    page.heading(joined(shown, "; "));
    page.gap();
    page.cell_columns(13);
    for (const ToBuy& one : provisions.buy) {
        std::string words = one.item;
        if (has_letters(one.as_written)) {
            words += ", " + one.as_written;
        }
        if (one.optional) {
            words += ", if you like";
        }
        page.figures({one.grams ? band_words(*one.grams) : std::string()}, words);
    }
    page.gap();
    page.labelled("Have ready", joined(provisions.kit, "; "));
    for (const Ahead& ahead : provisions.ahead) {
        page.labelled("Ahead", hours_words(ahead.hours_before) + ": " + ahead.what);
    }
    if (!provisions.allergens.empty()) {
        page.gap();
        for (const AllergenNote& note : provisions.allergens) {
            page.labelled("Allergens", note.allergen + ": " + joined(note.because, ", "));
        }
    }
    if (!provisions.cautions.empty()) {
        page.gap();
        for (const Caution& caution : provisions.cautions) {
            page.labelled("Mind", caution.text);
        }
    }
    return page.text();
}

} // namespace loafwright::cli

// SPDX-License-Identifier: Apache-2.0
//
// A gutter is a strip that no line crosses, or few do, with lines on both sides of it for several
// rows. The lines that do cross it (a title, a note below) cut the page into bands; each band's
// left side is read before its right side, and each side is looked at again for gutters of its own.
// This is the recursive XY cut (Nagy and Seth 1984) with lines that may cross.
#include "shell/paper/columns.hpp"

#include <algorithm>
#include <cstddef>
#include <iterator>
#include <optional>
#include <utility>

namespace loafwright::paper {

namespace {

constexpr double least_gutter = 0.8;   // in letter heights of a line
constexpr double most_crossing = 0.35; // of all lines
constexpr std::size_t least_rows = 3;  // on each side
constexpr std::size_t full_column_rows = 12;
constexpr std::size_t amount_letters = 9;
constexpr std::size_t prose_letters = 18;
constexpr double word_gap = 1.6; // more than this many heights inside a line parts it
constexpr double indent = 2.5;
constexpr double least_flush = 0.5;
constexpr double most_between = 0.5; // lines that cross, for each of a column's own
constexpr int deepest = 6;

double middle_of(std::vector<double> values) {
    if (values.empty()) {
        return 0.0;
    }
    const auto at = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
    std::nth_element(values.begin(), at, values.end());
    return *at;
}

double line_height(const std::vector<SeenLine>& lines) {
    std::vector<double> heights;
    heights.reserve(lines.size());
    for (const SeenLine& line : lines) {
        heights.push_back(line.box.height());
    }
    return middle_of(std::move(heights));
}

bool same_row(const Box& a, const Box& b) {
    const double shared = std::min(a.bottom, b.bottom) - std::max(a.top, b.top);
    return shared > 0.5 * std::min(a.height(), b.height());
}

// A recogniser may run a line on across a gutter; wide gaps part it again.
std::vector<SeenLine> parted(std::vector<SeenLine> lines, double height) {
    std::vector<SeenLine> pieces;
    for (SeenLine& line : lines) {
        pieces.push_back({{}, line.words.front().box, line.size});
        for (SeenWord& word : line.words) {
            SeenLine& piece = pieces.back();
            if (!piece.words.empty() && word.box.left - piece.box.right > word_gap * height) {
                pieces.push_back({{}, word.box, line.size});
            }
            pieces.back().box = around(pieces.back().box, word.box);
            pieces.back().words.push_back(std::move(word));
        }
    }
    return pieces;
}

struct Gutter {
    double left = 0.0;
    double right = 0.0;
};

struct Sides {
    std::vector<const SeenLine*> left;
    std::vector<const SeenLine*> right;
    std::vector<const SeenLine*> across;
};

Sides sides_of(const std::vector<SeenLine>& lines, const Gutter& gutter) {
    Sides sides;
    for (const SeenLine& line : lines) {
        (line.box.right <= gutter.left   ? sides.left
         : line.box.left >= gutter.right ? sides.right
                                         : sides.across)
            .push_back(&line);
    }
    return sides;
}

double middle_letters(const std::vector<const SeenLine*>& lines) {
    std::vector<double> letters;
    letters.reserve(lines.size());
    for (const SeenLine* line : lines) {
        letters.push_back(static_cast<double>(letters_in(*line)));
    }
    return middle_of(std::move(letters));
}

// Rows that have a piece on both sides.
std::size_t shared_rows(const Sides& sides) {
    return static_cast<std::size_t>(
        std::count_if(sides.left.begin(), sides.left.end(), [&](const SeenLine* l) {
            return std::any_of(sides.right.begin(), sides.right.end(), [&](const SeenLine* r) {
                return same_row(l->box, r->box);
            });
        }));
}

double top_of(const std::vector<const SeenLine*>& lines) {
    double top = lines.front()->box.top;
    for (const SeenLine* line : lines) {
        top = std::min(top, line->box.top);
    }
    return top;
}

double bottom_of(const std::vector<const SeenLine*>& lines) {
    double bottom = lines.front()->box.bottom;
    for (const SeenLine* line : lines) {
        bottom = std::max(bottom, line->box.bottom);
    }
    return bottom;
}

// The last words of a text that had no room in the left column: long pieces, from its top on, with
// nothing across the gutter below.
bool is_spilled(const Sides& sides) {
    if (sides.left.size() < full_column_rows || sides.right.empty() ||
        middle_letters(sides.right) < prose_letters || middle_letters(sides.left) < prose_letters) {
        return false;
    }
    const double top = top_of(sides.left);
    const double reach = bottom_of(sides.left) - top;
    return top_of(sides.right) < top + 0.1 * reach &&
           std::all_of(sides.across.begin(), sides.across.end(), [top](const SeenLine* line) {
               return line->box.middle() < top;
           });
}

// A column begins flush; sentences that begin wherever the one before them ended do not.
bool begins_flush(const std::vector<const SeenLine*>& right, const Gutter& gutter, double height) {
    const auto flush = std::count_if(right.begin(), right.end(), [&](const SeenLine* line) {
        return line->box.left < gutter.right + indent * height;
    });
    return static_cast<double>(flush) >= least_flush * static_cast<double>(right.size());
}

// A column runs down the page; sentences that begin behind a wide space stand among lines that
// cross.
bool runs_down(const std::vector<const SeenLine*>& side,
               const std::vector<const SeenLine*>& across) {
    const double top = top_of(side);
    const double bottom = bottom_of(side);
    const auto between = std::count_if(across.begin(), across.end(), [=](const SeenLine* line) {
        return top < line->box.middle() && line->box.middle() < bottom;
    });
    return static_cast<double>(between) <= most_between * static_cast<double>(side.size());
}

// How good a gutter this is; empty: none.
std::optional<double>
worth(const std::vector<SeenLine>& lines, const Gutter& gutter, double height) {
    const Sides sides = sides_of(lines, gutter);
    const bool spilled = is_spilled(sides);
    if (!spilled && (sides.left.size() < least_rows || sides.right.size() < least_rows)) {
        return std::nullopt;
    }
    if (static_cast<double>(sides.across.size()) >
        most_crossing * static_cast<double>(lines.size())) {
        return std::nullopt;
    }
    if (!begins_flush(sides.right, gutter, height) || !runs_down(sides.left, sides.across) ||
        !runs_down(sides.right, sides.across)) {
        return std::nullopt;
    }
    const double beside = std::min(bottom_of(sides.left), bottom_of(sides.right)) -
                          std::max(top_of(sides.left), top_of(sides.right));
    if (!spilled && beside < static_cast<double>(least_rows) * height) {
        return std::nullopt;
    }
    // A table of amounts: short pieces on one side, each with a partner in its row.
    const std::size_t fewer = std::min(sides.left.size(), sides.right.size());
    const bool short_side = middle_letters(sides.left) <= amount_letters ||
                            middle_letters(sides.right) <= amount_letters;
    if (short_side && static_cast<double>(shared_rows(sides)) >= 0.6 * static_cast<double>(fewer)) {
        return std::nullopt;
    }
    return static_cast<double>(sides.left.size() + sides.right.size()) -
           2.0 * static_cast<double>(sides.across.size()) +
           0.1 * (gutter.right - gutter.left) / height;
}

std::optional<Gutter> best_gutter(const std::vector<SeenLine>& lines, double height) {
    std::vector<double> rights;
    std::vector<double> lefts;
    for (const SeenLine& line : lines) {
        rights.push_back(line.box.right);
        lefts.push_back(line.box.left);
    }
    std::sort(rights.begin(), rights.end());
    std::sort(lefts.begin(), lefts.end());
    std::optional<Gutter> best;
    double most = 0.0;
    // Ragged ends make many candidates; a few dozen are enough to meet the true one.
    const std::size_t stride = std::max<std::size_t>(1, rights.size() / 60);
    for (std::size_t i = 0; i < rights.size(); i += stride) {
        const auto next =
            std::lower_bound(lefts.begin(), lefts.end(), rights[i] + least_gutter * height);
        for (auto at = next; at != lefts.end() && at - next < 3; ++at) {
            const Gutter gutter{rights[i], *at};
            const auto value = worth(lines, gutter, height);
            if (value && (!best || *value > most)) {
                best = gutter;
                most = *value;
            }
        }
    }
    return best;
}

// Pieces of one row become one line; rows from top to bottom.
Column column_of(std::vector<SeenLine> lines) {
    std::sort(lines.begin(), lines.end(), [](const SeenLine& a, const SeenLine& b) {
        return a.box.middle() < b.box.middle();
    });
    std::vector<std::vector<SeenLine>> rows;
    for (SeenLine& line : lines) {
        if (!rows.empty() && same_row(rows.back().front().box, line.box)) {
            rows.back().push_back(std::move(line));
        } else {
            rows.emplace_back();
            rows.back().push_back(std::move(line));
        }
    }
    Column column;
    for (std::vector<SeenLine>& row : rows) {
        std::sort(row.begin(), row.end(), [](const SeenLine& a, const SeenLine& b) {
            return a.box.left < b.box.left;
        });
        SeenLine whole = std::move(row.front());
        for (std::size_t i = 1; i < row.size(); ++i) {
            whole.box = around(whole.box, row[i].box);
            whole.size = std::max(whole.size, row[i].size);
            std::move(row[i].words.begin(), row[i].words.end(), std::back_inserter(whole.words));
        }
        column.box = column.lines.empty() ? whole.box : around(column.box, whole.box);
        column.lines.push_back(std::move(whole));
    }
    return column;
}

void put_in_order(std::vector<SeenLine> lines,
                  double height,
                  int depth,
                  std::vector<Column>& columns) {
    if (lines.empty()) {
        return;
    }
    const auto gutter = depth < deepest ? best_gutter(lines, height) : std::nullopt;
    if (!gutter) {
        columns.push_back(column_of(std::move(lines)));
        return;
    }
    std::sort(lines.begin(), lines.end(), [](const SeenLine& a, const SeenLine& b) {
        return a.box.top < b.box.top;
    });
    std::vector<SeenLine> left;
    std::vector<SeenLine> right;
    std::vector<SeenLine> across;
    const auto end_band = [&] {
        put_in_order(std::exchange(left, {}), height, depth + 1, columns);
        put_in_order(std::exchange(right, {}), height, depth + 1, columns);
    };
    const auto end_across = [&] {
        put_in_order(std::exchange(across, {}), height, deepest, columns);
    };
    for (SeenLine& line : lines) {
        const bool is_left = line.box.right <= gutter->left;
        const bool is_right = line.box.left >= gutter->right;
        if (is_left || is_right) {
            end_across();
            (is_left ? left : right).push_back(std::move(line));
        } else {
            end_band();
            across.push_back(std::move(line));
        }
    }
    end_band();
    end_across();
}

} // namespace

std::vector<Column> columns_of(std::vector<SeenLine> lines) {
    std::vector<Column> columns;
    lines.erase(std::remove_if(lines.begin(),
                               lines.end(),
                               [](const SeenLine& line) { return line.words.empty(); }),
                lines.end());
    const double height = line_height(lines);
    put_in_order(parted(std::move(lines), height), height, 0, columns);
    return columns;
}

} // namespace loafwright::paper

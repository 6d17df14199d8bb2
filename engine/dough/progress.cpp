// SPDX-License-Identifier: Apache-2.0
//
// Progress is the integral of r(T(t)) dt. T(t) is known in closed form (temperature_history.cpp),
// so this is a quadrature and no differential equation: each stay is cut into pieces of one time
// constant (after forty of them the dough follows its place) and at every minute where T turns or
// passes a corner of the curve, and each piece gets Gauss and Legendre's rule with 16 points. The
// number of pieces depends on the history alone, never on what comes out.
#include "engine/dough/progress.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

namespace loafwright::dough {

namespace {

// Abscissae and weights of the rule of 16 points (Abramowitz & Stegun 1964, table 25.4; computed
// again to 16 digits from the roots of the Legendre polynomial).
constexpr std::array<double, 8> abscissae{0.0950125098376374,
                                          0.2816035507792589,
                                          0.4580167776572274,
                                          0.6178762444026438,
                                          0.7554044083550030,
                                          0.8656312023878318,
                                          0.9445750230732326,
                                          0.9894009349916499};
constexpr std::array<double, 8> weights{0.1894506104550685,
                                        0.1826034150449236,
                                        0.1691565193950025,
                                        0.1495959888165767,
                                        0.1246289712555339,
                                        0.0951585116824928,
                                        0.0622535239386479,
                                        0.0271524594117541};

constexpr double forty_time_constants = 40.0;
constexpr double most_degrees_a_piece = 5.0;

template <typename Function>
double integral(const Function& function, double from, double to) {
    const double middle = (from + to) / 2.0;
    const double half = (to - from) / 2.0;
    double sum = 0.0;
    for (std::size_t i = 0; i < abscissae.size(); ++i) {
        const double off = half * abscissae.at(i);
        sum += weights.at(i) * (function(middle - off) + function(middle + off));
    }
    return half * sum;
}

/// A part of one stay over which everything is smooth; minutes count from the stay's beginning.
struct Piece {
    Stay stay;
    Celsius dough; // at the beginning of the stay
    double stay_begins = 0.0;
    double begin = 0.0;
    double end = 0.0;

    [[nodiscard]] Celsius at(double minute) const {
        return dough_within(stay, dough, Minutes(minute));
    }
};

/// A minute of a stay, and the dough at it.
struct Moment {
    double minute = 0.0;
    Celsius dough;
};

/// The minute between two moments, where T runs one way only, at which it passes `level`, if it
/// does.
std::optional<double>
passes(const Piece& piece, const Moment& first, const Moment& last, Celsius level) {
    if (!(std::min(first.dough, last.dough) < level && level < std::max(first.dough, last.dough))) {
        return std::nullopt;
    }
    const bool rising = first.dough < last.dough;
    double begin = first.minute;
    double end = last.minute;
    const Stay& stay = piece.stay;
    if (stay.place_first == stay.place_last && stay.time_constant > Minutes(0.0)) {
        // In a steady place: T - P = (T0 - P) exp(-t / tau).
        const double ratio = (piece.dough - stay.place_first) / (level - stay.place_first);
        return std::clamp(stay.time_constant.count() * std::log(ratio), begin, end);
    }
    for (int halving = 0; halving < 60; ++halving) {
        const double middle = (begin + end) / 2.0;
        ((piece.at(middle) < level) == rising ? begin : end) = middle;
    }
    return (begin + end) / 2.0;
}

/// Minutes inside the stay where the first cuts go: turning point, time constants, wide spans.
std::vector<double> first_cuts(const Stay& stay, Celsius dough, double length) {
    std::vector<double> cuts{0.0, length};
    const double lasts = stay.lasts.count();
    const double tau = stay.time_constant.count();
    const double span = (stay.place_last - stay.place_first).count();
    if (lasts > 0.0) {
        cuts.push_back(lasts);
        const int parts = static_cast<int>(std::ceil(std::abs(span) / most_degrees_a_piece));
        for (int i = 1; i < parts; ++i) {
            cuts.push_back(lasts * i / parts);
        }
        // dT/dt = 0 at tau ln((T0 - P + s tau) / (s tau)).
        const double climb = span / lasts * tau;
        const double ratio = ((dough - stay.place_first).count() + climb) / climb;
        if (climb != 0.0 && ratio > 1.0) {
            cuts.push_back(tau * std::log(ratio));
        }
    }
    if (tau > 0.0) {
        for (int i = 1; i <= static_cast<int>(forty_time_constants); ++i) {
            cuts.push_back(i * tau);
            cuts.push_back(lasts + i * tau);
        }
    }
    std::erase_if(cuts, [length](double cut) { return !(cut >= 0.0 && cut <= length); });
    std::sort(cuts.begin(), cuts.end());
    cuts.erase(std::unique(cuts.begin(), cuts.end()), cuts.end());
    return cuts;
}

/// The smooth pieces of the history between two minutes, in order.
std::vector<Piece>
pieces_of(const TemperatureHistory& history, double from, double to, Curve curve) {
    std::vector<Stay> stays = history.stays;
    if (stays.empty()) {
        stays.push_back({Minutes(0.0), history.start, history.start, Minutes(0.0)});
    }
    std::vector<Piece> pieces;
    Celsius dough = history.start;
    double begins = 0.0;
    for (std::size_t i = 0; i < stays.size() && begins < to; ++i) {
        const bool last = i + 1 == stays.size();
        const Stay& stay = stays[i];
        const double length =
            last ? to - begins : std::min(std::max(0.0, stay.lasts.count()), to - begins);
        const Piece whole{stay, dough, begins, 0.0, length};
        std::vector<double> cuts = first_cuts(stay, dough, length);
        std::vector<double> more;
        Moment before{cuts.front(), whole.at(cuts.front())};
        for (std::size_t k = 1; k < cuts.size(); ++k) {
            const Moment here{cuts[k], whole.at(cuts[k])};
            for (const Celsius corner : corners_of(curve)) {
                if (const auto cut = passes(whole, before, here, corner)) {
                    more.push_back(*cut);
                }
            }
            before = here;
        }
        if (from > begins && from < begins + length) {
            more.push_back(from - begins);
        }
        cuts.insert(cuts.end(), more.begin(), more.end());
        std::sort(cuts.begin(), cuts.end());
        for (std::size_t k = 0; k + 1 < cuts.size(); ++k) {
            if (begins + (cuts[k] + cuts[k + 1]) / 2.0 > from && cuts[k + 1] > cuts[k]) {
                pieces.push_back({stay, dough, begins, cuts[k], cuts[k + 1]});
            }
        }
        dough = dough_within(stay, dough, Minutes(length));
        begins += length;
    }
    return pieces;
}

template <typename Rate>
double progress_along(const std::vector<Piece>& pieces, const Rate& rate) {
    double sum = 0.0;
    for (const Piece& piece : pieces) {
        sum +=
            integral([&](double minute) { return rate(piece.at(minute)); }, piece.begin, piece.end);
    }
    return sum;
}

template <typename Rate>
std::optional<double>
minute_of(const std::vector<Piece>& pieces, double wanted, double from, const Rate& rate) {
    if (wanted <= 0.0) {
        return from;
    }
    double left = wanted;
    for (const Piece& piece : pieces) {
        const auto along = [&](double minute) { return rate(piece.at(minute)); };
        const double here = integral(along, piece.begin, piece.end);
        // The last digits of a sum must not decide whether it is reached.
        if (here < left - 1e-12 * wanted) {
            left -= here;
            continue;
        }
        // Newton's steps, for the rate is the slope, kept between two ends that close in.
        double least = piece.begin;
        double most = piece.end;
        double minute = least + (most - least) * std::min(1.0, left / std::max(here, left * 1e-9));
        constexpr double close_enough = 1e-12;
        for (int step = 0; step < 60; ++step) {
            const double made = integral(along, piece.begin, minute);
            (made < left ? least : most) = minute;
            const double slope = along(minute);
            const double next = slope > 0.0 ? minute + (left - made) / slope : least;
            const double kept = next > least && next < most ? next : (least + most) / 2.0;
            const bool done = std::abs(kept - minute) <= close_enough * (1.0 + std::abs(minute));
            minute = kept;
            if (done) {
                break;
            }
        }
        return piece.stay_begins + minute;
    }
    return std::nullopt;
}

} // namespace

Progress progress(const TemperatureHistory& history, Minutes from, Minutes to, Curve curve) {
    return Progress(progress_along(pieces_of(history, from.count(), to.count(), curve),
                                   [curve](Celsius dough) { return rate_of(curve, dough); }));
}

double uncertainty_along(const TemperatureHistory& history, Minutes from, Minutes to, Curve curve) {
    const std::vector<Piece> pieces = pieces_of(history, from.count(), to.count(), curve);
    const double made =
        progress_along(pieces, [curve](Celsius dough) { return rate_of(curve, dough); });
    if (made <= 0.0) {
        return 0.0;
    }
    return progress_along(pieces,
                          [curve](Celsius dough) {
                              return rate_of(curve, dough) * uncertainty_of(curve, dough);
                          }) /
           made;
}

std::optional<Minutes>
time_until(const TemperatureHistory& history, Progress wanted, Minutes from, Curve curve) {
    const auto minute =
        minute_of(pieces_of(history, from.count(), (from + furthest).count(), curve),
                  wanted.count(),
                  from.count(),
                  [curve](Celsius dough) { return rate_of(curve, dough); });
    return minute ? std::optional(Minutes(*minute) - from) : std::nullopt;
}

std::optional<Minutes> minutes_at(Celsius steady, Progress progress, Curve curve) {
    const double rate = rate_of(curve, steady);
    return rate > 0.0 ? std::optional(Minutes(progress.count() / rate)) : std::nullopt;
}

std::optional<Band<Minutes>> transferred(Minutes stated,
                                         const TemperatureHistory& written_for,
                                         const TemperatureHistory& here,
                                         Curve curve) {
    const auto rate = [curve](Celsius dough) { return rate_of(curve, dough); };
    const double wanted = progress(written_for, Minutes(0.0), stated, curve).count();
    if (stated.count() > 0.0 && wanted <= 0.0) {
        return std::nullopt;
    }
    const double doubt_there = uncertainty_along(written_for, Minutes(0.0), stated, curve);
    const std::vector<Piece> pieces = pieces_of(here, 0.0, furthest.count(), curve);
    const auto doubt = [&](Celsius dough) {
        return std::max(doubt_there, uncertainty_of(curve, dough));
    };
    const auto likely = minute_of(pieces, wanted, 0.0, rate);
    if (!likely) {
        return std::nullopt;
    }
    const auto low = minute_of(
        pieces, wanted, 0.0, [&](Celsius dough) { return rate(dough) / (1.0 - doubt(dough)); });
    const auto high = minute_of(
        pieces, wanted, 0.0, [&](Celsius dough) { return rate(dough) / (1.0 + doubt(dough)); });
    return Band<Minutes>{Minutes(std::min(low.value_or(*likely), *likely)),
                         Minutes(*likely),
                         Minutes(high.value_or(furthest.count()))};
}

} // namespace loafwright::dough

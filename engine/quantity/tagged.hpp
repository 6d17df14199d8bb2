// SPDX-License-Identifier: Apache-2.0
#pragma once

namespace loafwright {

/// A number that carries its unit as a type, so that grams never meet minutes by accident.
///
/// Promises: same size as a double; comparison, sum and difference with its own kind and scaling by
/// a bare factor are
///           the only arithmetic; temperatures (points on a scale, not amounts) have a type of
///           their own below.
template <typename Tag>
class Tagged {
public:
    constexpr Tagged() = default;
    constexpr explicit Tagged(double count) : count_(count) {}

    [[nodiscard]] constexpr double count() const { return count_; }

    friend constexpr bool operator==(Tagged a, Tagged b) { return a.count_ == b.count_; }
    friend constexpr bool operator!=(Tagged a, Tagged b) { return a.count_ != b.count_; }
    friend constexpr bool operator<(Tagged a, Tagged b) { return a.count_ < b.count_; }
    friend constexpr bool operator<=(Tagged a, Tagged b) { return a.count_ <= b.count_; }
    friend constexpr bool operator>(Tagged a, Tagged b) { return a.count_ > b.count_; }
    friend constexpr bool operator>=(Tagged a, Tagged b) { return a.count_ >= b.count_; }
    friend constexpr Tagged operator+(Tagged a, Tagged b) { return Tagged(a.count_ + b.count_); }
    friend constexpr Tagged operator-(Tagged a, Tagged b) { return Tagged(a.count_ - b.count_); }
    friend constexpr Tagged operator*(Tagged a, double factor) { return Tagged(a.count_ * factor); }
    friend constexpr Tagged operator*(double factor, Tagged a) { return Tagged(a.count_ * factor); }
    friend constexpr Tagged operator/(Tagged a, double divisor) {
        return Tagged(a.count_ / divisor);
    }
    friend constexpr double operator/(Tagged a, Tagged b) { return a.count_ / b.count_; }
    constexpr Tagged& operator+=(Tagged other) {
        count_ += other.count_;
        return *this;
    }

private:
    double count_ = 0.0;
};

using Grams = Tagged<struct GramsTag>;
using Millilitres = Tagged<struct MillilitresTag>;
using Millimetres = Tagged<struct MillimetresTag>;
using Metres = Tagged<struct MetresTag>;
using Minutes = Tagged<struct MinutesTag>;
using CelsiusDifference = Tagged<struct CelsiusDifferenceTag>;

/// A point on the Celsius scale. Two of them differ by a CelsiusDifference; they cannot be added.
class Celsius {
public:
    constexpr Celsius() = default;
    constexpr explicit Celsius(double degrees) : degrees_(degrees) {}

    [[nodiscard]] constexpr double degrees() const { return degrees_; }

    friend constexpr bool operator==(Celsius a, Celsius b) { return a.degrees_ == b.degrees_; }
    friend constexpr bool operator!=(Celsius a, Celsius b) { return a.degrees_ != b.degrees_; }
    friend constexpr bool operator<(Celsius a, Celsius b) { return a.degrees_ < b.degrees_; }
    friend constexpr bool operator<=(Celsius a, Celsius b) { return a.degrees_ <= b.degrees_; }
    friend constexpr bool operator>(Celsius a, Celsius b) { return a.degrees_ > b.degrees_; }
    friend constexpr bool operator>=(Celsius a, Celsius b) { return a.degrees_ >= b.degrees_; }
    friend constexpr CelsiusDifference operator-(Celsius a, Celsius b) {
        return CelsiusDifference(a.degrees_ - b.degrees_);
    }
    friend constexpr Celsius operator+(Celsius a, CelsiusDifference d) {
        return Celsius(a.degrees_ + d.count());
    }
    friend constexpr Celsius operator-(Celsius a, CelsiusDifference d) {
        return Celsius(a.degrees_ - d.count());
    }

private:
    double degrees_ = 0.0;
};

/// An amount that is not known exactly: low <= likely <= high. Unless its source says otherwise,
/// low and high are the ends between which four cases in five lie (the tenth and the ninetieth
/// percentile).
template <typename Quantity>
struct Band {
    Quantity low{};
    Quantity likely{};
    Quantity high{};

    friend constexpr bool operator==(const Band& a, const Band& b) {
        return a.low == b.low && a.likely == b.likely && a.high == b.high;
    }
    friend constexpr bool operator!=(const Band& a, const Band& b) { return !(a == b); }
};

/// A band without width.
template <typename Quantity>
constexpr Band<Quantity> exactly(Quantity value) {
    return Band<Quantity>{value, value, value};
}

/// A range whose likely value is its middle.
template <typename Quantity>
constexpr Band<Quantity> between(Quantity low, Quantity high) {
    return Band<Quantity>{low, low + (high - low) / 2.0, high};
}

} // namespace loafwright

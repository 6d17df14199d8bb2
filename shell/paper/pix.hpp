// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <memory>

struct Pix;

namespace loafwright::paper {

struct PixEnd {
    void operator()(Pix* pix) const;
};

/// A Leptonica picture with one owner. Empty where Leptonica refused.
using Picture = std::unique_ptr<Pix, PixEnd>;

int width_of(const Picture& picture);
int height_of(const Picture& picture);

} // namespace loafwright::paper

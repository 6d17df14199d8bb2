// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/dough/heat_units.hpp"
#include "engine/dough/shape.hpp"

namespace loafwright::dough {

enum class Form { tin_loaf, round_loaf, long_loaf, roll, baguette, flatbread };

/// One piece of dough and the body it will be when baked.
///
/// dough > 0, and every edge of `baked` > 0.
struct Loaf {
    Form form = Form::tin_loaf;
    Grams dough;
    Shape baked;
};

/// The usual body for so much dough: that of a loaf whose size is known, stretched alike in all
/// edges; a flatbread keeps its thickness and spreads.
///
/// Known sizes, dough and baked: tin loaf 900 g, 24 x 11 x 11 cm; round loaf 1000 g, 21 cm wide and
/// 9.5 high; long loaf 800 g, 11 cm thick and 28 long; roll 70 g, 9 cm and 5.5; baguette 330 g,
/// 6.5 cm and 55 (usual sizes, common practice). Flatbread 1200 g, 40 x 30 x 4 cm (assumed).
/// Needs: dough > 0.
Loaf usual_loaf(Form form, Grams dough);

/// A tin loaf whose tin is known: it rises to the height that its usual density asks for.
///
/// Needs: all positive. The loaf may come out higher than its tin.
Loaf loaf_in_tin(Grams dough, Millimetres tin_length, Millimetres tin_width);

/// Dough over the volume of the baked loaf; what bakes away is not taken off.
KilogramsPerCubicMetre risen_density(const Loaf& loaf);

/// Whether the heat models have been looked at for such a piece: leavened, 40 g to 2 kg, 20 to
/// 130 mm thick, and no flatbread.
bool within_known_sizes(const Loaf& loaf);

} // namespace loafwright::dough

// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/dough/heat_units.hpp"

namespace loafwright::dough {

/// Where pure water boils under this pressure.
///
/// Source:   IAPWS R7-97(2012), region 4, backward equation (its equation 31).
/// Needs:    611 Pa <= pressure <= 22.06 MPa.
/// Promises: grows with pressure; undoes `saturation_pressure` to 1e-6 K.
Celsius boiling_point(Pascals pressure);

/// The pressure at which water and its vapour stand in balance.
///
/// Source:   IAPWS R7-97(2012), region 4, its equation 30.
/// Needs:    0 °C <= water <= 370 °C.
/// Promises: grows with temperature.
Pascals saturation_pressure(Celsius water);

} // namespace loafwright::dough

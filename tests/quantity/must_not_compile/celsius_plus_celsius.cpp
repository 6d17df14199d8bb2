// SPDX-License-Identifier: Apache-2.0
//
// Two points on a temperature scale have no sum: 20 °C and 5 °C do not make 25 °C of anything.
#include "engine/quantity/tagged.hpp"

loafwright::Celsius warmer(loafwright::Celsius dough);

loafwright::Celsius warmer(loafwright::Celsius dough) {
#ifdef FAULT_REMOVED
    return dough + loafwright::CelsiusDifference(5.0);
#else
    return dough + loafwright::Celsius(5.0);
#endif
}

// SPDX-License-Identifier: Apache-2.0
//
// A bare number says nothing about its unit, so it does not become a quantity by itself.
#include "engine/quantity/tagged.hpp"

loafwright::Minutes first_rise();

loafwright::Minutes first_rise() {
#ifdef FAULT_REMOVED
    const loafwright::Minutes minutes{90.0};
#else
    const loafwright::Minutes minutes = 90.0;
#endif
    return minutes;
}

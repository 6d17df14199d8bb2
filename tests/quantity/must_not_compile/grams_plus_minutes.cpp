// SPDX-License-Identifier: Apache-2.0
//
// Amounts of different units do not add.
#include "engine/quantity/tagged.hpp"

loafwright::Grams heavier(loafwright::Grams dough);

loafwright::Grams heavier(loafwright::Grams dough) {
#ifdef FAULT_REMOVED
    return dough + loafwright::Grams(10.0);
#else
    return dough + loafwright::Minutes(10.0);
#endif
}

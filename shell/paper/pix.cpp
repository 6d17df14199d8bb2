// SPDX-License-Identifier: Apache-2.0
#include "shell/paper/pix.hpp"

#include <allheaders.h>

namespace loafwright::paper {

void PixEnd::operator()(Pix* pix) const {
    pixDestroy(&pix);
}

int width_of(const Picture& picture) {
    return picture ? pixGetWidth(picture.get()) : 0;
}

int height_of(const Picture& picture) {
    return picture ? pixGetHeight(picture.get()) : 0;
}

} // namespace loafwright::paper

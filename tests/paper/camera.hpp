// SPDX-License-Identifier: Apache-2.0
//
// A bad camera in bad light: what a clean page goes through before it is a photo.
#pragma once

#include "tests/paper/typeset.hpp"

#include <string>

namespace loafwright::press {

struct Shot {
    double turned_degrees = 0.0;
    double perspective = 0.0; // how far the corners are off, as a share of the width
    double shadow = 0.0;      // how much darker the dark side is, 0 to 1
    double light = 1.0;       // of the whole picture
    int blurred = 0;          // half the width of the blur, in pixels
    double noise = 0.0;       // standard deviation, in 255ths
    double curl = 0.0;        // of the lines, in pixels
    int table = 0;            // width of the table around the page, in pixels
    int quality = 90;         // of JPEG
    int quarter_turns = 0;
    int held = 1; // how the camera was, 1 to 8 by Exif 2.3; kept in the file for the reader to undo
    unsigned seed = 1;
};

/// All of it at once, by chance within what the kitchen usually does.
Shot usual_bad_shot(unsigned seed);

std::string jpeg_of(const Grey& page, const Shot& shot);
std::string png_of(const Grey& page);
std::string webp_of(const Grey& page);
std::string tiff_of(const Grey& page);

/// A PDF that holds nothing but the picture of a page.
std::string scanned_pdf(const Grey& page);

} // namespace loafwright::press

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>

namespace ringrule {

/// Light, 0 … 1, of each grey value of a photo.
struct Tone {
    std::array<float, 256> lightOf{};
};

/// The curve by which photos are read: sRGB (IEC 61966-2-1), drawn a tenth toward the plain grey value. Light adds up
/// in the lens, so the place of a blurred edge is half-way in light; half-way in values would make every dark body
/// thinner by up to half a pixel. The tenth is JPEG's: its rounding acts on values and pulls edges that way (measured
/// on rendered photos, see docs/measuring-method.md).
[[nodiscard]] const Tone& photoTone();

}  // namespace ringrule

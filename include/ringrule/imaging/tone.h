// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>

namespace ringrule {

/// Relative light (0–1) of each 8-bit code value by the sRGB transfer function (IEC 61966-2-1). A lens blurs light, not
/// code values: the middle of an edge lies where the light is half-way, about 0.8 sigma of the blur away from where the
/// code value is half-way between black and white.
[[nodiscard]] const std::array<float, 256>& lightFromCode();

}  // namespace ringrule

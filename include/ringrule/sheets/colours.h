// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>

/// Colours that colour-blind readers can tell apart (Okabe & Ito 2008, "Color Universal Design"), as 0xRRGGBB.
namespace ringrule::colour {
inline constexpr unsigned kBlack = 0x000000;
inline constexpr unsigned kOrange = 0xE69F00;
inline constexpr unsigned kSkyBlue = 0x56B4E9;
inline constexpr unsigned kGreen = 0x009E73;
inline constexpr unsigned kYellow = 0xF0E442;
inline constexpr unsigned kBlue = 0x0072B2;
inline constexpr unsigned kVermilion = 0xD55E00;
inline constexpr unsigned kPurple = 0xCC79A7;

/// In the order in which lines take them. Yellow is left out: a thin yellow line cannot be seen on white.
inline constexpr std::array kLines{kBlue, kVermilion, kGreen, kPurple, kOrange, kSkyBlue};
}  // namespace ringrule::colour

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <opencv2/core.hpp>

namespace ringrule {

/// Fills the gaps that dark eyes leave in the mask of a pale body: round, closed all round or nearly, and in a part of
/// the body that goes on about as stout as it is there. The gap of a curled tail is not filled: with it filled the coil
/// would be far stouter than the tail that leads to it. `halfWidthPx`: the body's greatest half-width in the mask.
/// A gap beside `others`, which may be the same animal's snout beyond its eye, is left. Returns what was filled.
cv::Mat1b fillEyes(cv::Mat1b& body, const cv::Mat1b& others, double halfWidthPx, double leastRadiusPx = 1.5);

/// What the notches that eyes cut into the rim of a pale body's mask would hold: as `fillEyes`, for eyes that the rim
/// runs through. The mask is not changed.
[[nodiscard]] cv::Mat1b eyeNotches(const cv::Mat1b& body, const cv::Mat1b& others, double halfWidthPx);

/// Where an eye as wide as the head parts a snout from it: short bridges between an end of a long small part and the
/// larger part before it. For a coarse mask, which only says what belongs together.
[[nodiscard]] cv::Mat1b snoutBridges(const cv::Mat1b& body, double halfWidthPx);

}  // namespace ringrule

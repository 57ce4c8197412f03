// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <opencv2/core.hpp>

namespace ringrule {

/// What `dropFins` is told of the body beside its mask.
struct FinSearch {
    const cv::Mat1f& light;  ///< darkest in the body, lightest on the plate; before a dark plate turned upside down
    const cv::Mat1b& eyes;   ///< what is beside them stays
    const cv::Mat1b& loose;  ///< the mask with what is dimmer: fins about as dim as the mask's threshold, whole
    double halfWidthPx = 0.0;
};

/// Takes half transparent fins out of the mask of a body. A pale body's shaded belly, or pale skin on a dark one, can
/// be as dim as a fin; but the body's light falls slowly into its shade, and into a fin with a step, and a fin is open
/// to the plate along much of its border, which a dim place within the body is not.
void dropFins(const FinSearch& seen, cv::Mat1b& body);

}  // namespace ringrule

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <opencv2/core.hpp>

namespace ringrule {

/// How light inside and outside of a pale body are seen.
struct FurrowLight {
    const cv::Mat1f& light;  ///< 0 in the body's lightest part, rising by equal steps for equal ratios
    double inside = 0.0;     ///< of the body near its edge …
    double outside = 0.0;    ///< … and of the plate beside it
};

/// The furrows that part the mask of a pale body from its rim: behind the gill cover, beside a pouch. Narrow, not as
/// dark as the plate, and in the stout part of the body, where no tail is rolled up: between the turns of one the plate
/// is seen, and they are thin.
[[nodiscard]] cv::Mat1b furrowsIn(const FurrowLight& seen, const cv::Mat1b& body, double halfWidthPx);

}  // namespace ringrule

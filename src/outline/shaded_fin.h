// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <opencv2/core.hpp>

namespace ringrule {

/// Takes half transparent fins out of the mask of a pale body before a dark plate. A shaded belly and a fin can be as
/// dark as each other; but the body's light falls slowly into its shade, and into a fin with a step. `light` is 0 in the
/// body's lightest part and rises by equal steps for equal ratios;
/// what is beside `eyes` stays.
void dropFins(const cv::Mat1f& light, const cv::Mat1b& eyes, cv::Mat1b& body);

}  // namespace ringrule

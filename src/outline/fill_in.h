// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <opencv2/core.hpp>

namespace ringrule {

/// Replaces the pixels of `grey` (CV_8UC1) where `hidden` is not zero by what lies around them, the nearer the more: by
/// means over ever larger blocks of what is not hidden (pull–push, after Gortler, Grzeszczuk, Szeliski & Cohen 1996, SIGGRAPH
/// Proc., 43–54). Where everything is hidden the picture stays.
void fillIn(cv::Mat1b& grey, const cv::Mat1b& hidden);

}  // namespace ringrule

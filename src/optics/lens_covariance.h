// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include <opencv2/core.hpp>

#include "optics/lens_fit.h"

namespace ringrule {

/// Covariance of the lens of a least-squares fit, poses marginalised, for the scatter that the fit leaves: the inverse
/// of the Schur complement of the poses in its normal equations (Triggs et al. 2000, Bundle Adjustment, section 6.1).
/// Zeros for all when the fit leaves the lens open. `turns` and `shifts` are the poses in the order of the views.
[[nodiscard]] LensCovariance lensCovariance(const std::vector<const BoardView*>& views, const LensModel& model,
                                            const Lens& lens, const std::vector<cv::Mat>& turns,
                                            const std::vector<cv::Mat>& shifts);

}  // namespace ringrule

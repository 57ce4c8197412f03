// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "ringrule/midline/midline.h"

namespace ringrule {

/// The body's width along its midline, evenly spaced, lightly smoothed.
struct WidthProfile {
    std::vector<double> widthPx;
    double stepPx = 0.0;
    double lengthPx = 0.0;
    double greatestPx = 0.0;  ///< the 98th centile, so that one fin ray does not decide

    /// Width at a share (0 … 1) of the length.
    [[nodiscard]] double at(double share) const;
    [[nodiscard]] double mean(double fromShare, double toShare) const;
};

[[nodiscard]] WidthProfile widthProfile(const Midline& midline);

}  // namespace ringrule

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <span>
#include <vector>

#include "ringrule/measure/measurement.h"
#include "ringrule/statistics/estimate.h"

namespace ringrule {

/// One animal in one session: its photos combined, side views and second views together.
struct SessionMeasure {
    Estimate standardLengthMm;
    Estimate trunkDepthMm;
    Estimate trunkWidthMm;
    Estimate girthMm;
    Estimate girthRatio;
    Estimate depthRatio;
    Estimate bellyHollowPercent;
    int sidePhotos = 0;
    int widthPhotos = 0;
    std::vector<std::size_t> oddOnes;  ///< indices of photos that disagree with the rest
    std::vector<Remark> remarks;
};

/// Photos of one animal in one session combined robustly; girth takes the width of the second view where there is one.
[[nodiscard]] SessionMeasure combineRepeats(std::span<const Measurement> photos);

/// Technical error of measurement from groups of repeats (Ulijaszek & Kerr 1999):
/// sqrt(sum over groups of squared deviations from the group's mean / (readings − groups)).
struct Repeatability {
    double tem = 0.0;
    double relativeTemPercent = 0.0;
    double reliability = 0.0;           ///< R = 1 − TEM²/SD²
    double smallestRealChange = 0.0;    ///< 1.96·√2·TEM, two single photos
    int groups = 0;
    int readings = 0;
};
[[nodiscard]] Repeatability repeatability(std::span<const std::vector<double>> groups);

}  // namespace ringrule

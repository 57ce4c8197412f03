// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/optics/water.h"

#include <cassert>
#include <cmath>

namespace ringrule {

double waterIndex(double salinityPpt, double temperatureC, double wavelengthNm) {
    const double s = salinityPpt, t = temperatureC, l = wavelengthNm;
    return 1.31405 + (1.779e-4 - 1.05e-6 * t + 1.6e-8 * t * t) * s - 2.02e-6 * t * t +
           (15.868 + 0.01155 * s - 0.00423 * t) / l - 4382.0 / (l * l) + 1.1455e6 / (l * l * l);
}

double FlatLayers::reducedDepthMm(double tangentSquared) const {
    const double pane = windowIndex * windowIndex, water = waterIndex * waterIndex;
    return airMm + windowMm / std::sqrt(pane + (pane - 1.0) * tangentSquared) +
           waterMm / std::sqrt(water + (water - 1.0) * tangentSquared);
}

double FlatLayers::reducedDepthSlopeMm(double tangentSquared) const {
    const auto slope = [tangentSquared](double thickness, double index) {
        const double square = index * index;
        const double under = square + (square - 1.0) * tangentSquared;
        return -0.5 * thickness * (square - 1.0) / (under * std::sqrt(under));
    };
    return slope(windowMm, windowIndex) + slope(waterMm, waterIndex);
}

double FlatLayers::tangentFromSideways(double sidewaysMm) const {
    assert(airMm > 0.0);
    double tangent = sidewaysMm / reducedDepthMm(0.0);
    for (int round = 0; round < 30; ++round) {
        const double square = tangent * tangent;
        const double depth = reducedDepthMm(square);
        const double step = (sidewaysMm - tangent * depth) / (depth + 2.0 * square * reducedDepthSlopeMm(square));
        tangent += step;
        if (std::abs(step) < 1e-14 * (1.0 + tangent)) break;
    }
    return tangent;
}

FlatLayers layersOf(const Media& media, double heightMm) {
    assert(heightMm <= media.waterToPlateMm);
    return {media.cameraToWindowMm, media.windowThicknessMm, media.windowIndex, media.waterToPlateMm - heightMm,
            waterIndex(media.salinityPpt, media.temperatureC)};
}

}  // namespace ringrule

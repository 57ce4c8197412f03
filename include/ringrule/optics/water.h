// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ringrule/optics/box_file.h"

namespace ringrule {

/// Refractive index of sea or fresh water against air by Quan & Fry 1995 (Applied Optics 34:3477–3480), fitted there
/// for 0–30 °C, 0–35 ppt and 400–700 nm. The default is the wavelength at which a box file states its window's index.
[[nodiscard]] double waterIndex(double salinityPpt, double temperatureC, double wavelengthNm = 589.3);

/// Air, a pane and water with parallel faces between a camera and a plane. A ray is told by the tangent τ of its angle
/// to the planes' normal in air; in a layer of index n and thickness t it moves sideways by t τ / √(n² + (n² − 1) τ²),
/// which is Snell's law written without angles.
struct FlatLayers {
    double airMm = 0.0;
    double windowMm = 0.0;
    double windowIndex = 1.0;
    double waterMm = 0.0;
    double waterIndex = 1.0;

    /// Sideways distance over τ: the depth at which the ray would cross the plane's foot distance in air alone. At τ =
    /// 0 this is the reduced distance Σ t / n.
    [[nodiscard]] double reducedDepthMm(double tangentSquared) const;

    /// d(reducedDepthMm) / d(τ²).
    [[nodiscard]] double reducedDepthSlopeMm(double tangentSquared) const;

    /// The tangent τ of the ray that arrives `sidewaysMm` from the camera's foot. Sideways distance is concave in τ
    /// when all n ≥ 1, so Newton's steps rise to the root from any start. Precondition: airMm > 0, sidewaysMm ≥ 0.
    [[nodiscard]] double tangentFromSideways(double sidewaysMm) const;
};

/// The layers of a box down to a plane `heightMm` before the plate. Precondition: heightMm ≤ media.waterToPlateMm.
[[nodiscard]] FlatLayers layersOf(const Media& media, double heightMm);

}  // namespace ringrule

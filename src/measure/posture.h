// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>

#include "measure/body_in_mm.h"

namespace ringrule {

/// How far an animal may lie from parallel to the plate: standard deviation of its pitch. Nobody sees it in a single
/// photo. Common practice of side-on photos in a narrow box, no source.
inline constexpr double kPitchSdDeg = 4.0;

/// The body as it would look pitched by so much about its middle, the tail's end toward the camera: shortened along its
/// axis by the cosine, and larger where it comes nearer. `perDepthMm` is the relative change of a length for each mm.
[[nodiscard]] BodyInMm pitched(const BodyInMm& body, double degrees, double perDepthMm);

/// What an unknown pitch N(0, `kPitchSdDeg`) does to measures of a body.
class PitchDoubt {
public:
    PitchDoubt(const BodyInMm& body, double perDepthMm);

    /// What stands for the standard deviation of a measure: 1/1.96 of what 95 % of its errors lie below. They are
    /// a θ + c θ²: one part changes sign with the pitch (what lies before the middle looks larger, what lies behind
    /// smaller), one does not (the whole looks shorter).
    [[nodiscard]] double sdOf(const std::function<double(const BodyInMm&)>& measure) const;

private:
    BodyInMm flat_, up_, down_;
};

/// Relative change of what a length seems to be for each mm nearer to the camera, from what the scale makes of the
/// plate and of the animal's plane `distanceFromPlateMm` before it. Where the scale knows no depth: that of a usual
/// bench.
[[nodiscard]] double relativePerDepthMm(const Scale& scale, double distanceFromPlateMm, PixelPoint at);

}  // namespace ringrule

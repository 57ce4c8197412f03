// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <span>

#include <opencv2/core.hpp>

#include "ringrule/optics/plate.h"

namespace ringrule {

/// Linear light, 0 … 1, of each grey value of a photo, and how soft a printed edge looks in it.
struct Tone {
    std::array<float, 256> lightOf{};
    double curve = 1.0;       ///< 1: values follow the sRGB curve (IEC 61966-2-1); 0: values are linear in light
    double markerBlurPx = 0.0;  ///< sigma of the markers' edges; 0: not measured
};

/// The tone whose curve lies this far from linear (0) toward sRGB (1).
[[nodiscard]] Tone toneOfCurve(double curve);

/// The tone under which the edges of the plate's printed markers are as symmetric as a blurred step is: light adds up in
/// the lens, so an edge is symmetric in light, and lopsided in values that were bent by a curve. The edges are pooled as
/// in the slanted-edge method of ISO 12233. Without a usable marker edge: sRGB, blur not measured.
[[nodiscard]] Tone measureTone(const cv::Mat& grey, std::span<const FoundMarker> markers);

}  // namespace ringrule

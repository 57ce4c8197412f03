// SPDX-License-Identifier: GPL-3.0-or-later
// The plate as a picture of reflectances: markers, millimetre scale, card, texture.
#pragma once

#include "scene.h"

namespace render {

struct PlatePicture {
    cv::Mat1b reflectance;  // 255 = 1.0
    double pxPerMm = 20.0;  // texel i spans i / pxPerMm … (i + 1) / pxPerMm
};

// Draws the plate of a box; `card` adds an animal card that stands on it. `dark`: dark ground, scale in white, the
// markers on white patches.
PlatePicture drawPlate(const Box& box, const Animal& animal, const Card& card, std::uint64_t seed, bool dark = false,
                       const std::vector<Stain>& stains = {});

// Plate points (mm) of a marker's corners in OpenCV's order, for a marker printed upright
// and then turned.
std::array<cv::Point2d, 4> markerCornersMm(cv::Point2d centreMm, double sideMm, double rotationDeg = 0.0);

// Width of the animal card, its quiet zone and its text; it is 1.4 markers high.
double cardWidthMm(const Card& card);

}  // namespace render

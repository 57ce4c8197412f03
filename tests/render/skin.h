// SPDX-License-Identifier: GPL-3.0-or-later
// The animal's picture before it is laid over the plate: coverage and colour of each pixel.
#pragma once

#include "coverage.h"
#include "sight.h"

namespace render {

struct AnimalPicture {
    Coverage coverage;    // exact share of each pixel
    cv::Mat3f reflected;  // blue, green, red reflectance on the coverage's bounds
};

// Paints all parts of the body (not its fins and eyes).
AnimalPicture paintAnimal(const Scene& scene, const Body& body, const Sight& sight);

// Linear reflectance (blue, green, red) of an sRGB colour given as red, green, blue 0 … 255.
cv::Vec3f linearBgr(cv::Vec3d srgb);

// Smooth value noise in −1 … 1.
double smoothNoise(double x, double y, std::uint64_t seed);

}  // namespace render

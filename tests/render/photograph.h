// SPDX-License-Identifier: GPL-3.0-or-later
// From a scene to the developed photo.
#pragma once

#include "sight.h"

namespace render {

// Linear light on the sensor before haze, blur and noise: blue, green, red, 1 = full scale.
cv::Mat3f exposeScene(const Scene& scene, const Body& body, const Sight& sight);

// Haze, blur, noise and tone curve (sRGB): the upright 8-bit photo.
cv::Mat3b develop(const Scene& scene, cv::Mat3f light);

// The whole way, for callers that need only the picture.
cv::Mat3b photograph(const Scene& scene);

}  // namespace render

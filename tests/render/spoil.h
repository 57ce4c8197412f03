// SPDX-License-Identifier: GPL-3.0-or-later
// What spoils a photo of a plate: lamps mirrored in its face, drops on the window, things before a marker. All work on
// linear light before haze, blur and noise.
#pragma once

#include "scene.h"

namespace render {

// A lamp mirrored in the plate's face: light added, soft at its rim.
struct Glare {
    cv::Point2d centrePx;
    cv::Size2d radiiPx;
    double turnRad = 0.0;
    double strength = 0.3;  // light in its middle, of full scale
};
void addGlare(cv::Mat3f& light, const Glare& glare);

// A drop of water on the window: a strong lens, so that it shows a wide view of what is behind it upside down, with a
// dark rim and a spark. It is nearer than the plate and a little out of focus.
struct Drop {
    cv::Point2d centrePx;
    double radiusPx = 5.0;
};
void addDrop(cv::Mat3f& light, const Drop& drop);

// Something opaque before the plate, e.g. a leaf or a hand.
struct Cover {
    cv::Point2d centrePx;
    cv::Size2d radiiPx;
    double turnRad = 0.0;
    cv::Vec3f colour{0.03F, 0.06F, 0.05F};
};
void addCover(cv::Mat3f& light, const Cover& cover);

// A photo of a plate, spoiled: what was done to it.
struct SpoiledPlate {
    cv::Mat3b photo;
    int hiddenId = -1;  // the marker behind the cover
    int drops = 0;
};

struct SpoilOptions {
    int mostGlares = 2;
    double strongestGlare = 0.55;  // dark ink then still is darker than clipped paper
    int leastDrops = 10;
    int mostDrops = 40;
    double largestDropMm = 1.6;  // radius as seen on the plate
    double hiddenShare = 1.0;    // of photos with one marker hidden
};

// The scene's photo with random glare, drops and one hidden marker; the same seed, the same photo.
SpoiledPlate photographSpoiled(const Scene& scene, const SpoilOptions& options = {});

}  // namespace render

// SPDX-License-Identifier: GPL-3.0-or-later
// Seeded random scenes for tests and benchmarks: same seed and options, same scene.
#pragma once

#include "random.h"
#include "scene.h"

namespace render {

struct SamplerOptions {
    std::optional<Shape> shape;  // unset: two pipefish to one seahorse
    View view = View::Side;
    double shortestMm = 40.0, longestMm = 165.0;  // standard length, drawn log-uniformly
    double widestBendDeg = 25.0;                  // of the tail; the trunk gets a tenth of it
    double pitchSdDeg = 2.0;
    double planeSdMm = 1.0;        // true distance of the animal's plane
    double steepestTiltDeg = 1.5;  // of the camera, each axis
    double noise = 1.0;            // factor on read and shot noise
    double leastBlurPx = 0.5, mostBlurPx = 1.1;
    double strongestShadow = 0.40;
    double mostHaze = 0.10;
    double unevenLight = 0.12;                              // largest relative slope
    double paleShare = 0.15;                                // share of pale animals
    double thinShare = 0.2;                                 // share of animals with a hollow belly
    double closedTailShare = 0.15, halfCurledShare = 0.25;  // seahorses
    bool card = true;
    int widthPx = 1920, heightPx = 1440;
    int jpegQuality = 82;
};

// A random animal in the given box, which needs lens and media.
Scene sampleScene(std::uint64_t seed, const Box& box, const SamplerOptions& options = {});

// Puts the animal card where it is farthest from the animal, clear of the plate's markers.
void placeCardClear(Scene& scene, Random& random);

// The bench box scaled to a plate that suits animals up to `longestMm` (8 … 250 mm), seen
// from `distanceFactor` times the usual distance with a lens that fills the frame again.
Box boxFor(double longestMm, double distanceFactor = 1.0);

}  // namespace render
